package halfgram.technique.gel;

import halfgram.measure.Standing;
import halfgram.technique.Addition;
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

/**
 * A gel or thickener in a mix.
 *
 * <p>Rules. The dose is counted on everything else in the mix, as the tables do; on the whole mix
 * it is shown beside it. It is poured above the highest temperature at which any source lets it
 * set, and holds below the lowest at which it begins to melt. A pH is judged only where one was
 * read, and asked for where it decides.
 *
 * <p>Example: 5 g of agar in 505 g: 1 % of the rest, 0.990 % of the mix; boil it, pour above 45 °C,
 * set below 35 °C, holds below 80 °C. Source: see the table of agents, row by row.
 */
public final class GelTechnique implements Technique {
  static final String NO = "no";
  private static final String TABLE = "agents";
  private static final double NOT_READ = 0;

  private static final List<Input> INPUTS =
      List.of(
          Input.row("agent", TABLE),
          Input.needed("amount", "g", 0, 1_000_000).ofLine("agent"),
          Input.needed("mix", "g", 0, 10_000_000).from(Origin.MIX),
          Input.number(
                  "ph", "1", 0, 14, NOT_READ, Standing.UNVERIFIED, "not read; 0 means not read")
              .from(Origin.READING),
          Input.common("serve", "°C", -20, 100, 8),
          Input.guess("calcium", "mg/kg", 0, 20_000, 0).from(Input.Origin.CALCIUM),
          Input.choice("potassium", NO, "yes"),
          Input.guess("partner", "g", 0, 1_000_000, 0).ofLine("partner"),
          Input.guess("sugar", "°Bx", 0, 90, 0),
          Input.guess("alcohol", "%", 0, 96, 0),
          Input.choice("freshFruit", NO, "yes"),
          Input.choice("milk", NO, "yes").from(Input.Origin.MILK),
          Input.choice("place", "fridge", "room", "blast"),
          Input.common("depth", "mm", 1, 400, Agent.LAYER_MM));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("dose", "%"),
          new Output("doseOfMix", "%"),
          new Output("least", "g"),
          new Output("most", "g"),
          new Output("usualLeast", "g"),
          new Output("usualMost", "g"),
          new Output("hydrateFrom", "°C"),
          new Output("hydrateTo", "°C"),
          new Output("disperseAbove", "°C"),
          new Output("finishBelow", "°C"),
          new Output("finishOther", "°C"),
          new Output("thickensAbove", "°C"),
          new Output("dissolveBelow", "°Bx"),
          new Output("pourAbove", "°C"),
          new Output("setsBelow", "°C"),
          new Output("setsOther", "°C"),
          new Output("gelsAbove", "°C"),
          new Output("meltsFrom", "°C"),
          new Output("meltsTo", "°C"),
          new Output("hysteresisLeast", "°C"),
          new Output("hysteresisMost", "°C"),
          new Output("holdBelow", "°C"),
          new Output("stand", "min"),
          new Output("calcium", "mg"),
          new Output("calciumLeast", "mg"),
          new Output("calciumMost", "mg"));

  @Override
  public String name() {
    return "gel";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("agent"), Part.line("partner").orNone());
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
    Agent agent = new Agent(tables.row(TABLE, values.word("agent")));
    double amount = values.number("amount");
    double mix = values.number("mix");
    if (mix <= amount) {
      return working.stop("technique.gel.stop.nothing-else", amount, mix).result();
    }
    dose(working, agent, amount, mix);
    temperatures(working, agent);
    stand(working, agent, values);
    calcium(working, agent, values);
    new Remarks(working, agent, values).all(100 * amount / (mix - amount));
    new Reminders(working, agent).all();
    if (agent.is("boils", "yes")) {
      working.caution("boiling-pot");
    }
    return working.source(agent.row().source()).result();
  }

  private static void dose(Working working, Agent agent, double amount, double mix) {
    double rest = mix - amount;
    working.figure("dose", 100 * amount / rest, "technique.gel.why.dose", amount, rest);
    working.figure("doseOfMix", 100 * amount / mix, "technique.gel.why.doseOfMix", amount, mix);
    grams(working, agent, "least", "low_percent", rest, "technique.gel.why.least");
    grams(working, agent, "most", "high_percent", rest, "technique.gel.why.most");
    grams(working, agent, "usualLeast", "usual_low_percent", rest, "technique.gel.why.usualLeast");
    grams(working, agent, "usualMost", "usual_high_percent", rest, "technique.gel.why.usualMost");
  }

  private static void grams(
      Working working, Agent agent, String figure, String field, double rest, String why) {
    if (agent.has(field)) {
      double percent = agent.number(field);
      working.figure(figure, percent / 100 * rest, why, percent, rest);
    }
  }

  private static void temperatures(Working working, Agent agent) {
    if (agent.setsHot()) {
      looked(working, agent, "disperseAbove", "hydrate_low_c", "technique.gel.why.disperseAbove");
      looked(working, agent, "finishBelow", "dissolves_below_c", "technique.gel.why.finishBelow");
      looked(
          working,
          agent,
          "finishOther",
          "dissolves_below_other_c",
          "technique.gel.why.finishOther");
      looked(working, agent, "gelsAbove", "set_low_c", "technique.gel.why.gelsAbove");
    } else {
      looked(working, agent, "hydrateFrom", "hydrate_low_c", "technique.gel.why.hydrateFrom");
      looked(working, agent, "hydrateTo", "hydrate_high_c", "technique.gel.why.hydrateTo");
      looked(working, agent, "thickensAbove", "thickens_above_c", "technique.gel.why.thickens");
      looked(
          working, agent, "dissolveBelow", "brix_dissolve_most", "technique.gel.why.dissolveBelow");
      setting(working, agent);
    }
  }

  /** A figure that stands in the agent's row as it is. */
  private static void looked(
      Working working, Agent agent, String figure, String field, String why) {
    if (agent.has(field)) {
      working.figure(figure, agent.number(field), why, agent.name());
    }
  }

  private static void setting(Working working, Agent agent) {
    if (Double.isNaN(agent.setsFrom())) {
      return;
    }
    working.figure("pourAbove", agent.setsFrom(), "technique.gel.why.pourAbove", agent.name());
    working.figure("setsBelow", agent.setsBelow(), "technique.gel.why.setsBelow", agent.name());
    if (agent.has("set_other_high_c")) {
      double other = agent.number("set_other_high_c");
      double first = agent.number("set_high_c");
      working.figure("setsOther", other, "technique.gel.why.setsOther", first, other);
    }
    if (!Double.isNaN(agent.meltsFrom())) {
      melting(working, agent);
    }
  }

  private static void melting(Working working, Agent agent) {
    double from = agent.meltsFrom();
    double to = agent.meltsTo();
    double least = agent.leastHysteresis();
    double most = agent.mostHysteresis();
    if (agent.has("melt_low_c")) {
      working.figure("meltsFrom", from, "technique.gel.why.meltsFrom", agent.name());
      working.figure("meltsTo", to, "technique.gel.why.meltsTo", agent.name());
      working.figure("hysteresisLeast", least, "technique.gel.why.hysteresisLeast", from);
      working.figure("hysteresisMost", most, "technique.gel.why.hysteresisMost", to);
    } else {
      String over = "technique.gel.why.meltsOver";
      working.figure("meltsFrom", from, over, agent.number("set_low_c"), least);
      working.figure("meltsTo", to, over, agent.setsFrom(), most);
      working.figure("hysteresisLeast", least, "technique.gel.why.hysteresis", agent.name());
      working.figure("hysteresisMost", most, "technique.gel.why.hysteresis", agent.name());
    }
    working.figure("holdBelow", from, "technique.gel.why.holdBelow", from);
  }

  private static void stand(Working working, Agent agent, Values values) {
    double depth = values.number("depth");
    double minutes = agent.stand(values.word("place"), depth);
    if (!Double.isNaN(minutes)) {
      working.figure("stand", minutes, "technique.gel.why.stand", depth, Agent.LAYER_MM);
    }
  }

  private static void calcium(Working working, Agent agent, Values values) {
    if (!agent.has("calcium_mg_per_g_low")) {
      return;
    }
    double amount = values.number("amount");
    double mix = values.number("mix");
    double there = values.number("calcium") * mix / 1000;
    double low = agent.number("calcium_mg_per_g_low");
    double high = agent.number("calcium_mg_per_g_high");
    working.figure("calcium", there, "technique.gel.why.calcium", values.number("calcium"), mix);
    working.figure("calciumLeast", low * amount, "technique.gel.why.calciumLeast", low, amount);
    working.figure("calciumMost", high * amount, "technique.gel.why.calciumMost", high, amount);
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    result
        .find("stand")
        .ifPresent(
            stand ->
                additions.add(
                    new Addition.Stands(
                        Duration.ofMinutes((long) StrictMath.ceil(stand.number())),
                        values.is("agent", "transglutaminase")
                            ? "supplier of enzymes: 6 h refrigerated"
                            : "time to set, common practice")));
    result.reminders().forEach(said -> additions.add(new Addition.Reminder(said)));
    result.cautions().forEach(code -> additions.add(new Addition.Caution(code)));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of("agent", "agar", "amount", "5 g", "mix", "505 g", "serve", "60 °C");
  }
}
