package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.House;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What nobody has counted since it was assumed to be used up. */
class AssumedTest {

  @Test
  void whatIsAssumedToBeEmptyIsCountedWhileItIsInDateWhateverDayIsPlanned() {
    try (Site site = Site.demo()) {
      House house = site.house();
      site.wiring().plans().open(house, Site.DAY, "ines");
      site.passTime(Duration.ofHours(23));
      site.wiring().plans().open(house, Site.DAY.plusDays(1), "ines");
      List<String> toCount = emptyByAssumption(site);
      assertThat(toCount).isNotEmpty();
      site.wiring().plans().open(house, Site.DAY.plusDays(4), "ines");
      assertThat(emptyByAssumption(site)).containsAll(toCount);
      site.passTime(Duration.ofDays(30));
      site.wiring().plans().open(house, Site.DAY.plusDays(31), "ines");
      assertThat(emptyByAssumption(site)).isEmpty();
    }
  }

  private static List<String> emptyByAssumption(Site site) {
    return site.wiring().stock().listToCount(site.house()).stream()
        .filter(tub -> !tub.lot().left().isPositive())
        .map(tub -> tub.lot().code())
        .toList();
  }
}
