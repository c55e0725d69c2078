package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.prep.Begun;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import halfgram.prep.netting.Stock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * What a plan may count on while steps are in hand.
 *
 * <p>Rules. What a step that somebody has begun takes leaves its tubs in the ledger when the step
 * is done. Until then it stands there and is promised all the same: no other work is given it, out
 * of the same tubs from which done will take it ({@link Taking}). What no tub has is taken of what
 * is still being made, since nobody has called that done: first of what the step waits for.
 *
 * @param tubs less what steps in hand will take, to the minute
 * @param begun makes that are begun, each with what of it they will take
 */
record InHand(List<Tub> tubs, List<Begun> begun) {
  InHand {
    tubs = tubs.stream().map(InHand::toTheMinute).toList();
  }

  private static Tub toTheMinute(Tub tub) {
    return new Tub(tub.id(), tub.lot().toTheMinute(), tub.task(), tub.change(), tub.assumed());
  }

  /**
   * What a plan that follows another may count on.
   *
   * @param tubs as they are when services have taken what they used
   */
  static InHand of(Tx tx, House house, InForce inForce, List<Tub> tubs, Instant asOf) {
    return less(tubs, Standing.of(tx, house, inForce, asOf), inForce);
  }

  /** Tubs and begun makes of a plan less what its steps that are begun and not done will take. */
  static InHand less(List<Tub> tubs, List<Begun> begun, InForce inForce) {
    Run run = new Run(inForce, new ArrayList<>(tubs), begun);
    Set<String> standing = begun.stream().map(of -> of.make().id()).collect(Collectors.toSet());
    for (Task task : inForce.sheet().tasks()) {
      boolean stands = standing.contains(task.make().id());
      if (stands && BegunWork.isInHand(task, inForce.progress(task))) {
        task.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .forEach(
                line -> line.line().item().component().ifPresent(ref -> run.take(task, line, ref)));
      }
    }
    run.left.removeIf(tub -> !tub.lot().left().isPositive());
    return new InHand(run.left, begun.stream().map(run::promising).toList());
  }

  /** While one step after the other takes. */
  private record Run(
      InForce inForce,
      List<Tub> left,
      List<Begun> begun,
      Map<String, SortedMap<String, Amount>> promised) {

    private Run(InForce inForce, List<Tub> left, List<Begun> begun) {
      this(inForce, left, begun, new HashMap<>());
    }

    private Begun promising(Begun of) {
      SortedMap<String, Amount> taken = promised.get(of.make().id());
      return taken == null ? of : of.promising(taken);
    }

    private void take(Task task, WeighLine line, ComponentRef ref) {
      FormulaVersion version = inForce.book().formulary().get(ref);
      Output output = version.outputs().get(version.outputIndex(ref.output()));
      Map<String, Amount> planned = new HashMap<>();
      line.tubs().forEach(draw -> planned.merge(draw.lot().code(), draw.amount(), Amount::plus));
      List<Tub> there =
          left.stream()
              .filter(tub -> isOf(tub.lot(), version, output))
              .filter(tub -> !tub.lot().isFrozen() && tub.lot().left().isPositive())
              .sorted(Comparator.comparing((Tub tub) -> tub.lot().useBy()))
              .toList();
      Optional<String> event = task.make().event();
      Amount wanted = output.inUnit(task.make().scaled().setOut(line.line()));
      Amount lacking = wanted;
      for (Map.Entry<Tub, Amount> one : Taking.of(there, wanted, planned, event).entrySet()) {
        Tub tub = one.getKey();
        // As done will book it, and as the plan keeps it.
        Lot rest = tub.lot().less(one.getValue().rounded(Rounding.TO_MICROGRAM), event);
        left.set(
            left.indexOf(tub), new Tub(tub.id(), rest, tub.task(), tub.change(), tub.assumed()));
        lacking = lacking.minus(one.getValue());
      }
      promise(task, version, output, lacking);
    }

    /** What no tub has, of what is on the way. */
    private void promise(Task task, FormulaVersion version, Output output, Amount wanted) {
      Amount lacking = wanted;
      for (Begun of :
          begun.stream().sorted(Comparator.comparing(of -> !waits(task, of))).toList()) {
        for (Stock stock : of.expected()) {
          if (isOf(stock.lot(), version, output)) {
            SortedMap<String, Amount> own =
                promised.computeIfAbsent(of.make().id(), make -> new TreeMap<>());
            Amount before = own.getOrDefault(output.code(), wanted.times(0));
            Amount more = lacking.atMost(stock.lot().left().minus(before));
            own.put(output.code(), before.plus(more));
            lacking = lacking.minus(more);
          }
        }
      }
    }

    private static boolean waits(Task task, Begun of) {
      return task.links().stream().anyMatch(link -> link.task().startsWith(of.make().id() + "/"));
    }

    private static boolean isOf(Lot lot, FormulaVersion version, Output output) {
      boolean first = version.outputs().get(0).equals(output);
      return lot.component().formula().equals(version.formula())
          && lot.component().output().map(output.code()::equals).orElse(first)
          && lot.left().dimension() == output.unit();
    }
  }
}
