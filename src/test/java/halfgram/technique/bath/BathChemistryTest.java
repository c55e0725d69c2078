package halfgram.technique.bath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.book.Reference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Salts, water and spheres against published chemistry and geometry. */
class BathChemistryTest {
  /** Computed from IUPAC atomic masses; published: 36.1, 27.3, 18.4 and 9.3 % (salts table). */
  @ParameterizedTest
  @CsvSource({
    "calcium-chloride-anhydrous,0.36113", "calcium-chloride-dihydrate,0.27262",
    "calcium-lactate-anhydrous,0.18366", "calcium-lactate-pentahydrate,0.13000",
    "calcium-gluconate-anhydrous,0.09312", "calcium-gluconate-monohydrate,0.08938",
    "calcium-lactate-gluconate,0.12917"
  })
  void saltHoldsCalciumByItsOwnFormulaMass(String salt, double fraction) {
    assertThat(Reference.load().salts().get(salt).calciumFraction())
        .isCloseTo(fraction, within(0.00005));
  }

  /** Computed from molar masses (CaCO3 100.086, citrate dihydrate 294.10, alginate 198.106). */
  @Test
  void hardnessTakesItsShareOfTheBath() {
    Hardness hardness = new Hardness(120);
    assertThat(hardness.calciumPerLitre()).isCloseTo(48.05, within(0.005));
    assertThat(hardness.calciumPerLitre() / 40.078).isCloseTo(1.199, within(0.0005));
    assertThat(hardness.citratePerLitre()).isCloseTo(0.3526, within(0.00005));
    assertThat(Hardness.bindingCapacity()).isCloseTo(101.15, within(0.005));
    assertThat(hardness.sitesTaken(0.005)).isCloseTo(0.0950, within(0.00005));
    assertThat(new Hardness(60).sitesTaken(0.005)).isCloseTo(0.047, within(0.0006));
    assertThat(new Hardness(180).sitesTaken(0.005)).isCloseTo(0.142, within(0.0006));
    assertThat(new Hardness(300).sitesTaken(0.005)).isCloseTo(0.238, within(0.0006));
  }

  /** Published: USGS. */
  @ParameterizedTest
  @CsvSource({"60,soft", "61,moderately-hard", "120,moderately-hard", "121,hard", "180,hard"})
  void waterHasAClass(double ppm, String word) {
    assertThat(new Hardness(ppm).key()).endsWith("." + word);
    assertThat(new Hardness(181).key()).endsWith(".very-hard");
  }

  /** Geometry: a skin of 0.5 mm grown outwards on spheres of 5, 10 and 15 mL. */
  @ParameterizedTest
  @CsvSource({"5,21.22,0.741", "10,26.73,1.165", "15,30.60,1.519"})
  void skinTakesItsVolumeFromTheBath(double volume, double across, double gelled) {
    Piece piece = new Piece(volume, 0.5);
    assertThat(2 * piece.radius()).isCloseTo(across, within(0.01));
    assertThat(piece.diameter()).isCloseTo(across + 1, within(0.01));
    assertThat(piece.skinVolume()).isCloseTo(gelled, within(0.0006));
  }

  /** Computed: mmol of calcium in 10 g of a salt. */
  @ParameterizedTest
  @CsvSource({
    "calcium-chloride-anhydrous,90.11", "calcium-chloride-dihydrate,68.02",
    "calcium-lactate-anhydrous,45.83", "calcium-lactate-pentahydrate,32.44",
    "calcium-gluconate-anhydrous,23.24", "calcium-gluconate-monohydrate,22.30",
    "calcium-lactate-gluconate,32.23"
  })
  void tenGramsOfSaltHoldTheirMillimoles(String salt, double millimoles) {
    double fraction = Reference.load().salts().get(salt).calciumFraction();
    assertThat(Skin.calcium(fraction * 0.01)).isCloseTo(millimoles, within(0.005));
  }
}
