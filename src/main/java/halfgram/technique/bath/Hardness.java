package halfgram.technique.bath;

/**
 * Water hardness, ppm (mg/L) of CaCO3, and what it does to an alginate bath.
 *
 * <p>Example: 120 ppm is 48.05 mg Ca/L; 0.3526 g/L of trisodium citrate dihydrate binds it one to
 * one; it would take 9.50 % of the sites of a 0.5 % bath. Source: arithmetic from molar masses
 * (CaCO3 100.086, citrate dihydrate 294.10, alginate residue 198.106 g/mol, two of them a calcium).
 */
public record Hardness(double ppm) {
  private static final double CALCIUM = 40.078;
  private static final double CARBONATE = 100.086;
  private static final double CITRATE = 294.10;
  private static final double RESIDUE = 198.106;

  /** Up to this a bath needs nothing; common practice, no published limit was found. */
  public static final double SOFT_TO = 60;

  /** Above this take demineralised water; common practice. */
  public static final double HARD_FROM = 120;

  /** The key of its class; source: USGS. */
  String key() {
    if (ppm <= 60) {
      return "technique.sphere-bath.water.soft";
    }
    if (ppm <= 120) {
      return "technique.sphere-bath.water.moderately-hard";
    }
    return ppm <= 180
        ? "technique.sphere-bath.water.hard"
        : "technique.sphere-bath.water.very-hard";
  }

  /** mg of calcium per litre, if all the hardness were calcium. */
  public double calciumPerLitre() {
    return ppm * CALCIUM / CARBONATE;
  }

  /** g of trisodium citrate dihydrate per litre that binds the calcium one to one; pH above 6. */
  public double citratePerLitre() {
    return ppm / CARBONATE * CITRATE / 1000;
  }

  /**
   * mg of calcium that a gram of sodium alginate can bind at most; about half of it gels,
   * unverified.
   */
  public static double bindingCapacity() {
    return 1000 * CALCIUM / (2 * RESIDUE);
  }

  /** Share of the bath's binding sites the hardness would take; alginate as a share of the bath. */
  public double sitesTaken(double alginateShare) {
    return calciumPerLitre() / (bindingCapacity() * alginateShare * 1000);
  }
}
