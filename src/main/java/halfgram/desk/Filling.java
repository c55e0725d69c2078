package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.LedgerStore;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.prep.KitchenBook;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * What a task moves in the ledger when it is done or failed: components out of tubs, what was made
 * into new ones, and what was lost out of those.
 *
 * <p>Rules. What went in is taken as planned ({@link Taking}). What was made is what the cook said,
 * else as planned, each output in the same proportion, in full containers and a rest. Of a tub that
 * was counted after what is entered now, nothing is taken again ({@link CountedSince}). A new tub's
 * date is counted from when it was really ready, in parts as {@link TaskProgress#waitsSince} says,
 * and never runs past the safety date of what went in ({@link InsideDates}).
 */
final class Filling {
  private final LotStore lots = new LotStore();
  private final LedgerStore ledger = new LedgerStore();
  private final Posting posting = new Posting();
  private final InsideDates inside = new InsideDates();

  void done(
      Tx tx,
      House house,
      InForce inForce,
      Task task,
      Tick tick,
      CountedSince counted,
      long change) {
    List<Tub> used = use(tx, house, inForce, task, tick, counted, change);
    if (!task.stored().isEmpty()) {
      Instant cap = inside.earliest(tx, house, task, used);
      Contains carried = carried(tx, house, inForce, task, used);
      fill(tx, house, inForce, task, tick, change, cap, carried);
    }
  }

  /** What a make carries: by the plan it was made from, and by the tubs that went in. */
  private Contains carried(Tx tx, House house, InForce inForce, Task task, List<Tub> used) {
    KitchenBook book = inForce.book();
    Contains carried =
        new AllergenTrace(book.formulary(), book::ingredient)
            .of(task.version())
            .contains()
            .and(new Contains(task.allergens(), Contains.NONE.tags()));
    List<Tub> all = new ArrayList<>(used);
    all.addAll(ledger.listUsedBy(tx, house.id(), task.make().id()));
    for (Tub tub : all) {
      carried = carried.and(tub.lot().known());
    }
    return carried;
  }

  /**
   * Throws away what a make has come to: what is left in the tubs it filled, and what went into the
   * task that was being done, which counts as used from the moment somebody was on it.
   *
   * @param before what the task had come to
   */
  void failed(
      Tx tx,
      House house,
      InForce inForce,
      Task task,
      TaskProgress before,
      Tick tick,
      CountedSince counted,
      long change) {
    if (before.dones().isEmpty() && before.beneath() != TaskState.TO_DO) {
      use(tx, house, inForce, task, tick, counted, change);
    }
    for (Tub tub : lots.listOfTasks(tx, house.id(), task.make().id() + "/")) {
      Amount left = tub.lot().left();
      if (left.isPositive()) {
        Movement binned = movement(tub, Movement.Kind.BINNED, left.times(-1), tick);
        posting.post(tx, house, tub, binned, task.make().event(), change);
      }
    }
  }

  /** Why a batch cannot fail as it stands: some of it is in a tub with others. */
  Optional<Message> findCombined(Tx tx, House house, Task task) {
    for (Tub tub : lots.listOfTasks(tx, house.id(), task.make().id() + "/")) {
      List<Movement> rows = lots.listOf(tx, house.id(), tub.id());
      Optional<String> into =
          TakingBack.isCombinedSince(rows, 0)
              ? rows.stream()
                  .filter(row -> row.kind() == Movement.Kind.COMBINED)
                  .flatMap(row -> row.reason().stream())
                  .reduce((one, other) -> other)
              : Optional.empty();
      boolean there =
          into.flatMap(code -> lots.find(tx, house.id(), code))
              .filter(other -> other.lot().left().isPositive())
              .isPresent();
      if (there) {
        return Optional.of(Message.of("tick.refused.failed-combined", into.orElseThrow()));
      }
    }
    return Optional.empty();
  }

  // ---- what goes in ----

  private List<Tub> use(
      Tx tx,
      House house,
      InForce inForce,
      Task task,
      Tick tick,
      CountedSince counted,
      long change) {
    List<Tub> touched = new ArrayList<>();
    for (WeighGroup group : task.weigh()) {
      for (WeighLine line : group.lines()) {
        Optional<ComponentRef> ref = line.line().item().component();
        if (ref.isPresent()) {
          touched.addAll(use(tx, house, inForce, task, line, ref.get(), tick, counted, change));
        }
      }
    }
    return touched;
  }

  private List<Tub> use(
      Tx tx,
      House house,
      InForce inForce,
      Task task,
      WeighLine line,
      ComponentRef ref,
      Tick tick,
      CountedSince counted,
      long change) {
    FormulaVersion version = inForce.book().formulary().get(ref);
    Output output = version.outputs().get(version.outputIndex(ref.output()));
    Amount wanted = output.inUnit(task.make().scaled().setOut(line.line()));
    Map<String, Amount> planned = new HashMap<>();
    line.tubs().forEach(draw -> planned.merge(draw.lot().code(), draw.amount(), Amount::plus));
    boolean first = version.outputs().get(0).equals(output);
    List<Tub> there = lots.listOfOutput(tx, house.id(), version.formula(), output.code(), first);
    List<Tub> tubs =
        counted.before(there, tub -> isOf(tub, version, output, first)).stream()
            .filter(tub -> tub.lot().left().dimension() == output.unit())
            .filter(tub -> !tub.lot().isFrozen())
            .toList();
    Map<Tub, Amount> taken = Taking.of(tubs, wanted, planned, task.make().event());
    Optional<String> event = task.make().event();
    taken.forEach(
        (tub, amount) -> {
          if (counted.isCounted(tub)) {
            return;
          }
          Movement used = movement(tub, Movement.Kind.USED, amount.times(-1), tick);
          posting.post(tx, house, tub, used, event, change);
        });
    return List.copyOf(taken.keySet());
  }

  private static boolean isOf(Tub tub, FormulaVersion version, Output output, boolean first) {
    ComponentRef ref = tub.lot().component();
    return ref.formula().equals(version.formula())
        && ref.output().map(output.code()::equals).orElse(first);
  }

  // ---- what comes out ----

  private void fill(
      Tx tx,
      House house,
      InForce inForce,
      Task task,
      Tick tick,
      long change,
      Instant cap,
      Contains carried) {
    Stored first = task.stored().get(0);
    Ratio part =
        tick.amount().isPresent() && first.made().isPositive()
            ? tick.amount().get().over(first.made())
            : Ratio.ONE;
    List<Filled> fills = new ArrayList<>();
    for (int i = 0; i < task.stored().size(); i++) {
      Stored stored = task.stored().get(i);
      Amount made = i == 0 ? tick.amount().orElse(first.made()) : whole(stored, part);
      amounts(stored, made).forEach(amount -> fills.add(new Filled(stored, amount)));
    }
    List<String> codes = TubCodes.next(tx, house, tick.at(), fills.size());
    for (int i = 0; i < fills.size(); i++) {
      Lot lot = lot(inForce, task, fills.get(i).stored(), tick, cap, codes.get(i)).knowing(carried);
      Tub tub = new Tub(UUID.randomUUID(), lot, Optional.of(task.id()), change, false);
      lots.add(tx, house.id(), tub);
      Movement filled = movement(tub, Movement.Kind.MADE, fills.get(i).amount(), tick);
      lots.move(tx, house.id(), filled, change);
    }
  }

  /** One tub's worth of what is put away. */
  private record Filled(Stored stored, Amount amount) {}

  private static Amount whole(Stored stored, Ratio part) {
    Amount made = stored.made().times(part);
    return stored.output().isPieces() ? made.rounded(Rounding.DOWN_TO_WHOLE) : made;
  }

  /** Full containers and a rest; without a container all in one. */
  private static List<Amount> amounts(Stored stored, Amount made) {
    if (!made.isPositive()) {
      return List.of();
    }
    List<Amount> fills = Stored.fills(stored.output(), made);
    return fills.isEmpty() ? List.of(made) : fills;
  }

  private static Lot lot(
      InForce inForce, Task task, Stored stored, Tick tick, Instant cap, String code) {
    FormulaVersion version = task.version();
    Output output = stored.output();
    Optional<String> named =
        version.outputs().size() == 1 ? Optional.empty() : Optional.of(output.code());
    return new Lot(
        code,
        new ComponentRef(version.formula(), named, OptionalInt.of(version.number())),
        Amount.zero(output.unit()),
        tick.at(),
        useBy(inForce, task, stored, tick, cap),
        output.hold().place(),
        output.container(),
        List.of());
  }

  /** The end of the hold from when it was really ready, or an inherited date before that. */
  private static Instant useBy(InForce inForce, Task task, Stored stored, Tick tick, Instant cap) {
    BusinessDay clock = inForce.book().kitchen().clock();
    Output.Hold hold = stored.output().hold();
    int index = task.version().outputs().indexOf(stored.output());
    Instant planned = task.make().useBy(index);
    Instant start = holdStart(inForce, task, hold, tick);
    Instant own =
        hold.days().isPresent()
            ? hold.end(start, step -> ended(inForce, task, step, tick), clock)
            : hold.earlier(
                planned.plus(Duration.between(plannedStart(task, hold), start)),
                step -> ended(inForce, task, step, tick),
                clock);
    Instant useBy = own.isBefore(cap) ? own : cap;
    if (stored.useByOf().isPresent() && stored.useBy().isBefore(useBy)) {
      useBy = stored.useBy();
    }
    return useBy.isBefore(tick.at()) ? tick.at() : useBy;
  }

  /** When its clock really began: at the end of the step it counts from, else of this one. */
  private static Instant holdStart(InForce inForce, Task task, Output.Hold hold, Tick tick) {
    return hold.from()
        .map(step -> ended(inForce, task, step, tick))
        .orElseGet(() -> ended(inForce, task, tick));
  }

  /** When a step of the make really ended; now, where that is not known. */
  private static Instant ended(InForce inForce, Task task, String step, Tick tick) {
    return inForce
        .findTask(task.make().id() + "/" + step)
        .map(of -> ended(inForce, of, tick))
        .orElse(tick.at());
  }

  private static Instant ended(InForce inForce, Task task, Tick tick) {
    return inForce
        .progress(task)
        .waitsSince(task)
        .filter(at -> at.isBefore(tick.at()))
        .orElse(tick.at());
  }

  private static Instant plannedStart(Task task, Output.Hold hold) {
    return hold.from()
        .map(step -> task.version().stepIndex(step))
        .map(index -> task.make().timeline().steps().get(index).end())
        .orElse(task.end());
  }

  // ---- both ----

  private static Movement movement(Tub tub, Movement.Kind kind, Amount amount, Tick tick) {
    return new Movement(
        tub.id(),
        kind,
        amount.rounded(Rounding.TO_MICROGRAM),
        Optional.empty(),
        Optional.empty(),
        tick.note(),
        tick.cook(),
        tick.at(),
        Optional.of(tick.id()));
  }

  /** Month and day: "1205-", and then a number, short enough to be called across a kitchen. */
  static String prefix(House house, Instant at) {
    LocalDate day = house.day(at);
    return String.format(
        java.util.Locale.ROOT, "%02d%02d-", day.getMonthValue(), day.getDayOfMonth());
  }
}
