package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.testkit.Seeds;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Laws of what a service lacks, and of the choices that are offered, tried on random books. */
class StretchLawsTest {
  private static final int SHORT = 100;

  @Test
  void noChoiceSpendsMoreThanIsThereAndNoneWastesAPlate() {
    long[] seen = new long[3];
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          PrepSheet sheet = later(planned, seed);
          for (Stretch stretch : Stretch.of(sheet)) {
            assertThat(stretch.lacking().isPositive()).isTrue();
            assertThat(stretch.late()).isPositive();
            Amount used = used(stretch);
            assertThat(stretch.lacking().plus(stretch.there()).minus(used).number().abs())
                .isLessThanOrEqualTo(Planned.MICROGRAM);
            long pieces = 0;
            for (Stretch.Fewer of : stretch.fewer()) {
              seen[0]++;
              pieces += of.full() * of.from() + (of.plates() - of.full()) * (of.from() - 1);
              assertThat(of.full()).isBetween(0, of.plates());
            }
            Amount grams = Amount.zero(used.dimension());
            for (Stretch.Less of : stretch.less()) {
              seen[1]++;
              grams = grams.plus(of.to().times(of.plates()));
              assertThat(of.to().compareTo(of.from())).isLessThanOrEqualTo(0);
            }
            assertThat(pieces).isLessThanOrEqualTo(stretch.there().number().longValue());
            assertThat(grams.minus(stretch.there()).number())
                .isLessThanOrEqualTo(Planned.MICROGRAM);
            for (Stretch.Other of : stretch.others()) {
              seen[2]++;
              assertThat(of.plates()).isPositive();
              assertThat(of.instead()).isNotEqualTo(of.dish());
            }
          }
        });
    assertThat(seen[0]).as("fewer pieces offered").isPositive();
    assertThat(seen[1]).as("smaller amounts offered").isPositive();
    assertThat(seen[2]).as("other dishes offered").isPositive();
  }

  @Test
  void nothingIsLackingWhileEverythingCanStillStart() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          Instant asOf = planned.request().asOf();
          boolean late =
              planned.sheet().makes().stream()
                  .anyMatch(make -> make.timeline().start().isBefore(asOf));
          if (!late) {
            assertThat(Stretch.of(planned.sheet())).isEmpty();
          }
        });
  }

  /** The same book planned some hours into the first day, with nothing begun. */
  private static PrepSheet later(Planned planned, long seed) {
    PlanRequest request = planned.request();
    Instant asOf = request.asOf().plus(Duration.ofHours(8 + Math.floorMod(seed, 6)));
    return Planning.plan(
        planned.book(),
        new PlanRequest(request.from(), request.days(), asOf),
        List.of(),
        Because.NOT_ASKED);
  }

  private static Amount used(Stretch stretch) {
    Amount sum = Amount.zero(stretch.there().dimension());
    for (ServiceRun.Use use : stretch.service().uses()) {
      boolean same =
          use.version().formula().equals(stretch.version().formula())
              && use.output() == stretch.output();
      sum = same ? sum.plus(use.amount()) : sum;
    }
    return sum;
  }
}
