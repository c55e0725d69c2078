package halfgram.technique.gel;

/**
 * How long transglutaminase takes to an equal bond at pH 6.
 *
 * <p>Example: 5 °C 240 min, 20 °C 70 min, 50 °C 10 min; between two points of the table the
 * logarithm of the time is a straight line of the temperature. Source: supplier's slides; the line
 * between the points is ours.
 */
final class Bonding {
  private static final double[] CELSIUS = {5, 15, 20, 30, 40, 50};
  private static final double[] MINUTES = {240, 105, 70, 35, 20, 10};

  private Bonding() {}

  /** Minutes at a temperature; outside the table its nearest point. */
  static double minutes(double celsius) {
    if (celsius <= CELSIUS[0]) {
      return MINUTES[0];
    }
    for (int i = 1; i < CELSIUS.length; i++) {
      if (celsius <= CELSIUS[i]) {
        double share = (celsius - CELSIUS[i - 1]) / (CELSIUS[i] - CELSIUS[i - 1]);
        double from = StrictMath.log(MINUTES[i - 1]);
        return share == 1
            ? MINUTES[i]
            : StrictMath.exp(from + share * (StrictMath.log(MINUTES[i]) - from));
      }
    }
    return MINUTES[MINUTES.length - 1];
  }
}
