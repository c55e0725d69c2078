package halfgram.technique.bonding;

/**
 * Minutes to the same bond at pH 6 by temperature.
 *
 * <p>Implementation note: between two entries the logarithm of the time is drawn straight, because
 * a rate of reaction grows by a factor with temperature. Outside of the entries there is nothing to
 * draw from. Example: 5 °C 240 min, 20 °C 70, 50 °C 10. Source: slides of an enzyme's supplier.
 */
final class BondTime {
  static final double COLDEST = 5;
  static final double WARMEST = 50;

  private static final double[] CELSIUS = {5, 15, 20, 30, 40, 50};
  private static final double[] MINUTES = {240, 105, 70, 35, 20, 10};

  private BondTime() {}

  static boolean isTabled(double celsius) {
    return celsius >= COLDEST && celsius <= WARMEST;
  }

  static double minutes(double celsius) {
    for (int i = 1; i < CELSIUS.length; i++) {
      if (celsius <= CELSIUS[i]) {
        double part = (celsius - CELSIUS[i - 1]) / (CELSIUS[i] - CELSIUS[i - 1]);
        if (part == 0 || part == 1) {
          return part == 0 ? MINUTES[i - 1] : MINUTES[i];
        }
        double low = StrictMath.log(MINUTES[i - 1]);
        return StrictMath.exp(low + part * (StrictMath.log(MINUTES[i]) - low));
      }
    }
    throw new IllegalArgumentException("no time for " + celsius + " °C");
  }
}
