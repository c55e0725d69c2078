package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.measure.Exact;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A tasting on the wall, and what it leads to on the formula's page, without scripts. */
class AtGateTest {
  private static final String TASK = "yoghurt-base/harvest-dinner/1/shear";
  private static final String PEA_BASE = "pea-base/harvest-dinner/1/shear";
  private static final String WALL = "/k/TARN/wall/cold?task=" + Client.encoded(TASK);

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.empty();
    site.importBook(gated());
    client = site.client();
    client.get(WALL);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void theWallAsksForAWordForEachCheckAndShowsThePress() {
    assertThat(client.get(WALL).text())
        .contains("Tasting: it stops here until somebody says go", "too salty", "too stiff");
    assertThat(client.get(WALL).body())
        .contains("form=\"gate-go\"")
        .doesNotContain("name=\"kind\" value=\"DONE\"");
    Answer silent = say("GO", "said-taste", "right");
    assertThat(silent.status()).isEqualTo(409);
    assertThat(silent.text())
        .containsPattern("say a word for each: texture\\.? .*Tasting: it stops");
    assertThat(silent.text()).contains("say a word for each: texture");
    assertThat(silent.body()).containsPattern("value=\"right\" checked=\"checked\"");
    Answer done = tick("DONE");
    assertThat(done.status()).isEqualTo(409);
    assertThat(done.text()).contains("the tasting of \"shear\" is not passed yet");
    assertThat(say("GO", "said-taste", "right", "said-texture", "right").text())
        .contains("Tasting: passed", "passed by Ines at 09:00; taste: right, texture: right")
        .doesNotContain("it stops here");
    assertThat(client.get(WALL).body())
        .doesNotContain("form=\"gate-go\"")
        .contains("name=\"kind\" value=\"DONE\"");
    assertThat(tick("DONE").status()).isEqualTo(303);
  }

  @Test
  void whatWentInComesBackAsTypedWhenItIsNoWeight() {
    Answer wrong = say("ADJUST", "item0", "salt", "amount0", "a pinch");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("value=\"a pinch\"");
    assertThat(wrong.text()).contains("\"a pinch\" is no weight");
    assertThat(say("ADJUST", "item0", "salt").text()).contains("what went in and how much");
  }

  @Test
  void whatBringsInAnAllergenComesBackAsTypedWithWhatWouldBeAccepted() {
    Answer refused = sayOf(PEA_BASE, "ADJUST", "item0", "yoghurt-spheres", "amount0", "30 g");
    assertThat(refused.status()).isEqualTo(409);
    refused = sayOf(PEA_BASE, "ADJUST", "item0", "cream", "amount0", "30 g");
    assertThat(refused.text()).contains("milk", "a version of its own");
    assertThat(refused.body())
        .contains("value=\"30 g\"")
        .containsPattern("value=\"cream\" selected=\"selected\"");
  }

  @Test
  void whatPutItRightIsOfferedAsTheNextVersionWithSharesWorkedOutAnew() {
    JsonNode before = version();
    BigDecimal basis = basis();
    say("ADJUST", "item0", "salt", "amount0", "3 g");
    say("ADJUST", "item0", "salt", "amount0", "2 g", "item1", "juniper", "amount1", "6 g");
    assertThat(client.get("/k/TARN/formulas/yoghurt-base").text())
        .contains("times put right: 2; +5 g fine salt, +6 g")
        .doesNotContain("Look at it as the next version");
    say("GO", "said-taste", "right", "said-texture", "right");
    Answer page = client.get("/k/TARN/formulas/yoghurt-base");
    String href = page.all("href=\"([^\"]+\\?adjusted=[^\"]+)\"").get(0);
    Answer form = client.get(href);
    // 0.5 % of the basis, and 5 g of it.
    String salt =
        Exact.plain(
            new BigDecimal("0.5").add(new BigDecimal(500).divide(basis, MathContext.DECIMAL128)),
            6);
    assertThat(form.body()).contains("value=\"" + salt + "\"", "put right at a gate: +5 g");
    Answer saved = client.post(href, fields(form));
    assertThat(saved.status()).as(saved.text()).isEqualTo(303);
    JsonNode after = version();
    assertThat(after.path("version").asInt()).isEqualTo(before.path("version").asInt() + 1);
    assertThat(after.path("lines").size()).isEqualTo(before.path("lines").size() + 1);
    assertThat(after.at("/lines/2/percent").decimalValue().toPlainString()).isEqualTo(salt);
    assertThat(after.at("/lines/0")).isEqualTo(before.at("/lines/0"));
    assertThat(after.at("/steps/0/gate/kind").asText()).isEqualTo("tasting");
  }

  @Test
  void moreOfTheBasisMakesEveryShareSmaller() {
    BigDecimal basis = basis();
    say("ADJUST", "item0", "cream", "amount0", "100 g");
    say("GO", "said-taste", "right", "said-texture", "right");
    Answer page = client.get("/k/TARN/formulas/yoghurt-base");
    Answer form = client.get(page.all("href=\"([^\"]+\\?adjusted=[^\"]+)\"").get(0));
    client.post("/k/TARN/formulas/yoghurt-base/edit", fields(form));
    JsonNode after = version();
    BigDecimal grown = basis.add(BigDecimal.valueOf(100));
    assertThat(after.at("/lines/2/percent").decimalValue())
        .isCloseTo(
            new BigDecimal("0.5").multiply(basis).divide(grown, MathContext.DECIMAL128),
            org.assertj.core.api.Assertions.within(new BigDecimal("0.000001")));
    assertThat(
            after
                .at("/lines/3/basis")
                .decimalValue()
                .add(after.at("/lines/4/basis").decimalValue()))
        .isEqualByComparingTo("100");
  }

  @Test
  void whatIsHeldBackStandsOnTheWallAndInStockUntilItIsUsed() {
    say("GO", "said-taste", "right", "said-texture", "right");
    tick("DONE");
    assertThat(client.get(WALL).text()).contains("Held back to taste", "not yet used");
    Answer stock = client.get("/k/TARN/stock");
    assertThat(stock.text()).contains("fine salt, Sheep-yoghurt base: not yet used");
    String line = stock.all("name=\"line\" value=\"([^\"]+)\"").get(0);
    Answer away =
        client.postAndFollow(
            "/k/TARN/gate",
            "task",
            TASK,
            "line",
            line,
            "date",
            "2026-12-05",
            "back",
            "stock",
            "verdict",
            "AWAY",
            "sequence",
            "9");
    assertThat(away.text()).contains("Stock").doesNotContain("not yet used");
  }

  @Test
  void gatesSpeakSpanishAndFrenchWithEverySentence() throws IOException {
    Properties english = sentences("en");
    for (String language : List.of("es", "fr")) {
      assertThat(sentences(language).keySet()).as(language).isEqualTo(english.keySet());
    }
  }

  // ---- below their callers ----

  private static byte[] gated() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    for (JsonNode formula : book.path("formulas")) {
      JsonNode versions = formula.path("versions");
      JsonNode steps = versions.path(versions.size() - 1).path("steps");
      if (List.of("yoghurt-base", "pea-base").contains(formula.path("code").asText())) {
        ((ObjectNode) steps.get(0)).putObject("gate").put("kind", "tasting");
      }
    }
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }

  private BigDecimal basis() {
    return site.wiring()
        .plans()
        .open(site.house(), Site.DAY, "test")
        .findTask(TASK)
        .orElseThrow()
        .make()
        .scaled()
        .basis()
        .number();
  }

  /** The current version as the book has it. */
  private JsonNode version() {
    for (JsonNode formula : site.house().tree().path("formulas")) {
      if (formula.path("code").asText().equals("yoghurt-base")) {
        return formula.path("versions").path(formula.path("versions").size() - 1);
      }
    }
    throw new AssertionError("no such formula");
  }

  /** Every field of the form as it stands, to be saved. */
  private static String[] fields(Answer form) {
    return FilledForm.of(form, "/edit").with("act", "save").fields();
  }

  private Answer say(String verdict, String... fields) {
    return sayOf(TASK, verdict, fields);
  }

  private Answer sayOf(String task, String verdict, String... fields) {
    List<String> all = new ArrayList<>(List.of(fields));
    all.addAll(
        List.of(
            "station",
            "cold",
            "task",
            task,
            "verdict",
            verdict,
            "sequence",
            String.valueOf(Site.sequence())));
    return client.postAndFollow("/k/TARN/gate", all.toArray(String[]::new));
  }

  private Answer tick(String kind) {
    return client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        TASK,
        "kind",
        kind,
        "sequence",
        String.valueOf(Site.sequence()));
  }

  private static Properties sentences(String language) throws IOException {
    Properties sentences = new Properties();
    String name = "/halfgram/pages/gate_" + language + ".properties";
    try (InputStream stream = AtGateTest.class.getResourceAsStream(name)) {
      sentences.load(new java.io.InputStreamReader(stream, StandardCharsets.UTF_8));
    }
    return sentences;
  }
}
