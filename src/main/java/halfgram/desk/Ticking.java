package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;

/**
 * Takes a tick: keeps it, and moves in the ledger what it says was used and made.
 *
 * <p>Rules. A tick that its device has sent before changes nothing and gets the same answer. One
 * that the table of states refuses is not kept, and whoever sent it is told why. Done fills tubs
 * and takes what went in out of others; undoing it takes both back, unless a tub it filled has been
 * used meanwhile. Failed ends the whole make: its tubs are binned, its other tasks take no more
 * ticks, and the plan may be made again for a second go. So may it when less was made than planned.
 * What has waited past its limit is not begun with ({@link Holds}). Work for a diet on a thing that
 * carries what the diet goes without is not taken ({@link Kit}).
 */
public final class Ticking {

  /** What uses the kit of a task. */
  static final Set<Tick.Kind> USES =
      EnumSet.of(Tick.Kind.START, Tick.Kind.WEIGHED, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  /**
   * A tick as entered; the moment comes here.
   *
   * @param id made by the device, so that a later one can take it back before it was sent; when it
   *     made none, one is made here
   * @param said when it was done, for what is entered later; empty: now
   * @param sure whether they have been told what speaks against it ({@link TickDoubts}), and it is
   *     so
   */
  public record Entry(
      Optional<UUID> id,
      String task,
      Tick.Kind kind,
      Optional<String> line,
      Optional<Amount> amount,
      Optional<Integer> minutes,
      Optional<String> note,
      String cook,
      Optional<UUID> undoes,
      TickStore.Origin origin,
      Optional<Said> said,
      boolean sure) {

    /** One that is entered as it is done, and sets no timer. */
    public Entry(
        Optional<UUID> id,
        String task,
        Tick.Kind kind,
        Optional<String> line,
        Optional<Amount> amount,
        Optional<String> note,
        String cook,
        Optional<UUID> undoes,
        TickStore.Origin origin) {
      this(
          id,
          task,
          kind,
          line,
          amount,
          Optional.empty(),
          note,
          cook,
          undoes,
          origin,
          Optional.empty(),
          false);
    }

    /** The same, done at another time than now. */
    public Entry saying(Said when) {
      return new Entry(
          id,
          task,
          kind,
          line,
          amount,
          minutes,
          note,
          cook,
          undoes,
          origin,
          Optional.of(when),
          sure);
    }

    /**
     * The tick it makes of a task.
     *
     * @param now when it was done, unless it says so
     */
    Tick tick(Task of, Instant now) {
      return new Tick(
          id.orElseGet(UUID::randomUUID),
          task,
          kind,
          line,
          kind == Tick.Kind.WEIGHED ? of.findAsked(line) : amount,
          minutes,
          note,
          cook,
          said.map(Said::at).orElse(now),
          undoes);
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Taken, Refused, Asks, NoSuchTask {}

  /**
   * It is kept, now or before.
   *
   * @param tubs codes of the tubs it filled
   * @param repeated whether it was here before
   * @param moved whether it may have filled or emptied tubs
   */
  public record Taken(TickStore.Entered entered, List<String> tubs, boolean repeated, boolean moved)
      implements Outcome {

    public Tick tick() {
      return entered.tick();
    }

    /** The number of its change. */
    public long change() {
      return entered.change();
    }
  }

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /** Something speaks against it: whoever sent it has to say that it is so. */
  public record Asks(List<Message> because) implements Outcome {}

  /** No plan in force or before it on that day has such a task. */
  public record NoSuchTask() implements Outcome {}

  private final Desk desk;
  private final Plans plans;
  private final KitchenStore kitchens = new KitchenStore();
  private final TickStore ticks = new TickStore();
  private final LotStore lots = new LotStore();
  private final Filling filling = new Filling();
  private final GateLock gates = new GateLock();
  private final TaskFinder finder;
  private final SaidTimes times;
  private final Pulling pulling = new Pulling();
  private final Kit kit;
  private final WordRules words;
  private final Unticking back;
  private final Starting starting;

  public Ticking(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
    this.finder = new TaskFinder(plans);
    this.times = new SaidTimes(desk, plans);
    this.kit = new Kit(desk, plans);
    this.words = new WordRules(plans);
    this.back = new Unticking(pulling);
    this.starting = new Starting(desk, finder, times, kit);
  }

  /** What other entries ask of tasks. */
  Starting starting() {
    return starting;
  }

  /** A task of a day that ticks are taken on, also one that a later plan has withdrawn. */
  public Optional<Task> findTask(House house, LocalDate day, String task) {
    return plans
        .known(house, day, house.stand().change())
        .flatMap(of -> of.inForce().findTask(task))
        .or(() -> desk.read(tx -> finder.find(tx, house, day, task).map(FoundTask::task)));
  }

  /** Takes a tick on a task of a day. */
  public Outcome tick(House house, LocalDate day, Entry entry) {
    plans.know(house, day);
    if (USES.contains(entry.kind())) {
      kit.know(house);
    }
    try {
      return write(house, tx -> tick(tx, house, day, entry, false));
    } catch (TickStore.AlreadyThere e) {
      // Its device has sent it before, or another has its id.
      return write(house, tx -> tick(tx, house, day, entry));
    }
  }

  private Outcome write(House house, Function<Tx, Outcome> work) {
    return desk.write(
        house,
        work,
        outcome -> news(outcome).ifPresent(one -> desk.memory().ticked(house.id(), one)),
        outcome -> news(outcome).map(one -> one.entered().change()).orElse(0L));
  }

  private static Optional<Memory.Ticked> news(Outcome outcome) {
    return outcome instanceof Taken taken && !taken.repeated()
        ? Optional.of(new Memory.Ticked(taken.entered(), taken.moved()))
        : Optional.empty();
  }

  /** As {@link #tick(House, LocalDate, Entry)}, as part of something more. */
  Outcome tick(Tx tx, House house, LocalDate day, Entry entry) {
    return tick(tx, house, day, entry, true);
  }

  /**
   * Takes the number of its change first, which locks the kitchen, and gives it back when nothing
   * is kept.
   *
   * @param lookFirst whether it is looked for before it is judged; else only when it is not kept,
   *     because a tick that is sent again is rare, and the table's keys refuse it
   */
  private Outcome tick(Tx tx, House house, LocalDate day, Entry entry, boolean lookFirst) {
    KitchenStore.Stand stand = kitchens.take(tx, house.id());
    Outcome outcome =
        (lookFirst ? findThere(tx, house, entry) : Optional.<Outcome>empty())
            .orElseGet(() -> judge(tx, house, stand, day, entry));
    if (news(outcome).isPresent()) {
      return outcome;
    }
    kitchens.giveBack(tx, stand);
    return lookFirst ? outcome : findThere(tx, house, entry).orElse(outcome);
  }

  /** What is said of one that was sent before, or whose id another has. */
  private Optional<Outcome> findThere(Tx tx, House house, Entry entry) {
    TickStore.Origin origin = entry.origin();
    Optional<Outcome> repeated =
        ticks
            .find(tx, house.id(), origin.device(), origin.sequence())
            .map(before -> new Taken(before, tubs(tx, house, before.tick()), true, true));
    return repeated.or(
        () ->
            entry
                .id()
                .filter(id -> ticks.has(tx, house.id(), id))
                .map(id -> new Refused(Message.of("tick.refused.id-taken", id))));
  }

  private Outcome judge(Tx tx, House house, KitchenStore.Stand stand, LocalDate day, Entry entry) {
    Optional<KnownDay> known = plans.known(house, day, stand.change());
    Optional<FoundTask> found = finder.find(tx, house, day, entry.task(), known);
    if (found.isEmpty()) {
      return new NoSuchTask();
    }
    Tick tick = entry.tick(found.get().task(), desk.now());
    History said = new History(tx, house, known);
    List<Tick> history = said.of(entry.task());
    Optional<Outcome> timed =
        entry.said().flatMap(of -> times.judge(tx, house, found.get(), tick, of));
    if (timed.isPresent()) {
      return timed.get();
    }
    Optional<Message> held = held(tx, house, found.get(), tick, said);
    if (held.isPresent()) {
      return new Refused(held.get());
    }
    if (USES.contains(entry.kind())) {
      Optional<Message> mix = kit.findMix(tx, house, stand.change(), found.get(), tick.at());
      if (mix.isPresent()) {
        return new Refused(mix.get());
      }
    }
    return TaskProgress.tick(history, tick)
        .<Outcome>fold(
            progress ->
                TickDoubts.asks(house, found.get(), entry, said, desk.now())
                    .orElseGet(() -> keep(tx, house, stand, found.get(), entry, tick, said)),
            progress -> new NoSuchTask(),
            Refused::new);
  }

  /** What holds a tick back: a gate, a freezer, a limit that is past, or a word that makes none. */
  private Optional<Message> held(Tx tx, House house, FoundTask found, Tick tick, History said) {
    Task task = found.task();
    return said.lost(found, tick.kind())
        .or(() -> gates.refuses(tx, house, task, tick.kind()))
        .or(() -> pulling.refuses(tx, house, task, tick.kind(), tick.at()))
        .or(() -> said.overdue(found, tick))
        .or(() -> said.hidden(found, tick))
        .or(() -> words.refuses(tx, house, found, tick))
        .or(() -> tooMuch(task, tick))
        .or(() -> noLine(tick));
  }

  /** What is weighed has what was asked for: that of another task, or of none, has not. */
  private static Optional<Message> noLine(Tick tick) {
    return tick.kind() == Tick.Kind.WEIGHED && tick.amount().isEmpty()
        ? Optional.of(Message.of("tick.refused.no-line", tick.line().orElse("")))
        : Optional.empty();
  }

  private static Optional<Message> tooMuch(Task task, Tick tick) {
    boolean amounts = tick.kind() == Tick.Kind.DONE || tick.kind() == Tick.Kind.PART_DONE;
    return tick.amount()
        .filter(amount -> amounts && !task.canGive(amount))
        .map(amount -> Message.of("tick.refused.amount"));
  }

  private Outcome keep(
      Tx tx,
      House house,
      KitchenStore.Stand stand,
      FoundTask found,
      Entry entry,
      Tick tick,
      History said) {
    Optional<Message> because =
        switch (tick.kind()) {
          case UNDO -> back.refuses(tx, house, found, tick);
          case FAILED -> filling.findCombined(tx, house, found.task());
          default -> Optional.empty();
        };
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    TaskProgress before = said.progress(tick.task());
    long change = stand.change() + 1;
    if (Unplanned.isFact(found.task(), tick, said.of(tick.task()))) {
      kitchens.makeFact(tx, house.id(), change);
    }
    TickStore.Entered entered = times.entered(found, entry, tick, change);
    ticks.add(tx, house.id(), entered);
    if (tick.kind().isWord()) {
      return new Taken(entered, List.of(), false, false);
    }
    if (found.task().kind() == Task.Kind.THAW && tick.kind() != Tick.Kind.UNDO) {
      if (pulling.move(tx, house, found.task(), tick, change)) {
        kitchens.makeFact(tx, house.id(), change);
      }
      return new Taken(entered, List.of(), false, true);
    }
    switch (tick.kind()) {
      case DONE -> {
        if (before.dones().isEmpty()) {
          InForce inForce = plans.inForce(tx, house, found.plan());
          CountedSince counted = CountedSince.of(tx, house, entry.said());
          filling.done(tx, house, inForce, found.task(), tick, counted, change);
        }
      }
      case FAILED -> {
        if (before.state() != TaskState.FAILED) {
          InForce inForce = plans.inForce(tx, house, found.plan());
          CountedSince counted = CountedSince.of(tx, house, entry.said());
          filling.failed(tx, house, inForce, found.task(), before, tick, counted, change);
        }
      }
      case UNDO -> back.move(tx, house, tick, change);
      case START, WEIGHED, PART_DONE, PROBLEM, SOLVED -> {}
      case NOTE, CALLED, ANSWERED, TIMED, LATER, HEARD, TASTED -> {}
    }
    if (tick.kind().movesTubs()
        && lots.listOfTick(tx, house.id(), tick.id()).stream()
            .anyMatch(one -> one.kind() == Movement.Kind.DIPPED)) {
      // What another event kept is short now, or there again.
      kitchens.makeFact(tx, house.id(), change);
    }
    return new Taken(entered, tubs(tx, house, tick), false, tick.kind().movesTubs());
  }

  private List<String> tubs(Tx tx, House house, Tick tick) {
    return tick.kind() == Tick.Kind.DONE
        ? lots.listOfTick(tx, house.id(), tick.id()).stream()
            .filter(movement -> movement.kind() == Movement.Kind.MADE)
            .map(movement -> lots.findById(tx, house.id(), movement.lot()).lot().code())
            .toList()
        : List.of();
  }
}
