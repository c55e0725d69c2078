package halfgram.technique.bath;

/**
 * Trisodium citrate that two sources give an acid base, g/L. They are about tenfold apart, because
 * real food is buffered: neither is a dose, both are where to begin reading.
 */
final class Citrate {
  /** One supplier's table for real foods, by the pH of the base. */
  private static final double[][] TABLE = {{2.5, 8}, {3, 3}, {3.5, 1}};

  private Citrate() {}

  /**
   * As if nothing in the food held its pH, up to pH 5: a tenth for each whole pH.
   *
   * <p>Example: 2.6 g/L from pH 2, 0.26 g/L from pH 3. Source: both as published in a mailing list.
   */
  static double unbuffered(double ph) {
    return 0.26 * StrictMath.pow(10, 3 - ph);
  }

  /** Whether the supplier's table goes so far. */
  static boolean isInTable(double ph) {
    return ph >= TABLE[0][0] && ph <= TABLE[TABLE.length - 1][0];
  }

  /** By the supplier's table, read off between its rows; its nearer end beyond them. */
  static double supplied(double ph) {
    if (ph <= TABLE[0][0]) {
      return TABLE[0][1];
    }
    for (int i = 1; i < TABLE.length; i++) {
      if (ph <= TABLE[i][0]) {
        double share = (ph - TABLE[i - 1][0]) / (TABLE[i][0] - TABLE[i - 1][0]);
        return TABLE[i - 1][1] + share * (TABLE[i][1] - TABLE[i - 1][1]);
      }
    }
    return TABLE[TABLE.length - 1][1];
  }
}
