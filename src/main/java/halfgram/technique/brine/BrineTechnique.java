package halfgram.technique.brine;

import halfgram.measure.Message;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Figure;
import halfgram.technique.Input;
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

/** Meat in salt water, to rest or pulled out early, or with the brine injected; cured or not. */
public final class BrineTechnique implements Technique {
  private static final String NAME = "brine";

  @Override
  public String name() {
    return NAME;
  }

  /** What an input, or a word of a choice, is called. */
  static Message called(String input) {
    return Message.of("technique." + NAME + ".in." + input);
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("meat"), Part.line("water").orNone(), Part.line("cure").orNone());
  }

  @Override
  public List<Input> inputs() {
    return BrineInputs.ALL;
  }

  @Override
  public List<Output> outputs() {
    return BrineInputs.OUTPUTS;
  }

  @Override
  public Result work(Values values, Tables tables) {
    Brine brine = new Brine(values, tables);
    Working working = new Working(this);
    percents(brine, working);
    if (working.result().stops().isEmpty()) {
      if (brine.is("way", "equilibrium")) {
        conventions(brine, working);
      } else {
        strong(brine, working);
      }
      new Curing(brine, working).work();
      if (Double.isFinite(brine.cure())) {
        salt(brine, working);
      }
    }
    if (brine.isCured()) {
      working.caution("regulated-cure");
    }
    return working
        .caution("strong-salt")
        .source("Share of meat and water (A): rule of thumb, two pages; water phase (C): a forum")
        .source("Mass fraction (B): by definition")
        .result();
  }

  private static void percents(Brine brine, Working working) {
    boolean rest = brine.is("way", "equilibrium");
    check(rest ? Percent.TARGET : Percent.STRENGTH, brine, working);
    boolean taken = brine.isCured() && brine.is("method", "pick-up");
    if (brine.is("way", "injected") || taken) {
      if (brine.isSaid("pump")) {
        check(Percent.PUMP, brine, working);
      } else {
        working.stop("technique.brine.stop.no-pump");
      }
    }
    if (brine.isCured()) {
      if (brine.isSaid("cureNitrite")) {
        check(Percent.CURE, brine, working);
      } else {
        working.stop("technique.brine.stop.no-nitrite");
      }
    }
    if (!rest && brine.number("water") <= 0) {
      working.stop("technique.brine.stop.no-water");
    }
  }

  private static void check(Percent percent, Brine brine, Working working) {
    percent.check(brine.number(percent.input()), called(percent.input()), working);
  }

  private static void conventions(Brine brine, Working working) {
    double target = brine.share("target");
    double percent = brine.number("target");
    Salt salts = brine.salts();
    working.figure(
        "saltTotal",
        salts.ofTotal(target),
        "technique.brine.why.saltTotal",
        percent,
        salts.meat(),
        salts.water());
    working.figure(
        "saltFraction",
        salts.asFraction(target),
        "technique.brine.why.saltFraction",
        percent,
        salts.meat() + salts.water() + salts.others());
    working.figure(
        "saltWaterPhase",
        salts.ofWaterPhase(target),
        "technique.brine.why.saltWaterPhase",
        percent,
        brine.number("meatWater"),
        salts.meat(),
        salts.water());
    working.figure(
        "saltWaterFraction",
        salts.asWaterFraction(target),
        "technique.brine.why.saltWaterFraction",
        percent);
    if (percent < 0.5 || percent > 1) {
      working.warn("technique.brine.warn.target", percent);
    }
  }

  private static void strong(Brine brine, Working working) {
    double salt = brine.salt();
    double mass =
        working.figure(
            "brineMass",
            brine.number("water") + brine.number("others") + salt,
            "technique.brine.why.brineMass",
            brine.number("water"),
            brine.number("others"),
            salt);
    if (!brine.is("way", "injected")) {
      working.warn("technique.brine.warn.gradient", brine.number("strength"));
      return;
    }
    double meat = brine.number("meat");
    double taken =
        working.figure(
            "injected",
            meat * brine.share("pump"),
            "technique.brine.why.injected",
            brine.number("pump"),
            meat);
    working.figure("pumpedMass", meat + taken, "technique.brine.why.pumpedMass", meat, taken);
    working.figure(
        "saltInMeat",
        Salt.injected(brine.share("strength"), brine.share("pump")) * 100,
        "technique.brine.why.saltInMeat",
        brine.number("strength"),
        taken,
        meat + taken);
    if (taken > mass) {
      working.stop("technique.brine.stop.too-little", taken, mass);
    }
  }

  private static void salt(Brine brine, Working working) {
    double all =
        working.figure(
            "saltInAll",
            brine.saltThere(),
            "technique.brine.why.saltInAll",
            called("way." + brine.values().word("way")));
    double cures = brine.curesSalt();
    working.figure("salt", brine.plainSalt(), "technique.brine.why.salt", all, cures);
    if (!brine.is("way", "injected")) {
      working.figure(
          "atRest",
          brine.salts().atRest(all) * 100,
          "technique.brine.why.atRest",
          all,
          brine.number("meat"),
          brine.number("water") + brine.number("others") + all);
    }
    if (cures > brine.salt()) {
      working.warn("technique.brine.warn.cure-salt", cures, brine.salt());
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    // What is stopped weighs nothing, yet its lines name a figure that there is.
    List<String> weighed = values.is("cure", "none") ? List.of("salt") : List.of("salt", "cure");
    for (String figure : weighed) {
      double grams = result.find(figure).map(Figure::number).orElse(0.0);
      additions.add(Addition.Weighed.of(figure, grams));
    }
    for (String code : result.cautions()) {
      String carrier = code.equals("regulated-cure") ? "cure" : "salt";
      additions.add(new Addition.Caution(code, List.of(carrier)));
    }
    additions.add(new Addition.Reminder(Message.of("technique.brine.say.cold")));
    switch (values.word("way")) {
      case "injected" ->
          additions.add(
              new Addition.Reminder(
                  Message.of(
                      "technique.brine.say.weigh", Figure.plain(100 + values.number("pump")))));
      case "gradient" ->
          additions.add(
              new Addition.Reminder(
                  Message.of("technique.brine.say.out", shown(result, "atRest"))));
      default -> {
        // At rest nothing more happens: there is no time to watch.
      }
    }
    if (!values.is("cure", "none")) {
      additions.add(new Addition.Reminder(Message.of("technique.brine.say.cure")));
    }
    return additions;
  }

  private static String shown(Result result, String figure) {
    return result.find(figure).map(Figure::shown).orElse("-");
  }

  @Override
  public Map<String, String> example() {
    return Map.of("meat", "1 kg", "water", "1 kg", "target", "0.75 %");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    if (!values.is("way", "gradient")) {
      return Optional.empty();
    }
    double meat = values.number("meat");
    return Optional.of(
        Curve.of(
            input("meat"),
            output("atRest"),
            meat / 10,
            meat * 3,
            meat,
            grams -> {
              Brine brine = new Brine(values.with("meat", grams), tables);
              return brine.salts().atRest(brine.saltThere()) * 100;
            }));
  }
}
