package halfgram.technique.additive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Tables.Row;
import halfgram.technique.Trial;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Levels of additives against published maxima. */
class AdditiveLevelTest {
  private static final AdditiveLevelTechnique LEVEL = new AdditiveLevelTechnique();
  private static final String PUDDING = "us-alginate-gelatins-puddings";

  private static final BigDecimal FOUR = new BigDecimal(4);

  private static Trial of(String additive, String amount, String mix) {
    return Trial.of(LEVEL, "additive", additive, "amount", amount, "mix", mix);
  }

  /** Published: 21 CFR 184.1724 and 184.1199, as served. */
  @ParameterizedTest
  @CsvSource({
    "us-alginate-gelatins-puddings,41 g,true",
    "us-alginate-gelatins-puddings,40 g,false",
    "us-alginate-gelatins-puddings,40.0001 g,true",
    "us-calcium-gluconate-gelatins-puddings,45 g,false",
    "us-calcium-gluconate-gelatins-puddings,45.001 g,true",
    "us-agar-other,2.5 g,false",
    "us-agar-other,2.51 g,true",
    "us-calcium-chloride-other,500 mg,false",
    "us-calcium-chloride-other,501 mg,true",
    "us-guar-sauces,12 g,false",
    "eu-konjac,10 g,false",
    "eu-konjac,10.1 g,true",
    "us-benzoic-acid-any,1 g,false",
    "us-benzoic-acid-any,1.1 g,true"
  })
  void theMaximumIsAllowedAndAnythingAboveItIsNot(String row, String amount, boolean stopped) {
    assertThat(of(row, amount, "1 kg").stops("above")).isEqualTo(stopped);
  }

  @ParameterizedTest
  @CsvSource({"0.64 oz,16 oz,false", "0.65 oz,16 oz,true", "0.04 lb,1 lb,false"})
  void theLimitIsExactInTheUnitTyped(String amount, String mix, boolean stopped) {
    assertThat(of(PUDDING, amount, mix).stops("above")).isEqualTo(stopped);
  }

  @Test
  void everyFigureOfALevel() {
    Trial tried = of(PUDDING, "10 g", "1 kg");
    assertThat(tried.number("level")).isCloseTo(10_000, within(1e-6));
    assertThat(tried.number("levelPercent")).isCloseTo(1, within(1e-9));
    assertThat(tried.number("maximum")).isEqualTo(40_000);
    assertThat(tried.number("ofMaximum")).isCloseTo(25, within(1e-9));
    assertThat(tried.number("most")).isCloseTo(40, within(1e-9));
    assertThat(tried.number("left")).isCloseTo(30, within(1e-9));
  }

  /** The food is judged as served, not the bath it came from nor the mix it cooked down from. */
  @Test
  void theFinishedFoodIsJudged() {
    Trial tried = of(PUDDING, "30 g", "1 kg");
    assertThat(tried.stops("above")).isFalse();
    assertThat(tried.with("yield", "75 %").stops("above")).isFalse();
    assertThat(tried.with("yield", "74 %").stops("above")).isTrue();
    assertThat(tried.with("yield", "50 %").with("carried", "10 %").number("level"))
        .isCloseTo(6000, within(1e-6));
  }

  /** Published: 21 CFR 172.175 and 172.170, finished food; a strength as the tub has it. */
  @ParameterizedTest
  @CsvSource({
    "us-nitrite-finished,3.2 g,6.25 %,false", "us-nitrite-finished,3.21 g,6.25 %,true",
    "us-nitrate-finished,500 mg,100 %,false", "us-nitrate-finished,501 mg,100 %,true"
  })
  void aCureIsJudgedByWhatOfItIsTheAdditive(
      String row, String amount, String strength, boolean stopped) {
    Trial tried = of(row, amount, "1 kg").with("strength", strength);
    assertThat(tried.stops("above")).isEqualTo(stopped);
    assertThat(tried.warns("note")).isTrue();
    assertThat(tried.added(Addition.Caution.class))
        .extracting(Addition.Caution::code)
        .containsExactly("regulated-cure");
  }

  @Test
  void noLevelIsReckonedWithoutFood() {
    assertThat(of(PUDDING, "1 g", "0 g").stops("no-mix")).isTrue();
    assertThat(of(PUDDING, "1 g", "0 g").work().figures()).isEmpty();
    assertThat(of(PUDDING, "1 g", "0 g").additions()).isEmpty();
  }

  /** Published: above 10 mg/kg as SO2 (Annex II, group 12); from memory: 10 ppm or more. */
  @ParameterizedTest
  @CsvSource({
    "eu-sulphites-declare,10 mg,false,declare-above,undeclared",
    "eu-sulphites-declare,10.1 mg,true,declare-above,undeclared",
    "us-sulphites-declare,10 mg,true,declare-from,declareFrom",
    "us-sulphites-declare,9.9 mg,false,declare-from,declareFrom"
  })
  void sulphitesAreDeclaredAtTheirThreshold(
      String row, String amount, boolean declared, String warning, String figure) {
    Trial tried = of(row, amount, "1 kg");
    assertThat(tried.warns("declare-from") || tried.warns("declare-above")).isEqualTo(declared);
    assertThat(tried.warns(warning)).isEqualTo(declared);
    assertThat(tried.number(figure)).isCloseTo(0.01, within(1e-12));
    assertThat(tried.find("declareFrom").isPresent() && tried.find("undeclared").isPresent())
        .isFalse();
    assertThat(tried.additions()).isEmpty();
    assertThat(tried.work().stops()).isEmpty();
  }

  @Test
  void whereTheRuleHasNoNumberNoneIsMadeUp() {
    for (String row : List.of("us-xanthan", "eu-alginate", "codex-agar", "other")) {
      Trial tried = of(row, "10 g", "1 kg");
      assertThat(tried.find("maximum")).as(row).isEmpty();
      assertThat(tried.find("ofMaximum")).as(row).isEmpty();
      assertThat(tried.number("level")).as(row).isCloseTo(10_000, within(1e-6));
      assertThat(tried.work().stops()).as(row).isEmpty();
    }
    assertThat(of("us-xanthan", "10 g", "1 kg").warns("gmp")).isTrue();
    assertThat(of("eu-alginate", "10 g", "1 kg").warns("quantum-satis")).isTrue();
    assertThat(of("other", "10 g", "1 kg").warns("none-known")).isTrue();
  }

  /** Published: Commission Decision 2004/374/EC; from memory what is in force since. */
  @Test
  void jellyMiniCupsAreRefused() {
    assertThat(of("eu-gels-jelly-mini-cups", "1 g", "1 kg").stops("banned")).isTrue();
    assertThat(of("eu-gels-jelly-mini-cups", "0 g", "1 kg").stops("banned")).isFalse();
  }

  @Test
  void aRowFromMemoryIsCalledUnverifiedAndEveryResultDefersToTheLocalCode() {
    for (Row row : Trial.tables().table("additives").values()) {
      Trial tried = of(row.code(), "1 mg", "1 kg");
      assertThat(tried.warns("unverified"))
          .as(row.code())
          .isEqualTo(row.standing() == Standing.UNVERIFIED);
      assertThat(tried.warns("local")).as(row.code()).isTrue();
      assertThat(tried.work().sources()).as(row.code()).containsExactly(row.source());
    }
    assertThat(Trial.tables().table("additives")).hasSize(83);
  }

  @Test
  void aPublishedRowNamesTheCopyThatItWasReadIn() {
    for (Row row : Trial.tables().table("additives").values()) {
      boolean published = row.standing() == Standing.PUBLISHED;
      boolean memory = row.source().endsWith("from memory") || row.source().equals("none");
      assertThat(row.source().contains("read in a copy: ") && !memory)
          .as(row.code())
          .isEqualTo(published);
    }
  }

  /**
   * From memory: the bar on jelly mini-cups is on these too, and calcium lactate is for no infant.
   */
  @ParameterizedTest
  @CsvSource({
    "eu-konjac,mini-cups",
    "eu-pectin,mini-cups",
    "us-calcium-lactate,infant",
    "eu-gels-jelly-mini-cups,E 425"
  })
  void whatARuleKeepsOutIsSaid(String row, String said) {
    Trial tried = of(row, "1 g", "1 kg");
    assertThat(tried.work().warnings()).anyMatch(warning -> tried.said(warning).contains(said));
  }

  /** A kitchen may write a stricter maximum of its own; whose word it is stays with the result. */
  @Test
  void theKitchensOwnMaximumIsNeverTakenForThePublishedOne() {
    Trial tried = of(PUDDING, "30 g", "1 kg");
    Tables own =
        Trial.tables()
            .with(
                "additives",
                PUDDING,
                Map.of("maximum_mg_per_kg", "20000"),
                Standing.ENTERED,
                "inspector's letter");
    Result result = LEVEL.work(tried.values(), own);
    assertThat(result.stops()).hasSize(1);
    assertThat(result.warnings())
        .extracting(Message::key)
        .contains("technique.additive-level.warn.own");
    assertThat(tried.warns("own")).isFalse();
  }

  @Test
  void theCookReadsAMostThatHoldsForAnyBatch() {
    Trial tried = of(PUDDING, "10 g", "2 kg");
    Addition.Reminder reminder = tried.added(Addition.Reminder.class).get(0);
    assertThat(reminder.said().args()).containsExactly("40");
    assertThat(of("us-xanthan", "10 g", "2 kg").additions()).isEmpty();
  }

  @Test
  void moreAdditiveIsNeverALowerLevelAndMoreFoodNeverAHigherOne() {
    Seeds.over(
        300,
        seed -> {
          Chance chance = new Chance(seed);
          int grams = chance.from(1, 500);
          int mix = chance.from(500, 5000);
          Trial tried = of(PUDDING, grams + " g", mix + " g");
          assertThat(of(PUDDING, grams + 1 + " g", mix + " g").number("level"))
              .isGreaterThan(tried.number("level"));
          assertThat(of(PUDDING, grams + " g", mix + 1 + " g").number("level"))
              .isLessThan(tried.number("level"));
          assertThat(of(PUDDING, grams * 1000 + " mg", mix / 1000.0 + " kg").number("level"))
              .isCloseTo(tried.number("level"), within(1e-6));
          String most = BigDecimal.valueOf(mix).movePointLeft(2).multiply(FOUR) + " g";
          assertThat(tried.number("most")).isCloseTo(mix * 0.04, within(1e-9));
          assertThat(of(PUDDING, most, mix + " g").stops("above")).isFalse();
        });
  }

  /** A strength of 6.25 % that is typed as a bare number is refused, whichever way it was meant. */
  @Test
  void everyBadInputIsNamedAtOnce() {
    Trial bad =
        Trial.of(
            LEVEL,
            "additive",
            "us-glue",
            "amount",
            "3",
            "strength",
            "6.25",
            "yield",
            "0 %",
            "carried",
            "101 %");
    assertThat(bad.problems())
        .containsOnlyKeys("additive", "amount", "mix", "strength", "yield", "carried");
  }

  @Test
  void theWorkedExampleWorks() {
    assertThat(Trial.example(LEVEL).number("ofMaximum")).isCloseTo(100, within(1e-9));
  }
}
