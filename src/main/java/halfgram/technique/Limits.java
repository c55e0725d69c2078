package halfgram.technique;

/**
 * Numbers against the ends of a range. An end met exactly is met: what floating point leaves is no
 * excess. An end that no source gives, NaN, is never passed.
 *
 * <p>Example: 3 g on 1 kg are 0.3 %, also where the machine says 0.30000000000000004 %.
 */
public final class Limits {
  private static final double SAME = 1e-9;

  private Limits() {}

  public static boolean below(double number, double least) {
    return number < least * (1 - SAME);
  }

  public static boolean above(double number, double most) {
    return number > most * (1 + SAME);
  }

  public static boolean outside(double number, double least, double most) {
    return below(number, least) || above(number, most);
  }
}
