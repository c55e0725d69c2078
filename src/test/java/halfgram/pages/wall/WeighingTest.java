package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Lines of a weigh list as they are pressed at the wall. */
class WeighingTest {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String PAGE = "/k/TARN/wall/cold?task=" + Client.encoded(BASE);

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get(PAGE);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theNameOnATubThatLooksLikeAnotherIsReadBeforeItIsWeighed() {
    assertThat(client.get(PAGE).text()).contains("Read the tub in your hand");
    assertThat(client.get(link("1")).text())
        .contains("put it back, and take xanthan agar powder xanthan")
        .doesNotContain("Read the tub in your hand");
    Answer unread = weigh(line(link("0")), "");
    assertThat(unread.status()).isEqualTo(422);
    assertThat(unread.text()).contains("read the tub first", "TO DO");
    String read = client.get(link("0")).body();
    assertThat(all(read, "name=\"tub\" value=\"(read)\"")).hasSize(1);
  }

  @Test
  void aWeighedLineStartsItsTaskAndTheNextLineIsTheOneToWeigh() {
    assertThat(weigh(line(link("0")), "read").status()).isEqualTo(303);
    Answer after = client.get(PAGE);
    assertThat(after.text()).contains("ON IT · Ines");
    assertThat(all(after.body(), "<li class=\"([a-z]*)\">\\s*<(?:form|div)").subList(0, 2))
        .containsExactly("done", "now");
  }

  @Test
  void eachSentenceOfTheMethodStandsBelowTheLinesItSpeaksOf() {
    String wall = client.get(PAGE).text();
    List<String> inOrder =
        List.of(
            "fine salt",
            "1 Stir the powders together dry",
            "in the jug",
            "cream, 36 %",
            "2 Shear the dry cup into the jug",
            "58 .8 g Dill oil",
            "3 Then the oil in a thread",
            "gives 6098 g");
    assertThat(inOrder).isSortedAccordingTo(java.util.Comparator.comparingInt(wall::indexOf));
    assertThat(wall).contains(inOrder);
  }

  @Test
  void whoDoesNotTareReadsTheSumOfWhatIsInTheVessel() {
    var task =
        site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
            .filter(one -> one.id().equals(BASE))
            .findFirst()
            .orElseThrow();
    var jug = task.weigh().get(1).lines();
    var first = jug.get(0).weighing().target();
    var two = first.plus(jug.get(1).weighing().target());
    assertThat(client.get(PAGE).text())
        .contains("the scale shows " + two.grams().setScale(0, java.math.RoundingMode.HALF_UP));
  }

  @Test
  void aVesselThatChangesScalesIsTaredThere() {
    var task =
        site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
            .filter(one -> one.id().equals(BASE))
            .findFirst()
            .orElseThrow();
    var cup = task.weigh().get(0).lines();
    var first = cup.get(0).weighing();
    var second = cup.get(1).weighing();
    assertThat(first.scale()).isNotEqualTo(second.scale());
    var both = first.target().plus(second.target()).grams();
    assertThat(client.get(PAGE).text())
        .doesNotContain("the scale shows " + both.setScale(1, java.math.RoundingMode.HALF_UP));
    var third = cup.get(2).weighing();
    assertThat(third.scale()).isNotEqualTo(second.scale());
    var all = first.target().plus(second.target()).plus(third.target()).grams();
    assertThat(client.get(PAGE).text())
        .doesNotContain("the scale shows " + all.setScale(2, java.math.RoundingMode.HALF_UP));
  }

  /** The address under a name on a tub, "0" the right one. */
  private String link(String number) {
    String link = all(client.get(PAGE).body(), "href=\"([^\"]+&amp;tub=" + number + ")\"").get(0);
    return link.replace("&amp;", "&");
  }

  private static String line(String link) {
    return URLDecoder.decode(all(link, "line=([^&]+)").get(0), StandardCharsets.UTF_8);
  }

  private Answer weigh(String line, String tub) {
    return client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        BASE,
        "kind",
        "WEIGHED",
        "line",
        line,
        "tub",
        tub,
        "sequence",
        String.valueOf(Site.sequence()));
  }

  private static List<String> all(String text, String pattern) {
    return Pattern.compile(pattern).matcher(text).results().map(found -> found.group(1)).toList();
  }
}
