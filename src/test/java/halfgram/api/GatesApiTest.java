package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Test pieces and tastings that stop a batch, by the API. */
class GatesApiTest {
  private static final String RUN = "yoghurt-spheres/harvest-dinner/1";
  private static final String TEST = RUN + "/drop/test-piece";
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String PEA_BASE = "pea-base/harvest-dinner/1/shear";
  private static final String DEVICE = "00000000-0000-4000-8000-000000000001";
  private static final String RIGHT = "'said':{'skin':'right','centre':'liquid','taste':'right'}";
  private static final String TASTED = "'said':{'taste':'right','texture':'right'}";

  private Site site;
  private Script script;
  private long sequence = 1;

  @BeforeEach
  void open() {
    site = start();
    script = site.script();
    script.get("gates");
  }

  Site start() {
    Site started = Site.empty();
    started.importBook(gated());
    return started;
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void nothingIsDroppedBeforeTheTestPieceIsPassed() {
    Answer drop = drop();
    assertThat(drop.status()).isEqualTo(409);
    assertThat(drop.body().path("said").asText())
        .contains("the test piece of \"drop\" is not passed yet");
    assertThat(tick(RUN + "/drop", "start").status()).isEqualTo(409);
    assertThat(tick(RUN + "/drop", "done").status()).isEqualTo(409);
    assertThat(tick(TEST, "start").status()).isEqualTo(201);
    assertThat(tick(TEST, "done").status()).isEqualTo(409);
    Answer silent = say("'task':'" + TEST + "','verdict':'go','said':{'skin':'right'}");
    assertThat(silent.status()).isEqualTo(409);
    assertThat(silent.body().path("said").asText()).contains("a word for each: centre, taste");
    assertThat(say("'task':'" + TEST + "','verdict':'go'," + RIGHT).status()).isEqualTo(201);
    assertThat(drop().status()).isEqualTo(201);
    String done = "'task':'" + TEST + "','kind':'done','sure':true,'cook':'ines'";
    assertThat(script.post("ticks", body(done, sequence++)).status()).isEqualTo(201);
    assertThat(gate(TEST).path("state").asText()).isEqualTo("passed");
    assertThat(gate(TEST).path("entries").get(0).path("said").path("centre").asText())
        .isEqualTo("liquid");
  }

  @Test
  void whatIsEnteredLaterHasTheTimeAtWhichItWasSaid() {
    site.setClock(Site.at("15:00"));
    String at = "','at':'" + Site.at("14:20") + "',";
    Answer go = say("'task':'" + PEA_BASE + "','verdict':'go" + at + TASTED);
    assertThat(go.status()).isEqualTo(201);
    assertThat(java.time.OffsetDateTime.parse(go.body().path("at").asText()).toInstant())
        .isEqualTo(Site.at("14:20"));
    assertThat(gate(PEA_BASE).at("/entries/0/at").asText()).contains("T14:20");
    String ahead = "','at':'" + Site.at("15:01") + "',";
    Answer refused = say("'task':'" + BASE + "','verdict':'go','cook':'marit" + ahead + TASTED);
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body().path("said").asText()).contains("still to come");
  }

  @Test
  void anAdjustmentIsKeptAndTheGateAsksAgain() {
    Answer adjusted =
        say(
            "'task':'"
                + BASE
                + "','verdict':'adjust','cook':'marit',"
                + "'added':[{'item':'salt','amount':'3 g'},{'item':'cream','amount':'0.1 kg'}]");
    assertThat(adjusted.status()).isEqualTo(201);
    assertThat(gate(BASE).path("state").asText()).isEqualTo("adjusted");
    JsonNode added = gate(BASE).path("entries").get(0).path("added");
    assertThat(added.get(1).path("amount").path("value").asInt()).isEqualTo(100);
    assertThat(tick(BASE, "done").status()).isEqualTo(409);
    assertThat(go(BASE, "marit").status()).isEqualTo(201);
    assertThat(tick(BASE, "done").status()).isEqualTo(201);
    Answer late =
        say(
            "'task':'"
                + BASE
                + "','verdict':'adjust','cook':'marit',"
                + "'added':[{'item':'salt','amount':'1 g'}]");
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.body().path("said").asText()).contains("has gone on to \"shear\"");
  }

  @Test
  void aComponentAddedToTasteComesOutOfItsTubsOnceAndIsGivenBackOnce() {
    BigDecimal before = oil();
    String add =
        "'task':'"
            + BASE
            + "','verdict':'adjust','cook':'marit',"
            + "'added':[{'item':'dill-oil','amount':'30 g'},{'item':'dill-oil','amount':'5 g'}]";
    String body = body(add, sequence++);
    Answer added = script.post("gates", body);
    assertThat(added.status()).isEqualTo(201);
    assertThat(before.subtract(oil())).isEqualByComparingTo("35");
    assertThat(script.post("gates", body).status()).as("the same again").isEqualTo(200);
    assertThat(before.subtract(oil())).isEqualByComparingTo("35");
    JsonNode tub = script.get("stock/t-1202-oil").body();
    assertThat(tub.findValuesAsText("kind")).contains("used");
    assertThat(undo(added).status()).isEqualTo(201);
    assertThat(oil()).isEqualByComparingTo(before);
    assertThat(undo(added).status()).as("once").isEqualTo(409);
    assertThat(oil()).isEqualByComparingTo(before);
  }

  @Test
  void whatWasAddedToTasteIsTracedIntoTheBatchAndBack() {
    String jus = "stock/t-1204-jus";
    assertThat(adjust(PEA_BASE, "mushroom-jus").status()).isEqualTo(201);
    go(PEA_BASE, "marit");
    for (JsonNode task : script.get("tasks").body()) {
      if (task.path("id").asText().startsWith("pea-base/harvest-dinner/1/")) {
        tick(task.path("id").asText(), "done");
      }
    }
    JsonNode into = script.get(jus).body().path("wentInto");
    assertThat(into).isNotEmpty();
    JsonNode made = script.get("stock/" + into.path(0).asText()).body();
    assertThat(made.path("component").asText()).isEqualTo("pea-base");
    assertThat(made.path("madeOf")).extracting(JsonNode::asText).contains("t-1204-jus");
  }

  @Test
  void nothingIsAddedToABatchThatHasFailed() {
    String failed = "'task':'" + BASE + "','kind':'failed','cook':'ines','note':'split'";
    assertThat(script.post("ticks", body(failed, sequence++)).status()).isEqualTo(201);
    BigDecimal before = oil();
    Answer added = adjust(BASE, "dill-oil");
    assertThat(added.status()).isEqualTo(409);
    assertThat(added.body().path("said").asText()).contains("it failed");
    assertThat(go(BASE, "marit").status()).isEqualTo(409);
    assertThat(oil()).isEqualByComparingTo(before);
  }

  @Test
  void anIngredientAddedToTasteStandsInNoTubAndTakesNothing() {
    BigDecimal before = oil();
    assertThat(adjust(BASE, "salt").status()).isEqualTo(201);
    assertThat(oil()).isEqualByComparingTo(before);
  }

  @Test
  void moreAddedThanTheTubsHaveTakesWhatTheyHave() {
    String all = "'added':[{'item':'dill-oil','amount':'9 kg'}]";
    String adjust = "'task':'" + BASE + "','verdict':'adjust','cook':'marit',";
    assertThat(oil()).isPositive();
    assertThat(say(adjust + all).status()).isEqualTo(201);
    assertThat(oil()).isEqualByComparingTo("0");
  }

  /** Dill oil in all its tubs, grams. */
  private BigDecimal oil() {
    BigDecimal sum = BigDecimal.ZERO;
    for (JsonNode tub : script.get("stock?limit=200&ended=yes").body().path("tubs")) {
      if (tub.path("component").asText().equals("dill-oil")) {
        sum = sum.add(tub.path("left").path("value").decimalValue());
      }
    }
    return sum;
  }

  @Test
  void whatBringsInAnAllergenTheLabelsDoNotTellOfIsNotPutIn() {
    Answer cream = adjust(PEA_BASE, "cream");
    assertThat(cream.status()).isEqualTo(409);
    assertThat(cream.body().path("said").asText())
        .contains("cream", "milk", "Pea base", "a version of its own", "something without it");
    Answer base = adjust(PEA_BASE, "yoghurt-base");
    assertThat(base.status()).isEqualTo(409);
    assertThat(base.body().path("said").asText()).contains("Sheep-yoghurt base", "milk");
    assertThat(gate(PEA_BASE).path("entries").size()).isZero();
    assertThat(adjust(PEA_BASE, "salt").status()).isEqualTo(201);
    assertThat(adjust(BASE, "cream").status()).isEqualTo(201);
  }

  @Test
  void whatAChefTastesACookCannotPass() {
    Answer cook = go(BASE, "ines");
    assertThat(cook.status()).isEqualTo(409);
    assertThat(cook.body().path("said").asText()).contains("a chef has to taste this: Marit");
    assertThat(go(BASE, "marit").status()).isEqualTo(201);
  }

  @Test
  void failLosesTheBatchWithItsReasonAndUndoBringsItBack() {
    Answer silent = say("'task':'" + TEST + "','verdict':'fail'");
    assertThat(silent.body().path("said").asText()).contains("say why it failed");
    Answer failed = say("'task':'" + TEST + "','verdict':'fail','note':'will not close'");
    assertThat(failed.status()).isEqualTo(201);
    assertThat(state(RUN + "/drop")).isEqualTo("failed");
    assertThat(drop().status()).isEqualTo(409);
    assertThat(undo(failed).status()).isEqualTo(201);
    assertThat(state(RUN + "/drop")).isEqualTo("to-do");
    assertThat(gate(TEST).path("state").asText()).isEqualTo("asked");
  }

  @Test
  void goIsTakenBackUntilTheBatchHasGoneOn() {
    Answer go = say("'task':'" + TEST + "','verdict':'go'," + RIGHT);
    assertThat(say("'task':'" + TEST + "','verdict':'go'," + RIGHT).body().path("said").asText())
        .contains("passed already");
    assertThat(undo(go).status()).isEqualTo(201);
    assertThat(undo(go).status()).isEqualTo(409);
    Answer again = say("'task':'" + TEST + "','verdict':'go'," + RIGHT);
    assertThat(drop().status()).isEqualTo(201);
    Answer refused = undo(again);
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body().path("said").asText()).contains("has gone on to \"drop\"");
  }

  @Test
  void aRepeatIsTheSameEntry() {
    String body = body("'task':'" + TEST + "','verdict':'go','cook':'ines'," + RIGHT, 50);
    Answer first = script.post("gates", body);
    Answer again = script.post("gates", body);
    assertThat(first.status()).isEqualTo(201);
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body()).isEqualTo(first.body());
    assertThat(gate(TEST).path("entries").size()).isEqualTo(1);
  }

  @Test
  void whatIsHeldBackStandsThereUntilSomebodySaysWhatBecameOfIt() {
    assertThat(script.get("gates").body().path("heldBack").size()).isZero();
    go(BASE, "marit");
    tick(BASE, "done");
    JsonNode held = script.get("gates").body().path("heldBack").get(0);
    assertThat(held.path("item").asText()).isEqualTo("salt");
    assertThat(held.path("amount").path("value").asDouble()).isPositive();
    String what = "'task':'" + BASE + "','line':'" + held.path("line").asText() + "'";
    Answer used = say(what + ",'verdict':'used'");
    assertThat(used.status()).isEqualTo(201);
    assertThat(script.get("gates").body().path("heldBack").size()).isZero();
    assertThat(say(what + ",'verdict':'away'").body().path("said").asText())
        .contains("it is used already");
    assertThat(undo(used).status()).isEqualTo(201);
    assertThat(script.get("gates").body().path("heldBack").size()).isEqualTo(1);
    assertThat(say("'task':'" + BASE + "','line':'none','verdict':'used'").status()).isEqualTo(409);
  }

  @Test
  void whatCannotBeReadIsToldWithItsPath() {
    assertThat(say("'task':'" + TEST + "','verdict':'go','said':{'skin':'blue'}").problems())
        .containsExactly("$.said.skin");
    assertThat(
            say("'task':'" + TEST + "','verdict':'adjust','added':[{'item':'salt','amount':'x'}]")
                .problems())
        .containsExactly("$.added[0].amount");
    assertThat(say("'task':'none','verdict':'go'").status()).isEqualTo(404);
    assertThat(say("'task':'" + RUN + "/drop','verdict':'go'").status()).isEqualTo(409);
    assertThat(
            say("'task':'"
                    + TEST
                    + "','verdict':'adjust','added':[{'item':'unobtainium','amount':'3 g'}]")
                .body()
                .path("said")
                .asText())
        .contains("\"unobtainium\"", "an ingredient or a formula");
    assertThat(say("'task':'" + TEST + "','verdict':'adjust'").body().path("said").asText())
        .contains("what went in and how much");
  }

  @Test
  void theLogTellsWhatWasSaid() {
    say(
        "'task':'"
            + BASE
            + "','verdict':'adjust','cook':'marit','added':[{'item':'salt','amount':'3 g'}]");
    JsonNode entry = script.get("log?kind=gate").body().path("entries").get(0);
    assertThat(entry.path("detail").path("added").get(0).path("grams").asText()).isEqualTo("3");
    assertThat(site.client().get("/k/TARN/log").text())
        .contains("adjusted Sheep-yoghurt base, shear 3 g fine salt Marit");
  }

  // ---- below their callers ----

  /** The demo with a test piece and a chef's tasting as gates, and a chef. */
  static byte[] gated() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    for (JsonNode formula : book.path("formulas")) {
      JsonNode versions = formula.path("versions");
      JsonNode steps = versions.path(versions.size() - 1).path("steps");
      if (formula.path("code").asText().equals("yoghurt-spheres")) {
        ((ObjectNode) steps.get(0)).putObject("gate").put("kind", "test-piece");
      }
      if (formula.path("code").asText().equals("yoghurt-base")) {
        ((ObjectNode) steps.get(0)).putObject("gate").put("kind", "tasting").put("by", "chef");
      }
      if (formula.path("code").asText().equals("pea-base")) {
        ((ObjectNode) steps.get(0)).putObject("gate").put("kind", "tasting");
      }
    }
    for (JsonNode person : book.path("people")) {
      if (person.path("code").asText().equals("marit")) {
        ((ObjectNode) person).put("chef", true);
      }
    }
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }

  private JsonNode gate(String task) {
    for (JsonNode gate : script.get("gates").body().path("gates")) {
      if (gate.path("task").asText().equals(task)) {
        return gate;
      }
    }
    throw new AssertionError("no gate at " + task);
  }

  private String state(String task) {
    for (JsonNode one : script.get("tasks").body()) {
      if (one.path("id").asText().equals(task)) {
        return one.path("state").asText();
      }
    }
    return "";
  }

  private Answer adjust(String task, String item) {
    return say(
        "'task':'"
            + task
            + "','verdict':'adjust','cook':'marit','added':[{'item':'salt','amount':'1 g'},"
            + "{'item':'"
            + item
            + "','amount':'30 g'}]");
  }

  private Answer go(String task, String cook) {
    return say("'task':'" + task + "','verdict':'go','cook':'" + cook + "'," + TASTED);
  }

  private Answer undo(Answer of) {
    return say("'verdict':'undo','undoes':'" + of.body().path("entry").asText() + "'");
  }

  private Answer say(String what) {
    String cook = what.contains("'cook'") ? "" : ",'cook':'ines'";
    return script.post("gates", body(what + cook, sequence++));
  }

  private Answer tick(String task, String kind) {
    String what = "'task':'" + task + "','kind':'" + kind + "','cook':'ines'";
    return script.post("ticks", body(what, sequence++));
  }

  private Answer drop() {
    return script.post(
        "baths",
        body("'kind':'drop','bath':'A','run':'" + RUN + "','pieces':15,'cook':'ines'", sequence++));
  }

  private static String body(String what, long number) {
    return "{" + what + ",'device':'" + DEVICE + "','sequence':" + number + "}";
  }
}
