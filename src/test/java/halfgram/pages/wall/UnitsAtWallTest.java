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
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The units a kitchen reads, and the signs of the device's language, on the wall. */
class UnitsAtWallTest {
  private static final String WALL = "/k/TARN/wall/cold?task=";

  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatTheScaleReadsStaysInEveryKitchenAndTheOuncesStandBesideIt() {
    List<String> metric = numbers(wall("en"));
    assertThat(metric).containsExactly("11", ".8", "7", ".35", "1014", "455", "58", ".8");
    assertThat(wall("en").text()).doesNotContain(" oz", " lb");
    for (String units : List.of("us", "both")) {
      kitchen(book -> units(book, units));
      Answer wall = wall("en");
      assertThat(numbers(wall)).as(units).isEqualTo(metric);
      assertThat(wall.all("class=\"u\">([a-z]+)<")).as(units).containsOnly("g");
      assertThat(wall.all("class=\"sc beside\">([^<]+)<"))
          .as(units)
          .containsExactly("2 lb 3.77 oz", "1 lb 0.05 oz", "2.074 oz");
    }
  }

  @Test
  void amountsAreSaidInTheUnitsOfTheKitchenAndTheSignsOfTheDevice() {
    assertThat(gives("en")).contains("6098 g");
    assertThat(gives("es")).contains("6098 g");
    assertThat(wall("fr").text()).contains("4 °C");
    kitchen(book -> units(book, "us"));
    assertThat(gives("en")).contains("13 lb 7.11 oz").doesNotContain("6098 g");
    assertThat(gives("es")).contains("13 lb 7,11 oz");
    assertThat(gives("fr")).contains("39,2 °F (4 °C)");
    assertThat(wall("fr").body()).contains("value=\"215,11 oz\"");
    kitchen(book -> units(book, "both"));
    assertThat(gives("en")).contains("6098 g (13 lb 7.11 oz)", "4 °C (39.2 °F)");
    assertThat(gives("fr")).contains("6098 g (13 lb 7,11 oz)");
  }

  @Test
  void theListAndWhatIsReadySayBothToo() {
    assertThat(wall("en").all("class=\"beside\">([^<]+)<")).isEmpty();
    kitchen(book -> units(book, "both"));
    Answer both = wall("en");
    assertThat(both.all("<b>5586 g</b>\\s*<span class=\"beside\">([^<]+)<"))
        .containsExactly("12 lb 5.03 oz");
    String ready = "<b>[^<]+</b> <small>of [^<]+</small><small class=\"beside\">([^<]+)<";
    assertThat(both.all(ready)).isNotEmpty().allMatch(said -> said.matches(".*of .*(lb|oz)"));
  }

  @Test
  void smallDosesStayInGramsWithTheSignOfTheDevice() {
    kitchen(book -> units(book, "us"));
    assertThat(numbers(wall("es"))).contains("11", ",8", ",35");
    assertThat(wall("es").all("class=\"sc beside\">([^<]+)<"))
        .as("those above an ounce")
        .containsExactly("2 lb 3,77 oz", "1 lb 0,05 oz", "2,074 oz");
  }

  @Test
  void aScaleThatReadsOuncesIsReadInOunces() {
    kitchen(
        book -> {
          units(book, "us");
          for (JsonNode scale : book.path("scales")) {
            ObjectNode one = (ObjectNode) scale;
            if (one.path("code").asText().equals("bench")) {
              one.put("step", "0.05 oz").put("max", "22 lb");
            }
          }
        });
    assertThat(wall("en").all("class=\"u\">([a-z]+)<")).contains("oz", "g");
  }

  @Test
  void whatStandsInTheFieldIsThePlannedAmountInWhateverUnit() {
    for (String units : List.of("us", "both")) {
      kitchen(book -> units(book, units));
      String typed = wall("es").all("name=\"amount\"[^>]* value=\"([^\"]+)\"").get(0);
      assertThat(typed).as(units).isEqualTo(units.equals("us") ? "215,11 oz" : "6098 g");
      assertThat(done(typed)).as(units).isEmpty();
    }
  }

  @Test
  void theSettingComesBackOutOfTheBookAndAWrongOneIsRefused() {
    kitchen(book -> units(book, "both"));
    assertThat(site.script().text("book")).containsPattern("\"units\" ?: ?\"both\"");
    ObjectNode book = book();
    units(book, "imperial");
    byte[] wrong = book.toString().getBytes(StandardCharsets.UTF_8);
    assertThat(site.wiring().importBook().importBook(wrong, "test").problems())
        .anySatisfy(problem -> assertThat(problem.path()).isEqualTo("$.kitchen.units"));
  }

  @Test
  void measuresMarkedInAMethodFollowTheUnitsOfTheKitchenAndTheRestStaysAsTyped() {
    assertThat(method("warm", "fr"))
        .containsExactly(
            "1 Le bouillon à 75\u00a0°C", "2 Y mixer le gobelet sec", "3 Puis le beurre en filet");
    kitchen(book -> units(book, "us"));
    assertThat(method("warm", "fr")).contains("1 Le bouillon à 167\u00a0°F (75\u00a0°C)");
    kitchen(book -> units(book, "both"));
    assertThat(method("warm", "en")).contains("1 Stock to 75\u00a0°C (167\u00a0°F)");
    assertThat(method("boil", "es")).contains("3 Verter a 8\u00a0mm (0,315\u00a0in)");
  }

  @Test
  void remindersOfTechniquesFollowThemToo() {
    String pour = "Pour before it cools to ";
    assertThat(notes("en")).contains(pour + "45 °C");
    kitchen(book -> units(book, "us"));
    assertThat(notes("en")).contains(pour + "113 °F (45 °C)");
  }

  // ---- below their callers ----

  private String task(String ending) {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .map(task -> task.id())
        .filter(id -> id.endsWith(ending))
        .findFirst()
        .orElseThrow();
  }

  private List<String> method(String step, String language) {
    Client client = site.client().withCookie("language", language);
    String wall = client.get("/k/TARN/wall/all?task=" + Client.encoded(task("/" + step))).body();
    return java.util.regex.Pattern.compile("<p class=\"method\"[^>]*>(.*?)</p>")
        .matcher(wall)
        .results()
        .map(found -> found.group(1).replaceAll("<[^>]+>", "").strip())
        .toList();
  }

  private String notes(String language) {
    String jelly =
        site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
            .map(task -> task.id())
            .filter(id -> id.startsWith("pear-jelly"))
            .findFirst()
            .orElseThrow();
    Client client = site.client().withCookie("language", language);
    return client.get("/k/TARN/wall/all?task=" + Client.encoded(jelly)).text();
  }

  private String base() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(task -> task.id().startsWith("yoghurt-base"))
        .findFirst()
        .orElseThrow()
        .id();
  }

  private Answer wall(String language) {
    Client client = site.client().withCookie("language", language);
    return client.get(WALL + Client.encoded(base()).replace("+", "%20"));
  }

  private String gives(String language) {
    return String.join(" ", wall(language).all("class=\"gives\"[^>]*>([^<]+)<"));
  }

  private static List<String> numbers(Answer wall) {
    return wall.all("<b class=\"[wf]\">([^<]+)<");
  }

  /** What a press of done with an amount says is wrong or new; empty when it is as planned. */
  private String done(String typed) {
    Client client = site.client().withCookie("language", "es");
    client.get(WALL + Client.encoded(base()).replace("+", "%20"));
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    String sequence = String.valueOf(Site.sequence());
    Answer answer =
        client.post(
            "/k/TARN/tick",
            "station",
            "cold",
            "task",
            base(),
            "kind",
            "DONE",
            "amount",
            typed,
            "sequence",
            sequence);
    assertThat(answer.status()).isEqualTo(303);
    String undoes =
        client
            .get(answer.header("location"))
            .all("name=\"undoes\" value=\"([0-9a-f-]{36})\"")
            .get(0);
    String said =
        site.script().get("log").body().findValuesAsText("amount").stream().findFirst().orElse("");
    client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        base(),
        "kind",
        "UNDO",
        "undoes",
        undoes,
        "sequence",
        String.valueOf(Site.sequence()));
    return said;
  }

  private void kitchen(Consumer<ObjectNode> change) {
    ObjectNode book = book();
    change.accept(book);
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
  }

  private static ObjectNode book() {
    return (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
  }

  private static void units(ObjectNode book, String units) {
    ((ObjectNode) book.path("kitchen")).put("units", units);
  }
}
