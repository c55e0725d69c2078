package halfgram.pages.service;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * A main of which guests choose the fish or the other, for 65 % and 45 % of them: of 84 guests 71
 * have no diet, and each of these gets one.
 */
class ChoiceTest {
  private static final String DINNER = "/k/TARN/service/harvest-dinner";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("20:00"));
    client = site.client();
    client.get("/k/TARN/service");
    client.post(DINNER + "/cook", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aCourseHasAsManyPlatesToGoAsThereAreGuests() {
    site.setClock(Site.at("18:20"));
    assertThat(client.get(DINNER).text()).contains("84 plates to go").doesNotContain("95 plates");
  }

  @Test
  void nobodyIsLeftToServeOnceEveryGuestHasOneOfThem() {
    assertThat(send("char-main", 30).text())
        .contains("sent 30 of 47 at most; 41 guests still to serve")
        .contains("sent 0 of 32 at most; 41 guests");
    Answer sent = send("celeriac-main", 30);
    assertThat(sent.text()).contains("sent 30 of 32 at most; 11 guests");
    assertThat(line("char-main").path("toGo").asInt()).isEqualTo(11);
    send("char-main", 11);
    assertThat(line("char-main").path("toGo").asInt()).isZero();
    assertThat(line("celeriac-main").path("toGo").asInt()).isZero();
    assertThat(line("celeriac-main").path("choosing").asInt()).isZero();
  }

  @Test
  void morePlatesThanGuestsWithoutOneAreAskedAboutFirst() {
    send("char-main", 45);
    Answer asked = send("celeriac-main", 27);
    assertThat(asked.text())
        .contains("That makes 27 of Baked celeriac", "and only 26 guests are still to serve");
    assertThat(line("celeriac-main").path("sent").asInt()).isZero();
    assertThat(send("celeriac-main", 26).text()).contains("sent 26 of 32 at most; 0 guests");
  }

  @Test
  void aDishForEverybodyIsNoChoice() {
    assertThat(line("trout-plate").has("choosing")).isFalse();
    assertThat(line("trout-plate").path("toGo").asInt()).isEqualTo(71);
  }

  /** What scripts are told of a dish for those without a diet. */
  private JsonNode line(String dish) {
    for (JsonNode line : site.script().get("services/harvest-dinner").body().path("dishes")) {
      if (line.path("dish").asText().equals(dish) && line.path("diets").isEmpty()) {
        return line;
      }
    }
    throw new AssertionError(dish);
  }

  private Answer send(String dish, int number) {
    return client.postAndFollow(
        DINNER,
        "kind",
        "SENT",
        "course",
        "main",
        "dish",
        dish,
        "number",
        String.valueOf(number),
        "sequence",
        String.valueOf(Site.sequence()));
  }
}
