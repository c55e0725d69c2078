package halfgram.technique.blanch;

import halfgram.technique.Tables;
import halfgram.technique.Values;
import java.util.Optional;

/** One blanching and its ice bath in numbers; grams, litres, degrees Celsius, kilojoules. */
record BlanchShock(Values values, Tables.Row row) {
  /** L of water for a kilogram: one and two US gallons for a pound. */
  static final double OTHER = 8.345;

  static final double LEAFY = 16.69;

  /** Seconds within which the pot has to boil again. */
  static final double BACK_TO_BOIL = 60;

  /** Seconds in the ice at least; common practice, until it is cold through. */
  static final double LEAST_CHILL = 30;

  /** Litres that a kilogram of ice fills as it lies, from and to. */
  enum Pack {
    FLAKE(2.2, 2.3),
    CRUSHED(1.4, 1.5),
    TUBE(1.6, 2.0);

    private final double least;
    private final double most;

    Pack(double least, double most) {
      this.least = least;
      this.most = most;
    }

    double least() {
      return least;
    }

    double most() {
      return most;
    }
  }

  double number(String name) {
    return values.number(name);
  }

  double herb() {
    return number("herb");
  }

  double density() {
    return number("waterDensity");
  }

  double ratio() {
    return switch (values.word("ratioBy")) {
      case "leafy-greens" -> LEAFY;
      case "other-vegetables" -> OTHER;
      default -> number("ratio");
    };
  }

  double waterLitres() {
    return ratio() * herb() / 1000;
  }

  double potGrams() {
    return number("potWater") * density() * 1000;
  }

  double mostHerb() {
    return number("potWater") / ratio() * 1000;
  }

  double loads() {
    // A hair over a full pot is a full pot: the two are worked out from the same litres.
    return Math.max(1, StrictMath.ceil(herb() / mostHerb() - 1e-9));
  }

  double atOnce() {
    return herb() / loads();
  }

  /** What was said of the water in it, else what the table has, else a guess. */
  double waterContent() {
    return row.has("water_percent") && !isWaterSaid()
        ? row.number("water_percent")
        : number("waterContent");
  }

  boolean isWaterKnown() {
    return row.has("water_percent") || isWaterSaid();
  }

  private boolean isWaterSaid() {
    return !values.get("waterContent").typed().isEmpty();
  }

  Optional<Double> heatByTable() {
    return row.has("kj_per_kg_k") ? Optional.of(row.number("kj_per_kg_k")) : Optional.empty();
  }

  double heatByRule() {
    return Heat.ofWaterContent(waterContent());
  }

  String heatFrom() {
    return values.word("heatBy");
  }

  double heat() {
    return switch (heatFrom()) {
      case "table" -> heatByTable().orElse(heatByRule());
      case "own" -> number("ownHeat");
      default -> heatByRule();
    };
  }

  /** The pot's temperature when so much is in it and nothing heats. */
  double dipped(double grams) {
    return Heat.mixed(
        potGrams(), Heat.BOILING_WATER, number("boil"), grams, heat(), number("herbTemperature"));
  }

  /** kW that bring the pot back to its boil in a minute, nothing lost. */
  double power() {
    double warming = number("boil") - number("herbTemperature");
    return atOnce() / 1000 * heat() * warming / BACK_TO_BOIL;
  }

  double bathWater() {
    return herb() * number("bathRatio");
  }

  double herbHeat() {
    return herb() / 1000 * heat() * (number("boil") - number("end"));
  }

  double carriedHeat() {
    double grams = herb() * number("carried") / 100;
    return grams / 1000 * Heat.WATER * (number("boil") - number("end"));
  }

  double bathHeat() {
    return bathWater() / 1000 * Heat.WATER * (number("bathTemperature") - number("end"));
  }

  /** kJ that a kilogram of the ice takes up. */
  double cold() {
    return Heat.perGramOfIce(number("iceTemperature"), number("end")) * 1000;
  }

  /** Grams of ice by the balance; none where the bath is cold enough by itself. */
  double iceBare() {
    return Math.max(0, (herbHeat() + carriedHeat() + bathHeat()) / cold() * 1000);
  }

  double ice() {
    return iceBare() * (1 + number("room") / 100);
  }

  Pack pack() {
    return switch (values.word("iceKind")) {
      case "crushed" -> Pack.CRUSHED;
      case "tube" -> Pack.TUBE;
      default -> Pack.FLAKE;
    };
  }
}
