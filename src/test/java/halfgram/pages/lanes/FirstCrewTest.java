package halfgram.pages.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.CrewInForce;
import halfgram.testkit.Client;
import halfgram.testkit.Listener;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.ArrayDeque;
import java.util.Optional;
import java.util.Queue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Pages do not wait until the best order of the day is found. */
@Timeout(120)
class FirstCrewTest {
  private static final String LOOKING = "Still looking for the best order";

  private final Queue<Runnable> later = new ArrayDeque<>();
  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setLater(later::add);
    client = site.client();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aPageShowsTheDayAtOnceAndIsToldWhenTheBestOrderIsFound() {
    Client.Answer first = client.get("/k/TARN/lanes");
    assertThat(first.text())
        .contains(LOOKING, "Ines")
        .doesNotContain("No place for", "What can be done", "It fits");
    assertThat(kept()).isEmpty();
    try (Listener page = Listener.open(site, "session", site.session())) {
      long before = page.next();
      assertThat(later).hasSize(1);
      later.remove().run();
      assertThat(page.next()).isGreaterThan(before);
    }
    assertThat(kept().orElseThrow().number()).isEqualTo(1);
    assertThat(client.get("/k/TARN/lanes").text()).doesNotContain(LOOKING).contains("Ines");
  }

  @Test
  void everyPageShowsTheSameMeanwhileAndOneSearchRuns() {
    String lanes = client.get("/k/TARN/lanes").text();
    client.get("/k/TARN/");
    client.get("/k/TARN/wall/cold");
    assertThat(client.get("/k/TARN/lanes").text()).isEqualTo(lanes);
    assertThat(later).hasSize(1);
  }

  @Test
  void whatNobodySawRoughIsNoChange() {
    site.setLater(Runnable::run);
    site.wiring().plans().open(site.house(), Site.DAY, "test");
    long before = change();
    assertThat(client.get("/k/TARN/lanes").text()).doesNotContain(LOOKING);
    assertThat(kept()).as("found").isPresent();
    assertThat(change()).isEqualTo(before);
  }

  @Test
  void whoMovesATaskMeanwhileMovesItInTheBestOrder() {
    client.get("/k/TARN/lanes");
    Script.Answer moved =
        site.script()
            .post(
                "lanes/pin",
                "{'task':'yoghurt-base/harvest-dinner/1/shear','start':'2026-12-05T11:00'}");
    assertThat(moved.status()).as("pinned").isBetween(200, 201);
    assertThat(kept().orElseThrow().number()).isEqualTo(2);
    later.remove().run();
    assertThat(kept().orElseThrow().number()).as("found already").isEqualTo(2);
  }

  private long change() {
    return site.house().stand().change();
  }

  private Optional<CrewInForce> kept() {
    return site.wiring()
        .crewPlans()
        .find(site.house(), site.wiring().plans().find(site.house(), Site.DAY).orElseThrow());
  }
}
