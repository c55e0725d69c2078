package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import halfgram.testkit.BookText;
import halfgram.testkit.Seeds;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Laws of batches into which more is weighed, tried on random books. */
class TopUpLawsTest {
  private static final int SHORT = 75;

  @Test
  void aBatchThatStretchesTakesWhatIsLackingOnceAndNothingIsLost() {
    long[] grown = new long[1];
    long[] again = new long[1];
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          List<Begun> begun =
              ReplanLawsTest.some(planned, seed, 2).stream().map(Began::stretching).toList();
          KitchenBook book = BookText.read(ReplanLawsTest.withMoreCovers(planned, seed));
          PrepSheet sheet = ReplanLawsTest.replan(planned, book, begun);
          ReplanLawsTest.nothingLost(book, begun, sheet);
          Map<String, Make> before = new HashMap<>();
          begun.forEach(of -> before.put(of.make().id(), of.make()));
          for (Begun of : sheet.begun()) {
            Amount was = before.get(of.make().id()).scaled().output(0);
            Amount given = drawnFrom(sheet, of);
            Amount most = of.make().scaled().output(0).atLeast(was);
            assertThat(of.make().scaled().output(0).compareTo(was)).isNotNegative();
            assertThat(of.more().isPositive()).isEqualTo(of.before().isPresent());
            if (of.before().isPresent()) {
              grown[0]++;
              assertThat(given.minus(most).number()).isLessThanOrEqualTo(Planned.MICROGRAM);
            }
          }
          // What is late is shared out anew among what can be there soonest.
          if (sheet.misfits().stream().anyMatch(one -> one.path().contains("/behind/"))) {
            return;
          }
          again[0]++;
          List<Begun> stand = sheet.begun().stream().map(of -> Began.again(sheet, of)).toList();
          PrepSheet same = ReplanLawsTest.replan(planned, book, stand);
          assertThat(sizes(same)).as("planned again").isEqualTo(sizes(sheet));
        });
    assertThat(grown[0]).as("batches that grew").isPositive();
    assertThat(again[0]).as("books planned again").isGreaterThan(SHORT / 3);
  }

  /** What every make gives, to the microgram; which tub gives it to whom may change. */
  private static Map<String, List<Amount>> sizes(PrepSheet sheet) {
    Map<String, List<Amount>> sizes = new TreeMap<>();
    for (Make make : sheet.makes()) {
      List<Amount> gives = new ArrayList<>();
      for (int i = 0; i < make.version().outputs().size(); i++) {
        gives.add(make.scaled().output(i).rounded(Rounding.TO_MICROGRAM));
      }
      sizes.put(make.id(), gives);
    }
    return sizes;
  }

  private static Amount drawnFrom(PrepSheet sheet, Begun of) {
    Amount sum = Amount.zero(of.make().version().outputs().get(0).unit());
    for (Draw draw : sheet.draws()) {
      boolean own = draw.lot().code().equals(of.make().id()) && draw.need().output() == 0;
      sum = own ? sum.plus(draw.amount()) : sum;
    }
    return sum;
  }
}
