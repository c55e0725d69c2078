package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client;
import halfgram.testkit.Script.Answer;
import java.util.ArrayList;
import java.util.List;

/** Guests, a batch that fails, baths, the service, the night, and the morning after. */
final class SaturdayEvening extends Turns {
  private static final String SPHERES = "yoghurt-spheres/harvest-dinner/1";
  private static final String DINNER = "services/harvest-dinner/entries";

  SaturdayEvening(Kitchenful at) {
    super(at);
    afternoon();
    service();
    night();
  }

  private void afternoon() {
    turn(
        "15:32",
        "a count finds less than there should be",
        () -> {
          at.done("stock/t-1201-butter/count", "{'amount':'400 g'}");
          assertThat(left("t-1201-butter")).isEqualTo("400");
        });
    turn(
        "15:35",
        "84 become 97",
        () -> {
          JsonNode answer = at.done("slip/harvest-dinner?accept=yes", "{'covers':97}").body();
          assertThat(answer.path("covers").asInt()).isEqualTo(97);
          sees(at.page(""), "97");
          sees(at.wall("cold"), "97");
        });
    turn(
        "15:40",
        "the bar will be quieter",
        () -> {
          at.done("slip/bar.2026-12-05?accept=yes", "{'covers':20}");
          sees(at.page(""), "20");
        });
    turn(
        "15:45",
        "a batch fails: binned with its reason, and what a second go takes is said",
        () -> {
          Task jelly = at.task("pea-jelly/harvest-dinner");
          at.tick(jelly, "start", "sixten", "");
          at.tick(jelly, "failed", "sixten", ",'note':'boiled over'");
          sees(at.hand(jelly), "FAILED", "boiled over", "Second go");
          at.accept();
          assertThat(at.state(at.task("pea-jelly/harvest-dinner"))).isEqualTo(TaskState.TO_DO);
        });
    turn(
        "15:50",
        "the test piece is right",
        () -> {
          Task test = at.task(SPHERES + "/drop/test-piece");
          at.tick(test, "start", "ines", "");
          at.tick(test, "done", "ines", "");
          assertThat(at.state(test)).isEqualTo(TaskState.DONE);
        });
    turn(
        "15:56",
        "the first drop goes in",
        () -> {
          drop("A", 15);
          sees(at.page("baths/A"), "Ines");
        });
    turn(
        "15:57",
        "a second cook drops in another bath",
        () -> {
          drop("B", 15);
          assertThat(run().path("dropped").asLong()).isEqualTo(30);
        });
    turn(
        "16:00",
        "out again; three burst",
        () -> {
          String first = drops.get(0);
          at.entered("baths", "'kind':'lift','drop':'" + first + "','cook':'ines'");
          at.entered("baths", "'kind':'lift','drop':'" + drops.get(1) + "','cook':'lorcan'");
          at.entered("baths", "'kind':'broke','drop':'" + first + "','pieces':3,'cook':'ines'");
          sees(at.page("baths/A"), "3");
        });
    turn(
        "16:03",
        "the ruler says how much bath is left",
        () -> {
          at.entered("baths", "'kind':'level','bath':'A','millimetres':50,'cook':'ines'");
          assertThat(at.json("baths/A").at("/measured/litres").asDouble()).isEqualTo(3.6);
        });
    turn(
        "16:05",
        "bath A is changed",
        () -> {
          at.entered("baths", "'kind':'changed','bath':'A','note':'cloudy','cook':'ines'");
          sees(at.page("baths/A"), "cloudy");
        });
    turn("16:06", "everybody keeps to the sheet until the bar opens", () -> at.work("17:30"));
  }

  private final List<String> drops = new ArrayList<>();

  private void drop(String bath, int pieces) {
    Answer answer =
        at.entered(
            "baths",
            "'kind':'drop','bath':'"
                + bath
                + "','run':'"
                + SPHERES
                + "','pieces':"
                + pieces
                + ",'cook':'ines'");
    drops.add(answer.body().path("entry").asText());
  }

  private JsonNode run() {
    for (JsonNode run : at.json("baths").path("runs")) {
      if (run.path("run").asText().equals(SPHERES)) {
        return run;
      }
    }
    throw new AssertionError("no run " + SPHERES);
  }

  private void service() {
    turn(
        "17:35",
        "the dinner slips by a quarter of an hour",
        () -> {
          JsonNode answer = at.done("slip/harvest-dinner?accept=yes", "{'minutes':15}").body();
          assertThat(answer.path("start").asText()).isEqualTo("18:45");
          sees(at.page("service/harvest-dinner"), "18:45");
        });
    turn(
        "17:36",
        "the sauce waits for the chef, and no other cook can say go",
        () -> {
          Task sauce = at.any("butter-sauce/harvest-dinner");
          at.tick(sauce, "start", "sixten", "");
          assertThat(at.tick(sauce, "done", "sixten", "").status()).isEqualTo(409);
          Answer cook = at.tasted(sauce, "sixten");
          assertThat(cook.status()).isEqualTo(409);
          sees(at.hand(sauce), "chef");
        });
    turn("17:37", "everybody keeps to the sheet until it begins", () -> at.work("18:50"));
    turn(
        "18:52",
        "the cold station is ready",
        () -> at.entered(DINNER, "'kind':'ready','course':'first','station':'cold','who':'ines'"));
    turn(
        "18:54",
        "the pass says go",
        () -> at.entered(DINNER, "'kind':'go','course':'first','who':'marit'"));
    turn(
        "18:56",
        "the trout is plated: a tray, one tray too many, all",
        () -> {
          at.entered(DINNER, plated("plating", 1));
          at.entered(DINNER, plated("plated", 8));
          String twice = entry(at.entered(DINNER, plated("plated", 8)));
          at.entered(DINNER, "'kind':'undo','undoes':'" + twice + "','who':'marit'");
          sees(at.page("service/harvest-dinner"), "8 of 110 plated");
          at.entered(DINNER, plated("done", 1));
          sees(at.page("service/harvest-dinner"), "110 of 110 plated");
          assertThat(trout().path("sent").asInt()).isZero();
        });
    turn(
        "19:00",
        "the first course is fired",
        () -> {
          at.entered(DINNER, "'kind':'fire','course':'first','who':'marit'");
          sees(at.page("service/harvest-dinner"), "19:00");
        });
    turn("19:05", "twenty plates go out", () -> assertThat(sent(20)).isEqualTo(20));
    turn(
        "19:07",
        "one too many was pressed and is taken back",
        () -> {
          String one = entry(at.entered(DINNER, plates(1)));
          at.entered(DINNER, "'kind':'undo','undoes':'" + one + "','who':'marit'");
          assertThat(trout().path("sent").asInt()).isEqualTo(20);
        });
    turn(
        "19:10",
        "86 the spheres: every screen has it",
        () -> {
          at.entered(DINNER, "'kind':'out','item':'yoghurt-spheres','note':'burst','who':'marit'");
          sees(at.wall("cold"), "86");
          sees(at.wall("hot"), "86");
          sees(at.page(""), "86");
          sees(at.page("service/harvest-dinner"), "86");
        });
    turn(
        "19:14",
        "they are back",
        () -> {
          at.entered(DINNER, "'kind':'back','item':'yoghurt-spheres','who':'marit'");
          assertThat(at.wall("hot")).doesNotContain("burst");
        });
    turn(
        "19:20", "the rest of the first course goes out", () -> assertThat(sent(64)).isEqualTo(84));
    turn("19:25", "everybody keeps to the sheet to the end", () -> at.work("21:50"));
  }

  private static String plates(int number) {
    return "'kind':'sent','course':'first','dish':'trout-plate','number':"
        + number
        + ",'who':'marit'";
  }

  private int sent(int number) {
    at.entered(DINNER, plates(number));
    return trout().path("sent").asInt();
  }

  private static String plated(String kind, int number) {
    return "'kind':'"
        + kind
        + "','course':'first','dish':'trout-plate','number':"
        + number
        + ",'who':'marit'";
  }

  private JsonNode trout() {
    for (JsonNode dish : at.json("services/harvest-dinner").path("dishes")) {
      if (dish.path("dish").asText().equals("trout-plate") && dish.path("diets").isEmpty()) {
        return dish;
      }
    }
    throw new AssertionError("no trout");
  }

  private static String entry(Answer answer) {
    return answer.body().findValuesAsText("entry").get(0);
  }

  private void night() {
    turn(
        "22:20",
        "tonight for tomorrow: the thaw is pulled, the baths are forgotten",
        () -> {
          sees(at.page("tonight"), "Alginate bath", "Char, thawed", "Take: ");
          Task thaw = at.task("char-thawed");
          at.tick(thaw, "done", "ines", "");
          sees(at.page("tonight"), "DONE");
        });
    turn(
        "+07:30",
        "the morning after: what was missed is first, with what it costs",
        () -> {
          sees(at.page(""), "Missed last night", "Alginate bath", "Start at once");
          assertThat(at.page("")).doesNotContain("Char, thawed, pull: not done");
        });
    turn(
        "+07:35",
        "what services used is assumed, until it is counted",
        () -> {
          sees(at.page("log?kind=stock"), "used, assumed");
          JsonNode tubs = at.json("stock?limit=200").path("tubs");
          String assumed = "";
          for (JsonNode tub : tubs) {
            assumed = tub.path("assumed").asBoolean() ? tub.path("code").asText() : assumed;
          }
          assertThat(assumed).isNotEmpty();
          sees(at.page("count/cold"), "should be");
          at.done(
              "stock/" + Client.encoded(assumed) + "/count",
              "{'amount':'" + amount(assumed) + "'}");
          assertThat(at.json("stock/" + assumed).path("assumed").asBoolean()).isFalse();
        });
    turn(
        "+07:40",
        "what was thrown away yesterday has its sum",
        () ->
            assertThat(at.json("waste?from=2026-12-05").toString())
                .contains("boiled over", "smelt off", "dropped"));
  }

  private String amount(String tub) {
    JsonNode left = at.json("stock/" + tub).path("left");
    return left.path("value").asText() + " " + left.path("unit").asText();
  }
}
