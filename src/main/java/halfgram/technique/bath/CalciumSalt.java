package halfgram.technique.bath;

/**
 * A calcium salt by its own formula mass: w(Ca) = n x 40.078 / M.
 *
 * <p>Example: lactate pentahydrate, M 308.293 g/mol, one calcium: 0.13000. Source: atomic masses
 * (IUPAC); cross-checked against published calcium contents of the salts.
 */
public record CalciumSalt(String code, String name, double molarMass, int calciumAtoms) {
  private static final double CALCIUM = 40.078;

  /** Mass of calcium per mass of salt. */
  public double calciumFraction() {
    return calciumAtoms * CALCIUM / molarMass;
  }
}
