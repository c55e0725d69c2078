package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Scaled;
import halfgram.formula.Scaling;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Ratio;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** Laws of one formula at a size, tried on the formulas of random books. */
class ScalingLawsTest {
  private static final int SHORT = 120;

  @Test
  void scalingByOutputTwiceIsScalingOnce() {
    overFormulas(
        (scaling, chance) -> {
          Amount wanted = chance.wanted();
          Scaled once = scaling.byOutput(0, wanted.times(chance.a).times(chance.b));
          assertNear(once, scaling.byOutput(0, wanted.times(chance.ab())));
          assertNear(once.times(chance.a).times(chance.b), once.times(chance.ab()));
          if (!chance.version.outputs().get(0).isPieces()) {
            Scaled first = scaling.byOutput(0, wanted.times(chance.a));
            assertNear(once, scaling.byOutput(0, first.output(0).times(chance.b)));
          }
        });
  }

  @Test
  void scalingByCoversTwiceIsScalingOnce() {
    overFormulas(
        (scaling, chance) -> {
          Amount each = chance.wanted();
          long covers = chance.whole;
          assertNear(
              scaling.byCovers(0, covers * 6, each),
              scaling.byCovers(0, covers * 2, each.times(3)));
          assertNear(
              scaling.byCovers(0, covers * 6, each), scaling.byOutput(0, each.times(covers * 6)));
        });
  }

  @Test
  void scalingByPiecesTwiceIsScalingOnce() {
    overFormulas(
        (scaling, chance) -> {
          if (chance.version.outputs().get(0).isPieces()) {
            Amount twice = Amount.pieces(chance.whole).times(2).times(3);
            assertNear(scaling.byPieces(0, chance.whole * 6L), scaling.byOutput(0, twice));
            Scaled one = scaling.byPieces(0, chance.whole);
            assertNear(one.times(chance.a).times(chance.b), one.times(chance.ab()));
            assertThat(one.output(0)).isGreaterThanOrEqualTo(Amount.pieces(chance.whole));
          }
        });
  }

  @Test
  void scalingByBatchesTwiceIsScalingOnce() {
    overFormulas(
        (scaling, chance) ->
            assertNear(
                scaling.byBatches(chance.a).orElseThrow().times(chance.b),
                scaling.byBatches(chance.ab()).orElseThrow()));
  }

  @Test
  void scalingByTheScarcestTwiceIsScalingOnce() {
    overFormulas(
        (scaling, chance) -> {
          Map<String, Amount> onHand = new HashMap<>();
          Map<String, Amount> twice = new HashMap<>();
          for (Line line : chance.version.lines()) {
            Amount there = Amount.grams(100L + line.code().hashCode() % 50).times(chance.a);
            onHand.put(line.item().code(), there);
            twice.put(line.item().code(), there.times(chance.b));
          }
          Scaled scaled = scaling.byScarcest(onHand).orElseThrow();
          assertNear(scaled.times(chance.b), scaling.byScarcest(twice).orElseThrow());
          assertNoMoreThanOnHand(scaled, onHand);
        });
  }

  private static void assertNoMoreThanOnHand(Scaled scaled, Map<String, Amount> onHand) {
    Map<String, Amount> used = new HashMap<>();
    for (Line line : scaled.version().lines()) {
      used.merge(line.item().code(), scaled.setOut(line), Amount::plus);
    }
    used.forEach(
        (code, amount) ->
            assertThat(amount.minus(onHand.get(code)).number())
                .as(code)
                .isLessThanOrEqualTo(Planned.MICROGRAM));
  }

  @Test
  void theMassBalanceClosesAtEveryStep() {
    Seeds.over(
        SHORT,
        seed -> Planned.of(seed).sheet().makes().forEach(ScalingLawsTest::assertBalanceCloses));
  }

  /** In = out + lost at every step; what goes in is all lines and what came before. */
  private static void assertBalanceCloses(Make make) {
    List<Step> steps = make.version().steps();
    BigDecimal[] in = new BigDecimal[steps.size()];
    BigDecimal put = BigDecimal.ZERO;
    for (int i = 0; i < in.length; i++) {
      in[i] = BigDecimal.ZERO;
    }
    for (Line line : make.version().lines()) {
      BigDecimal mass = make.scaled().counted(line).number();
      if (line.weighed() == Line.Weighed.PURCHASED) {
        mass = mass.multiply(line.trim().number(), Exact.DIGITS);
      }
      int at = make.version().stepIndex(line.step());
      in[at] = in[at].add(mass);
      put = put.add(mass);
    }
    BigDecimal lost = BigDecimal.ZERO;
    BigDecimal out = BigDecimal.ZERO;
    for (int i = 0; i < in.length; i++) {
      assertThat(make.scaled().balance().into(i, make.scaled().basis()).number().subtract(in[i]))
          .as(make.id() + " into step " + i)
          .isBetween(Planned.MICROGRAM.negate(), Planned.MICROGRAM);
      Step step = steps.get(i);
      out =
          in[i].signum() == 0
              ? BigDecimal.ZERO
              : in[i]
                  .subtract(step.residue().fixed().grams())
                  .multiply(step.residue().share().rest().number())
                  .multiply(step.yield().number());
      lost = lost.add(in[i].subtract(out));
      if (i < in.length - 1) {
        int next = next(steps, i);
        in[next] = in[next].add(out);
      }
    }
    assertThat(put.subtract(out).subtract(lost).abs()).isLessThan(Planned.MICROGRAM);
    assertThat(make.scaled().outputMass().number().subtract(out).abs())
        .as(make.id() + " comes out")
        .isLessThan(Planned.MICROGRAM);
  }

  private static int next(List<Step> steps, int from) {
    for (int i = from + 1; i < steps.size(); i++) {
      String code = steps.get(from).code();
      if (steps.get(i).after().stream().anyMatch(lag -> lag.step().equals(code))) {
        return i;
      }
    }
    return steps.size() - 1;
  }

  private static void assertNear(Scaled one, Scaled other) {
    assertThat(one.basis().minus(other.basis()).number().abs())
        .as("basis")
        .isLessThanOrEqualTo(Planned.MICROGRAM);
    assertThat(one.outputMass().minus(other.outputMass()).number().abs())
        .as("output")
        .isLessThanOrEqualTo(Planned.MICROGRAM);
  }

  /** A version and factors to scale it by. */
  private record Factors(FormulaVersion version, Ratio a, Ratio b, int whole) {
    Ratio ab() {
      return a.times(b);
    }

    Amount wanted() {
      return version.outputs().get(0).isPieces()
          ? Amount.pieces(whole)
          : Amount.grams(whole).times(Ratio.of("1.37"));
    }
  }

  private static void overFormulas(BiConsumer<Scaling, Factors> law) {
    Seeds.over(
        SHORT,
        seed -> {
          Chance chance = new Chance(seed);
          KitchenBook book = Planned.of(seed).book();
          for (Formula formula : book.formulary().list()) {
            for (FormulaVersion version : formula.versions()) {
              if (version.written().isPresent()) {
                Ratio a = chance.of(Ratio.of("3"), Ratio.of("0.7"), Ratio.ONE.dividedBy(third()));
                Ratio b = Ratio.of(chance.from(1, 40) + "." + chance.from(0, 99));
                Factors factors = new Factors(version, a, b, chance.from(1, 500));
                law.accept(book.formulary().scaling(version), factors);
              }
            }
          }
        });
  }

  private static Ratio third() {
    return Ratio.of("3");
  }
}
