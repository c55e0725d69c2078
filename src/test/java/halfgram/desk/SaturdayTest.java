package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * A Saturday as kitchens live it: forty happenings by the clock, with what eyes must see after
 * each, played on both databases. The ledger holds after every one, nothing finished changes by a
 * plan, and the day is the same again from what was kept of it.
 */
class SaturdayTest {
  @Test
  void aSaturdayOnBothDatabases() {
    Map<String, String> embedded;
    try (Site site = Site.demo()) {
      embedded = play(site);
    }
    try (Site site = Site.demoOnPostgres()) {
      assertThat(play(site)).isEqualTo(embedded);
    }
  }

  private static Map<String, String> play(Site site) {
    Kitchenful at = new Kitchenful(site);
    List<Turns.Turn> turns = new ArrayList<>(new SaturdayMorning(at).list());
    turns.addAll(new SaturdayEvening(at).list());
    assertThat(turns).hasSizeGreaterThanOrEqualTo(40);
    for (Turns.Turn turn : turns) {
      String when = turn.time() + " " + turn.what();
      site.setClock(moment(turn.time()));
      try {
        turn.happens().run();
      } catch (AssertionError e) {
        throw new AssertionError(when + ": " + e.getMessage(), e);
      }
      at.ledgerHolds(when);
    }
    at.replays();
    return at.stands();
  }

  /** A time of Saturday, or with + of the morning after. */
  private static Instant moment(String time) {
    return time.startsWith("+")
        ? Site.at(time.substring(1)).plus(Duration.ofDays(1))
        : Site.at(time);
  }
}
