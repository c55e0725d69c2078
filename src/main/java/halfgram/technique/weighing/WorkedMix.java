package halfgram.technique.weighing;

import halfgram.technique.Limits;

/**
 * A dose too light for a scale, worked through a mix: of the substance in a carrier, one part in so
 * many, of which as many times the dose is taken. Each of the three weighings may be off by a step.
 *
 * <p>Example: 0.18 g on a 0.01 g scale, 1 % wanted: 5 g in 50 g, of which 1.8 g; off by 0.78 % at
 * most. Source: computed.
 *
 * @param oneIn the mix holds one part of the substance in this many
 * @param substance and carrier: grams in the mix
 * @param take grams of the mix that hold the dose
 * @param error share of the dose that the three weighings can be off together
 */
record WorkedMix(double oneIn, double substance, double carrier, double take, double error) {
  private static final double SAME = 1e-9;

  /**
   * The mix of least substance, rounded up to 1, 2 or 5 of a power of ten.
   *
   * @param least what the scale weighs at least
   * @param wanted share of the dose that it may be off
   * @return NaN throughout where no such mix is good enough
   */
  static WorkedMix of(double oneIn, double dose, double step, double least, double wanted) {
    double take = oneIn * dose;
    double left = wanted - step / take;
    if (Limits.below(take, least) || left <= 0) {
      return none(oneIn);
    }
    double enough = step * (1 + 1 / (oneIn - 1)) / left;
    double byCarrier = least / (oneIn - 1);
    double substance = roundUp(Math.max(Math.max(enough, byCarrier), Math.max(least, dose)));
    double carrier = (oneIn - 1) * substance;
    double error = step / substance + step / carrier + step / take;
    return new WorkedMix(oneIn, substance, carrier, take, error);
  }

  static WorkedMix none(double oneIn) {
    return new WorkedMix(oneIn, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
  }

  boolean works() {
    return !Double.isNaN(substance);
  }

  /** How often a dry mix is doubled, so that each time as much is added as is there. */
  double doublings() {
    return StrictMath.ceil(StrictMath.log(oneIn) / StrictMath.log(2) - SAME);
  }

  private static double roundUp(double grams) {
    double power = StrictMath.pow(10, StrictMath.floor(StrictMath.log10(grams) + SAME));
    for (double digit : new double[] {1, 2, 5}) {
      if (!Limits.above(grams, digit * power)) {
        return digit * power;
      }
    }
    return 10 * power;
  }
}
