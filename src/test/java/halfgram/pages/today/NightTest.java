package halfgram.pages.today;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The close-of-day list, and what of it was missed: the first thing in the morning. */
class NightTest {
  private static final LocalDate SUNDAY = Site.DAY.plusDays(1);

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theListSaysWhatGoesWhereAndUntilWhen() {
    List<Task> tonight = inForce(Site.DAY).sheet().tonight();
    assertThat(tonight).extracting(task -> task.version().formula()).contains("alginate-bath");
    Answer list = client.get("/k/TARN/tonight");
    assertThat(list.text())
        .contains(
            "Tonight for tomorrow", "Alginate bath", "Take: ", "Into ", "Stands until", "Use by");
    assertThat(list.all("href=\"[^\"]*wall/[a-z-]+\\?task=([^\"]+)\"")).hasSize(tonight.size());
    done(tonight.get(0));
    assertThat(client.get("/k/TARN/tonight").text())
        .contains((tonight.size() - 1) + " of " + tonight.size() + " still to do", "DONE");
    assertThat(client.get("/k/TARN/").body()).contains("/k/TARN/tonight");
  }

  @Test
  void whatWasMissedIsTheFirstThingInTheMorningWithWhatItCosts() {
    List<Task> tonight = inForce(Site.DAY).sheet().tonight();
    Task bath =
        tonight.stream()
            .filter(task -> task.version().formula().equals("alginate-bath"))
            .findFirst()
            .orElseThrow();
    site.setClock(Site.at("08:00").plus(Duration.ofDays(1)));
    String today = client.get("/k/TARN/").text();
    assertThat(today).contains("Missed last night", "Alginate bath", "not done last night");
    assertThat(today).contains("Start at once: it is", "of its 12 h before use", "chef tastes");
    assertThat(client.get("/k/TARN/wall/" + bath.station()).text()).contains("Missed last night");
    JsonNode missed = site.script().get("today").body().path("missed");
    assertThat(missed).isNotEmpty();
    JsonNode one = find(missed, bath.id());
    Task now = inForce(SUNDAY).findTask(one.path("task").asText()).orElseThrow();
    long late =
        Duration.between(now.make().timeline().start(), site.wiring().desk().now()).toMinutes();
    assertThat(one.path("lateMinutes").asLong()).isEqualTo(late);
    assertThat(one.path("restMinutes").asLong()).isEqualTo(12 * 60);

    client.post("/k/TARN/wall/cook", "station", now.station(), "person", "ines");
    press(now, "START");
    assertThat(ids(site.script().get("today").body().path("missed"))).doesNotContain(bath.id());
  }

  @Test
  void whatWasDoneIsNotMissed() {
    List<Task> tonight = inForce(Site.DAY).sheet().tonight();
    tonight.forEach(this::done);
    site.setClock(Site.at("08:00").plus(Duration.ofDays(1)));
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Missed last night");
    assertThat(site.script().get("today").body().path("missed")).isEmpty();
  }

  // ---- below their callers ----

  private static List<String> ids(JsonNode missed) {
    List<String> ids = new java.util.ArrayList<>();
    missed.forEach(one -> ids.add(one.path("missed").asText()));
    return ids;
  }

  private static JsonNode find(JsonNode missed, String id) {
    for (JsonNode one : missed) {
      if (one.path("missed").asText().equals(id)) {
        return one;
      }
    }
    throw new AssertionError(id + " in " + missed);
  }

  /** Done, also what would stand for hours. */
  private void done(Task task) {
    String tick =
        "{'task':'%s','kind':'done','cook':'ines','sure':true,'sequence':%d,"
            + "'device':'00000000-0000-4000-8000-0000000000ae'}";
    assertThat(site.script().post("ticks", tick.formatted(task.id(), Site.sequence())).status())
        .isEqualTo(201);
  }

  private void press(Task task, String kind) {
    Answer answer =
        client.post(
            "/k/TARN/tick",
            "station",
            task.station(),
            "task",
            task.id(),
            "kind",
            kind,
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(answer.status()).isEqualTo(303);
  }

  private InForce inForce(LocalDate day) {
    return site.wiring().plans().open(site.house(), day, "test");
  }
}
