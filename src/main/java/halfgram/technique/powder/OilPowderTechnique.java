package halfgram.technique.powder;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Output;
import halfgram.technique.Part;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Oil powder: fat and a very light maltodextrin, by mass.
 *
 * <p>Rules. 60 parts of fat to 40 of powder to start with, more or less by eye between 55 and 70 %
 * of fat. The light grade weighs next to nothing in a spoon and nobody prints how little, so it is
 * weighed; a volume takes a bulk density measured on the open tub. A tub as dense as ordinary
 * maltodextrin is the wrong one. Drying is no preserving: the powder has the date of its fat.
 *
 * <p>Example: 100 g of oil at 60 : 40 take 66.7 g and make 166.7 g.
 */
public final class OilPowderTechnique implements Technique {
  private static final double LEAST_SHARE = 55;
  private static final double MOST_SHARE = 70;

  /** From this on a bulk density is that of ordinary maltodextrin, g/mL; published twice. */
  private static final double ORDINARY = 0.50;

  /** What the light grade is said to have, g/mL; from memory, unverified. */
  private static final double LIGHT_FROM = 0.05;

  private static final double LIGHT_TO = 0.13;

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("fat", "g", 1, 100_000).ofLine("fat"),
          Input.published("fatShare", "%", 20, 90, 60, "60 : 40 by mass, three published pages"),
          Input.choice("kind", "oil", "clarified-butter", "rendered-fat", "herb-oil", "butter"),
          Input.number(
              "water",
              "%",
              0,
              60,
              0,
              Standing.COMMON_PRACTICE,
              "fats free of water: oil, clarified butter, rendered fat"),
          Input.number(
                  "bulkDensity", "g/mL", 0, 1.5, 0, Standing.UNVERIFIED, "0: not measured here")
              .from(Origin.READING),
          Input.common("oilDay", "1", 1, 60, 1));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("powder", "g"),
          new Output("powderLeast", "g"),
          new Output("powderMost", "g"),
          new Output("total", "g"),
          new Output("totalLeast", "g"),
          new Output("totalMost", "g"),
          new Output("powderPer100", "g"),
          new Output("powderVolume", "mL"),
          new Output("waterIn", "g"),
          new Output("daysLeft", "1"));

  @Override
  public String name() {
    return "oil-powder";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("fat"));
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
  public Result work(Values values, Tables tables) {
    Working working = new Working(this);
    double powder = masses(values, working);
    grade(values, powder, working);
    water(values, working);
    if (values.is("kind", "herb-oil")) {
      herbOil(values, working);
    } else {
      working.warn("technique.oil-powder.warn.keeping");
    }
    return working
        .source("60 : 40 by mass, kept airtight, cool, dark and dry: three published pages")
        .source("55 to 70 % of fat, no water in the fat: common practice")
        .source("Ordinary maltodextrin 0.50 to 0.65 g/mL: two specifications")
        .source("Light grade 0.05 to 0.13 g/mL: from memory, no document found")
        .result();
  }

  private static double masses(Values values, Working working) {
    double fat = values.number("fat");
    double share = values.number("fatShare");
    double powder =
        working.figure(
            "powder", powderFor(fat, share), "technique.oil-powder.why.powder", fat, share);
    working.figure(
        "powderLeast",
        powderFor(fat, MOST_SHARE),
        "technique.oil-powder.why.powderLeast",
        fat,
        MOST_SHARE);
    working.figure(
        "powderMost",
        powderFor(fat, LEAST_SHARE),
        "technique.oil-powder.why.powderMost",
        fat,
        LEAST_SHARE);
    working.figure("total", fat + powder, "technique.oil-powder.why.total", fat, powder);
    working.figure(
        "totalLeast", fat * 100 / MOST_SHARE, "technique.oil-powder.why.totalLeast", MOST_SHARE);
    working.figure(
        "totalMost", fat * 100 / LEAST_SHARE, "technique.oil-powder.why.totalMost", LEAST_SHARE);
    working.figure(
        "powderPer100", powderFor(100, share), "technique.oil-powder.why.powderPer100", share);
    if (share < LEAST_SHARE || share > MOST_SHARE) {
      working.warn("technique.oil-powder.warn.share", share, LEAST_SHARE, MOST_SHARE);
    }
    return powder;
  }

  /** Grams of powder that so much fat takes, fat being so many percent of both. */
  static double powderFor(double fat, double share) {
    return fat * (100 - share) / share;
  }

  /** A volume only by a measured density; and the density tells the wrong tub. */
  private static void grade(Values values, double powder, Working working) {
    double density = values.number("bulkDensity");
    if (density <= 0) {
      working.warn("technique.oil-powder.warn.no-volume");
      return;
    }
    if (density >= ORDINARY) {
      working.stop("technique.oil-powder.stop.wrong-grade", density);
      return;
    }
    working.figure(
        "powderVolume", powder / density, "technique.oil-powder.why.powderVolume", powder, density);
    if (density < LIGHT_FROM || density > LIGHT_TO) {
      working.warn("technique.oil-powder.warn.grade", density, LIGHT_FROM, LIGHT_TO);
    }
  }

  private static void water(Values values, Working working) {
    double water = values.number("water");
    if (values.is("kind", "butter")) {
      working.stop("technique.oil-powder.stop.butter");
    } else if (water > 0) {
      working.figure(
          "waterIn",
          values.number("fat") * water / 100,
          "technique.oil-powder.why.waterIn",
          water,
          values.number("fat"));
      working.stop("technique.oil-powder.stop.water", water);
    }
  }

  /** Days for the powder, today counted: what the oil has left, never more. */
  private static int daysLeft(Values values) {
    return HERB_OIL_DAYS - (int) StrictMath.ceil(values.number("oilDay")) + 1;
  }

  /** Last day of an oil with herb in it, the day of making being day 1. */
  private static final int HERB_OIL_DAYS = 4;

  private static void herbOil(Values values, Working working) {
    int left = daysLeft(values);
    if (left < 1) {
      working.stop(
          "technique.oil-powder.stop.oil-over", values.number("oilDay"), (double) HERB_OIL_DAYS);
    } else {
      working.figure(
          "daysLeft",
          left,
          "technique.oil-powder.why.daysLeft",
          (double) HERB_OIL_DAYS,
          values.number("oilDay"));
    }
    working.caution("herb-in-oil").warn("technique.oil-powder.warn.herb-oil");
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    additions.add(Addition.Weighed.of("powder", result.number("powder")));
    additions.add(new Addition.Reminder(Message.of("technique.oil-powder.say.dry")));
    if (values.is("kind", "clarified-butter") || values.is("kind", "rendered-fat")) {
      additions.add(new Addition.Reminder(Message.of("technique.oil-powder.say.melt")));
    }
    additions.add(
        new Addition.Reminder(
            Message.of(
                "technique.oil-powder.say.by-eye",
                ofFat(result, values, "powderLeast"),
                ofFat(result, values, "powderMost"))));
    additions.add(new Addition.Reminder(Message.of("technique.oil-powder.say.keep")));
    if (values.is("kind", "herb-oil")) {
      additions.add(new Addition.Reminder(Message.of("technique.oil-powder.say.decant")));
      additions.add(
          // Which day the oil has today is its tub's to say, whose date the powder inherits.
          new Addition.Keeps(
              HERB_OIL_DAYS,
              "powder of a herb oil, not acidified: the oil's day 4 is its last",
              ""));
      additions.add(new Addition.Caution("herb-in-oil"));
      additions.add(new Addition.Reminder(Message.of("technique.oil-powder.say.date")));
    }
    return additions;
  }

  /** Percent of the fat: a reminder holds for a batch of any size. */
  /** In whole per cent: it is a matter of the eye. */
  private static String ofFat(Result result, Values values, String figure) {
    return Figure.plain(Math.rint(result.number(figure) / values.number("fat") * 100));
  }

  @Override
  public Map<String, String> example() {
    return Map.of("fat", "100 g");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    return Optional.of(
        Curve.of(
            input("fatShare"),
            output("powderPer100"),
            50,
            75,
            values.number("fatShare"),
            share -> powderFor(100, share)));
  }
}
