package halfgram.technique.gel;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Tables.Row;
import halfgram.technique.Trial;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the rows of the agents say, and what is said of them. */
class AgentsTest {
  private static final GelTechnique GEL = new GelTechnique();

  private static Trial of(String agent, String amount, String mix) {
    return Trial.of(GEL, "agent", agent, "amount", amount, "mix", mix);
  }

  /**
   * Published: kappa sets at 30 to 60 °C and melts 10 to 20 °C above, iota 40 to 70 and 5 to 10.
   */
  @ParameterizedTest
  @CsvSource({
    "carrageenan-kappa,10,20,40,80,'where it sets, 30 °C, plus 10 °C'",
    "carrageenan-iota,5,10,45,80,'where it sets, 40 °C, plus 5 °C'",
    "gellan-high-acyl,0,0,50,80,'where it sets, 50 °C, plus 0 °C'"
  })
  void whatMeltsSoMuchAboveItsSettingIsDerivedSo(
      String agent, double least, double most, double from, double to, String why) {
    Trial tried = of(agent, "2 g", "1002 g");
    assertThat(tried.number("hysteresisLeast")).isEqualTo(least);
    assertThat(tried.number("hysteresisMost")).isEqualTo(most);
    assertThat(tried.number("meltsFrom")).isEqualTo(from);
    assertThat(tried.number("meltsTo")).isEqualTo(to);
    assertThat(tried.said("meltsFrom")).isEqualTo(why);
    assertThat(tried.said("hysteresisLeast")).contains("so much above its setting");
  }

  /** Published twice and not alike: below 15 °C, below 20 °C. */
  @Test
  void gelatinIsGivenBothSettingTemperaturesOfItsSources() {
    Trial tried = of("gelatin", "10 g", "1010 g");
    assertThat(tried.number("setsBelow")).isEqualTo(15);
    assertThat(tried.number("setsOther")).isEqualTo(20);
    assertThat(tried.number("pourAbove")).isEqualTo(20);
    assertThat(tried.number("holdBelow")).isEqualTo(25);
    assertThat(tried.warns("disagree")).isTrue();
    assertThat(tried.says("bloom")).isTrue();
  }

  /** Published on one page: 50 to 60 °C; from memory: 70 to 80 °C. */
  @Test
  void aSettingTemperatureFromMemoryIsCalledUnverified() {
    Trial tried = of("gellan-high-acyl", "2 g", "1002 g");
    assertThat(tried.number("setsOther")).isEqualTo(80);
    assertThat(tried.warns("unverified")).isTrue();
    assertThat(tried.number("holdBelow")).isEqualTo(50);
    assertThat(of("agar", "2 g", "1002 g").warns("unverified")).isFalse();
  }

  /** Published: hydrates at 62 to 72 °C and thickens above 70 °C, so that 63 °C is not enough. */
  @Test
  void starchIsHeatedUntilItThickens() {
    Trial tried = of("corn-starch", "40 g", "1040 g");
    assertThat(tried.number("hydrateFrom")).isEqualTo(62);
    assertThat(tried.number("thickensAbove")).isEqualTo(70);
    assertThat(tried.reminders()).contains("Heat it above 70 °C: it thickens only there");
  }

  /** Published: dispersed above 70 °C in a third; its grades dissolve below 12 or 25 °C. */
  @Test
  void methylcelluloseIsDispersedHotAndDissolvesCold() {
    Trial tried = of("methylcellulose", "10 g", "1010 g");
    assertThat(tried.find("hydrateFrom")).isEmpty();
    assertThat(tried.number("disperseAbove")).isEqualTo(70);
    assertThat(tried.number("finishBelow")).isEqualTo(12);
    assertThat(tried.number("finishOther")).isEqualTo(25);
    assertThat(tried.reminders().get(0)).contains("above 70 °C in a third", "below 12 °C or 25 °C");
  }

  /** Published, row by row: cold, hot, in sugar, soaked or as dust, then as hot as it wants. */
  @ParameterizedTest
  @CsvSource({
    "agar,cold boil pour hold",
    "gelatin,bloom hydrate-between pour hold",
    "gellan-low-acyl,hydrate-between pour hold",
    "gellan-high-acyl,hydrate-between pour hold",
    "carrageenan-kappa,with-sugar hydrate-above pour hold",
    "carrageenan-iota,hydrate-above pour hold",
    "carrageenan-lambda,cold",
    "xanthan,cold",
    "locust-bean-gum,hot",
    "guar,cold",
    "alginate,cold",
    "lecithin,cold",
    "methylcellulose,disperse-hot sets-hot",
    "pectin-hm,cold sugar-later boil pour",
    "pectin-lm,cold hydrate-above pour",
    "gum-arabic,cold",
    "konjac,hydrate-above",
    "transglutaminase,bond-cold",
    "corn-starch,cold thickens"
  })
  void everyAgentIsDispersedAndHeatedAsItsRowSays(String agent, String said) {
    assertThat(of(agent, "5 g", "1005 g").added(Addition.Reminder.class))
        .extracting(reminder -> reminder.said().key().replace("technique.gel.say.", ""))
        .containsExactly(said.split(" ", -1));
  }

  @Test
  void everyAgentGivesAResultWithItsSource() {
    for (Row row : Trial.tables().table("agents").values()) {
      Trial tried = of(row.code(), "5 g", "1005 g");
      assertThat(tried.work().sources()).as(row.code()).containsExactly(row.source());
      assertThat(tried.work().figures()).as(row.code()).allMatch(f -> !Double.isNaN(f.number()));
      assertThat(tried.additions()).as(row.code()).isNotEmpty();
      assertThat(row.standing()).isEqualTo(Standing.PUBLISHED);
    }
    assertThat(Trial.tables().table("agents")).hasSize(19);
  }

  @Test
  void whatTheTableContradictsOrDoubtsIsSaidWithEveryResult() {
    for (Row row : Trial.tables().table("agents").values()) {
      Trial tried = of(row.code(), "5 g", "1005 g");
      assertThat(tried.warns("disagree")).as(row.code()).isEqualTo(row.has("disagree"));
      assertThat(tried.warns("note")).as(row.code()).isEqualTo(row.has("note"));
      assertThat(tried.warns("practice")).as(row.code()).isEqualTo(row.has("practice"));
      assertThat(tried.warns("helps")).as(row.code()).isEqualTo(row.has("helps"));
      assertThat(tried.warns("unverified")).as(row.code()).isEqualTo(row.has("unverified"));
    }
  }

  /** What two sources say of one thing; what one source says of two is only to be known. */
  @Test
  void onlyWhatIsContradictedIsCalledDisagreement() {
    assertThat(
            Trial.tables().table("agents").values().stream()
                .filter(row -> row.has("disagree"))
                .map(Row::code)
                .toList())
        .containsExactly(
            "agar", "alginate", "gelatin", "gellan-high-acyl", "pectin-lm", "transglutaminase");
  }
}
