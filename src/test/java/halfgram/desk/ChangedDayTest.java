package halfgram.desk;

import halfgram.testkit.Seeds;
import halfgram.testkit.Site;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Whatever the office changes while hands work, nothing changes that nobody has changed. */
class ChangedDayTest {
  private static final int CHANGES = 8;

  @Test
  void whatIsShownIsWhatIsAcceptedAndPlannedAgainIsTheSame() {
    Seeds.over(1, seed -> play(8 + seed));
  }

  @Test
  @Tag("long")
  void whatIsShownIsWhatIsAcceptedOnManyDays() {
    Seeds.over(40, seed -> play(100 + seed));
  }

  private static void play(long seed) {
    try (Site site = Site.demo()) {
      new ChangedDay(site, seed).play(CHANGES);
    }
  }
}
