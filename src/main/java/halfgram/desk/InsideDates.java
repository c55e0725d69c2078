package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Line;
import halfgram.formula.SafetyDates;
import halfgram.lot.LotStore;
import halfgram.lot.Tub;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.GateStore;
import halfgram.prep.Task;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * Until when what really went into a batch is safe.
 *
 * <p>Rules. The tubs count that were used, whatever the plan thought would go in, and those of what
 * was added at a gate. Of each it is its date, when that is one of safety by its own hold or by
 * anything in it ({@link SafetyDates}), and nothing cooks it through afterwards.
 */
final class InsideDates {
  private final LotStore lots = new LotStore();
  private final GateStore gates = new GateStore();

  /**
   * The earliest of these dates; {@link Instant#MAX} when there is none.
   *
   * @param used tubs that are used now
   */
  Instant earliest(Tx tx, House house, Task task, List<Tub> used) {
    Formulary formulary = house.book().formulary();
    SafetyDates dates = new SafetyDates(formulary);
    Instant earliest = Instant.MAX;
    for (Tub tub : raw(tx, house, task, used)) {
      FormulaVersion version = formulary.get(tub.lot().component());
      boolean binds = dates.binds(version, version.outputIndex(tub.lot().component().output()));
      if (binds && tub.lot().useBy().isBefore(earliest)) {
        earliest = tub.lot().useBy();
      }
    }
    return earliest;
  }

  /** The tubs of what is not cooked through. */
  private List<Tub> raw(Tx tx, House house, Task task, List<Tub> used) {
    List<Tub> raw = new ArrayList<>();
    List<Line> lines =
        task.version().lines().stream()
            .filter(line -> line.item().component().isPresent())
            .filter(line -> !SafetyDates.renewed(task.version(), line))
            .toList();
    if (!lines.isEmpty()) {
      List<Tub> all = new ArrayList<>(used);
      all.addAll(lots.listUsedByTasks(tx, house.id(), task.make().id() + "/"));
      all.stream()
          .filter(tub -> lines.stream().anyMatch(line -> isOf(tub, line)))
          .forEach(raw::add);
    }
    for (GateLock.At at : GateLock.list(task.make())) {
      if (!SafetyDates.renewed(task.version(), at.step().code())) {
        raw.addAll(added(tx, house, at));
      }
    }
    return raw;
  }

  private static boolean isOf(Tub tub, Line line) {
    String formula = tub.lot().component().formula();
    return line.item().component().filter(ref -> ref.formula().equals(formula)).isPresent();
  }

  private List<Tub> added(Tx tx, House house, GateLock.At at) {
    return GateProgress.live(gates.listOfTask(tx, house.id(), at.task())).stream()
        .filter(entry -> entry.kind() == GateEntry.Kind.ADJUST)
        .flatMap(entry -> gates.findById(tx, house.id(), entry.id()).stream())
        .flatMap(entered -> lots.listOfChange(tx, house.id(), entered.change()).stream())
        .map(row -> lots.findById(tx, house.id(), row.lot()))
        .toList();
  }
}
