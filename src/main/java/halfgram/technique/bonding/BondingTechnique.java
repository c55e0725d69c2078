package halfgram.technique.bonding;

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
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Pieces of meat or fish bonded with transglutaminase.
 *
 * <p>Rules. At most 5 °C (41 °F), whatever the enzyme would like better: limits of food safety
 * count; it works from 0 °C to about 65 °C, and cooking hotter stops it. Two sources give a time in
 * the cold, 240 min and 6 h; the pieces lie the longer one.
 */
public final class BondingTechnique implements Technique {
  /** Minutes that another page gives for a refrigerated bond. */
  private static final double BY_GUIDE = 360;

  private static final double WATER_FOR_GRAM = 4;

  /** Percent of the mix as sold; from memory, unverified. */
  private static final double LEAST_DOSE = 0.5;

  private static final double MOST_DOSE = 1.0;

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("meat", "g", 1, 200_000).ofLine("meat"),
          Input.needed("temperature", "°C", -2, 70).from(Origin.READING),
          Input.number(
              "dose",
              "%",
              0.01,
              5,
              1,
              Standing.UNVERIFIED,
              "0.5 to 1.0 % of the mix as sold, from memory: the bag decides"),
          Input.choice("applied", "slurry", "dust"),
          Input.published(
              "waterForGram", "1", 0, 20, WATER_FOR_GRAM, "slurry 1 to 4 in water, one supplier"),
          Input.published("ph", "1", 2, 11, 6, "the slides' times are for pH 6"));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("enzyme", "g"),
          new Output("water", "g"),
          new Output("slurry", "g"),
          new Output("bySlides", "min"),
          new Output("byGuide", "min"),
          new Output("least", "min"));

  @Override
  public String name() {
    return "bonding";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("meat"));
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
    double enzyme =
        working.figure(
            "enzyme",
            values.number("meat") * values.number("dose") / 100,
            "technique.bonding.why.enzyme",
            values.number("dose"),
            values.number("meat"));
    if (values.is("applied", "slurry")) {
      double ratio = values.number("waterForGram");
      double water =
          working.figure("water", enzyme * ratio, "technique.bonding.why.water", enzyme, ratio);
      working.figure("slurry", enzyme + water, "technique.bonding.why.slurry", enzyme, water);
    }
    times(values, working);
    if (!isCold(values)) {
      working.stop("technique.bonding.stop.too-warm", shown(values));
    }
    if (values.isBelow("temperature", "0", "32")) {
      working.stop("technique.bonding.stop.frozen", shown(values));
    }
    acid(values.number("ph"), working);
    double dose = values.number("dose");
    if (values.get("dose").standing() == Standing.UNVERIFIED) {
      working.warn("technique.bonding.warn.dose", dose);
    } else if (dose < LEAST_DOSE || dose > MOST_DOSE) {
      working.warn("technique.bonding.warn.dose-odd", dose, LEAST_DOSE, MOST_DOSE);
    }
    return working
        .warn("technique.bonding.warn.label")
        .source("Times of equal bond at pH 6, pH 4 to 9, best 6 to 7: slides of a supplier")
        .source("Slurry 1 : 4, 6 h refrigerated: another supplier's page")
        .source("0 to about 65 °C, optimum 45 to 55 °C: the slides; about 52 °C on another page")
        .result();
  }

  /** The code prints 41 °F and 5 °C; each is judged in its own scale. */
  private static boolean isCold(Values values) {
    return values.isAtMost("temperature", "5", "41");
  }

  private static void times(Values values, Working working) {
    double celsius = values.number("temperature");
    double slides = 0;
    if (BondTime.isTabled(celsius)) {
      slides =
          working.figure(
              "bySlides", BondTime.minutes(celsius), "technique.bonding.why.bySlides", celsius);
    } else if (celsius < BondTime.COLDEST) {
      working.warn("technique.bonding.warn.colder", celsius, BondTime.COLDEST);
    } else {
      working.warn("technique.bonding.warn.hotter", celsius, BondTime.WARMEST);
    }
    if (isCold(values)) {
      working.figure("byGuide", BY_GUIDE, "technique.bonding.why.byGuide");
      if (slides > 0) {
        working.figure(
            "least", Math.max(slides, BY_GUIDE), "technique.bonding.why.least", slides, BY_GUIDE);
      } else {
        working.figure("least", BY_GUIDE, "technique.bonding.why.leastByGuide");
      }
    }
  }

  private static void acid(double ph, Working working) {
    if (ph < 4 || ph > 9) {
      working.stop("technique.bonding.stop.ph", ph);
    } else if (ph < 6 || ph > 7) {
      working.warn("technique.bonding.warn.ph", ph);
    }
  }

  private static String shown(Values values) {
    String typed = values.get("temperature").typed();
    return typed.isEmpty() ? Figure.plain(values.number("temperature")) + " °C" : typed;
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    for (String figure : List.of("enzyme", "water")) {
      result
          .find(figure)
          .ifPresent(found -> additions.add(Addition.Weighed.of(figure, found.number())));
    }
    result
        .find("least")
        .ifPresent(
            least ->
                additions.add(
                    new Addition.Stands(
                        Duration.ofMinutes((long) StrictMath.ceil(least.number())),
                        "bond of transglutaminase in the cold: 240 min and 6 h published")));
    additions.add(new Addition.Caution("allergen-contact", List.of("enzyme")));
    additions.add(new Addition.Reminder(Message.of("technique.bonding.say.cold")));
    additions.add(
        new Addition.Reminder(
            Message.of(
                values.is("applied", "slurry")
                    ? "technique.bonding.say.slurry"
                    : "technique.bonding.say.dust")));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of("meat", "1 kg", "temperature", "5 °C");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    double here = values.number("temperature");
    double mark = Math.min(Math.max(here, BondTime.COLDEST), BondTime.WARMEST);
    return Optional.of(
        Curve.of(
            input("temperature"),
            output("bySlides"),
            BondTime.COLDEST,
            BondTime.WARMEST,
            mark,
            BondTime::minutes));
  }
}
