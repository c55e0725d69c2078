package halfgram.pages.events;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Of the trout of the demo, 2.4 kg of one tub are kept for a dinner, and all of it goes by Monday:
 * an event that moves to a day after that keeps nothing from those who can still serve it.
 */
class MovedAwayTest {
  private static final String EVENT = "events/harvest-dinner";

  private Site site;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    script = site.script();
    Client client = site.client();
    client.get("/k/TARN/stock/t-1204-trout-2");
    client.post("/k/TARN/stock/t-1204-trout-2/bin", "reason", "spoilt", "own", "spoilt");
    assertThat(client.get("/k/TARN/stock").text()).doesNotContain("t-1204-trout-2 made");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatCannotBeServedThereAnyMoreServesTheOthers() {
    move("2026-12-10");
    assertThat(trout()).as("trout to be cured for those before Monday").isZero();
    assertThat(site.client().get("/k/TARN/stock").text())
        .contains("2400 g kept for Harvest dinner: past its date by then");
  }

  @Test
  void whatCanStillBeServedThereStaysKept() {
    move("2026-12-07");
    assertThat(trout()).as("trout to be cured").isPositive();
    assertThat(site.client().get("/k/TARN/stock").text())
        .contains("keep 2400 g for Harvest dinner");
  }

  private long trout() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.version().formula().equals("cured-trout"))
        .count();
  }

  private void move(String date) {
    JsonNode stored = script.get(EVENT).body();
    ObjectNode event = (ObjectNode) stored.path("event");
    event.put("date", date);
    String seen = "?seen=" + stored.path("change").asLong();
    assertThat(script.sent("PUT", EVENT + seen, event.toString()).status()).isEqualTo(200);
  }
}
