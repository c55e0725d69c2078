package halfgram.technique.additive;

import halfgram.measure.Message;
import halfgram.measure.Standing;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Level of an additive against the maximum of a rule set.
 *
 * <p>Rules. A maximum counts the additive in the finished food, whatever bath or mix it came from.
 * The limit itself is allowed, anything above it is not. Where the rule is the amount that does the
 * job, or none is known, no number is made up. What goes into a cure is the brine's to reckon.
 *
 * <p>Example: 45 g of calcium gluconate in 1 kg of pudding: 45 000 mg/kg, all of what is allowed.
 * Source: see the table of additives, row by row.
 */
public final class AdditiveLevelTechnique implements Technique {
  private static final double MILLIGRAMS_PER_KILOGRAM = 1e6;
  private static final String TABLE = "additives";

  private static final List<Input> INPUTS =
      List.of(
          Input.row("additive", TABLE),
          Input.needed("amount", "g", 0, 1_000_000).ofLine("additive"),
          Input.needed("mix", "g", 0, 10_000_000).from(Origin.MIX),
          Input.guess("strength", "%", 0.0001, 100, 100).from(Origin.TUB),
          Input.guess("yield", "%", 1, 10_000, 100),
          Input.guess("carried", "%", 0.01, 100, 100));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("counted", "g"),
          new Output("finished", "g"),
          new Output("level", "mg/kg"),
          new Output("levelPercent", "%"),
          new Output("maximum", "mg/kg"),
          new Output("ofMaximum", "%"),
          new Output("most", "g"),
          new Output("left", "g"),
          new Output("undeclared", "g"),
          new Output("declareFrom", "g"));

  @Override
  public String name() {
    return "additive-level";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("additive"));
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
    Row row = tables.row(TABLE, values.word("additive"));
    notes(working, row);
    double mix = values.number("mix");
    if (mix == 0) {
      return working
          .stop("technique.additive-level.stop.no-mix", row.text("name"), row.text("category"))
          .source(row.source())
          .result();
    }
    double amount = values.number("amount");
    double perGram = values.number("strength") / 100 * factor(row);
    double counted =
        working.figure(
            "counted",
            amount * perGram,
            "technique.additive-level.why.counted",
            amount,
            values.number("strength"),
            factor(row));
    double share = values.number("carried") / 100;
    double finished =
        working.figure(
            "finished",
            mix * values.number("yield") / 100,
            "technique.additive-level.why.finished",
            mix,
            values.number("yield"));
    double level =
        working.figure(
            "level",
            MILLIGRAMS_PER_KILOGRAM * counted * share / finished,
            "technique.additive-level.why.level",
            counted,
            100 * share,
            finished);
    working.figure("levelPercent", level / 10_000, "technique.additive-level.why.levelPercent");
    if (row.has("maximum_mg_per_kg")) {
      double most = finished / MILLIGRAMS_PER_KILOGRAM / share / perGram;
      judge(working, row, level, most * row.number("maximum_mg_per_kg"), amount);
    } else {
      unnumbered(working, row, amount);
    }
    return working.source(row.source()).result();
  }

  private static double factor(Row row) {
    return row.has("expressed_factor") ? row.number("expressed_factor") : 1;
  }

  private static void judge(Working working, Row row, double level, double most, double amount) {
    double maximum = row.number("maximum_mg_per_kg");
    working.figure("maximum", maximum, "technique.additive-level.why.maximum", row.source());
    working.figure(
        "ofMaximum", 100 * level / maximum, "technique.additive-level.why.ofMaximum", level);
    boolean declared = row.text("kind").equals("declare");
    boolean counts = row.text("counts_at_limit").equals("yes");
    if (declared) {
      String figure = counts ? "declareFrom" : "undeclared";
      working.figure(figure, most, "technique.additive-level.why.most", maximum);
    } else {
      working.figure("most", most, "technique.additive-level.why.most", maximum);
      working.figure("left", most - amount, "technique.additive-level.why.left", most, amount);
    }
    boolean above = counts ? !Limits.below(level, maximum) : Limits.above(level, maximum);
    if (!above) {
      return;
    }
    if (declared) {
      working.warn(
          counts
              ? "technique.additive-level.warn.declare-from"
              : "technique.additive-level.warn.declare-above",
          row.text("name"),
          level,
          maximum);
    } else {
      working.stop(
          "technique.additive-level.stop.above",
          row.text("name"),
          level,
          maximum,
          row.text("category"));
    }
  }

  private static void unnumbered(Working working, Row row, double amount) {
    String name = row.text("name");
    switch (row.text("kind")) {
      case "gmp" -> working.warn("technique.additive-level.warn.gmp", name);
      case "quantum-satis" -> working.warn("technique.additive-level.warn.quantum-satis", name);
      case "banned" -> {
        if (amount > 0) {
          working.stop("technique.additive-level.stop.banned", name, row.text("category"));
        }
      }
      default -> working.warn("technique.additive-level.warn.none-known", name);
    }
  }

  private static void notes(Working working, Row row) {
    if (row.has("note")) {
      working.warn("technique.additive-level.warn.note", row.text("note"));
    }
    if (row.standing() == Standing.UNVERIFIED) {
      working.warn("technique.additive-level.warn.unverified", row.source());
    }
    if (row.own()) {
      working.warn("technique.additive-level.warn.own", row.source());
    }
    working.warn("technique.additive-level.warn.local");
    if (row.has("caution")) {
      working.caution(row.text("caution"));
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    double mix = values.number("mix");
    if (result.find("most").isPresent() && mix > 0) {
      additions.add(
          new Addition.Reminder(
              Message.of(
                  "technique.additive-level.say.most",
                  Figure.plain(1000 * result.number("most") / mix))));
    }
    result.cautions().forEach(code -> additions.add(new Addition.Caution(code)));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of(
        "additive", "us-calcium-gluconate-gelatins-puddings", "amount", "45 g", "mix", "1 kg");
  }
}
