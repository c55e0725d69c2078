package halfgram.pages.tablets;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Cooks on tablets: chosen by touch, and by PIN where they have one. */
class PinTest {
  private static final String WALL = "/k/TARN/wall/cold";

  private Site site;
  private Paired paired;

  @BeforeEach
  void open() {
    site = Site.demo();
    paired = new Paired(site);
  }

  @AfterEach
  void close() {
    site.close();
  }

  private Answer setPin(String pin) {
    return paired.office().post("/k/TARN/tablets/pins", "person", "ines", "pin", pin);
  }

  @Test
  void anEasyPinIsNotTakenAndIsNotShownAgain() {
    for (String easy : new String[] {"1111", "2345", "12", "abcd"}) {
      Answer refused = setPin(easy);
      assertThat(refused.status()).as(easy).isEqualTo(422);
      assertThat(refused.text()).contains("4 to 8 digits, not all the same and not in a row");
      assertThat(refused.body()).doesNotContain("value=\"" + easy);
    }
  }

  @Test
  void whoHasAPinTypesItAndThePressThatWaitedGoesOn() {
    assertThat(setPin("4711").status()).isEqualTo(303);
    assertThat(paired.office().get("/k/TARN/tablets").text()).contains("Ines has a PIN");
    Client tablet = paired.tablet("Cold left", "cold");
    tablet.get(WALL);
    Task task = paired.task("cold", "yoghurt-base");
    Answer asked = start(tablet, task, "");
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.text()).contains("PIN of Ines");
    assertThat(asked.body()).contains("value=\"" + task.id());
    Answer wrong = start(tablet, task, "4712");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("That is not the PIN");
    assertThat(wrong.body()).contains("value=\"" + task.id()).doesNotContain("4712");
    assertThat(start(tablet, task, "4711").status()).isEqualTo(303);
    assertThat(tablet.get(WALL).text()).contains("ON IT · Ines");
  }

  private static Answer start(Client tablet, Task task, String pin) {
    return tablet.post(
        "/k/TARN/wall/cook",
        "person",
        "ines",
        "station",
        "cold",
        "pin",
        pin,
        "task",
        task.id(),
        "kind",
        "START",
        "sequence",
        "11");
  }

  @Test
  void fiveWrongPinsMakeThatTabletWaitAndNobodyElse() {
    setPin("4711");
    Client tablet = paired.tablet("Cold left", "cold");
    Client other = paired.tablet("Cold right", "cold");
    tablet.get(WALL);
    other.get(WALL);
    assertThat(wrong(tablet, 1)).contains("4 more tries");
    assertThat(wrong(tablet, 2)).contains("3 more tries");
    assertThat(wrong(tablet, 3)).contains("2 more tries");
    assertThat(wrong(tablet, 4)).contains("one more try");
    Answer fifth = Paired.choose(tablet, "cold", "ines", "9905");
    assertThat(fifth.status()).isEqualTo(429);
    assertThat(fifth.text()).contains("Type it again in 5 s");
    assertThat(fifth.body()).contains("name=\"pin\"");
    Answer later = Paired.choose(tablet, "cold", "ines", "4711");
    assertThat(later.status()).isEqualTo(429);
    assertThat(later.text()).contains("Too many wrong tries on this tablet");
    assertThat(Paired.choose(tablet, "cold", "lorcan", "").status()).isEqualTo(303);
    assertThat(Paired.choose(other, "cold", "ines", "4711").status()).isEqualTo(303);
    site.passTime(Duration.ofSeconds(6));
    assertThat(Paired.choose(tablet, "cold", "ines", "4711").status()).isEqualTo(303);
  }

  private static String wrong(Client tablet, int number) {
    Answer answer = Paired.choose(tablet, "cold", "ines", "990" + number);
    assertThat(answer.status()).isEqualTo(422);
    return answer.text();
  }

  @Test
  void aCookIsChosenForOneTabletAndARemovedPinIsAskedForNoMore() {
    setPin("4711");
    Client tablet = paired.tablet("Cold left", "cold");
    Client other = paired.tablet("Cold right", "cold");
    tablet.get(WALL);
    Paired.choose(tablet, "cold", "ines", "4711");
    assertThat(tablet.get(WALL).text()).contains("Ines");
    assertThat(other.get(WALL).text()).contains("Who is this?");
    paired.office().post("/k/TARN/tablets/pins", "person", "ines", "what", "remove");
    assertThat(Paired.choose(other, "cold", "ines", "").status()).isEqualTo(303);
  }

  @Test
  void thePassAsksForThePinToo() {
    setPin("4711");
    Client tablet = paired.tablet("Pass", "pass");
    String pass = "/k/TARN/service/harvest-dinner";
    tablet.get(pass);
    Answer asked = tablet.post(pass + "/cook", "person", "ines");
    assertThat(asked.text()).contains("PIN of Ines");
    assertThat(asked.body()).contains("action=\"" + pass + "/cook\"");
    assertThat(tablet.post(pass + "/cook", "person", "ines", "pin", "4711").status())
        .isEqualTo(303);
    assertThat(tablet.get(pass).text()).contains("Ines");
  }
}
