package halfgram.technique.bath;

import halfgram.technique.Values;

/**
 * How the skin grows in one kind of bath: by the front, or by one measurement made here, which goes
 * before it: t2 = t1 (x2 / x1)^2.
 */
final class Growth {
  private static final double THAW = 60;

  private final Values values;
  private final double lambda;
  private final double most;

  /**
   * @param ratio calcium that comes to the front, over the sites it has to fill; 0: not known
   * @param most mm that a skin can grow: inwards no further than the middle
   */
  Growth(Values values, double ratio, double most) {
    this.values = values;
    this.lambda = Skin.lambda(ratio);
    this.most = most;
  }

  /** Root of the front equation; 0 where nothing is known to grow a skin. */
  double lambda() {
    return lambda;
  }

  /** Whether somebody has measured a skin here, and how long it took. */
  boolean isMeasured() {
    return values.has("measuredSkin") && values.has("measuredTime");
  }

  /** Whether there is anything to work a skin out of. */
  boolean isKnown() {
    return lambda > 0 || isMeasured();
  }

  /**
   * Seconds until a frozen piece has thawed at its surface; common practice. A skin that was
   * measured within them shows that none had to thaw.
   */
  double thaw() {
    boolean frozen = values.is("method", BathInputs.FROZEN);
    return !frozen || (isMeasured() && values.number("measuredTime") <= THAW) ? 0 : THAW;
  }

  private double growing(double seconds) {
    return Math.max(0, seconds - thaw());
  }

  /** m2/s in this bath, of a number in µm²/s at 25 °C. */
  double diffusivity(double square) {
    return Skin.at(square * 1e-12, values.number("bathTemperature"));
  }

  /** m2/s as the measurement says; NaN where the front is not known. */
  double measuredDiffusivity() {
    double root = values.number("measuredSkin") / 2000 / lambda;
    return lambda > 0 ? root * root / growing(values.number("measuredTime")) : Double.NaN;
  }

  /** mm after so many seconds in the bath. */
  double after(double seconds) {
    if (!isMeasured()) {
      return after(values.number("diffusivity"), seconds);
    }
    double times = growing(seconds) / growing(values.number("measuredTime"));
    return Math.min(most, values.number("measuredSkin") * StrictMath.sqrt(times));
  }

  /** mm after so many seconds, by the front with a diffusivity in µm²/s at 25 °C. */
  double after(double square, double seconds) {
    return Math.min(most, Skin.thickness(lambda, diffusivity(square), growing(seconds)));
  }

  /** The skin wanted, mm, as far as it can grow. */
  double wanted() {
    return Math.min(most, values.number("skin"));
  }

  /** Seconds in the bath until a thickness in mm. */
  double time(double mm) {
    if (!isMeasured()) {
      return Skin.time(lambda, diffusivity(values.number("diffusivity")), mm) + thaw();
    }
    double times = mm / values.number("measuredSkin");
    return growing(values.number("measuredTime")) * times * times + thaw();
  }
}
