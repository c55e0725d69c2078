package halfgram.desk;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.WeighLine;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Tubs as a plan may count on them while steps are in hand.
 *
 * <p>Rule. What a step that somebody has begun takes leaves its tubs in the ledger when the step is
 * done. Until then it stands there and is promised all the same: no other work is given it, out of
 * the same tubs from which done will take it ({@link Taking}).
 */
final class InHand {
  private InHand() {}

  /** Tubs less what steps that are begun and not done will take. */
  static List<Tub> less(List<Tub> tubs, InForce inForce) {
    List<Tub> left = new ArrayList<>(tubs);
    for (Task task : inForce.sheet().tasks()) {
      if (isInHand(task, inForce.progress(task))) {
        task.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .forEach(
                line ->
                    line.line()
                        .item()
                        .component()
                        .ifPresent(ref -> take(left, inForce, task, line, ref)));
      }
    }
    left.removeIf(tub -> !tub.lot().left().isPositive());
    return left;
  }

  private static boolean isInHand(Task task, TaskProgress progress) {
    boolean begun = progress.onIt().isPresent() || progress.begun().isPresent();
    return task.kind() == Task.Kind.STEP
        && begun
        && progress.dones().isEmpty()
        && progress.state() != TaskState.FAILED;
  }

  private static void take(
      List<Tub> left, InForce inForce, Task task, WeighLine line, ComponentRef ref) {
    FormulaVersion version = inForce.book().formulary().get(ref);
    Output output = version.outputs().get(version.outputIndex(ref.output()));
    Map<String, Amount> planned = new HashMap<>();
    line.tubs().forEach(draw -> planned.merge(draw.lot().code(), draw.amount(), Amount::plus));
    List<Tub> there =
        left.stream()
            .filter(tub -> isOf(tub.lot(), version, output))
            .sorted(Comparator.comparing((Tub tub) -> tub.lot().useBy()))
            .toList();
    Optional<String> event = task.make().event();
    Amount wanted = output.inUnit(task.make().scaled().setOut(line.line()));
    Taking.of(there, wanted, planned, event)
        .forEach(
            (tub, amount) ->
                left.set(
                    left.indexOf(tub),
                    new Tub(
                        tub.id(),
                        tub.lot().less(amount, event),
                        tub.task(),
                        tub.change(),
                        tub.assumed())));
  }

  private static boolean isOf(Lot lot, FormulaVersion version, Output output) {
    boolean first = version.outputs().get(0).equals(output);
    return lot.component().formula().equals(version.formula())
        && lot.component().output().map(output.code()::equals).orElse(first)
        && lot.left().dimension() == output.unit()
        && !lot.isFrozen()
        && lot.left().isPositive();
  }
}
