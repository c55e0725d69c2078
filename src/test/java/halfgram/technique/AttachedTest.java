package halfgram.technique;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.book.BookReader;
import halfgram.book.DemoBook;
import halfgram.book.Reference;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.input.Problem;
import halfgram.measure.BusinessDay;
import halfgram.measure.Mass;
import halfgram.words.Messages;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Techniques attached to formulas of the demo book: what they add is in the formula. */
class AttachedTest {
  private static final BookReader READER = new BookReader(Reference.load());
  private static final Messages MESSAGES = new Messages("en", ZoneOffset.UTC);
  private static final String DILL = "formulas/blanched-dill/versions/0";
  private static final String OIL = "formulas/dill-oil/versions/0";
  private static final String POWDER = "formulas/dill-oil-powder/versions/0";

  private final DemoBook book = DemoBook.fresh();

  @Test
  void blanchingWeighsWaterSaltAndIceForItsHerb() {
    book.set(DILL + "/lines/+", "{'ingredient': 'water', 'aside': true, 'technique': 'water'}");
    book.set(DILL + "/lines/+", "{'ingredient': 'salt', 'aside': true, 'technique': 'salt'}");
    book.set(
        DILL + "/techniques",
        "[{'name': 'blanch-shock', 'step': 'blanch',"
            + " 'of': {'herb': 'dill', 'water': 'water', 'ice': 'ice'},"
            + " 'inputs': {'vegetable': 'other-green', 'potWater': '10 L'}}]");
    FormulaVersion dill = read("blanched-dill");
    assertThat(share(dill, "water")).isCloseTo(16.69 * 0.9584, within(1e-6));
    assertThat(share(dill, "salt")).isCloseTo(16.69 * 0.9584 * 0.015, within(1e-6));
    assertThat(share(dill, "ice")).isBetween(1.5, 3.5);
    assertThat(dill.steps().get(0).cautions()).containsOnlyOnce("boiling-pot");
    // 10 L take 599.16 g of leaves at once.
    assertThat(dill.steps().get(0).machines().get(0).limits().max())
        .hasValueSatisfying(most -> assertThat(most).isLessThanOrEqualTo(Mass.grams("599.17")));
  }

  @Test
  void herbOilCapsWhatIsMadeOfItWhateverTheFormulaSays() {
    book.set(OIL + "/outputs/0/hold", "{'max': '10 d', 'why': 'quality', 'source': 'a wish'}");
    attachOil("'keeping': 'chilled', 'holdTemperature': '40 °F'");
    Output.Hold hold = read("dill-oil").outputs().get(0).hold();
    assertThat(hold.days()).hasValue(4);
    assertThat(hold.from()).contains("blend");
    assertThat(hold.reason().isSafety()).isTrue();
    assertThat(read("dill-oil").steps().get(0).cautions()).contains("herb-in-oil", "blade");
  }

  /** Blended Monday evening, strained Tuesday: three days from then would be a fifth day. */
  @Test
  void shorterHoldCountedFromReadyStillEndsOnTheFourthDay() {
    book.set(OIL + "/outputs/0/hold", "{'max': '3 d', 'why': 'quality', 'source': 'a wish'}");
    Output.Hold hold = read("dill-oil").outputs().get(0).hold();
    assertThat(end(hold, "2026-05-12T08:00:00Z", "blend", "2026-05-11T20:00:00Z"))
        .isEqualTo("2026-05-14T23:59:00Z");
    assertThat(end(hold, "2026-05-11T22:00:00Z", "blend", "2026-05-11T20:00:00Z"))
        .isEqualTo("2026-05-14T22:00:00Z");
    assertThat(hold.reason().isSafety()).isTrue();
  }

  @Test
  void holdCountedFromAnEarlierStepIsNotMadeLonger() {
    book.set(
        OIL + "/outputs/0/hold",
        "{'max': '96 h', 'from': 'blend', 'why': 'safety', 'source': 'the house'}");
    attachOil("drip", "'keeping': 'chilled', 'holdTemperature': '4 °C'");
    Output.Hold hold = read("dill-oil").outputs().get(0).hold();
    assertThat(hold.from()).contains("blend");
    assertThat(end(hold, "2026-05-11T08:00:00Z", "drip", "2026-05-12T08:00:00Z"))
        .isEqualTo("2026-05-15T08:00:00Z");
  }

  /** The end of a hold whose own clock starts at a moment, one step having ended at another. */
  private static Instant end(Output.Hold hold, String start, String step, String ended) {
    return hold.end(
        Instant.parse(start),
        code -> Instant.parse(code.equals(step) ? ended : start),
        new BusinessDay(ZoneOffset.UTC, LocalTime.of(4, 0)));
  }

  /** The rest of a step that no other names runs beside what comes after it, not behind it. */
  @Test
  void restOfAStepThatNothingFollowsByNameIsNotCountedFromTheLast() {
    attachOil("drip", "'holdTemperature': '4 °C', 'rest': '30 min'");
    book.set(OIL + "/steps/2/after", "[{'step': 'blend'}]");
    FormulaVersion oil = read("dill-oil");
    assertThat(oil.outputs().get(0).rest()).isEqualTo(Output.Rest.NONE);
    assertThat(oil.steps().get(2).after())
        .anyMatch(lag -> lag.step().equals("drip") && lag.min().equals(Duration.ofMinutes(30)));
    attachOil("decant", "'holdTemperature': '4 °C', 'rest': '30 min'");
    assertThat(read("dill-oil").outputs().get(0).rest().min()).isEqualTo(Duration.ofMinutes(30));
  }

  @Test
  void herbOilTooWarmIsNoFormula() {
    attachOil("'holdTemperature': '4.5 °C'");
    assertThat(problems()).singleElement().asString().contains("4.5 °C", "at most 4.4 °C (40 °F)");
  }

  @Test
  void herbOilAtRoomTemperatureIsNoFormula() {
    attachOil("'keeping': 'ambient', 'holdTemperature': '20 °C'");
    assertThat(problems()).first().asString().contains("Never at room temperature");
  }

  @Test
  void oilPowderIsWeighedByMassAndKeepsTheOilsDays() {
    book.set(
        POWDER + "/lines/+",
        "{'code': 'light', 'ingredient': 'maltodextrin', 'aside': true, 'technique': 'powder'}");
    book.set(
        POWDER + "/techniques",
        "[{'name': 'oil-powder', 'step': 'mix', 'of': {'fat': 'dill-oil'},"
            + " 'inputs': {'kind': 'herb-oil', 'oilDay': 2}}]");
    FormulaVersion powder = read("dill-oil-powder");
    assertThat(share(powder, "light")).isCloseTo(0.66667, within(0.00001));
    assertThat(powder.outputs().get(0).hold().reason().isSafety()).isTrue();
    assertThat(powder.steps().get(0).cautions()).contains("herb-in-oil");
  }

  @Test
  void figureThatATechniqueDoesNotGiveIsNamedWithThoseItDoes() {
    book.set(DILL + "/lines/+", "{'ingredient': 'water', 'aside': true, 'technique': 'lemon'}");
    assertThat(problems()).singleElement().asString().contains("ice, salt, water");
  }

  /** A cure that is weighed before its technique's step is warned of where it is weighed. */
  @Test
  void cautionStandsWhereWhatCarriesItIsWeighed() {
    String line = "{'code': 'pink', 'ingredient': 'salt', 'aside': true, 'step': 'blanch', ";
    String inputs = "'method': 'on-green', 'cureNitrite': '6.25 %', 'localLimit': '120 ppm'";
    book.set(DILL + "/lines/+", line + "'technique': 'cure'}");
    book.set(
        DILL + "/techniques/+",
        "{'name': 'brine', 'step': 'squeeze', 'of': {'meat': 'dill'}, 'inputs':"
            + " {'cure': 'for-target', 'targetPpm': '100 ppm', "
            + inputs
            + "}}");
    FormulaVersion named = read("blanched-dill");
    assertThat(named.steps().get(0).cautions()).contains("regulated-cure");
    assertThat(named.steps().get(0).cautions()).doesNotContain("strong-salt");
    assertThat(named.steps().get(1).cautions()).contains("regulated-cure", "strong-salt");
    book.set(DILL + "/lines/2", line + "'percent': 0.1}");
    book.set(
        DILL + "/techniques/1",
        "{'name': 'brine', 'step': 'squeeze', 'of': {'meat': 'dill', 'cure': 'pink'},"
            + " 'inputs': {'cure': 'weighed-out', "
            + inputs
            + "}}");
    assertThat(read("blanched-dill").steps().get(0).cautions()).contains("regulated-cure");
  }

  /** Of two techniques that both give salt none silently decides. */
  @Test
  void figureOfTwoTechniquesIsNotTakenFromEither() {
    book.set(DILL + "/lines/+", "{'ingredient': 'salt', 'aside': true, 'technique': 'salt'}");
    book.set(DILL + "/techniques/+", "{'name': 'brine', 'step': 'blanch', 'of': {'meat': 'dill'}}");
    assertThat(problems()).singleElement().asString().contains("more than one technique");
    book.set(DILL + "/lines/2/technique", "'water'");
    assertThat(problems()).isEmpty();
  }

  @Test
  void saltTypedAsAProportionStopsTheFormula() {
    book.set(
        DILL + "/techniques/+",
        "{'name': 'brine', 'step': 'blanch', 'of': {'meat': 'dill'},"
            + " 'inputs': {'target': 0.0075}}");
    assertThat(problems()).singleElement().asString().contains("0.0075 %", "probably 0.75 %");
  }

  private void attachOil(String inputs) {
    attachOil("blend", inputs);
  }

  private void attachOil(String step, String inputs) {
    book.set(
        OIL + "/techniques",
        "[{'name': 'herb-oil', 'step': '"
            + step
            + "',"
            + " 'of': {'herb': 'blanched-dill', 'oil': 'sunflower-oil'},"
            + " 'inputs': {'herbIs': 'squeezed', 'squeezed': '88 %', "
            + inputs
            + "}}]");
  }

  private FormulaVersion read(String code) {
    BookReader.Outcome outcome = READER.read(book.bytes());
    assertThat(outcome.problems()).isEmpty();
    return outcome.book().orElseThrow().formulary().get(ComponentRef.of(code));
  }

  private List<String> problems() {
    return READER.read(book.bytes()).problems().stream()
        .map(Problem::message)
        .map(MESSAGES::say)
        .toList();
  }

  private static double share(FormulaVersion version, String code) {
    return version.lines().stream()
        .filter(line -> line.code().equals(code))
        .map(Line::dose)
        .findFirst()
        .orElseThrow()
        .counted()
        .number()
        .doubleValue();
  }
}
