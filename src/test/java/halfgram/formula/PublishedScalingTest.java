package halfgram.formula;

import static halfgram.formula.PublishedFormula.bought;
import static halfgram.formula.PublishedFormula.weighed;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.book.Reference;
import halfgram.measure.Amount;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Scaling against published formulas and worksheets. */
class PublishedScalingTest {

  // ---- percent of base ----

  /** Source: worked percent worksheet, 73 loaves of 390 g from 100, 67, 2 and 1 %. */
  @Test
  void doughForACountOfLoavesFollowsTheSumOfPercents() {
    Scaled scaled = dough().pieces("390").scaling().byPieces(0, 73);
    assertNear(scaled.outputMass().number(), 28470, 1e-9);
    assertNear(weighed(scaled, "flour"), 16747.06, 0.01);
    assertNear(weighed(scaled, "water"), 11220.53, 0.01);
    assertNear(weighed(scaled, "salt"), 334.94, 0.01);
    assertNear(weighed(scaled, "yeast"), 167.47, 0.01);
    assertThat(scaled.formed(0)).isEqualTo(73);
  }

  /** The same worksheet the other way round: the percents are back in the masses. */
  @Test
  void percentsOfTheBaseSurviveScaling() {
    Scaled scaled = dough().scaling().byOutput(0, mass("28470 g"));
    double base = weighed(scaled, "flour").doubleValue();
    assertThat(100 * weighed(scaled, "water").doubleValue() / base).isCloseTo(67, within(1e-9));
    assertThat(100 * weighed(scaled, "salt").doubleValue() / base).isCloseTo(2, within(1e-9));
    assertThat(100 * weighed(scaled, "yeast").doubleValue() / base).isCloseTo(1, within(1e-9));
  }

  /** Source: professional pastry text, converting a formula to a new yield; percents sum 377.5. */
  @ParameterizedTest
  @CsvSource({"3000 g,794.7,0.05,1", "96 oz,25.43,0.005,28.349523125"})
  void baseForAWantedYieldIsTheYieldOverTheSumOfPercents(
      String wanted, double base, double within, double unit) {
    PublishedFormula formula = new PublishedFormula().base("base", "100").dose("rest", "277.5");
    Scaled scaled = formula.scaling().byOutput(0, mass(wanted));
    assertNear(weighed(scaled, "base"), base * unit, within * unit);
  }

  /** Source: flour-base formula sheets, 1.75 % and 57.5 % on 40 lb; percents sum 162.125. */
  @Test
  void smallPercentOfALargeBaseIsItsOunces() {
    PublishedFormula formula =
        new PublishedFormula()
            .base("flour", "100")
            .dose("liquid", "57.5")
            .dose("salt", "1.75")
            .dose("rest", "2.875")
            .written(mass("40 lb"));
    Scaled batch = formula.scaling().byBatches(Ratio.ONE).orElseThrow();
    assertThat(weighed(batch, "flour")).isEqualByComparingTo(mass("40 lb").number());
    assertThat(weighed(batch, "salt")).isEqualByComparingTo(mass("0.70 lb").number());
    assertThat(weighed(batch, "salt")).isEqualByComparingTo(mass("11.2 oz").number());
    assertThat(weighed(batch, "liquid")).isEqualByComparingTo(mass("23 lb").number());
    assertThat(batch.outputMass().number()).isEqualByComparingTo(mass("64.85 lb").number());
  }

  /** Source: culinary conversion page, (50 x 230 g) / (35 x 185 g); printed 1.77606. */
  @Test
  void conversionFactorIsNewYieldOverOldYield() {
    Scaling scaling = dough().scaling();
    Scaled old = scaling.byCovers(0, 35, mass("185 g"));
    Scaled wanted = scaling.byCovers(0, 50, mass("230 g"));
    assertThat(wanted.basis().over(old.basis()).number().doubleValue())
        .isCloseTo(1.77606, within(0.000005));
    assertThat(weighed(wanted, "water").doubleValue() / weighed(old, "water").doubleValue())
        .isCloseTo(1.77606, within(0.000005));
    Scaled factored =
        old.times(new Ratio(new BigDecimal("11500")).dividedBy(new Ratio(new BigDecimal("6475"))));
    assertNear(weighed(factored, "salt"), weighed(wanted, "salt").doubleValue(), 1e-9);
  }

  /** Computed: 2 % of the base and nothing else is 1.961 % of the mix. */
  @Test
  void percentOfTheBaseIsLessOfTheMix() {
    Scaled scaled =
        new PublishedFormula()
            .base("base", "100")
            .dose("salt", "2")
            .scaling()
            .byOutput(0, mass("1000 g"));
    assertNear(weighed(scaled, "salt"), 19.61, 0.005);
  }

  // ---- doses of textures ----

  /** Source: published recipes, 1.5 g in 225 g of juice and 275 g of water; and 2 g in 500 g. */
  @ParameterizedTest
  @CsvSource({
    "500,1.5,0.300",
    "500,2,0.400",
    "250,2,0.800",
    "500,2.5,0.500",
    "300,3,1.000",
    "400,5.6,1.400",
    "800,5,0.625",
    "250,10,4.000"
  })
  void publishedDoseIsItsPercentOfTheBase(String base, String dose, double percent) {
    PublishedFormula formula =
        new PublishedFormula().base("base", "100").dose("dose", String.valueOf(percent));
    Scaled scaled = formula.written(mass(base + " g")).scaling().byBatches(Ratio.ONE).orElseThrow();
    assertThat(weighed(scaled, "dose")).isEqualByComparingTo(dose);
  }

  /** Source: lime air, 225 g of juice and 275 g of water with 1.5 g of lecithin. */
  @Test
  void baseOfTwoPartsKeepsThemInProportion() {
    PublishedFormula formula =
        new PublishedFormula().base("juice", "45").base("water", "55").dose("lecithin", "0.3");
    Scaled scaled = formula.scaling().byOutput(0, mass("501.5 g"));
    assertThat(weighed(scaled, "juice")).isEqualByComparingTo("225");
    assertThat(weighed(scaled, "water")).isEqualByComparingTo("275");
    assertThat(weighed(scaled, "lecithin")).isEqualByComparingTo("1.5");
  }

  /** Source: oil powder at 60 to 40, published three times; 100 g of oil take 66.7 g. */
  @Test
  void scarcestIngredientSizesTheOilPowder() {
    Scaling scaling = new PublishedFormula().base("oil", "60").base("maltodextrin", "40").scaling();
    Scaled scaled =
        scaling
            .byScarcest(Map.of("oil", mass("100 g"), "maltodextrin", mass("500 g")))
            .orElseThrow();
    assertNear(weighed(scaled, "maltodextrin"), 66.7, 0.05);
    assertNear(scaled.outputMass().number(), 166.7, 0.05);
  }

  // ---- brine and reduction ----

  /** Source: a published rule of thumb, salt = 0.75 % of meat and water together. */
  @Test
  void equilibriumBrineIsSaltedForMeatAndWater() {
    PublishedFormula formula =
        new PublishedFormula().base("meat", "50").base("water", "50").dose("salt", "0.75");
    Scaled scaled = formula.written(mass("2 kg")).scaling().byBatches(Ratio.ONE).orElseThrow();
    assertThat(weighed(scaled, "meat")).isEqualByComparingTo("1000");
    assertThat(weighed(scaled, "salt")).isEqualByComparingTo("15.00");
  }

  /** Computed: as a true mass fraction the same brine has 15.11 g. */
  @Test
  void trueMassFractionOfTheBrineIsAnotherNumber() {
    PublishedFormula formula =
        new PublishedFormula().base("meat", "49.625").base("water", "49.625").base("salt", "0.75");
    Scaled scaled = formula.scaling().byScarcest(Map.of("meat", mass("1000 g"))).orElseThrow();
    assertNear(weighed(scaled, "salt"), 15.11, 0.005);
    assertNear(weighed(scaled, "water"), 1000, 1e-9);
  }

  /** Source: published, 1 kg of meat in 1 kg of 10 % brine comes to 5 %, 1.5 kg to 4 %. */
  @ParameterizedTest
  @CsvSource({"1000,0.05", "1500,0.04"})
  void immersionBrineSettlesAtItsShareOfEverything(String meat, double share) {
    PublishedFormula brine = new PublishedFormula().base("water", "90").base("salt", "10");
    Scaled scaled = brine.scaling().byOutput(0, mass("1000 g"));
    assertThat(weighed(scaled, "salt")).isEqualByComparingTo("100");
    BigDecimal all = mass(meat + " g").plus(scaled.outputMass()).number();
    assertThat(weighed(scaled, "salt").doubleValue() / all.doubleValue())
        .isCloseTo(share, within(1e-12));
  }

  /** Computed: 12 to 30 degrees Brix leaves 40 % of the mass. */
  @Test
  void reductionLeavesTheRatioOfTheDegreesBrix() {
    Scaling scaling = new PublishedFormula().base("juice", "100").yields("40").scaling();
    assertThat(weighed(scaling.byOutput(0, mass("400 g")), "juice")).isEqualByComparingTo("1000");
  }

  /** Computed (Pearson): 20 from 30 and 5 takes 15 parts and 10 parts. */
  @Test
  void blendKeepsItsParts() {
    Scaling scaling = new PublishedFormula().base("strong", "60").base("weak", "40").scaling();
    Scaled scaled = scaling.byOutput(0, mass("25 g"));
    double strong = weighed(scaled, "strong").doubleValue();
    double weak = weighed(scaled, "weak").doubleValue();
    assertThat(strong).isCloseTo(15, within(1e-12));
    assertThat((30 * strong + 5 * weak) / 25).isCloseTo(20, within(1e-12));
  }

  // ---- as purchased and edible ----

  /** Source: open textbook, Bakery and Business Math: EP = AP x yield. */
  @ParameterizedTest
  @CsvSource({"3 lb,95,2.85 lb", "5000 g,87,4350 g"})
  void edibleIsPurchasedTimesYield(String purchased, String yield, String edible) {
    PublishedFormula formula =
        new PublishedFormula().trimmed("item", yield, Line.Weighed.PURCHASED);
    Scaled scaled = formula.scaling().byScarcest(Map.of("item", mass(purchased))).orElseThrow();
    assertThat(bought(scaled, "item")).isEqualByComparingTo(mass(purchased).number());
    assertThat(scaled.outputMass().number()).isEqualByComparingTo(mass(edible).number());
  }

  /** Source: the same textbook, 32 oz at 78 %: buy 41.03 oz. */
  @Test
  void purchasedIsEdibleOverYield() {
    PublishedFormula formula = new PublishedFormula().trimmed("item", "78", Line.Weighed.PREPARED);
    Scaled scaled = formula.scaling().byOutput(0, mass("32 oz"));
    assertNear(bought(scaled, "item"), 41.03 * 28.349523125, 0.005 * 28.349523125);
    assertThat(weighed(scaled, "item")).isEqualByComparingTo(mass("32 oz").number());
  }

  /** Computed from the refuse of a national nutrient database: 1 kg basil, 1 kg leeks. */
  @ParameterizedTest
  @CsvSource({"basil,picked,1562.5", "leek,trimmed,2272.7"})
  void kilogramOfHerbOrLeekIsBoughtByItsRefuse(String row, String cut, double buy) {
    assertNear(bought(edible(row, cut, "1 kg"), "item"), buy, 0.05);
  }

  /**
   * Source: quantity-cooking handout, edible x 1.19 = 3.57 lb. The reference keeps 84.0 %, the
   * factor's inverse to a tenth, so the program buys 3.5714 lb.
   */
  @Test
  void handoutFactorBuysItsPounds() {
    double pound = 453.59237;
    assertNear(
        bought(edible("cucumber", "handout-pared", "3 lb"), "item"), 3.57 * pound, 0.005 * pound);
  }

  /** Source: two charts disagree on the pared cucumber, 84 and 73 %; each cut keeps its own. */
  @Test
  void chartsThatDisagreeStayApart() {
    assertNear(bought(edible("cucumber", "peeled", "730 g"), "item"), 1000, 1e-9);
    assertNear(bought(edible("cucumber", "handout-pared", "840 g"), "item"), 1000, 1e-9);
  }

  // ---- the banquet ----

  /** Source: catering textbook, 110 plates of 6 oz cooked at 75 %: 8 oz raw each, 55 lb. */
  @Test
  void banquetMeatIsFiftyFivePounds() {
    Scaling scaling = new PublishedFormula().base("beef", "100").yields("75").scaling();
    Scaled scaled = scaling.byCovers(0, 110, mass("6 oz"));
    assertThat(weighed(scaled, "beef")).isEqualByComparingTo(mass("55 lb").number());
    Scaled one = scaling.byCovers(0, 1, mass("6 oz"));
    assertThat(weighed(one, "beef")).isEqualByComparingTo(mass("8 oz").number());
  }

  /** Source: buying guide, a pound of ground beef as bought is 0.74 lb cooked; turkey 0.47. */
  @ParameterizedTest
  @CsvSource({"74,0.74 lb", "47,0.47 lb"})
  void cookedYieldBuysAPound(String yield, String cooked) {
    Scaling scaling = new PublishedFormula().base("meat", "100").yields(yield).scaling();
    assertThat(weighed(scaling.byOutput(0, mass(cooked)), "meat"))
        .isEqualByComparingTo(mass("1 lb").number());
  }

  private static PublishedFormula dough() {
    return new PublishedFormula()
        .base("flour", "100")
        .dose("water", "67")
        .dose("salt", "2")
        .dose("yeast", "1");
  }

  /** So much prepared of a reference row's cut. */
  private static Scaled edible(String row, String cut, String wanted) {
    Ratio yield = Reference.load().yields().get(row).get(cut).value();
    PublishedFormula formula =
        new PublishedFormula()
            .trimmed("item", yield.percent().toPlainString(), Line.Weighed.PREPARED);
    return formula.scaling().byOutput(0, mass(wanted));
  }

  private static Amount mass(String quantity) {
    return Quantity.of(quantity).canonical().orElseThrow();
  }

  private static void assertNear(BigDecimal actual, double expected, double within) {
    assertThat(actual.doubleValue()).isCloseTo(expected, within(within));
  }
}
