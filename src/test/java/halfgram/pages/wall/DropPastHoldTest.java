package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Drops of a base that has waited for longer than it may, when nobody began with a test piece. */
class DropPastHoldTest {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String RUN = "yoghurt-spheres/harvest-dinner/1";
  private static final String WALL = "/k/TARN/wall/cold?task=" + Client.encoded(RUN + "/drop");

  private Site site;
  private Client client;

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void isRefusedPastASafetyLimitAndNothingIsKept() {
    open("safety");
    Answer refused = drop("lorcan");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.text()).contains("it had to begin by Sat 5 Dec 14:30", "bin it");
    assertThat(client.get(WALL).text()).contains("0 lifted").doesNotContain("Lift 1");
    assertThat(site.script().get("baths").body().findValuesAsText("kind")).isEmpty();
  }

  @Test
  void isRefusedPastItsBestUntilAChefHasTasted() {
    open("quality");
    assertThat(drop("lorcan").text()).contains("a chef tastes it and signs first, or bin it");
    tick("yrsa", BASE, "TASTED");
    assertThat(drop("lorcan").status()).isEqualTo(303);
    assertThat(client.get(WALL).text()).contains("Lift 1");
  }

  @Test
  void isTakenInTime() {
    open("safety");
    site.setClock(Site.at("14:20"));
    assertThat(drop("lorcan").status()).isEqualTo(303);
    // What began in time goes on, however long it takes.
    site.setClock(Site.at("15:20"));
    assertThat(drop("lorcan").status()).isEqualTo(303);
  }

  @Test
  void isTakenWhenTheTestPieceBeganInTime() {
    open("safety");
    site.setClock(Site.at("14:20"));
    tick("lorcan", RUN + "/drop/test-piece", "START");
    site.setClock(Site.at("14:45"));
    assertThat(drop("lorcan").status()).isEqualTo(303);
  }

  /** The base is done at half past nine, rests for two hours, keeps for three more; it is 14:45. */
  private void open(String why) {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ObjectNode hold = (ObjectNode) version(book, "yoghurt-base").at("/outputs/0/hold");
    hold.put("max", "3 h").put("why", why).put("source", "measured here: a test");
    site = Site.empty();
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
    client = site.client();
    client.get("/k/TARN/wall/cold");
    site.setClock(Site.at("09:30"));
    tick("lorcan", BASE, "DONE");
    site.setClock(Site.at("14:45"));
  }

  private static JsonNode version(ObjectNode book, String formula) {
    for (JsonNode one : book.path("formulas")) {
      if (one.path("code").asText().equals(formula)) {
        JsonNode versions = one.path("versions");
        return versions.path(versions.size() - 1);
      }
    }
    throw new AssertionError(formula);
  }

  private void tick(String cook, String task, String kind) {
    work(cook);
    Answer answer =
        client.post(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            task,
            "kind",
            kind,
            "line",
            kind.equals("TASTED") ? "hold/3h" : "",
            "sequence",
            String.valueOf(Site.sequence()));
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
  }

  private Answer drop(String cook) {
    work(cook);
    return client.post(
        "/k/TARN/bath",
        "station",
        "cold",
        "task",
        RUN + "/drop",
        "entry",
        "DROP",
        "run",
        RUN,
        "label",
        "A",
        "pieces",
        "15",
        "sequence",
        String.valueOf(Site.sequence()));
  }

  private void work(String cook) {
    client.post("/k/TARN/wall/cook", "station", "cold", "person", cook);
  }
}
