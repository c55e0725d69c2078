package halfgram.technique.gel;

import halfgram.measure.Temperature;
import halfgram.technique.Figure;
import halfgram.technique.Working;

/** What the cook reads at the task: how it is dispersed, how hot it gets, when it is poured. */
final class Reminders {
  private final Working working;
  private final Agent agent;

  Reminders(Working working, Agent agent) {
    this.working = working;
    this.agent = agent;
  }

  void all() {
    dispersing();
    if (agent.has("brix_dissolve_most")) {
      working.remind("technique.gel.say.sugar-later", agent.number("brix_dissolve_most"));
    }
    heating();
    if (agent.setsHot()) {
      working.remind("technique.gel.say.sets-hot", celsius(agent.number("set_low_c")));
    } else if (!Double.isNaN(agent.setsFrom())) {
      working.remind("technique.gel.say.pour", celsius(agent.setsFrom()));
      if (!Double.isNaN(agent.meltsFrom())) {
        working.remind("technique.gel.say.hold", celsius(agent.meltsFrom()));
      }
    }
  }

  /** Where no source says how it is dispersed, nothing is said. */
  private void dispersing() {
    switch (agent.row().text("disperse")) {
      case "cold" -> working.remind("technique.gel.say.cold");
      case "hot" -> hot();
      case "sugar" -> working.remind("technique.gel.say.with-sugar");
      case "bloom" -> working.remind("technique.gel.say.bloom");
      case "dust" -> working.remind("technique.gel.say.bond-cold");
      default -> {
        // What it is heated to says all there is to say.
      }
    }
  }

  private void hot() {
    if (agent.setsHot()) {
      working.remind(
          "technique.gel.say.disperse-hot",
          celsius(agent.number("hydrate_low_c")),
          celsius(agent.number("dissolves_below_c")),
          celsius(agent.number("dissolves_below_other_c")));
    } else {
      working.remind("technique.gel.say.hot");
    }
  }

  private void heating() {
    double from = agent.number("hydrate_low_c");
    if (agent.is("boils", "yes")) {
      working.remind("technique.gel.say.boil");
    } else if (agent.has("thickens_above_c")) {
      working.remind("technique.gel.say.thickens", celsius(agent.number("thickens_above_c")));
    } else if (agent.has("hydrate_high_c")) {
      working.remind(
          "technique.gel.say.hydrate-between",
          celsius(from),
          celsius(agent.number("hydrate_high_c")));
    } else if (agent.has("hydrate_low_c") && !agent.setsHot()) {
      working.remind("technique.gel.say.hydrate-above", celsius(from));
    }
  }

  private static Temperature celsius(double degrees) {
    return Temperature.celsius(Figure.plain(degrees));
  }
}
