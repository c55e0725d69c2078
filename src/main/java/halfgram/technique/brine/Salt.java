package halfgram.technique.brine;

/**
 * Grams of salt by the conventions that kitchens use and mix up.
 *
 * <p>Example: 0.75 % for 1 kg of meat in 1 kg of water is 15.00 g by A and 15.11 g by B. Sources: A
 * a rule of thumb on two pages, C a forum; B is the definition of a mass fraction.
 *
 * @param meat and water and others: grams; others are sugar and whatever else is in the brine
 * @param meatWater share of the meat that is water
 */
record Salt(double meat, double water, double others, double meatWater) {

  /** A: a share of meat and water. */
  double ofTotal(double share) {
    return share * (meat + water);
  }

  /** B: a share of everything, the salt included. */
  double asFraction(double share) {
    return share * (meat + water + others) / (1 - share);
  }

  /** C: a share of the water, the meat's own included. */
  double ofWaterPhase(double share) {
    return share * (meatWater * meat + water);
  }

  /** C as a fraction: a share of that water and its salt. */
  double asWaterFraction(double share) {
    return ofWaterPhase(share) / (1 - share);
  }

  /** Grams in a brine of which so much is salt. */
  double ofBrine(double strength) {
    return (water + others) * strength / (1 - strength);
  }

  /** Share of salt everywhere once meat and brine have come to rest. */
  double atRest(double salt) {
    return salt / (meat + water + others + salt);
  }

  /** Share of salt in meat that so much brine was injected into. */
  static double injected(double strength, double pump) {
    return strength * pump / (1 + pump);
  }
}
