package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.formula.ComponentRef;
import halfgram.prep.BathFacts;
import halfgram.prep.KitchenBook;
import halfgram.technique.bath.SphereBath;
import org.junit.jupiter.api.Test;

/** A bath attached to a formula: each method has its alginate and its salt where they belong. */
class BathInABookTest extends RefusedBook {
  private static final String PEARLS = "formulas/pea-pearls/versions/0";
  private static final String CALCIUM = "formulas/calcium-bath/versions/0";

  /** Pieces of pea stock with alginate, dropped in a bath of calcium lactate. */
  private void direct() {
    book.set(
        "formulas/+",
        "{'code': 'calcium-bath', 'name': 'Calcium bath', 'versions': [{'version': 1,"
            + " 'lines': [{'ingredient': 'water', 'basis': 100},"
            + " {'ingredient': 'calcium-lactate', 'percent': 1.5}],"
            + " 'steps': [{'code': 'stir', 'do': 'Stir', 'station': 'cold',"
            + " 'handsOn': {'fixed': '5 min'}}],"
            + " 'outputs': [{'code': 'bath', 'hold': {'max': '2 d'}, 'container': 'bath-pan',"
            + " 'fill': '4 kg'}]}]}");
    book.set(
        "formulas/+",
        "{'code': 'pea-pearls', 'name': 'Pea pearls', 'versions': [{'version': 1,"
            + " 'lines': [{'component': 'pea-stock', 'basis': 100},"
            + " {'ingredient': 'sodium-alginate', 'percent': 0.8}],"
            + " 'steps': [{'code': 'drop', 'do': 'Drop', 'station': 'cold', 'breakage': 5}],"
            + " 'outputs': [{'code': 'pearls', 'unit': 'piece', 'pieceMass': '2 g',"
            + " 'hold': {'max': '20 min'}}],"
            + " 'technique': {'name': 'sphere-bath', 'step': 'drop', 'bath': 'calcium-bath',"
            + " 'pan': 'bath-pan', 'alginate': 'sodium-alginate', 'salt': 'calcium-lactate',"
            + " 'saltKind': 'calcium-lactate-pentahydrate',"
            + " 'inputs': {'method': 'direct', 'ph': 4.6, 'set': 60}}}]}");
  }

  private SphereBath bath(String formula) {
    assertThat(problems()).isEmpty();
    KitchenBook read = new BookReader(Reference.load()).read(book.bytes()).book().orElseThrow();
    return BathFacts.bath(read, read.formulary().get(ComponentRef.of(formula))).orElseThrow();
  }

  @Test
  void directTheAlginateIsOfThePiecesAndTheSaltOfTheirBath() {
    direct();
    SphereBath bath = bath("pea-pearls");
    assertThat(bath.facts().alginateShare()).isCloseTo(0.008, within(1e-12));
    assertThat(bath.facts().saltShare()).isCloseTo(0.015, within(1e-12));
    assertThat(bath.calciumPerPiece()).isZero();
    assertThat(bath.warnings()).isEmpty();
  }

  @Test
  void reverseTheAlginateIsOfTheBathAndTheSaltOfThePieces() {
    SphereBath bath = bath("yoghurt-spheres");
    assertThat(bath.facts().alginateShare()).isCloseTo(0.005, within(1e-12));
    assertThat(bath.facts().saltShare()).isBetween(0.004, 0.011);
    assertThat(bath.calciumPerPiece()).isPositive();
  }

  /** The bag's own assay goes before the formula mass. */
  @Test
  void theTubsAssayGoesBeforeTheFormulaMass() {
    String inputs = "formulas/yoghurt-spheres/versions/0/technique/inputs";
    assertThat(bath("yoghurt-spheres").facts().calciumFraction()).isCloseTo(0.13, within(0.00005));
    book.set(inputs + "/assay", "'12.5 %'");
    assertThat(bath("yoghurt-spheres").facts().calciumFraction()).isEqualTo(0.125);
  }

  /** Bought water for the baths may be softer than the kitchen's tap. */
  @Test
  void hardnessToldAtTheBathGoesBeforeTheKitchens() {
    assertThat(bath("yoghurt-spheres").facts().hardnessPpm()).isPositive();
    book.set("formulas/yoghurt-spheres/versions/0/technique/inputs/hardness", "'1 gpg'");
    assertThat(bath("yoghurt-spheres").facts().hardnessPpm()).isCloseTo(17.118, within(0.0005));
  }

  @Test
  void aDirectBathWithoutItsSaltIsRefused() {
    direct();
    book.set(CALCIUM + "/lines/1/ingredient", "'salt'");
    assertOnly(
        PEARLS + "/technique/salt", "calcium-lactate", "no such line", "accepted: water, salt");
    book.remove(PEARLS + "/technique/salt");
    assertOnly("$.formulas", "pea-pearls", "there is no calcium to set with");
  }

  @Test
  void directPiecesWithoutAlginateAreRefused() {
    direct();
    book.remove(PEARLS + "/lines/1");
    assertOnly("$.formulas", "pea-pearls: 0 %", "outside the range", "direct: of the base, 0.05");
  }

  @Test
  void aReverseBathWithoutItsAlginateIsRefused() {
    String place = "formulas/yoghurt-spheres/versions/0/technique/alginate";
    book.set(place, "'calcium-lactate'");
    assertOnly(place, "calcium-lactate", "no such line", "sodium-alginate");
  }

  @Test
  void aDirectBaseThatIsTooAcidIsRefused() {
    direct();
    book.remove(PEARLS + "/technique/inputs/ph");
    assertOnly("$.formulas", "pea-pearls", "needs the pH of the base");
    book.set(PEARLS + "/technique/inputs/ph", "3.6");
    assertOnly("$.formulas", "pea-pearls", "too acid for the direct method");
  }
}
