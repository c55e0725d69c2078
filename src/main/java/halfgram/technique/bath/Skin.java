package halfgram.technique.bath;

import org.hipparchus.special.Erf;

/**
 * How the skin grows: a sharp front that moves as the root of the time, because the alginate cannot
 * move and the calcium has to come to it through the gel.
 *
 * <p>With C0 the free calcium of the base (mol/m3), Cb the sites of the bath, and St = C0 / Cb,
 *
 * <pre>x = 2 lambda sqrt(D t),   lambda exp(lambda^2) erf(lambda) = St / sqrt(pi)</pre>
 *
 * <p>Example: St 1 gives lambda 0.620063. Source: the classical one-phase front solution; that
 * front thickness goes with the root of the time was seen by MRI (Potter and others 1994,
 * Carbohydr. Res., doi 10.1016/0008-6215(94)84112-8). An estimate: one measurement here is worth
 * more.
 */
public final class Skin {
  /** g/mol of a pair of alginate residues that bind one calcium. */
  private static final double SITE = 2 * 198.106;

  private static final double CALCIUM = 40.078;
  private static final double ROOT_PI = StrictMath.sqrt(StrictMath.PI);
  private static final double AT = 25;
  private static final int MOST_STEPS = 100;
  private static final double NEAR = 1e-13;

  private Skin() {}

  /** mol/m3 of calcium sites in a bath, by its share of alginate: a gram is a millilitre. */
  static double sites(double alginateShare) {
    return alginateShare * 1e6 / SITE;
  }

  /** mol/m3 of calcium in a base, by its mass share: a gram is a millilitre. */
  static double calcium(double share) {
    return share * 1e6 / CALCIUM;
  }

  /** The front's number for a ratio of calcium to sites; 0 for none. */
  static double lambda(double st) {
    if (st <= 0) {
      return 0;
    }
    // The left side is convex, and both beginnings lie above the root, the second closely where
    // there is much calcium: Newton falls onto it and overflows nowhere.
    double lambda = StrictMath.sqrt(st > StrictMath.E ? StrictMath.log(st) : st / 2);
    for (int i = 0; i < MOST_STEPS; i++) {
      double square = lambda * lambda;
      double erf = Erf.erf(lambda);
      double rise = ROOT_PI * StrictMath.exp(square);
      double step = (rise * lambda * erf - st) / (rise * erf * (1 + 2 * square) + 2 * lambda);
      lambda -= step;
      if (StrictMath.abs(step) < NEAR * lambda) {
        return lambda;
      }
    }
    return lambda;
  }

  /** mm after so many seconds, with the diffusivity in m2/s. */
  static double thickness(double lambda, double diffusivity, double seconds) {
    return 2000 * lambda * StrictMath.sqrt(diffusivity * seconds);
  }

  /** Seconds until a thickness in mm. */
  static double time(double lambda, double diffusivity, double mm) {
    double root = mm / 2000 / lambda;
    return root * root / diffusivity;
  }

  /**
   * A diffusivity known at 25 °C, at another temperature: it goes with the absolute temperature
   * over the viscosity of water. Source of the viscosity: a published correlation for liquid water
   * (Kestin, Sokolov and Wakeham 1978), its numbers from memory and unverified; it meets 0.8900,
   * 1.0016 and 1.5182 mPa s at 25, 20 and 5 °C within a part in a thousand.
   */
  static double at(double diffusivity, double celsius) {
    return diffusivity * mobility(celsius) / mobility(AT);
  }

  private static double mobility(double celsius) {
    return (celsius + 273.15) / viscosity(celsius);
  }

  /** mPa s of water. */
  static double viscosity(double celsius) {
    double below = 20 - celsius;
    double curve = 1.2364 - 1.37e-3 * below + 5.7e-6 * below * below;
    return 1.002 * StrictMath.pow(10, below / (celsius + 96) * curve);
  }
}
