package halfgram.technique.methylcellulose;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.measure.Temperature;
import halfgram.technique.Addition;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Limits;
import halfgram.technique.Output;
import halfgram.technique.Part;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Tables.Row;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Methylcellulose in a liquid.
 *
 * <p>Rules. It is dispersed hot in a third of the liquid, where it does not dissolve, and finished
 * with the rest cold, below the temperature of its grade, where it does. It gels when it is heated
 * and is liquid again when it cools.
 *
 * <p>Example: 10 g in 1010 g: 1 %; 333.3 g hot, 666.7 g cold, of which 206.8 g as ice end at 12 °C
 * with the hot part at 80 °C and nothing gained from the room, so that it takes more. Source: three
 * pages on methylcellulose; heat balance computed.
 */
public final class MethylcelluloseTechnique implements Technique {
  private static final double NOT_READ = 0;
  private static final double EVERYTHING_ELSE = 0;
  private static final String COLD_GRADE = "below-12";

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("amount", "g", 0, 1_000_000).ofLine("methylcellulose"),
          Input.needed("mix", "g", 0, 10_000_000).from(Origin.MIX),
          Input.guess("liquid", "g", 0, 10_000_000, EVERYTHING_ELSE).ofLine("liquid"),
          Input.choice("grade", COLD_GRADE, "below-25").from(Origin.TUB),
          Input.published(
              "hotShare", "%", 10, 60, 100.0 / 3, "three pages on methylcellulose: a third"),
          Input.guess("hotAt", "°C", 50, 100, 80),
          Input.common("coldAt", "°C", 0, 30, 4),
          Input.guess("rest", "h", 0, 72, 8),
          Input.guess("serve", "°C", -20, 100, 60),
          Input.number(
                  "ph", "1", 0, 14, NOT_READ, Standing.UNVERIFIED, "not read; 0 means not read")
              .from(Origin.READING));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("dose", "%"),
          new Output("doseOfMix", "%"),
          new Output("least", "g"),
          new Output("most", "g"),
          new Output("hotPart", "g"),
          new Output("coldPart", "g"),
          new Output("hotAbove", "°C"),
          new Output("finishBelow", "°C"),
          new Output("joined", "°C"),
          new Output("ice", "g"),
          new Output("rest", "h"),
          new Output("gathersFrom", "°C"),
          new Output("gelsAbove", "°C"));

  @Override
  public String name() {
    return "methylcellulose";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("methylcellulose"), Part.line("liquid").orNone());
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
    Row row = tables.row("agents", "methylcellulose");
    double amount = values.number("amount");
    double mix = values.number("mix");
    double rest = mix - amount;
    double typed = values.number("liquid");
    double liquid = typed == EVERYTHING_ELSE ? rest : typed;
    if (rest <= 0 || Limits.above(liquid, rest)) {
      return working.stop("technique.methylcellulose.stop.liquid", liquid, amount, mix).result();
    }
    dose(working, row, amount, rest);
    double hot = liquid * values.number("hotShare") / 100;
    parting(working, values, row, liquid, hot);
    serving(working, values, row);
    acid(working, values, row);
    working.warn("technique.methylcellulose.warn.note", row.text("note"));
    return working.source(row.source()).source("heat balance, computed").result();
  }

  private static void dose(Working working, Row row, double amount, double rest) {
    double low = row.number("low_percent");
    double high = row.number("high_percent");
    double dose = 100 * amount / rest;
    double mix = amount + rest;
    working.figure("dose", dose, "technique.methylcellulose.why.dose", amount, rest);
    working.figure(
        "doseOfMix", 100 * amount / mix, "technique.methylcellulose.why.doseOfMix", amount, mix);
    String why = "technique.methylcellulose.why.range";
    working.figure("least", low / 100 * rest, why, low, rest);
    working.figure("most", high / 100 * rest, why, high, rest);
    if (Limits.below(dose, low)) {
      working.warn("technique.methylcellulose.warn.dose-low", dose, low);
    } else if (Limits.above(dose, high)) {
      working.warn("technique.methylcellulose.warn.dose-high", dose, high);
    }
  }

  private static void parting(Working working, Values values, Row row, double liquid, double hot) {
    double share = values.number("hotShare");
    double cold = liquid - hot;
    double hotAt = values.number("hotAt");
    double coldAt = values.number("coldAt");
    double above = row.number("hydrate_low_c");
    String grade = values.is("grade", COLD_GRADE) ? "dissolves_below_c" : "dissolves_below_other_c";
    double below = row.number(grade);
    Blend blend = new Blend(hot, hotAt, cold, coldAt);
    working.figure("hotPart", hot, "technique.methylcellulose.why.hotPart", share, liquid);
    working.figure("coldPart", cold, "technique.methylcellulose.why.coldPart", liquid, hot);
    working.figure("hotAbove", above, "technique.methylcellulose.why.hotAbove");
    working.figure("finishBelow", below, "technique.methylcellulose.why.finishBelow");
    double joined =
        working.figure(
            "joined",
            blend.celsius(),
            "technique.methylcellulose.why.joined",
            hot,
            hotAt,
            cold,
            coldAt);
    double ice =
        working.figure("ice", blend.ice(below), "technique.methylcellulose.why.ice", below);
    double hours = values.number("rest");
    working.figure("rest", hours, "technique.methylcellulose.why.rest");
    if (hotAt <= above) {
      working.warn("technique.methylcellulose.warn.not-hot", hotAt, above);
    }
    if (ice >= cold) {
      working.warn("technique.methylcellulose.warn.ice", joined, below);
    } else if (joined >= below) {
      working.warn("technique.methylcellulose.warn.too-warm", joined, below, ice);
    }
  }

  private static void serving(Working working, Values values, Row row) {
    double gathers = row.number("set_other_low_c");
    double gels = row.number("set_low_c");
    double serve = values.number("serve");
    working.figure("gathersFrom", gathers, "technique.methylcellulose.why.gathersFrom");
    working.figure("gelsAbove", gels, "technique.methylcellulose.why.gelsAbove");
    if (serve <= gels) {
      working.warn("technique.methylcellulose.warn.served-cold", serve, gels);
    }
  }

  private static void acid(Working working, Values values, Row row) {
    double ph = values.number("ph");
    double low = row.number("ph_low");
    double high = row.number("ph_high");
    if (ph != NOT_READ && Limits.outside(ph, low, high)) {
      working.warn("technique.methylcellulose.warn.ph", ph, low, high);
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    if (result.find("hotPart").isEmpty()) {
      return List.of();
    }
    List<Addition> additions = new ArrayList<>();
    long minutes = (long) StrictMath.ceil(result.number("rest") * 60);
    if (minutes > 0) {
      additions.add(new Addition.Stands(Duration.ofMinutes(minutes), "hydrates cold; a guess"));
    }
    additions.add(
        new Addition.Reminder(
            Message.of(
                "technique.methylcellulose.say.hot",
                Figure.plain(values.number("hotShare")),
                Temperature.celsius(Figure.plain(result.number("hotAbove"))))));
    additions.add(
        new Addition.Reminder(
            Message.of(
                "technique.methylcellulose.say.cold",
                Temperature.celsius(Figure.plain(result.number("finishBelow"))))));
    additions.add(
        new Addition.Reminder(
            Message.of(
                "technique.methylcellulose.say.serve",
                Temperature.celsius(Figure.plain(result.number("gelsAbove"))),
                Temperature.celsius(Figure.plain(result.number("gathersFrom"))))));
    additions.add(new Addition.Caution("boiling-pot"));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of("amount", "10 g", "mix", "1010 g");
  }
}
