package halfgram.prep;

import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Scaled;
import halfgram.measure.Amount;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Stock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Needs that a batch already begun can still meet, because more can be weighed into it.
 *
 * <p>Rules. A batch takes needs whole, in their order, up to the first that is too much for it, so
 * that planning again finds the same; in time and within its hold. It may grow only while
 * everything that is weighed for it goes into one fill of each machine, as before, and no component
 * goes in at a step begun: that would have to be made for a moment that is past. Runs through a
 * bath do not grow: what they lack is dropped on top.
 *
 * <p>Source: common practice.
 *
 * @param stand the batches, grown where they took something
 * @param open what is left to make
 */
record TopUp(List<Begun> stand, List<Draw> draws, List<Need> open) {

  static TopUp of(Worked worked, List<Begun> stand, List<Need> open) {
    List<Begun> all = new ArrayList<>(stand);
    List<Draw> draws = new ArrayList<>();
    List<Need> rest = new ArrayList<>(open);
    for (int i = 0; i < all.size(); i++) {
      Begun of = all.get(i);
      if (!mayGrow(worked, of)) {
        continue;
      }
      Stock stock = of.expected().get(0);
      for (Need need : List.copyOf(rest)) {
        if (!stock.serves(need) || !isFor(of.make(), need)) {
          continue;
        }
        Optional<Make> larger = larger(worked, all.get(i).make(), need);
        if (larger.isEmpty()) {
          break;
        }
        draws.add(new Draw(stock.lot(), need, need.amount()));
        all.set(i, all.get(i).stretchedTo(larger.get()));
        rest.remove(need);
      }
    }
    return new TopUp(all, draws, rest);
  }

  /** Whether a batch that may grow would be in time for a need: then nothing need be late. */
  static boolean mayTake(Worked worked, List<Begun> stand, Need need) {
    return stand.stream()
        .filter(of -> mayGrow(worked, of) && isFor(of.make(), need))
        .anyMatch(of -> of.expected().get(0).serves(need));
  }

  private static boolean mayGrow(Worked worked, Begun of) {
    return of.stretches() && !of.over() && worked.isSingle() && !takesComponent(of);
  }

  /** What is made for one event takes on nothing for anybody else: its tubs are kept for that. */
  private static boolean isFor(Make make, Need need) {
    return make.event().isEmpty() || make.event().equals(need.event());
  }

  /** The make with one more need in it; empty when that is too much for it. */
  private static Optional<Make> larger(Worked worked, Make make, Need need) {
    Amount sum = make.scaled().output(0).plus(need.amount());
    Scaled larger = make.scaled().withBasis(worked.sized(List.of(need.with(sum))).basis());
    boolean fits =
        worked.bath.isEmpty()
            && isOneFill(make, larger)
            && worked.version.most().filter(most -> sum.compareTo(most) > 0).isEmpty();
    return fits ? Optional.of(make.larger(larger, need)) : Optional.empty();
  }

  private static boolean takesComponent(Begun of) {
    return of.make().version().lines().stream()
        .filter(line -> of.started().contains(line.step()))
        .anyMatch(line -> line.item().component().isPresent());
  }

  private static boolean isOneFill(Make make, Scaled larger) {
    FormulaVersion version = make.version();
    for (int i = 0; i < version.steps().size(); i++) {
      String step = version.steps().get(i).code();
      boolean weighed = version.lines().stream().map(Line::step).anyMatch(step::equals);
      int before = Fills.of(make.scaled(), i).count();
      if (Fills.of(larger, i).count() != before || (weighed && before > 1)) {
        return false;
      }
    }
    return true;
  }
}
