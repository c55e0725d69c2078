package halfgram.technique.gelatin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Trial;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Gelatin of another strength against published factors and sheets. */
class GelatinStrengthTest {
  private static final GelatinStrengthTechnique STRENGTH = new GelatinStrengthTechnique();

  private static Trial of(String recipe, String own, String mass) {
    return Trial.of(STRENGTH, "recipeGrade", recipe, "ownGrade", own, "mass", mass);
  }

  /** Published table of factors: 60 to 240 bloom 2, 160 to 240 bloom 1.22. */
  @ParameterizedTest
  @CsvSource({"60,240,2.00", "160,240,1.22", "240,240,1"})
  void equalFirmnessReproducesThePublishedFactors(String from, String to, double factor) {
    Trial tried = of("silver", "platinum", "10 g").with("recipeBloom", from, "ownBloom", to);
    assertThat(tried.number("ratioRoot")).isCloseTo(factor, within(0.005));
    assertThat(10 / tried.number("equalFirmness")).isCloseTo(factor, within(0.005));
  }

  /** Computed from published sheets: 140 × 3.3, 160 × 2.5, 200 × 2.0, 240 × 1.7. */
  @ParameterizedTest
  @CsvSource({"bronze,462", "silver,400", "gold,400", "platinum,408"})
  void strengthTimesGramsIsAboutTheSameForAllSheets(String grade, double product) {
    assertThat(of(grade, grade, "10 g").number("recipeProduct")).isCloseTo(product, within(1e-9));
    assertThat(of(grade, grade, "10 g").number("ownProduct")).isCloseTo(product, within(1e-9));
  }

  @Test
  void bothRulesAreWorkedOutAndTheChosenOneIsWeighed() {
    Trial tried = of("silver", "platinum", "10 g");
    assertThat(tried.number("leafForLeaf")).isCloseTo(6.6667, within(0.0001));
    assertThat(tried.number("equalFirmness")).isCloseTo(8.1650, within(0.0001));
    assertThat(tried.number("gelatin")).isEqualTo(tried.number("leafForLeaf"));
    assertThat(tried.warns("two-rules")).isTrue();
    Trial firm = tried.with("rule", "equal-firmness");
    assertThat(firm.number("gelatin")).isEqualTo(firm.number("equalFirmness"));
    assertThat(firm.added(Addition.Weighed.class))
        .containsExactly(Addition.Weighed.of("gelatin", firm.number("equalFirmness")));
  }

  /** By the leaf law: four sheets of silver are four sheets of gold. */
  @Test
  void aSheetReplacesASheet() {
    Trial tried = of("silver", "gold", "10 g");
    assertThat(tried.number("recipeSheets")).isCloseTo(4, within(1e-9));
    assertThat(tried.number("sheetsLeafForLeaf")).isCloseTo(4, within(1e-9));
    assertThat(tried.number("wholeSheets")).isEqualTo(4);
    assertThat(tried.number("wholeSheetsOff")).isCloseTo(0, within(1e-9));
    assertThat(of("bronze", "bronze", "4.2 g").number("wholeSheetsOff"))
        .isCloseTo(-21.43, within(0.005));
  }

  @Test
  void theRecipeIsInGramsOrInSheetsNeverInBoth() {
    Trial sheets = Trial.of(STRENGTH, "recipeGrade", "bronze", "ownGrade", "gold", "sheets", "3");
    assertThat(sheets.number("leafForLeaf")).isCloseTo(9.9 * 140 / 200, within(1e-9));
    assertThat(sheets.number("recipeSheets")).isCloseTo(3, within(1e-9));
    assertThat(sheets.with("mass", "10 g").stops("mass-or-sheets")).isTrue();
    assertThat(sheets.with("sheets", "0").stops("mass-or-sheets")).isTrue();
    assertThat(sheets.with("sheets", "0").additions()).isEmpty();
  }

  /** Powder is sold by its bloom: it is no sheet, and no bloom of it is another grade's. */
  @Test
  void powderHasTheStrengthOfItsPacketAndNoSheets() {
    Trial tried = of("silver", "powder", "10 g").with("ownBloom", "225");
    assertThat(tried.number("leafForLeaf")).isCloseTo(10 * 160 / 225.0, within(1e-9));
    assertThat(tried.warns("other-grade")).isFalse();
    assertThat(tried.find("wholeSheets")).isEmpty();
    assertThat(tried.find("ownProduct")).isEmpty();
    assertThat(tried.number("recipeSheets")).isCloseTo(4, within(1e-9));
    Trial back = of("powder", "gold", "10 g").with("recipeBloom", "225");
    assertThat(back.find("recipeSheets")).isEmpty();
    assertThat(back.number("sheetsLeafForLeaf")).isCloseTo(10 * 225 / 400.0, within(1e-9));
  }

  @Test
  void powderOfUnknownStrengthOrCountedInSheetsIsRefused() {
    Trial unknown = of("silver", "powder", "10 g");
    assertThat(unknown.stops("bloom")).isTrue();
    assertThat(unknown.work().figures()).isEmpty();
    assertThat(unknown.additions()).isEmpty();
    assertThat(STRENGTH.curve(unknown.values(), Trial.tables())).isEmpty();
    Trial sheets =
        Trial.of(STRENGTH, "recipeGrade", "powder", "recipeBloom", "225", "ownGrade", "gold");
    assertThat(sheets.with("sheets", "3").stops("no-sheets")).isTrue();
  }

  @Test
  void theSameGradeIsTheSameMass() {
    Trial tried = of("gold", "gold", "7 g");
    assertThat(tried.number("leafForLeaf")).isEqualTo(7);
    assertThat(tried.number("equalFirmness")).isEqualTo(7);
    assertThat(tried.warns("two-rules")).isFalse();
  }

  @ParameterizedTest
  @CsvSource({"189,true", "190,false", "220,false", "221,true", "0,false"})
  void aStrengthThatItsGradeDoesNotHaveIsRemarkedOn(String bloom, boolean warned) {
    Trial tried = of("gold", "gold", "7 g").with("ownBloom", bloom);
    assertThat(tried.warns("other-grade")).isEqualTo(warned);
  }

  @Test
  void strongerGelatinIsNeverMoreAndFirmnessAsksLessOfAChange() {
    Seeds.over(
        300,
        seed -> {
          Chance chance = new Chance(seed);
          double mass = chance.from(1, 500) / 10.0;
          int from = chance.from(60, 300);
          int to = chance.from(60, 299);
          assertThat(GelatinStrengthTechnique.linear(mass, from, to + 1))
              .isLessThan(GelatinStrengthTechnique.linear(mass, from, to));
          assertThat(GelatinStrengthTechnique.root(mass, from, to + 1))
              .isLessThan(GelatinStrengthTechnique.root(mass, from, to));
          double linear = StrictMath.abs(GelatinStrengthTechnique.linear(mass, from, to) - mass);
          double root = StrictMath.abs(GelatinStrengthTechnique.root(mass, from, to) - mass);
          assertThat(root).isLessThanOrEqualTo(linear + 1e-12);
        });
  }

  @Test
  void thereAndBackIsTheSameMass() {
    Seeds.over(
        200,
        seed -> {
          Chance chance = new Chance(seed);
          double mass = chance.from(1, 500) / 10.0;
          int from = chance.from(60, 300);
          int to = chance.from(60, 300);
          double linear = GelatinStrengthTechnique.linear(mass, from, to);
          double root = GelatinStrengthTechnique.root(mass, from, to);
          assertThat(GelatinStrengthTechnique.linear(linear, to, from))
              .isCloseTo(mass, within(1e-9));
          assertThat(GelatinStrengthTechnique.root(root, to, from)).isCloseTo(mass, within(1e-9));
        });
  }

  @Test
  void ouncesGiveTheSame() {
    double grams = of("bronze", "gold", "28.349523125 g").number("equalFirmness");
    assertThat(of("bronze", "gold", "1 oz").number("equalFirmness")).isCloseTo(grams, within(1e-9));
  }

  @Test
  void theCurveStandsWhereTheInputsStand() {
    Trial tried = of("silver", "platinum", "10 g");
    Curve curve = STRENGTH.curve(tried.values(), Trial.tables()).orElseThrow();
    assertThat(curve.marks().get(0).x()).isEqualTo(240);
    assertThat(curve.marks().get(0).y()).isCloseTo(tried.number("gelatin"), within(1e-9));
    assertThat(curve.points()).hasSizeGreaterThan(50);
  }

  @Test
  void everyBadInputIsNamedAtOnce() {
    Trial bad =
        Trial.of(
            STRENGTH, "recipeGrade", "titanium", "mass", "10 mm", "ownBloom", "401", "rule", "x");
    assertThat(bad.problems())
        .containsOnlyKeys("recipeGrade", "ownGrade", "mass", "ownBloom", "rule");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(STRENGTH).number("leafForLeaf")).isCloseTo(6.667, within(0.001));
  }
}
