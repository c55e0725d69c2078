package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.Difference;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A day that is opened for the first time, at any hour. */
class OpenedFreshTest {
  private static final BigDecimal MICROGRAM = new BigDecimal("0.000001");

  @ParameterizedTest
  @ValueSource(strings = {"07:00", "12:00", "15:30", "18:40", "22:00"})
  void itsPlanIsNotOfferedAsChanged(String time) {
    try (Site site = Site.demo()) {
      site.setClock(Site.at(time));
      Plans plans = site.wiring().plans();
      InForce inForce = plans.open(site.house(), Site.DAY, "test");
      assertThat(plans.findProposal(site.house(), inForce)).isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"12:00", "15:30"})
  void madeAgainLaterItTellsNoDifferenceThatNoScaleTells(String time) {
    try (Site site = Site.demo()) {
      site.setClock(Site.at(time));
      Plans plans = site.wiring().plans();
      InForce inForce = plans.open(site.house(), Site.DAY, "test");
      Difference difference = plans.propose(site.house(), inForce).difference();
      assertThat(difference.made())
          .isNotEmpty()
          .allMatch(of -> gap(of.from(), of.to()).compareTo(MICROGRAM) >= 0);
    }
  }

  private static BigDecimal gap(Amount from, Amount to) {
    return from.number().subtract(to.number()).abs();
  }
}
