package halfgram.pages.service;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A service that is over, at the pass. */
class OverTest {
  private static final String DINNER = "/k/TARN/service/harvest-dinner";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("18:20"));
    client = site.client();
    client.get("/k/TARN/service");
    client.post(DINNER + "/cook", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aFireThatIsNamedByItsTimeSaysItOnce() {
    assertThat(client.get(DINNER).text()).contains("Next fire First in 25 min 18:45");
    site.setClock(Site.at("12:20"));
    assertThat(client.get("/k/TARN/service/lunch.2026-12-05").text())
        .contains("Next fire 12:30 in 10 min")
        .doesNotContain("12:30 12:30");
  }

  @Test
  void aServiceThatIsOverHasNothingNext() {
    assertThat(client.get(DINNER).text()).contains("Next fire First in 25 min");
    site.setClock(Site.at("22:00"));
    String over = client.get(DINNER).text();
    assertThat(over)
        .contains("over", "First 18:45 Enter when it was called")
        .doesNotContain("Next fire", "Next drop", "short");
  }

  @Test
  void aServiceThatIsOverTellsWhatWentAndTakesWhatIsMissingWithItsTime() {
    sent("5", "");
    assertThat(client.get(DINNER).body()).contains("value=\"FIRE\"", ">+10<");
    site.setClock(Site.at("22:40"));
    Answer over = client.get(DINNER);
    assertThat(over.text())
        .contains("The service is over. Entered as sent: 5 plates; not entered: ")
        .contains("sent 5 of 71", "66 not entered as sent", "Enter what went")
        .doesNotContain("plates to go", "Take next", "behind");
    assertThat(over.body()).doesNotContain(">+10<", "value=\"OUT\"", "value=\"GO\"");
    for (String wrong : List.of("23:10", "soon", "99:99")) {
      Answer asked = late(wrong);
      assertThat(asked.status()).as(wrong).isEqualTo(422);
      assertThat(asked.text()).contains("No time of this day until 22:40");
      assertThat(asked.body()).contains("value=\"" + wrong + "\"");
    }
    Answer entered = late("18:55");
    assertThat(entered.text()).contains("sent 65 of 71", "6 not entered as sent");
    String last = client.get(DINNER).text();
    assertThat(last.substring(last.indexOf("Entered last"))).contains("18:55 Ines");
    assertThat(client.get("/k/TARN/log?kind=service").text()).contains("entered at 22:40");
  }

  @Test
  void thePassIsLedToTheServiceThatIsJustOverAsLongAsSomethingOfItIsMissing() {
    String pass = "/k/TARN/wall/pass";
    String lunch = "/k/TARN/service/lunch.2026-12-05";
    client.get(pass);
    site.setClock(Site.at("14:29"));
    assertThat(client.get(pass).text()).contains("Lunch now").doesNotContain("is over");
    site.setClock(Site.at("14:31"));
    assertThat(client.get(pass).text())
        .contains("Lunch is over: enter what is missing")
        .doesNotContain("Lunch now");
    assertThat(client.get("/k/TARN/wall/hot").text()).doesNotContain("is over:");
    client.post(lunch + "/cook", "person", "ines");
    Answer over = client.get(lunch);
    List<String> courses = over.all("name=\"course\" value=\"([^\"]*)\"");
    List<String> numbers = over.all("name=\"sequence\" value=\"([^\"]*)\"");
    for (int i = 0; i < courses.size(); i++) {
      client.post(
          lunch,
          "kind",
          "FIRE",
          "course",
          courses.get(i),
          "at",
          "13:00",
          "sequence",
          numbers.get(i));
    }
    assertThat(client.get(pass).text()).doesNotContain("is over");
    site.setClock(Site.at("21:31"));
    assertThat(client.get(pass).text()).contains("Harvest dinner is over: enter what is missing");
    site.setClock(Site.at("23:31"));
    assertThat(client.get(pass).text()).doesNotContain("Harvest dinner is over");
  }

  private Answer late(String at) {
    return sent("60", at);
  }

  private Answer sent(String number, String at) {
    return client.postAndFollow(
        DINNER,
        "kind",
        "SENT",
        "course",
        "first",
        "dish",
        "trout-plate",
        "number",
        number,
        "at",
        at,
        "sequence",
        String.valueOf(Site.sequence()));
  }
}
