package halfgram.technique.emulsion;

import halfgram.measure.Message;
import halfgram.technique.Addition;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/**
 * Oil in water with an emulsifier.
 *
 * <p>Rules. The dose of the agent is counted on everything else, oil and water together; where its
 * line is not weighed yet, the dose wanted is judged instead. The oil is a share of the whole mix;
 * what is neither oil nor agent is the water phase.
 *
 * <p>Example: 100 g of oil and 850 g of water with 50 g of gum arabic: 10 % of oil, 5.263 % of gum
 * on the rest, 50 g to 100 g of oil. Source: gum arabic 5 to 20 % common practice, lecithin 0.3 to
 * 1.0 % published.
 */
public final class EmulsionTechnique implements Technique {
  private static final double LEAST_OF_ITS_RANGE = 0;
  private static final String GUM = "gum-arabic";

  private static final List<Input> INPUTS =
      List.of(
          Input.choice("agent", GUM, "lecithin"),
          Input.guess("amount", "g", 0, 1_000_000, 0).ofLine("agent"),
          Input.needed("oil", "g", 0, 10_000_000).ofLine("oil"),
          Input.needed("mix", "g", 0, 10_000_000).from(Origin.MIX),
          Input.guess("wanted", "%", 0, 40, LEAST_OF_ITS_RANGE),
          Lecithin.origin());

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("oilShare", "%"),
          new Output("waterPhase", "g"),
          new Output("oilPerWater", "g"),
          new Output("dose", "%"),
          new Output("doseOfMix", "%"),
          new Output("agentWanted", "g"),
          new Output("least", "g"),
          new Output("most", "g"),
          new Output("agentPerOil", "g"));

  @Override
  public String name() {
    return "emulsion";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("agent"), Part.line("oil"));
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
    Row row = tables.row("agents", values.word("agent"));
    double amount = values.number("amount");
    double oil = values.number("oil");
    double mix = values.number("mix");
    double water = mix - oil - amount;
    if (water <= 0 || oil == 0) {
      return working.stop("technique.emulsion.stop.two-phases", oil, mix).result();
    }
    working.figure("oilShare", 100 * oil / mix, "technique.emulsion.why.oilShare", oil, mix);
    working.figure("waterPhase", water, "technique.emulsion.why.waterPhase", mix, oil, amount);
    working.figure(
        "oilPerWater", 100 * oil / water, "technique.emulsion.why.oilPerWater", oil, water);
    agent(working, values, row, oil + water);
    if (values.is("agent", "lecithin")) {
      Lecithin.warn(
          working,
          values,
          "technique.emulsion.warn.allergen-unknown",
          "technique.emulsion.warn.allergen");
    } else {
      working.warn("technique.emulsion.warn.practice");
    }
    return working.source(row.source()).result();
  }

  private static void agent(Working working, Values values, Row row, double rest) {
    double low = row.number("emulsion_low_percent");
    double high = row.number("emulsion_high_percent");
    double amount = values.number("amount");
    double typed = values.number("wanted");
    double wanted = typed == LEAST_OF_ITS_RANGE ? low : typed;
    double grams =
        working.figure(
            "agentWanted", wanted / 100 * rest, "technique.emulsion.why.agentWanted", wanted, rest);
    double dose =
        amount > 0
            ? working.figure(
                "dose", 100 * amount / rest, "technique.emulsion.why.dose", amount, rest)
            : working.figure("dose", wanted, "technique.emulsion.why.dose-wanted");
    double used = amount > 0 ? amount : grams;
    double of = 100 * used / (rest + used);
    working.figure("doseOfMix", of, "technique.emulsion.why.doseOfMix", used, rest + used);
    working.figure("least", low / 100 * rest, "technique.emulsion.why.range", low, rest);
    working.figure("most", high / 100 * rest, "technique.emulsion.why.range", high, rest);
    double oil = values.number("oil");
    working.figure(
        "agentPerOil", 100 * used / oil, "technique.emulsion.why.agentPerOil", used, oil);
    if (Limits.below(dose, low)) {
      working.warn("technique.emulsion.warn.dose-low", dose, low);
    } else if (Limits.above(dose, high)) {
      working.warn("technique.emulsion.warn.dose-high", dose, high);
    }
    double gels = row.number("gels_above_percent");
    if (Limits.above(dose, gels)) {
      working.warn("technique.emulsion.warn.soft-gel", dose, row.text("name"), gels);
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    if (result.find("agentWanted").isEmpty()) {
      return List.of();
    }
    List<Addition> additions = new ArrayList<>();
    additions.add(Addition.Weighed.of("agentWanted", result.number("agentWanted")));
    boolean gum = values.is("agent", GUM);
    additions.add(
        new Addition.Reminder(
            Message.of(gum ? "technique.emulsion.say.gum" : "technique.emulsion.say.lecithin")));
    if (!gum) {
      additions.addAll(Lecithin.additions(values));
    }
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of("amount", "50 g", "oil", "100 g", "mix", "1 kg");
  }
}
