package halfgram.technique.brine;

import java.util.List;

/**
 * Parts per million of nitrite, as inspectors count them; everything in fractions, never in percent
 * numbers.
 *
 * <p>Examples: 32 g of a 5.88 % cure in 1266 g of pickle at a pump of 10 % are 148.6 ppm; 1.92 g of
 * a 6.25 % cure on 1 kg of raw meat are 120 ppm. Source: inspectors' calculations handbook of 1995,
 * as quoted on three pages.
 *
 * @param nitrite share of the cure that is nitrite
 */
record Nitrite(double nitrite) {
  private static final double MILLION = 1e6;

  /** How the nitrite is counted. */
  enum Method {
    /** Method 2: the meat lies in the pickle until both are the same. */
    IMMERSED("immersed"),
    /** Method 1: what the meat took up, by pumping or by weight gained. */
    PICK_UP("pick-up"),
    /** Rubbed on, or mixed into minced meat: on the raw meat. */
    ON_GREEN("on-green");

    private final String word;

    Method(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }

    static Method of(String word) {
      return List.of(values()).stream()
          .filter(one -> one.word.equals(word))
          .findFirst()
          .orElseThrow();
    }
  }

  double immersed(double cure, double meat, double pickle) {
    return cure * nitrite * MILLION / (meat + pickle);
  }

  /**
   * @param pump share of the raw meat's mass
   */
  double pickUp(double cure, double pump, double pickle) {
    return cure * nitrite * pump * MILLION / pickle;
  }

  double onGreen(double cure, double meat) {
    return cure * nitrite * MILLION / meat;
  }

  /**
   * Grams of cure for so many ppm; not a number where no amount of this cure gets there. The cure's
   * own salt counts as salt, so plain salt is less by that; where the cure brings more salt than is
   * wanted, there is no plain salt.
   *
   * @param salt wanted in all
   * @param rest of the pickle without salt and cure
   */
  double cureFor(Method method, double ppm, double meat, double salt, double rest, double pump) {
    double share = ppm / MILLION;
    double cure =
        switch (method) {
          case ON_GREEN -> share * meat / nitrite;
          case IMMERSED -> share * (meat + rest + salt) / (nitrite * (1 - share));
          case PICK_UP -> share * (rest + salt) / (nitrite * (pump - share));
        };
    if (cure * (1 - nitrite) <= salt) {
      return cure;
    }
    double alone =
        switch (method) {
          case ON_GREEN -> cure;
          case IMMERSED -> share * (meat + rest) / (nitrite - share);
          case PICK_UP -> share * rest / (nitrite * pump - share);
        };
    return alone >= 0 ? alone : Double.NaN;
  }

  /** Salt that comes with so much cure, taking what is not nitrite for salt. */
  double saltIn(double cure) {
    return cure * (1 - nitrite);
  }
}
