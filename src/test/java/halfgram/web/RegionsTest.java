package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Tablets that were told of the same change are shown what was rendered once, each as its own. */
class RegionsTest {
  private static final String WALL = "/k/TARN/wall/cold";
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";

  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.demo();
    site.setClock(Site.at("11:00"));
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void whoWasToldOfTheSameChangeIsShownTheSame() {
    Client left = tablet("left", "ines");
    Client right = tablet("right", "ines");
    assertThat(numbers(told(left))).isEqualTo(numbers(told(right))).isNotEmpty();
  }

  @Test
  void formsAreProvedByEachTabletsOwnToken() {
    Client left = tablet("left", "ines");
    Client right = tablet("right", "ines");
    String other = right.token();
    Client.Answer shown = told(right);
    told(left);
    assertThat(told(right).all("name=\"_csrf\" value=\"([^\"]+)\"")).containsOnly(other);
    assertThat(shown.header("x-change")).isNotEmpty();
    Client.Answer noted =
        right.post(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            BASE,
            "kind",
            "NOTE",
            "note",
            "salty",
            "sequence",
            "1");
    assertThat(noted.status()).isEqualTo(303);
  }

  @Test
  void anotherCookIsShownTheirOwn() {
    Client left = tablet("left", "ines");
    Client right = tablet("right", "lorcan");
    assertThat(told(left).text()).contains("Ines");
    assertThat(told(right).text()).contains("Lorcan");
    assertThat(numbers(told(left))).isNotEqualTo(numbers(told(right)));
  }

  @Test
  void aLaterChangeIsShownAtOnce() {
    Client left = tablet("left", "ines");
    told(left);
    site.script()
        .post(
            "ticks",
            "{'task':'%s','kind':'note','cook':'ines','note':'a later word','sequence':%d,"
                    .formatted(BASE, Site.sequence())
                + "'device':'00000000-0000-4000-8000-000000000001'}");
    assertThat(told(left, "?task=" + BASE).text()).contains("a later word");
  }

  @Test
  void whoAsksForAnotherReasonIsAnsweredByThemselves() {
    Client left = tablet("left", "ines");
    String first = numbers(told(left));
    Client.Answer fresh = left.send(left.request(WALL).header(Visit.PART, "main").GET());
    assertThat(numbers(fresh)).isNotEqualTo(first);
  }

  private static Client.Answer told(Client client) {
    return told(client, "");
  }

  private static Client.Answer told(Client client, String query) {
    Client.Answer answer =
        client.send(
            client.request(WALL + query).header(Visit.PART, "main").header(Visit.TOLD, "1").GET());
    assertThat(answer.status()).as(answer.text()).isEqualTo(200);
    return answer;
  }

  /** What tells one rendering from another. */
  private static String numbers(Client.Answer answer) {
    return String.join(" ", answer.all("name=\"sequence\" value=\"([0-9]+)\""));
  }

  private static Client tablet(String name, String cook) {
    Client client = site.stranger().withCookie("tablet", Staff.tablet(site, name, "cold").token());
    client.get(WALL);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", cook);
    client.get(WALL);
    return client;
  }
}
