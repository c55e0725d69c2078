package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.prep.KitchenBook;
import halfgram.testkit.Seeds;
import halfgram.testkit.Site;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Whatever the office changes while hands work, nothing changes that nobody has changed. */
class ChangedDayTest {
  private static final int CHANGES = 8;

  @Test
  void whatIsShownIsWhatIsAcceptedAndPlannedAgainIsTheSame() {
    Seeds.over(1, seed -> play(9 + seed));
  }

  @Test
  @Tag("long")
  void whatIsShownIsWhatIsAcceptedOnManyDays() {
    Seeds.over(40, seed -> play(100 + seed));
  }

  @Test
  void whatACountedTubGaveIsNotTakenOnceMoreWhenTheServiceIsClosed() {
    try (Site site = Site.demo()) {
      Kitchenful at = new Kitchenful(site);
      at.inForce();
      site.setClock(Site.at("13:13"));
      at.done("stock/t-1202-oil/count", "{'amount':'55 g','cook':'ines','sure':true}");
      site.setClock(Site.at("15:00"));
      at.done("slip/naming-day", "{'covers':50}");
      Plans.Proposal shown = site.wiring().plans().propose(site.house(), at.inForce());
      at.accept();
      assertThat(oil(at.inForce().book())).isEqualTo(oil(shown.book()));
    }
  }

  /** What is left of the oil by tub. */
  private static Map<String, Amount> oil(KitchenBook book) {
    return book.lots().stream()
        .filter(lot -> lot.component().formula().equals("dill-oil"))
        .collect(Collectors.toMap(Lot::code, lot -> lot.left().rounded(Rounding.TO_MICROGRAM)));
  }

  private static void play(long seed) {
    try (Site site = Site.demo()) {
      new ChangedDay(site, seed).play(CHANGES);
    }
  }
}
