package halfgram.technique.bath;

import halfgram.measure.Standing;
import halfgram.technique.Input;
import java.util.List;
import java.util.stream.Stream;

/** What a sphere bath asks for: what a formula may say, and what a plan knows by itself. */
public final class BathInputs {
  static final String REVERSE = "reverse";
  static final String FROZEN = "frozen-reverse";
  static final String DIRECT = "direct";

  /** Where the default of how quickly calcium moves comes from. */
  private static final String DIFFUSION =
      "400 to 800 µm²/s at 25 °C: literature values for alginate gels disagree";

  /** What a formula may say. */
  public static final List<Input> OWN =
      List.of(
          Input.common("set", "s", 10, 1800, 150),
          Input.guess("skin", "mm", 0.05, 5, 0.5),
          Input.common("film", "mL", 0, 10, 1.25),
          Input.guess("density", "g/mL", 0.5, 2, 1.0),
          Input.guess("gap", "mm", 0, 100, 8),
          Input.guess("dropSeconds", "s", 0.2, 60, 4),
          Input.guess("spread", "s", 5, 600, 60),
          Input.common("handling", "min", 0.2, 30, 2),
          Input.guess("setUp", "min", 0, 30, 3),
          Input.guess("adjust", "min", 0, 120, 10),
          Input.guess("people", "1", 1, 6, 1).counted(),
          Input.guess("baths", "1", 1, 6, 1).counted(),
          Input.guess("cover", "mm", 0, 200, 10),
          Input.guess("water", "mL", 0, 10, 0),
          Input.guess("leastStrength", "%", 1, 100, 80),
          Input.guess("mostPieces", "pieces", 1, 100_000, 100_000).counted(),
          Input.common("calciumShare", "%", 1, 100, 10),
          Input.common("hours", "h", 0.5, 48, 8),
          Input.common("milkHours", "h", 0.5, 4, 4),
          Input.common("rinses", "1", 0, 4, 1).counted(),
          Input.guess("spares", "1", 0, 10, 1).counted(),
          Input.choice("method", REVERSE, FROZEN, DIRECT),
          Input.common("bathTemperature", "°C", 0, 60, 20),
          Input.optional("measuredSkin", "mm", 0.05, 5),
          Input.optional("measuredTime", "s", 5, 7200),
          Input.optional("ph", "1", 0, 14),
          Input.choice("medium", "own-liquid", "oil", "water"));

  /** What a plan works out of the formula, its bath and its pan. */
  private static final List<Input> FACTS =
      Stream.of(
              Input.common("piece", "g", 0.05, 200, 15),
              Input.common("pieces", "1", 1, 100_000, 100).counted(),
              Input.common("breakage", "%", 0, 95, 8),
              Input.common("bath", "g", 100, 100_000, 4000),
              Input.common("length", "mm", 30, 2000, 300),
              Input.common("width", "mm", 30, 2000, 240),
              Input.common("alginate", "%", 0.05, 5, 0.5),
              Input.row("salt", "salts", "calcium-lactate-gluconate"),
              Input.common("saltShare", "%", 0, 20, 2),
              Input.common("natural", "mg/100 g", 0, 2000, 0),
              Input.choice("milk", "no", "yes"),
              Input.choice("sequestered", "no", "yes"),
              Input.common("rest", "h", 0, 72, 12))
          .map(input -> input.from(Input.Origin.PLAN))
          .toList();

  static final List<Input> ALL =
      Stream.of(
              OWN.stream(),
              FACTS.stream(),
              Stream.of(
                  Input.optional("assay", "%", 1, 45).from(Input.Origin.TUB),
                  Input.needed("hardness", "mg/L", 0, 2000).from(Input.Origin.KITCHEN),
                  Input.number(
                      "diffusivity", "µm²/s", 100, 1000, 500, Standing.UNVERIFIED, DIFFUSION)))
          .flatMap(all -> all)
          .toList();

  private BathInputs() {}
}
