package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.measure.Message;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Takes a tick: keeps it, and moves in the ledger what it says was used and made.
 *
 * <p>Rules. A tick that its device has sent before changes nothing and gets the same answer. One
 * that the table of states refuses is not kept, and whoever sent it is told why. Done fills tubs
 * and takes what went in out of others; undoing it takes both back, unless a tub it filled has been
 * used meanwhile.
 */
public final class Ticking {

  /**
   * A tick as entered; the moment comes here.
   *
   * @param id made by whoever enters it, so that a later one can take it back before it was sent
   */
  public record Entry(
      UUID id,
      String task,
      Tick.Kind kind,
      Optional<String> line,
      Optional<halfgram.measure.Amount> amount,
      Optional<String> note,
      String cook,
      Optional<UUID> undoes,
      TickStore.Origin origin) {}

  /** What became of it. */
  public sealed interface Outcome permits Taken, Refused, NoSuchTask {}

  /**
   * It is kept, now or before.
   *
   * @param tubs codes of the tubs it filled
   * @param repeated whether it was here before
   */
  public record Taken(Tick tick, long change, List<String> tubs, boolean repeated)
      implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /** No plan in force or before it on that day has such a task. */
  public record NoSuchTask() implements Outcome {}

  private final Desk desk;
  private final Plans plans;
  private final KitchenStore kitchens = new KitchenStore();
  private final TickStore ticks = new TickStore();
  private final PlanStore planStore = new PlanStore();
  private final LotStore lots = new LotStore();
  private final Filling filling = new Filling();

  public Ticking(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** A task of a day that ticks are taken on, also one that a later plan has withdrawn. */
  public Optional<Task> findTask(House house, LocalDate day, String task) {
    return desk.read(tx -> find(tx, house, day, task).map(Found::task));
  }

  /** Codes of the tubs that a task filled and that have something in them. */
  public List<String> listTubs(House house, String task) {
    return desk.read(
        tx ->
            lots.listOfTask(tx, house.id(), task).stream()
                .filter(tub -> tub.lot().left().isPositive())
                .map(tub -> tub.lot().code())
                .toList());
  }

  /** Takes a tick on a task of a day. */
  public Outcome tick(House house, LocalDate day, Entry entry) {
    return desk.write(
        house,
        tx -> tick(tx, house, day, entry),
        outcome -> outcome instanceof Taken taken && !taken.repeated() ? taken.change() : 0);
  }

  private Outcome tick(Tx tx, House house, LocalDate day, Entry entry) {
    kitchens.lock(tx, house.id());
    TickStore.Origin origin = entry.origin();
    Optional<TickStore.Entered> before =
        ticks.find(tx, house.id(), origin.device(), origin.sequence());
    if (before.isPresent()) {
      Tick tick = before.get().tick();
      return new Taken(tick, before.get().change(), tubs(tx, house, tick), true);
    }
    if (ticks.has(tx, house.id(), entry.id())) {
      return new Refused(Message.of("tick.refused.id-taken", entry.id()));
    }
    Optional<Found> found = find(tx, house, day, entry.task());
    if (found.isEmpty()) {
      return new NoSuchTask();
    }
    Instant now = desk.now();
    Tick tick =
        new Tick(
            entry.id(),
            entry.task(),
            entry.kind(),
            entry.line(),
            entry.amount(),
            entry.note(),
            entry.cook(),
            now,
            entry.undoes());
    List<Tick> history = ticks.listOfTask(tx, house.id(), entry.task());
    return TaskProgress.tick(history, tick)
        .<Outcome>fold(
            progress -> keep(tx, house, found.get(), entry, tick, history),
            progress -> new NoSuchTask(),
            Refused::new);
  }

  /** A task, in the plan in force or, when that has withdrawn it, in the last that had it. */
  private record Found(PlanStore.Accepted plan, Task task) {}

  private Optional<Found> find(Tx tx, House house, LocalDate day, String task) {
    Optional<Found> inForce =
        planStore.findInForce(tx, house.id(), day).flatMap(plan -> find(tx, house, plan, task));
    if (inForce.isPresent()) {
      return inForce;
    }
    List<PlanStore.Accepted> ofDay = planStore.list(tx, house.id(), day);
    for (int i = ofDay.size() - 2; i >= 0; i--) {
      Optional<Found> found = find(tx, house, ofDay.get(i), task);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private Optional<Found> find(Tx tx, House house, PlanStore.Accepted plan, String task) {
    return plans.computed(tx, house, plan).sheet().tasks().stream()
        .filter(one -> one.id().equals(task))
        .findFirst()
        .map(one -> new Found(plan, one));
  }

  private Outcome keep(
      Tx tx, House house, Found found, Entry entry, Tick tick, List<Tick> history) {
    if (tick.kind() == Tick.Kind.UNDO) {
      Optional<Message> because = undo(tx, house, tick);
      if (because.isPresent()) {
        return new Refused(because.get());
      }
    }
    long change = kitchens.next(tx, house.id());
    ticks.add(
        tx, house.id(), new TickStore.Entered(tick, found.plan().id(), entry.origin(), change));
    boolean first = TaskProgress.fold(history).dones().isEmpty();
    if (tick.kind() == Tick.Kind.DONE && first) {
      filling.done(tx, house, plans.inForce(tx, house, found.plan()), found.task(), tick, change);
    }
    if (tick.kind() == Tick.Kind.UNDO) {
      back(tx, house, tick, change);
    }
    return new Taken(tick, change, tubs(tx, house, tick), false);
  }

  /** Why a tick cannot be taken back: a tub it filled has been used. */
  private Optional<Message> undo(Tx tx, House house, Tick undo) {
    UUID undone = undo.undoes().orElseThrow();
    for (Movement movement : lots.listOfTick(tx, house.id(), undone)) {
      if (movement.kind() == Movement.Kind.MADE) {
        boolean used =
            lots.listOf(tx, house.id(), movement.lot()).stream()
                .anyMatch(other -> !other.tick().equals(Optional.of(undone)));
        if (used) {
          String code = lots.findById(tx, house.id(), movement.lot()).lot().code();
          return Optional.of(Message.of("tick.refused.tub-used", code));
        }
      }
    }
    return Optional.empty();
  }

  /** Takes back what a tick moved. */
  private void back(Tx tx, House house, Tick undo, long change) {
    for (Movement movement : lots.listOfTick(tx, house.id(), undo.undoes().orElseThrow())) {
      lots.move(
          tx,
          house.id(),
          new Movement(
              movement.lot(),
              Movement.Kind.UNDONE,
              movement.amount().times(-1),
              Optional.empty(),
              Optional.empty(),
              Optional.empty(),
              undo.cook(),
              undo.at(),
              Optional.of(undo.id())),
          change);
    }
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
