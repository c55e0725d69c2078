package halfgram.technique.brine;

import halfgram.measure.Standing;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Output;
import java.util.List;

/** What a brine is asked for and what it gives. */
final class BrineInputs {
  static final List<Input> ALL =
      List.of(
          Input.needed("meat", "g", 1, 500_000).ofLine("meat"),
          unsaid("water", "g", 1_000_000, "none said: no brine").ofLine("water"),
          unsaid("others", "g", 500_000, "nothing else in the brine"),
          Input.choice("way", "equilibrium", "gradient", "injected"),
          Input.published(
              "target", "%", 0, 100, 0.75, "rule of thumb for proteins, 0.5 to 1.0 %, two pages"),
          Input.choice(
              "convention", "total-mass", "mass-fraction", "water-phase", "water-phase-fraction"),
          Input.common("meatWater", "%", 30, 95, 72.5),
          Input.guess("strength", "%", 0, 100, 10),
          unsaid("pump", "%", 100, "not measured: weigh before and after").from(Origin.READING),
          Input.choice("cure", "none", "for-target", "weighed-out"),
          Input.published("cureNitrite", "%", 0, 100, 6.25, "US cure number 1; others have 5.88 %")
              .from(Origin.TUB),
          unsaid("targetPpm", "ppm", 2000, "none said"),
          unsaid("cureMass", "g", 50_000, "none said").ofLine("cure"),
          Input.choice("method", "immersed", "pick-up", "on-green"),
          Input.choice(
              "limitFrom",
              "local",
              "us-home-cure",
              "us-bacon-pumped",
              "us-bacon-immersed",
              "us-bacon-dry",
              "us-comminuted",
              "us-pumped",
              "us-immersed",
              "us-dry-cured",
              "eu-80-ion"),
          unsaid("localLimit", "ppm", 10_000, "none said: it has to be looked up"));

  static final List<Output> OUTPUTS =
      List.of(
          new Output("saltTotal", "g"),
          new Output("saltFraction", "g"),
          new Output("saltWaterPhase", "g"),
          new Output("saltWaterFraction", "g"),
          new Output("brineMass", "g"),
          new Output("injected", "g"),
          new Output("pumpedMass", "g"),
          new Output("saltInMeat", "%"),
          new Output("cure", "g"),
          new Output("nitrite", "g"),
          new Output("pickle", "g"),
          new Output("ppmImmersed", "ppm"),
          new Output("ppmPickUp", "ppm"),
          new Output("ppmOnGreen", "ppm"),
          new Output("ppm", "ppm"),
          new Output("limit", "ppm"),
          new Output("saltInAll", "g"),
          new Output("salt", "g"),
          new Output("atRest", "%"));

  private BrineInputs() {}

  /** An input whose zero says that nobody said anything. */
  private static Input unsaid(String name, String unit, double most, String source) {
    return Input.number(name, unit, 0, most, 0, Standing.UNVERIFIED, source);
  }
}
