package halfgram.technique.herboil;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Limits;
import halfgram.technique.Output;
import halfgram.technique.Part;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Blanched herb, squeezed dry, blended with oil, rested and strained through cloth. */
public final class HerbOilTechnique implements Technique {
  private static final double LEAST_STRAINED = 70;
  private static final double MOST_STRAINED = 85;

  /** One published recipe: 350 mL to 100 g of leaves. */
  private static final double MOST_OIL_ML = 3.5;

  private static final String RECIPES = "published recipes for herb oil";
  private static final String NOT_ACID = "not acidified";

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("herb", "g", 1, 200_000).ofLine("herb"),
          Input.choice("herbIs", "raw", "squeezed"),
          Input.number("oil", "g", 0, 1_000_000, 0, Standing.COMPUTED, "none said: by the ratio")
              .ofLine("oil"),
          Input.published(
              "oilPerHerb",
              "1",
              0.5,
              20,
              3.2,
              "one recipe, 350 mL to 100 g of leaves; kitchens take 1 to 3 (common practice)"),
          Input.number(
              "oilDensity",
              "g/mL",
              0.85,
              1,
              0.921,
              Standing.COMPUTED,
              "grapeseed, canola and sunflower oil, USDA SR28 weight file"),
          Input.published("herbWater", "%", 0, 99, 87.71, "parsley, USDA SR28, NDB 11297"),
          Input.guess("squeezed", "%", 1, 150, 75).from(Origin.READING),
          Input.number(
                  "strained",
                  "%",
                  1,
                  100,
                  LEAST_STRAINED,
                  Standing.COMMON_PRACTICE,
                  "70 to 85 % of the oil, common practice; the low end is planned on")
              .from(Origin.READING),
          Input.published("blend", "min", 0, 60, 2, RECIPES + ": 1 to 2 min"),
          Input.published("rest", "min", 0, 1440, 30, RECIPES + ": 15 to 30 min"),
          Input.published("drip", "min", 0, 2880, 60, RECIPES + ": 30 to 60 min, not pressed"),
          Input.choice("dripping", "own-step", "waits-here"),
          Input.choice("keeping", "chilled", "frozen", "acidified", "ambient"),
          Input.needed("holdTemperature", "°C", -60, 60).from(Origin.READING),
          Input.common("frozenOnDay", "1", 1, 60, 1),
          Input.guess("frozenFor", "d", 1, 730, 90),
          Input.choice("made", "blended", "as-tested"),
          Input.choice("plant", "other", "garlic", "basil", "oregano", "rosemary"),
          none("acidStrength", "%", 30, 0),
          none("acidHours", "h", 240, 0),
          none("acidRatio", "1", 100, 0),
          none("piece", "mm", 500, 50),
          Input.published("ph", "1", 0, 14, 6.4, "garlic before acid, pH 6.0 to 6.4")
              .from(Origin.READING));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("raw", "g"),
          new Output("ratio", "1"),
          new Output("oil", "g"),
          new Output("oilVolume", "mL"),
          new Output("squeezed", "g"),
          new Output("waterLeft", "g"),
          new Output("mash", "g"),
          new Output("waterShare", "%"),
          new Output("oilOut", "g"),
          new Output("oilOutMost", "g"),
          new Output("oilOutVolume", "mL"),
          new Output("yield", "%"),
          new Output("pulp", "g"),
          new Output("readyAfter", "min"),
          new Output("lastDay", "1"),
          new Output("freezeBy", "1"),
          new Output("afterThawing", "1"),
          new Output("frozenGood", "d"));

  /** An input whose default says that nothing was done. */
  private static Input none(String name, String unit, double most, double usual) {
    return Input.number(name, unit, 0, most, usual, Standing.COMMON_PRACTICE, NOT_ACID);
  }

  @Override
  public String name() {
    return "herb-oil";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("herb"), Part.line("oil").orNone());
  }

  @Override
  public List<Input> inputs() {
    return INPUTS;
  }

  @Override
  public List<Output> outputs() {
    return OUTPUTS;
  }

  @Override
  public Optional<String> comesOut() {
    return Optional.of("yield");
  }

  @Override
  public Result work(Values values, Tables tables) {
    Working working = new Working(this);
    oil(values, working);
    yields(values, working);
    working.figure(
        "readyAfter",
        values.number("blend") + values.number("rest") + values.number("drip"),
        "technique.herb-oil.why.readyAfter",
        values.number("blend"),
        values.number("rest"),
        values.number("drip"));
    keeping(values, new Keeping(values), working);
    return working
        .caution("herb-in-oil")
        .source("Times and ratio: " + RECIPES + "; yields: common practice, to be measured")
        .source(Keeping.SOURCE + ": reviewed guide of 2015, review article of 2011, a third page")
        .source("Tested acid: 3 % citric acid, 24 h, trade article of 2014")
        .source("Growth and toxin in a laboratory broth: 5 weeks at 3 °C, 3 to 4 at 4 °C (1997)")
        .result();
  }

  private static void oil(Values values, Working working) {
    double herb =
        values.is("herbIs", "squeezed")
            ? working.figure(
                "raw",
                values.number("herb") / values.number("squeezed") * 100,
                "technique.herb-oil.why.raw",
                values.number("herb"),
                values.number("squeezed"))
            : working.figure("raw", values.number("herb"), "technique.herb-oil.why.rawSaid");
    double given = values.number("oil");
    double oil = given > 0 ? given : herb * values.number("oilPerHerb");
    double ratio =
        given > 0
            ? working.figure("ratio", oil / herb, "technique.herb-oil.why.ratio", oil, herb)
            : working.figure(
                "ratio", values.number("oilPerHerb"), "technique.herb-oil.why.ratioSaid");
    working.figure("oil", oil, "technique.herb-oil.why.oil", herb, ratio);
    working.figure(
        "oilVolume",
        oil / values.number("oilDensity"),
        "technique.herb-oil.why.oilVolume",
        oil,
        values.number("oilDensity"));
    double most = MOST_OIL_ML * values.number("oilDensity");
    if (Limits.outside(ratio, 1, most)) {
      working.warn("technique.herb-oil.warn.ratio", ratio, most);
    }
  }

  private static void yields(Values values, Working working) {
    double herb = working.result().number("raw");
    double oil = working.result().number("oil");
    double squeezed =
        working.figure(
            "squeezed",
            herb * values.number("squeezed") / 100,
            "technique.herb-oil.why.squeezed",
            values.number("squeezed"),
            herb);
    double solids = herb * (100 - values.number("herbWater")) / 100;
    double left =
        working.figure(
            "waterLeft",
            Math.max(0, squeezed - solids),
            "technique.herb-oil.why.waterLeft",
            squeezed,
            solids);
    double mash =
        working.figure("mash", squeezed + oil, "technique.herb-oil.why.mash", squeezed, oil);
    working.figure(
        "waterShare", left / mash * 100, "technique.herb-oil.why.waterShare", left, mash);
    double out =
        working.figure(
            "oilOut",
            oil * values.number("strained") / 100,
            "technique.herb-oil.why.oilOut",
            values.number("strained"),
            oil);
    working.figure(
        "oilOutMost",
        Math.max(out, oil * MOST_STRAINED / 100),
        "technique.herb-oil.why.oilOutMost",
        MOST_STRAINED,
        oil);
    working.figure(
        "oilOutVolume",
        out / values.number("oilDensity"),
        "technique.herb-oil.why.oilOutVolume",
        out,
        values.number("oilDensity"));
    working.figure("yield", out / mash * 100, "technique.herb-oil.why.yield", out, mash);
    working.figure("pulp", mash - out, "technique.herb-oil.why.pulp", mash, out);
    warnOfYields(values, squeezed - solids, working);
  }

  private static void warnOfYields(Values values, double water, Working working) {
    if (water < 0) {
      working.stop(
          "technique.herb-oil.stop.too-dry",
          values.number("squeezed"),
          100 - values.number("herbWater"));
    } else {
      working.warn("technique.herb-oil.warn.water", water);
    }
    if (values.get("squeezed").standing() == Standing.UNVERIFIED) {
      working.warn("technique.herb-oil.warn.squeezed", values.number("squeezed"));
    }
    double strained = values.number("strained");
    if (values.get("strained").standing() != Standing.ENTERED) {
      working.warn("technique.herb-oil.warn.strained", LEAST_STRAINED, MOST_STRAINED);
    } else if (strained < LEAST_STRAINED || strained > MOST_STRAINED) {
      working.warn("technique.herb-oil.warn.strained-odd", strained, LEAST_STRAINED, MOST_STRAINED);
    }
  }

  private static void keeping(Values values, Keeping keeping, Working working) {
    keeping.stops().forEach(stop -> working.stop(stop.key(), stop.args().toArray()));
    if (keeping.isByAcid()) {
      if (keeping.isBlended()) {
        working.warn("technique.herb-oil.warn.acid-method");
      }
      working.warn("technique.herb-oil.warn.acid-date");
      return;
    }
    working.figure("lastDay", Keeping.LAST_DAY, "technique.herb-oil.why.lastDay");
    working.figure(
        "freezeBy",
        Keeping.FREEZE_BY,
        "technique.herb-oil.why.freezeBy",
        (double) Keeping.LAST_DAY);
    if (keeping.isFrozen()) {
      working.figure(
          "afterThawing",
          keeping.afterThawing(),
          "technique.herb-oil.why.afterThawing",
          (double) Keeping.LAST_DAY,
          values.number("frozenOnDay"));
      working.figure("frozenGood", values.number("frozenFor"), "technique.herb-oil.why.frozenGood");
    }
    working.warn("technique.herb-oil.warn.other-numbers");
    if (values.is("plant", "garlic")) {
      working.warn("technique.herb-oil.warn.garlic-for-sale");
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    Keeping keeping = new Keeping(values);
    List<Addition> additions = new ArrayList<>();
    additions.add(Addition.Weighed.of("oil", result.number("oil")));
    additions.add(new Addition.Stands(stands(values), RECIPES + ", rest before the cloth"));
    // A freezer stops this clock and does not set it back; acid does not either, because the pH of
    // one lot says nothing of the next.
    String source = keeping.isByAcid() ? Keeping.EVERY_LOT : Keeping.SOURCE;
    additions.add(new Addition.Keeps(Keeping.LAST_DAY, source, ""));
    additions.add(new Addition.Caution("herb-in-oil"));
    additions.add(new Addition.Caution("blade"));
    additions.add(new Addition.Reminder(Message.of("technique.herb-oil.say.squeeze")));
    additions.add(new Addition.Reminder(Message.of("technique.herb-oil.say.drip")));
    if (keeping.isByAcid()) {
      additions.add(new Addition.Reminder(Message.of("technique.herb-oil.say.ph")));
    } else if (keeping.isFrozen()) {
      String days = String.valueOf(keeping.afterThawing());
      additions.add(new Addition.Reminder(Message.of("technique.herb-oil.say.freeze", days)));
    }
    if (values.is("keeping", "chilled") || (keeping.isByAcid() && keeping.isBlended())) {
      additions.add(new Addition.Reminder(Message.of("technique.herb-oil.say.chill")));
    }
    return additions;
  }

  /** Rest, and the dripping too where no step of the formula's own waits for it. */
  private static Duration stands(Values values) {
    double minutes = values.number("rest");
    if (values.is("dripping", "waits-here")) {
      minutes += values.number("drip");
    }
    return Duration.ofSeconds((long) StrictMath.ceil(minutes * 60));
  }

  @Override
  public Map<String, String> example() {
    return Map.of("herb", "100 g", "oil", "322.35 g", "holdTemperature", "4 °C");
  }
}
