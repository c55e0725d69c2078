package halfgram.technique.bath;

/**
 * One piece as a sphere: base volume in mL, skin in mm.
 *
 * <p>Example: 5 mL with a skin of 0.5 mm is 21.22 mm across before the bath and gels 0.741 mL of
 * it. Source: geometry; the skin grows outwards in reverse spherification. Where it grows inwards
 * it adds nothing, and is 0 here.
 */
public record Piece(double volume, double skin) {
  private static final double SPHERE = 4.0 / 3.0 * StrictMath.PI;

  public double radius() {
    return StrictMath.cbrt(volume * 1000 / SPHERE);
  }

  /** Across with its skin, mm. */
  public double diameter() {
    return 2 * (radius() + skin);
  }

  /** Bath gelled into the skin, mL. */
  public double skinVolume() {
    double inner = radius();
    double outer = inner + skin;
    return SPHERE * (outer * outer * outer - inner * inner * inner) / 1000;
  }
}
