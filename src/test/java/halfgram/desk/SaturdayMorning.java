package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import halfgram.testkit.Script.Answer;

/** Hands, goods and tubs, until after lunch. */
final class SaturdayMorning extends Turns {
  SaturdayMorning(Kitchenful at) {
    super(at);
    hands();
    goods();
  }

  private Task base;

  private void hands() {
    turn("09:00", "the day opens", () -> sees(at.page(""), "Plan 1", "Harvest dinner", "84"));
    turn(
        "09:02",
        "Ines begins the base",
        () -> {
          base = at.task("yoghurt-base/harvest-dinner/1/shear");
          at.tick(base, "start", "ines", "");
          sees(at.hand(base), "ON IT · Ines");
        });
    turn(
        "09:05",
        "the first line is weighed",
        () -> {
          WeighLine line = base.weigh().get(0).lines().get(0);
          at.tick(base, "weighed", "ines", ",'line':'" + line.path() + "'");
          assertThat(at.inForce().progress(base).weighed()).containsKey(line.path());
        });
    turn(
        "09:08",
        "what is for the dairy-free may not go through the same blender",
        () -> {
          Task puree = at.task("parsnip-puree/harvest-dinner/1/blend");
          Answer mix = at.tick(puree, "start", "lorcan", "");
          assertThat(mix.status()).isEqualTo(409);
          assertThat(mix.body().path("said").asText()).contains("thermo blender carries", "milk");
          sees(at.page("kit"), "MILK");
        });
    turn(
        "09:10",
        "Ines is called away",
        () -> {
          at.tick(base, "part-done", "ines", ",'amount':'2 kg'");
          sees(at.hand(base), "PART DONE");
        });
    turn(
        "09:14",
        "Lorcan goes on with it",
        () -> {
          at.tick(base, "start", "lorcan", "");
          sees(at.hand(base), "ON IT · Lorcan");
        });
    turn(
        "09:40",
        "the base is done and in its tubs",
        () -> {
          JsonNode tubs = at.tick(base, "done", "lorcan", "").body().path("tubs");
          assertThat(tubs).isNotEmpty();
          sees(at.page("stock"), tubs.get(0).asText());
        });
    turn(
        "09:45",
        "the blender is washed",
        () -> {
          at.done("kit", "{'thing':'machine/blender','how':'hot, dried'}");
          sees(at.page("kit"), "washed");
        });
  }

  private void goods() {
    turn(
        "09:50",
        "a delivery is on its way and the plan is made around it",
        () -> {
          at.done(
              "deliveries",
              "{'code':'greens','supplier':'Elm Farm','date':'2026-12-05','expected':'11:00',"
                  + "'lines':[{'ingredient':'kohlrabi','amount':'6 kg'},"
                  + "{'ingredient':'celeriac','amount':'20 kg'}]}");
          at.accept();
          sees(at.page("deliveries"), "Elm Farm", "11:00");
        });
    turn(
        "10:40",
        "it is late: what waits, for which dishes, until when it still works",
        () -> {
          at.done("deliveries/greens/entries", "{'kind':'late','expected':'13:00'}");
          JsonNode answer = at.json("deliveries/greens");
          assertThat(answer.at("/answer/serves").toString())
              .as(answer.toString())
              .contains("kohlrabi-plate");
          assertThat(answer.findValuesAsText("lastMoment")).isNotEmpty();
          at.accept();
          sees(at.hand(at.task("kohlrabi-ribbons/harvest-dinner/1")), "Elm Farm");
        });
    turn(
        "11:55",
        "it is here",
        () -> {
          at.done("deliveries/greens/entries", "{'kind':'arrived'}");
          at.accept();
          assertThat(at.hand(at.task("kohlrabi-ribbons/harvest-dinner/1")))
              .doesNotContain("waits for Elm Farm");
        });
    turn(
        "11:57",
        "a tub moves to another fridge",
        () -> {
          at.done("stock/t-1204-trout-2/move", "{'place':'pass fridge'}");
          sees(at.page("stock/t-1204-trout-2"), "pass fridge");
        });
    turn(
        "11:58",
        "a tub is split in two",
        () -> {
          at.done("stock/t-1203-stock-2/split", "{'amount':'1.2 kg','tubs':1}");
          assertThat(left("t-1203-stock-2")).isEqualTo("1200");
        });
    turn(
        "11:59",
        "two tubs become one, by the earlier date",
        () -> {
          at.done("stock/t-1203-oil-2/combine", "{'with':['t-1203-oil-3']}");
          assertThat(left("t-1203-oil-2")).isEqualTo("0");
        });
    turn(
        "12:00",
        "the jus is frozen: its clock stands",
        () -> {
          at.done("stock/t-1204-jus/freeze", "{'until':'2027-01-05T12:00','place':'freezer'}");
          sees(at.page("stock/t-1204-jus"), "frozen");
        });
    turn(
        "12:10",
        "and pulled again: its clock goes on, once and for all",
        () -> {
          at.done("stock/t-1204-jus/thaw", "{'place':'walk-in'}");
          Answer again = at.script.post("stock/t-1204-jus/freeze", "{'until':'2027-01-05T12:00'}");
          assertThat(again.status()).isEqualTo(409);
        });
    turn(
        "12:12",
        "two crisps break",
        () -> {
          at.done("stock/t-1203-crisp-2/broke", "{'amount':'2 piece','reason':'dropped'}");
          assertThat(left("t-1203-crisp-2")).isEqualTo("42");
        });
    turn(
        "12:15",
        "some of the croquettes are thrown away, with what they cost",
        () -> {
          at.done("stock/t-1204-croq/waste", "{'amount':'100 g','reason':'smelt off'}");
          assertThat(at.json("waste").toString()).contains("smelt off");
          sees(at.page("log"), "smelt off");
        });
    turn("12:20", "everybody keeps to the sheet over lunch", () -> at.work("15:30"));
  }
}
