package halfgram.technique.foam;

import halfgram.measure.Message;
import halfgram.technique.Addition;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Lecithin;
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
 * An air of lecithin.
 *
 * <p>Rules. The dose is counted on everything else; where the line is not weighed yet, the dose
 * wanted is judged instead and its grams are worked out. The foam is made to order, unless the
 * batch itself is foam: then it is good as long as a foam stands.
 *
 * <p>Example: 225 g of juice, 275 g of water and 1.5 g of lecithin: 0.300 %. Source: published
 * recipes and four pages on lecithin foams.
 */
public final class FoamTechnique implements Technique {
  private static final List<Input> INPUTS =
      List.of(
          Input.guess("lecithin", "g", 0, 100_000, 0).ofLine("lecithin"),
          Input.needed("mix", "g", 0, 10_000_000).from(Origin.MIX),
          Input.guess("xanthan", "g", 0, 100_000, 0).ofLine("xanthan"),
          Input.published("wanted", "%", 0.05, 5, 0.3, "published lime air: 1.5 g on 500 g"),
          Input.choice("made", "to-order", "ahead"),
          Lecithin.origin());

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("dose", "%"),
          new Output("doseOfMix", "%"),
          new Output("lecithinWanted", "g"),
          new Output("foamLeast", "g"),
          new Output("foamMost", "g"),
          new Output("airLeast", "g"),
          new Output("airMost", "g"),
          new Output("xanthanDose", "%"),
          new Output("xanthanLeast", "g"),
          new Output("xanthanMost", "g"),
          new Output("stands", "min"));

  @Override
  public String name() {
    return "foam";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("lecithin"), Part.line("xanthan").orNone());
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
    Row row = tables.row("agents", "lecithin");
    double lecithin = values.number("lecithin");
    double xanthan = values.number("xanthan");
    double mix = values.number("mix");
    double rest = mix - lecithin - xanthan;
    if (rest <= 0) {
      return working.stop("technique.foam.stop.nothing-to-foam", mix).result();
    }
    double dose = dose(working, values, lecithin, rest);
    if (lecithin > 0) {
      working.figure(
          "doseOfMix", 100 * lecithin / mix, "technique.foam.why.doseOfMix", lecithin, mix);
    }
    double wanted = values.number("wanted");
    working.figure(
        "lecithinWanted", wanted / 100 * rest, "technique.foam.why.lecithinWanted", wanted, rest);
    grams(working, "foamLeast", row.number("foam_low_percent"), rest);
    grams(working, "foamMost", row.number("foam_high_percent"), rest);
    grams(working, "airLeast", row.number("low_percent"), rest);
    grams(working, "airMost", row.number("high_percent"), rest);
    judge(working, row, dose);
    xanthan(working, row, xanthan, rest);
    working.figure("stands", row.number("foam_stands_min"), "technique.foam.why.stands");
    Lecithin.warn(
        working, values, "technique.foam.warn.allergen-unknown", "technique.foam.warn.allergen");
    working.warn("technique.foam.warn.note", row.text("note"));
    return working.source(row.source()).result();
  }

  private static double dose(Working working, Values values, double lecithin, double rest) {
    return lecithin > 0
        ? working.figure("dose", 100 * lecithin / rest, "technique.foam.why.dose", lecithin, rest)
        : working.figure("dose", values.number("wanted"), "technique.foam.why.dose-wanted");
  }

  private static void grams(Working working, String figure, double percent, double rest) {
    working.figure(figure, percent / 100 * rest, "technique.foam.why.grams", percent, rest);
  }

  private static void judge(Working working, Row row, double dose) {
    double low = row.number("low_percent");
    double high = row.number("high_percent");
    if (Limits.below(dose, low)) {
      working.warn("technique.foam.warn.dose-low", dose, low);
    } else if (Limits.above(dose, high)) {
      working.warn("technique.foam.warn.dose-high", dose, high);
    } else if (Limits.outside(
        dose, row.number("foam_low_percent"), row.number("foam_high_percent"))) {
      working.warn("technique.foam.warn.dose-disputed", dose);
    }
  }

  private static void xanthan(Working working, Row row, double xanthan, double rest) {
    double low = row.number("foam_xanthan_low_percent");
    double high = row.number("foam_xanthan_high_percent");
    double dose = 100 * xanthan / rest;
    working.figure("xanthanDose", dose, "technique.foam.why.xanthanDose", xanthan, rest);
    grams(working, "xanthanLeast", low, rest);
    grams(working, "xanthanMost", high, rest);
    if (xanthan > 0 && Limits.outside(dose, low, high)) {
      working.warn("technique.foam.warn.xanthan", dose, low, high);
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    if (result.find("stands").isEmpty()) {
      return List.of();
    }
    List<Addition> additions = new ArrayList<>();
    additions.add(Addition.Weighed.of("lecithinWanted", result.number("lecithinWanted")));
    double minutes = result.number("stands");
    boolean ahead = values.is("made", "ahead");
    if (ahead) {
      additions.add(
          new Addition.Good(
              Duration.ofMinutes((long) minutes), "four pages on lecithin foams: about 30 min"));
    }
    additions.add(
        new Addition.Reminder(
            Message.of(
                ahead ? "technique.foam.say.skim" : "technique.foam.say.to-order",
                Figure.plain(minutes))));
    additions.addAll(Lecithin.additions(values));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of("lecithin", "1.5 g", "mix", "501.5 g", "origin", "soy");
  }
}
