package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.ComponentRef;
import halfgram.formula.Cost;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Step;
import halfgram.ingredient.Ingredient;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.measure.Money;
import halfgram.measure.Ratio;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanStore;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Batches that failed before anything of them was in a tub.
 *
 * <p>Rules. What had gone in by the last step that was begun is lost, at the prices of its plan;
 * without every price there is none for the whole. Where nobody had begun, nothing is. How much it
 * is stands for what the batch would have given: nobody weighed it. What was in tubs is in the
 * ledger and not here.
 */
final class FailedBatches {

  /** A batch. */
  record Batch(
      Instant at,
      ComponentRef component,
      Amount planned,
      String reason,
      Money cost,
      SortedSet<String> unpriced) {}

  private final Desk desk;
  private final Plans plans;
  private final TickStore ticks = new TickStore();
  private final PlanStore store = new PlanStore();
  private final LotStore lots = new LotStore();

  FailedBatches(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** Those that failed from one moment to another, oldest first. */
  List<Batch> list(House house, Instant first, Instant last) {
    return desk.read(
        tx -> {
          List<TickStore.Entered> all = ticks.listSince(tx, house.id(), first);
          Set<Optional<UUID>> undone =
              all.stream().map(one -> one.tick().undoes()).collect(Collectors.toSet());
          List<Batch> failed = new ArrayList<>();
          Set<String> makes = new HashSet<>();
          for (TickStore.Entered entered : all) {
            Tick tick = entered.tick();
            boolean counts =
                tick.kind() == Tick.Kind.FAILED
                    && tick.at().isBefore(last)
                    && !tick.at().isBefore(first)
                    && !undone.contains(Optional.of(tick.id()));
            if (counts) {
              PlanStore.Accepted plan = store.find(tx, house.id(), entered.plan()).orElseThrow();
              Plans.Computation made = plans.computed(tx, house, plan);
              made.sheet().tasks().stream()
                  .filter(task -> task.id().equals(tick.task()))
                  // A tub that failed to thaw is in the ledger with its cost.
                  .filter(task -> task.kind() != Task.Kind.THAW)
                  .filter(task -> makes.add(task.make().id()))
                  .filter(task -> !isFilled(tx, house, task))
                  .findFirst()
                  .ifPresent(
                      task -> {
                        int steps = begun(tx, house, made.sheet(), task);
                        if (steps > 0) {
                          failed.add(batch(made.book(), task, tick, steps));
                        }
                      });
            }
          }
          return failed;
        });
  }

  /** How many steps of a task's make had come to anything: all up to the last that was begun. */
  private int begun(Tx tx, House house, PrepSheet sheet, Task failed) {
    List<Task> ofMake =
        sheet.tasks().stream().filter(task -> task.make().id().equals(failed.make().id())).toList();
    Map<String, List<Tick>> said =
        ticks.listOfTasks(tx, house.id(), ofMake.stream().map(Task::id).toList());
    int steps = 0;
    for (Task task : ofMake) {
      List<Tick> before =
          said.getOrDefault(task.id(), List.of()).stream()
              .filter(tick -> tick.kind() != Tick.Kind.FAILED)
              .toList();
      if (TaskProgress.fold(before).beneath() != TaskState.TO_DO) {
        steps = Math.max(steps, task.version().stepIndex(task.step().code()) + 1);
      }
    }
    return steps;
  }

  /** Whether anything of a make was in a tub and was not taken back. */
  private boolean isFilled(Tx tx, House house, Task task) {
    return lots.listOfTasks(tx, house.id(), task.make().id() + "/").stream()
        .map(tub -> lots.listOf(tx, house.id(), tub.id()))
        .anyMatch(FailedBatches::isFilled);
  }

  private static boolean isFilled(List<Movement> rows) {
    Set<Long> undone = new HashSet<>();
    rows.forEach(row -> row.undoes().ifPresent(undone::add));
    return rows.stream()
        .anyMatch(row -> row.kind() == Movement.Kind.MADE && !undone.contains(row.change()));
  }

  /**
   * Whether a later tick says too that the batch of one that is taken back failed.
   *
   * @param ofMake ticks of all its tasks, in the order they were entered
   */
  static boolean isFailedTwice(List<Tick> ofMake, UUID undone) {
    Set<UUID> taken = new HashSet<>();
    ofMake.forEach(tick -> tick.undoes().ifPresent(taken::add));
    List<UUID> failed =
        ofMake.stream()
            .filter(tick -> tick.kind() == Tick.Kind.FAILED && !taken.contains(tick.id()))
            .map(Tick::id)
            .toList();
    return failed.contains(undone) && !failed.get(failed.size() - 1).equals(undone);
  }

  private static Batch batch(KitchenBook book, Task task, Tick tick, int begun) {
    FormulaVersion version = task.version();
    Set<String> steps =
        version.steps().subList(0, begun).stream().map(Step::code).collect(Collectors.toSet());
    Cost cost = book.cost();
    Money sum = Money.ZERO;
    SortedSet<String> unpriced = new TreeSet<>();
    for (Line line : version.lines()) {
      if (steps.contains(line.step())) {
        Ratio trim = line.weighed() == Line.Weighed.PREPARED ? line.trim() : Ratio.ONE;
        sum = sum.plus(cost.of(line.item(), task.make().scaled().setOut(line), trim));
        unpriced.addAll(unpriced(book, cost, line));
      }
    }
    return new Batch(
        tick.at(),
        new ComponentRef(version.formula(), Optional.empty(), OptionalInt.empty()),
        task.make().scaled().output(0),
        tick.note().orElse(""),
        sum,
        unpriced);
  }

  private static SortedSet<String> unpriced(KitchenBook book, Cost cost, Line line) {
    return line.item()
        .<SortedSet<String>>fold(
            item -> {
              Ingredient ingredient = book.ingredient(item.code());
              return ingredient.perGram().complete()
                  ? new TreeSet<>()
                  : new TreeSet<>(Set.of(item.code()));
            },
            component -> cost.unpriced(book.formulary().get(component.ref())));
  }
}
