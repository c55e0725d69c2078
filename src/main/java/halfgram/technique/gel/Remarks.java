package halfgram.technique.gel;

import halfgram.technique.Limits;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.List;

/** What a cook with experience would remark on. */
final class Remarks {
  /** A layer of 3 in cools too slowly to be sure; published on cooling of foods. */
  private static final double DEEP_MM = 76;

  private static final double ROOM = 20;

  /** About the pH from which konjac sets; published by its supplier. */
  private static final double ALKALI = 9;

  private final Working working;
  private final Agent agent;
  private final Values values;

  Remarks(Working working, Agent agent, Values values) {
    this.working = working;
    this.agent = agent;
    this.values = values;
  }

  void all(double dose) {
    dose(dose);
    acid();
    ions();
    sugar();
    enemies();
    kind();
    plate();
    standing();
    notes();
  }

  private void dose(double dose) {
    double low = agent.lowest();
    double high = agent.highest();
    if (Double.isNaN(low) && Double.isNaN(high)) {
      working.warn("technique.gel.warn.dose-unknown", agent.name());
    } else if (Limits.below(dose, low)) {
      working.warn("technique.gel.warn.dose-low", dose, low);
    } else if (Limits.above(dose, high)) {
      working.warn("technique.gel.warn.dose-high", dose, high);
    } else {
      inside(dose);
    }
  }

  /** Neither less nor more than any source gives, and yet not what all of them give. */
  private void inside(double dose) {
    double suspends = agent.number("suspends_high_percent");
    double low = agent.number("low_percent");
    double high = agent.number("high_percent");
    double usualLow = agent.number("usual_low_percent");
    double usualHigh = agent.number("usual_high_percent");
    if (Limits.below(dose, low) && Limits.above(dose, suspends)) {
      working.warn("technique.gel.warn.dose-between", dose, suspends, low, high);
    } else if (Limits.below(dose, low) && !Double.isNaN(suspends)) {
      working.warn("technique.gel.warn.dose-suspends", dose, low, high);
    } else if (Limits.outside(dose, usualLow, usualHigh)) {
      working.warn("technique.gel.warn.dose-unusual", dose, usualLow, usualHigh);
    } else if (Limits.outside(dose, low, high)) {
      working.warn("technique.gel.warn.dose-disputed", dose);
    }
  }

  private void acid() {
    double ph = values.number("ph");
    double low = agent.number("ph_low");
    double high = agent.number("ph_high");
    if (ph == 0) {
      if (agent.is("ph_decides", "yes")) {
        working.warn("technique.gel.warn.ph-unread", agent.name());
      }
      return;
    }
    double fallsOut = agent.number("ph_falls_out");
    if (ph <= fallsOut) {
      working.warn("technique.gel.warn.falls-out", ph, fallsOut);
    }
    if (Limits.outside(ph, low, high)) {
      working.warn("technique.gel.warn.ph", ph, low, high);
    } else if (Limits.outside(ph, agent.number("ph_best_low"), agent.number("ph_best_high"))) {
      working.warn("technique.gel.warn.ph-weak", ph, agent.name());
    }
  }

  private void ions() {
    List<String> needs = agent.needs();
    double calcium = values.number("calcium");
    boolean there = (needs.contains("calcium") && calcium > 0) || isAdded(needs);
    if (needs.contains("partner")) {
      if (values.number("partner") == 0) {
        working.warn("technique.gel.warn.partner", agent.name());
      }
    } else if (needs.contains("alkali")) {
      if (values.number("ph") < ALKALI) {
        working.warn("technique.gel.warn.alkali", agent.name());
      }
    } else if (!needs.isEmpty() && !there) {
      working.warn("technique.gel.warn.ions", agent.name(), String.join(", ", needs));
    } else if (!needs.isEmpty() && !isAdded(needs) && !agent.has("calcium_mg_per_g_low")) {
      // Calcium is in all tap water: that some is there does not say that it is enough.
      working.warn("technique.gel.warn.calcium-counted", agent.name(), calcium);
    }
    double slows = agent.number("calcium_slows_from_mg_per_kg");
    if (calcium >= slows) {
      working.warn("technique.gel.warn.calcium-slows", calcium, slows);
    }
    if (agent.has("calcium_mg_per_g_low") && calcium > 0 && values.number("amount") > 0) {
      double perGram = calcium * values.number("mix") / 1000 / values.number("amount");
      double low = agent.number("calcium_mg_per_g_low");
      double high = agent.number("calcium_mg_per_g_high");
      if (Limits.outside(perGram, low, high)) {
        working.warn("technique.gel.warn.calcium-per-gram", perGram, low, high);
      }
    }
  }

  /** Whether something that lets it set has been put in, beside what calcium there is. */
  private boolean isAdded(List<String> needs) {
    return (needs.contains("potassium") && values.is("potassium", "yes"))
        || (needs.contains("milk") && values.is("milk", "yes"));
  }

  private void sugar() {
    double brix = values.number("sugar");
    double low = agent.number("brix_low");
    double high = agent.number("brix_high");
    if (Limits.below(brix, low)) {
      working.warn("technique.gel.warn.sugar-low", brix, low);
    } else if (Limits.above(brix, high)) {
      working.warn("technique.gel.warn.sugar-high", brix, high);
    }
  }

  private void enemies() {
    double alcohol = values.number("alcohol");
    double most = agent.number("alcohol_most_percent");
    // Published as less than so much, so that the number itself is too much.
    if (alcohol > 0 && alcohol >= most) {
      working.warn("technique.gel.warn.alcohol", alcohol, most);
    }
    if (agent.is("protease", "yes") && values.is("freshFruit", "yes")) {
      working.warn("technique.gel.warn.fresh-fruit", agent.name());
    }
  }

  private void kind() {
    if (agent.thickensOnly()) {
      working.warn("technique.gel.warn.thickens", agent.name());
    } else if (agent.has("gels_above_percent")) {
      working.warn("technique.gel.warn.soft-gel", agent.name(), agent.number("gels_above_percent"));
    } else if (agent.is("kind", "foam") || agent.is("kind", "emulsifier")) {
      working.warn("technique.gel.warn.no-gel", agent.name());
    }
  }

  private void plate() {
    double serve = values.number("serve");
    if (agent.setsHot()) {
      if (serve <= agent.number("set_low_c")) {
        working.warn("technique.gel.warn.served-cold", serve, agent.number("set_low_c"));
      }
    } else if (agent.is("melts", "yes") && !Double.isNaN(agent.meltsFrom())) {
      if (serve >= agent.meltsTo()) {
        working.warn("technique.gel.warn.served-molten", serve, agent.meltsTo());
      } else if (serve >= agent.meltsFrom()) {
        working.warn("technique.gel.warn.served-melting", serve, agent.meltsFrom());
      }
    } else if (agent.is("melts", "yes")) {
      working.warn("technique.gel.warn.melts-somewhere", agent.name());
    }
  }

  private void standing() {
    boolean room = values.is("place", "room");
    if (room && agent.is("kind", "enzyme")) {
      working.warn("technique.gel.warn.bond-warm");
    } else if (room && agent.is("kind", "gel") && agent.setsBelow() <= ROOM) {
      working.warn("technique.gel.warn.room", agent.name(), agent.setsBelow());
    }
    double depth = values.number("depth");
    if (depth >= DEEP_MM) {
      working.warn("technique.gel.warn.deep", depth);
    }
  }

  private void notes() {
    if (agent.has("helps")) {
      working.warn("technique.gel.warn.helps", agent.name(), agent.row().text("helps"));
    }
    if (agent.has("note")) {
      working.warn("technique.gel.warn.note", agent.row().text("note"));
    }
    if (agent.has("disagree")) {
      working.warn("technique.gel.warn.disagree", agent.row().text("disagree"));
    }
    if (agent.has("practice")) {
      working.warn("technique.gel.warn.practice", agent.row().text("practice"));
    }
    if (agent.has("unverified")) {
      working.warn("technique.gel.warn.unverified", agent.row().text("unverified"));
    }
  }
}
