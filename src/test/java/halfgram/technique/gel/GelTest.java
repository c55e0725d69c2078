package halfgram.technique.gel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.technique.Addition;
import halfgram.technique.Trial;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The gel against published properties of its agents. */
class GelTest {
  private static final GelTechnique GEL = new GelTechnique();

  private static Trial of(String agent, String amount, String mix) {
    return Trial.of(GEL, "agent", agent, "amount", amount, "mix", mix);
  }

  /** Published recipes of the direct method, 250 g of juice and 2 g; 500 g of water and 2.5 g. */
  @ParameterizedTest
  @CsvSource({"2 g,252 g,0.80", "2.5 g,502.5 g,0.50", "1.5 g,501.5 g,0.300"})
  void doseIsCountedOnEverythingElse(String amount, String mix, double percent) {
    assertThat(of("alginate", amount, mix).number("dose")).isCloseTo(percent, within(1e-9));
  }

  /** Computed: 2 % of the base and nothing else is 1.961 % of the mix. */
  @Test
  void doseOfTheWholeMixIsShownBesideIt() {
    Trial tried = of("agar", "2 g", "102 g");
    assertThat(tried.number("dose")).isCloseTo(2, within(1e-9));
    assertThat(tried.number("doseOfMix")).isCloseTo(1.961, within(0.0005));
  }

  /** Published: supplier's table 0.05 to 0.5 %, kitchens 0.2 to 2 %. */
  @ParameterizedTest
  @CsvSource({
    "0.49,dose-low",
    "0.5,dose-unusual",
    "2,-",
    "5,-",
    "5.01,dose-disputed",
    "20,dose-disputed",
    "20.01,dose-high"
  })
  void doseIsJudgedByEverySourceThereIs(String grams, String warning) {
    double mix = 1000 + Double.parseDouble(grams);
    Trial tried = of("agar", grams + " g", mix + " g");
    List<String> warned = new ArrayList<>();
    for (String one : List.of("dose-low", "dose-unusual", "dose-disputed", "dose-high")) {
      if (tried.warns(one)) {
        warned.add(one);
      }
    }
    assertThat(warned).isEqualTo(warning.equals("-") ? List.of() : List.of(warning));
    assertThat(tried.number("least")).isCloseTo(0.5, within(1e-9));
    assertThat(tried.number("most")).isCloseTo(5, within(1e-9));
    assertThat(tried.number("usualLeast")).isCloseTo(2, within(1e-9));
    assertThat(tried.number("usualMost")).isCloseTo(20, within(1e-9));
  }

  /** Published: low acyl 0.2 to 0.5 % for gels, 0.5 to 1 % for confectionery; high acyl in two. */
  @ParameterizedTest
  @CsvSource({
    "gellan-low-acyl,1.9,dose-low",
    "gellan-low-acyl,2,-",
    "gellan-low-acyl,5,-",
    "gellan-low-acyl,5.1,dose-unusual",
    "gellan-low-acyl,10,dose-unusual",
    "gellan-low-acyl,10.1,dose-high",
    "gellan-high-acyl,0.14,dose-low",
    "gellan-high-acyl,0.15,dose-suspends",
    "gellan-high-acyl,0.35,dose-suspends",
    "gellan-high-acyl,0.5,dose-between",
    "gellan-high-acyl,0.99,dose-between",
    "gellan-high-acyl,1,-",
    "gellan-high-acyl,3,-",
    "gellan-high-acyl,3.1,dose-high"
  })
  void aDoseOfGellanIsJudgedByWhatItIsFor(String agent, double grams, String warning) {
    Trial tried = of(agent, grams + " g", 1000 + grams + " g");
    assertThat(tried.warnings().stream().filter(key -> key.startsWith("dose-")).toList())
        .isEqualTo(warning.equals("-") ? List.of() : List.of(warning));
  }

  /** Published: sets 35 to 45 °C (a review: below 35 °C), melts 80 to 90 °C. */
  @Test
  void agarMeltsFarAboveWhereItSets() {
    Trial tried = of("agar", "10 g", "1010 g");
    assertThat(tried.number("hydrateFrom")).isEqualTo(90);
    assertThat(tried.number("pourAbove")).isEqualTo(45);
    assertThat(tried.number("setsBelow")).isEqualTo(35);
    assertThat(tried.number("meltsFrom")).isEqualTo(80);
    assertThat(tried.number("holdBelow")).isEqualTo(80);
    assertThat(tried.number("hysteresisLeast")).isEqualTo(35);
    assertThat(tried.number("hysteresisMost")).isEqualTo(55);
    assertThat(tried.says("boil")).isTrue();
    assertThat(tried.added(Addition.Caution.class))
        .extracting(Addition.Caution::code)
        .containsExactly("boiling-pot");
  }

  @ParameterizedTest
  @CsvSource({
    "24.9 °C,false,false",
    "25 °C,true,false",
    "77 °F,true,false",
    "76.9 °F,false,false",
    "40 °C,false,true",
    "104 °F,false,true"
  })
  void gelatinIsServedBelowItsMeltingPoint(String serve, boolean melting, boolean molten) {
    Trial tried = of("gelatin", "10 g", "1010 g").with("serve", serve);
    assertThat(tried.warns("served-melting")).isEqualTo(melting);
    assertThat(tried.warns("served-molten")).isEqualTo(molten);
  }

  /** Published: gels on heating above 45 °C and melts on cooling. */
  @ParameterizedTest
  @CsvSource({"44 °C,true", "45 °C,true", "113 °F,true", "113.1 °F,false", "60 °C,false"})
  void methylcelluloseIsLiquidOnAColdPlate(String serve, boolean warned) {
    Trial tried = of("methylcellulose", "10 g", "1010 g").with("serve", serve);
    assertThat(tried.warns("served-cold")).isEqualTo(warned);
    assertThat(tried.find("holdBelow")).isEmpty();
    assertThat(tried.number("gelsAbove")).isEqualTo(45);
    assertThat(tried.says("sets-hot")).isTrue();
  }

  @Test
  void aPhIsJudgedOnlyWhereOneWasRead() {
    assertThat(of("agar", "10 g", "1010 g").warns("ph")).isFalse();
    assertThat(of("agar", "10 g", "1010 g").with("ph", "2.4").warns("ph")).isTrue();
    assertThat(of("agar", "10 g", "1010 g").with("ph", "2.5").warns("ph")).isFalse();
    assertThat(of("agar", "10 g", "1010 g").with("ph", "10").warns("ph")).isFalse();
    assertThat(of("agar", "10 g", "1010 g").with("ph", "10.1").warns("ph")).isTrue();
  }

  @ParameterizedTest
  @CsvSource({"pectin-hm", "alginate", "konjac"})
  void whereThePhDecidesAReadingIsAskedFor(String agent) {
    assertThat(of(agent, "5 g", "1005 g").warns("ph-unread")).isTrue();
    assertThat(of(agent, "5 g", "1005 g").with("ph", "4").warns("ph-unread")).isFalse();
  }

  /** Published: 2.9 to 3.3, at most 3.5; 59 to 66 °Bx; premix in at most 25 °Bx. */
  @Test
  void highMethoxylPectinWantsAcidAndSugar() {
    Trial jam = of("pectin-hm", "5 g", "1005 g").with("ph", "3.2", "sugar", "62 °Bx");
    assertThat(jam.warns("ph") || jam.warns("ph-weak") || jam.warns("sugar-low")).isFalse();
    assertThat(jam.with("ph", "3.4").warns("ph-weak")).isTrue();
    assertThat(jam.with("ph", "3.6").warns("ph")).isTrue();
    assertThat(jam.with("sugar", "58.9 °Bx").warns("sugar-low")).isTrue();
    assertThat(jam.with("sugar", "59 °Bx").warns("sugar-low")).isFalse();
    assertThat(jam.with("sugar", "66 °Bx").warns("sugar-high")).isFalse();
    assertThat(jam.with("sugar", "66.1 °Bx").warns("sugar-high")).isTrue();
    assertThat(jam.number("dissolveBelow")).isEqualTo(25);
    assertThat(jam.says("sugar-later")).isTrue();
  }

  /** Published by practitioners: stay above 3.65; a supplier's table allows 2.8. */
  @ParameterizedTest
  @CsvSource({"3.66,false,false", "3.65,true,false", "2.8,true,false", "2.7,true,true"})
  void alginicAcidFallsOutBeforeTheSupplierRefusesIt(String ph, boolean falls, boolean refused) {
    Trial tried = of("alginate", "5 g", "1005 g").with("ph", ph);
    assertThat(tried.warns("falls-out")).isEqualTo(falls);
    assertThat(tried.warns("ph")).isEqualTo(refused);
    assertThat(of("agar", "5 g", "1005 g").with("ph", ph).warns("falls-out")).isFalse();
  }

  @Test
  void ionsThatItNeedsAreMissed() {
    assertThat(of("gellan-low-acyl", "5 g", "1005 g").warns("ions")).isTrue();
    Trial kappa = of("carrageenan-kappa", "5 g", "1005 g");
    assertThat(kappa.warns("ions")).isTrue();
    assertThat(kappa.with("potassium", "yes").warns("ions")).isFalse();
    assertThat(kappa.with("milk", "yes").warns("ions")).isFalse();
    assertThat(kappa.with("calcium", "100 mg/kg").warns("ions")).isFalse();
    assertThat(of("carrageenan-iota", "5 g", "1005 g").with("milk", "yes").warns("ions")).isTrue();
    assertThat(of("gellan-high-acyl", "2 g", "1002 g").warns("ions")).isFalse();
  }

  /** Published: locust bean gum gels with xanthan or kappa carrageenan, konjac at about pH 9. */
  @Test
  void whatAnAgentCannotSetWithoutIsMissedUntilItIsThere() {
    Trial locust = of("locust-bean-gum", "2 g", "1002 g");
    assertThat(locust.warns("partner")).isTrue();
    assertThat(locust.with("partner", "2 g").warns("partner")).isFalse();
    Trial konjac = of("konjac", "2 g", "1002 g");
    assertThat(konjac.warns("alkali")).isTrue();
    assertThat(konjac.with("ph", "8.9").warns("alkali")).isTrue();
    assertThat(konjac.with("ph", "9").warns("alkali")).isFalse();
  }

  /** Calcium is in all tap water: no source says how much of it is enough. */
  @ParameterizedTest
  @CsvSource({"carrageenan-kappa", "carrageenan-iota", "gellan-low-acyl", "alginate"})
  void aTraceOfCalciumIsCountedAndNotTakenForEnough(String agent) {
    Trial tried = of(agent, "5 g", "1005 g");
    assertThat(tried.warns("calcium-counted")).isFalse();
    assertThat(tried.with("calcium", "1 mg/kg").warns("calcium-counted")).isTrue();
    assertThat(tried.with("calcium", "1 mg/kg").warns("ions")).isFalse();
  }

  /**
   * These are known only when a whole book is read, and what is added is in the formula by then.
   */
  @Test
  void whatIsAddedToABatchHangsOnNeitherCalciumNorMilk() {
    for (String agent : Trial.tables().table("agents").keySet()) {
      Trial tried = of(agent, "5 g", "1005 g");
      assertThat(tried.with("calcium", "900 mg/kg", "milk", "yes").additions())
          .isEqualTo(tried.additions());
    }
  }

  @Test
  void calciumIsNotAskedOfWhatHasPotassium() {
    Trial kappa = of("carrageenan-kappa", "5 g", "1005 g").with("calcium", "1 mg/kg");
    assertThat(kappa.with("potassium", "yes").warns("calcium-counted")).isFalse();
  }

  /** Published with unclear units; without any agent there is nothing to count it on. */
  @Test
  void calciumForEachGramIsNotReckonedOnNoAgent() {
    Trial none = of("pectin-lm", "0 g", "1000 g").with("calcium", "200 mg/kg");
    assertThat(none.warns("calcium-per-gram")).isFalse();
    assertThat(none.warns("dose-low")).isTrue();
  }

  /** Common practice: water of 120 ppm, which is 48 mg of calcium in a litre. */
  @Test
  void calciumBeforeHydrationHarmsAlginate() {
    Trial tried = of("alginate", "5 g", "1005 g");
    assertThat(tried.with("calcium", "47.9 mg/kg").warns("calcium-slows")).isFalse();
    assertThat(tried.with("calcium", "48 mg/kg").warns("calcium-slows")).isTrue();
  }

  /** Published with unclear units: 10 to 30 mg of calcium in a gram of pectin. */
  @Test
  void lowMethoxylPectinSaysItsCalciumAsUnverified() {
    Trial tried = of("pectin-lm", "10 g", "1000 g").with("calcium", "200 mg/kg");
    assertThat(tried.number("calcium")).isCloseTo(200, within(1e-9));
    assertThat(tried.number("calciumLeast")).isCloseTo(100, within(1e-9));
    assertThat(tried.number("calciumMost")).isCloseTo(300, within(1e-9));
    assertThat(tried.warns("unverified")).isTrue();
    assertThat(tried.warns("calcium-per-gram")).isFalse();
    assertThat(tried.with("calcium", "301 mg/kg").warns("calcium-per-gram")).isTrue();
    assertThat(tried.warns("melts-somewhere")).isTrue();
  }

  /** Common practice: raw pineapple and kiwi. */
  @Test
  void freshFruitDestroysGelatinAlone() {
    Trial tried = of("gelatin", "10 g", "1010 g").with("freshFruit", "yes");
    assertThat(tried.warns("fresh-fruit")).isTrue();
    assertThat(of("agar", "5 g", "1005 g").with("freshFruit", "yes").warns("fresh-fruit"))
        .isFalse();
  }

  /** Published twice: less than 50 % of ethanol. */
  @ParameterizedTest
  @CsvSource({"49.9 %,false", "50 %,true", "500 g/kg,true", "499 g/kg,false"})
  void xanthanStandsAlcoholBelowHalf(String alcohol, boolean warned) {
    Trial tried = of("xanthan", "2 g", "1002 g").with("alcohol", alcohol);
    assertThat(tried.warns("alcohol")).isEqualTo(warned);
    assertThat(tried.warns("thickens")).isTrue();
  }

  /** Published: gum arabic makes a soft gel above 10 %; lecithin makes none. */
  @Test
  void anEmulsifierIsNoGelOrASoftOne() {
    assertThat(of("gum-arabic", "50 g", "1 kg").warns("soft-gel")).isTrue();
    assertThat(of("gum-arabic", "50 g", "1 kg").warns("no-gel")).isFalse();
    assertThat(of("lecithin", "5 g", "1 kg").warns("no-gel")).isTrue();
  }

  /** Published: works at pH 4 to 10, weaker below 5 and above 9. */
  @Test
  void acidWeakensStarch() {
    Trial tried = of("corn-starch", "40 g", "1040 g");
    assertThat(tried.with("ph", "4.9").warns("ph-weak")).isTrue();
    assertThat(tried.with("ph", "5").warns("ph-weak")).isFalse();
    assertThat(tried.with("ph", "3.9").warns("ph")).isTrue();
    assertThat(tried.warns("dose-unknown")).isTrue();
  }

  /** Published: 6 h refrigerated; food safety comes before the enzyme. */
  @Test
  void meatIsBondedCold() {
    Trial tried = of("transglutaminase", "10 g", "1010 g");
    assertThat(tried.number("stand")).isEqualTo(360);
    assertThat(tried.with("place", "room").warns("bond-warm")).isTrue();
    assertThat(tried.with("place", "room").find("stand")).isEmpty();
    assertThat(tried.says("bond-cold")).isTrue();
  }

  /** Published on cooling: the time grows with the square of the depth. */
  @Test
  void aDeeperLayerStandsLongerAndAThinnerOneNoShorter() {
    Trial tried = of("gelatin", "10 g", "1010 g");
    assertThat(tried.added(Addition.Stands.class))
        .extracting(Addition.Stands::least)
        .containsExactly(Duration.ofHours(4));
    assertThat(tried.with("depth", "60 mm").number("stand")).isCloseTo(960, within(1e-9));
    assertThat(tried.with("depth", "10 mm").number("stand")).isCloseTo(240, within(1e-9));
    assertThat(tried.with("depth", "75 mm").warns("deep")).isFalse();
    assertThat(tried.with("depth", "3 in").warns("deep")).isTrue();
    assertThat(tried.with("place", "room").warns("room")).isTrue();
    assertThat(tried.with("place", "room").added(Addition.Stands.class)).isEmpty();
  }

  @Test
  void nothingButTheAgentIsRefused() {
    assertThat(of("agar", "10 g", "10 g").stops("nothing-else")).isTrue();
    assertThat(of("agar", "10 g", "10 g").work().figures()).isEmpty();
  }

  @Test
  void moreAgentIsNeverALowerDose() {
    Seeds.over(
        200,
        seed -> {
          Chance chance = new Chance(seed);
          int mix = chance.from(1000, 5000);
          int grams = chance.from(1, 400);
          double less = of("agar", grams + " g", mix + " g").number("dose");
          double more = of("agar", (grams + chance.from(0, 100)) + " g", mix + " g").number("dose");
          assertThat(more).isGreaterThanOrEqualTo(less);
        });
  }

  @Test
  void otherUnitsGiveTheSame() {
    Seeds.over(
        100,
        seed -> {
          Chance chance = new Chance(seed);
          int grams = chance.from(1, 400);
          int mix = chance.from(1000, 5000);
          List<String> agents = List.copyOf(Trial.tables().table("agents").keySet());
          Trial metric = of(chance.of(agents), grams + " g", mix + " g").with("depth", "254 mm");
          Trial other =
              metric
                  .with("amount", grams * 1000 + " mg", "mix", mix / 1000.0 + " kg")
                  .with("depth", "10 in");
          assertThat(other.work().figures()).hasSameSizeAs(metric.work().figures());
          metric
              .work()
              .figures()
              .forEach(
                  figure ->
                      assertThat(other.number(figure.name()))
                          .isCloseTo(figure.number(), within(1e-9 * (1 + figure.number()))));
          assertThat(other.work().warnings()).hasSameSizeAs(metric.work().warnings());
        });
  }

  @Test
  void everyBadInputIsNamedAtOnceAndNothingComputed() {
    Trial bad =
        Trial.of(
            GEL, "agent", "glue", "amount", "5", "mix", "ten", "serve", "300 °C", "place", "roof",
            "size", "3");
    assertThat(bad.problems()).containsOnlyKeys("agent", "amount", "mix", "serve", "place", "size");
    assertThat(Trial.of(GEL).problems()).containsOnlyKeys("agent", "amount", "mix");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(GEL).number("dose")).isCloseTo(1, within(1e-9));
  }
}
