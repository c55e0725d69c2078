package halfgram.prep;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.book.BookReader;
import halfgram.book.Reference;
import halfgram.measure.Because;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * A weekend planned from a book of published ratio formulas, checked line by line against {@link
 * PublishedWeekend}. Sources: see the README beside the book.
 */
class PublishedWeekendTest {
  /** A line comes to rest at a microgram; with fills and parts, ten of them. */
  private static final BigDecimal NEAR = new BigDecimal("0.00001");

  private final PublishedWeekend expected = new PublishedWeekend();
  private final PrepSheet sheet = plan(text());

  @Test
  void weekendFitsAndNothingIsRemarkedOn() {
    assertThat(sheet.misfits()).isEmpty();
    assertThat(sheet.warnings()).isEmpty();
    assertThat(sheet.draws()).isEmpty();
    assertThat(sheet.tasks()).allSatisfy(task -> assertThat(task.late()).isZero());
  }

  /** Source: catering textbook, 10 % up to 100 guests: 100 guaranteed are 110 made. */
  @Test
  void coversAreMadeWithThePublishedBuffer() {
    Map<String, Integer> made = new TreeMap<>();
    sheet.services().stream()
        .filter(run -> run.prepared().isPresent())
        .forEach(run -> made.put(run.id(), run.prepared().getAsInt()));
    assertThat(made)
        .isEqualTo(
            Map.of(
                "pier-reception", PublishedWeekend.PIER_COVERS,
                "harbour-banquet", PublishedWeekend.BANQUET_COVERS,
                "orchard-lunch", PublishedWeekend.LUNCH_COVERS));
    assertThat(PublishedWeekend.BANQUET_COVERS).isEqualTo(110);
  }

  @Test
  void everyPlateIsCounted() {
    List<String> plates = new ArrayList<>();
    for (ServiceRun run : sheet.services()) {
      run.plates()
          .forEach(p -> plates.add(p.count() + " " + p.dish().code() + String.join("", p.diets())));
    }
    assertThat(plates)
        .containsExactlyInAnyOrder(
            "88 sphere-spoon",
            "22 melon-spoon",
            "110 bread-plate",
            "110 lime-cup",
            "110 beef-plate",
            "110 pear-cup",
            "60 chicken-plate",
            "7 chicken-platemeat-free",
            "60 apple-cup",
            "7 apple-cupmeat-free");
  }

  @Test
  void everyTaskIsExpectedAndNoneIsMissing() {
    SortedMap<String, Integer> fills = new TreeMap<>();
    sheet.tasks().forEach(task -> fills.put(task.id(), task.fill().count()));
    assertThat(fills).isEqualTo(expected.tasks);
    assertThat(sheet.tasks()).hasSameSizeAs(expected.tasks.keySet());
  }

  @Test
  void everyMakeYieldsWhatIsAskedOfIt() {
    SortedMap<String, BigDecimal> made = new TreeMap<>();
    SortedMap<String, BigDecimal> needed = new TreeMap<>();
    for (Make make : sheet.makes()) {
      made.put(make.id(), make.scaled().output(0).number());
      needed.put(make.id(), make.needed(0).number());
    }
    assertNear(made, expected.makes);
    assertNear(needed, expected.makes);
  }

  /** Fails on a line that is not expected, on one that is missing and on one that is off. */
  @Test
  void everyLineOfEveryTaskIsThePublishedRatio() {
    SortedMap<String, BigDecimal> lines = new TreeMap<>();
    SortedMap<String, BigDecimal> carried = new TreeMap<>();
    int count = 0;
    for (Task task : sheet.tasks()) {
      for (WeighGroup group : task.weigh()) {
        for (WeighLine line : group.lines()) {
          String key = task.id() + "/" + line.line().code();
          lines.put(key, line.weighing().target().grams());
          if (!line.carries().isZero()) {
            carried.put(key, line.carries().grams());
          }
          assertThat(line.counted()).as(key).isEmpty();
          assertThat(line.atLeast()).as(key).isEmpty();
          assertThat(line.heldBack().isZero()).as(key).isTrue();
          count++;
        }
      }
    }
    assertNear(lines, expected.lines);
    assertNear(carried, expected.carried);
    assertThat(count).isEqualTo(expected.lines.size());
  }

  /** Every line is weighed on a scale inside its tolerance, or is the one worked dilution. */
  @Test
  void everyLineIsWeighedInsideItsTolerance() {
    List<String> diluted = new ArrayList<>();
    for (Task task : sheet.tasks()) {
      for (WeighGroup group : task.weigh()) {
        for (WeighLine line : group.lines()) {
          String key = task.id() + "/" + line.line().code();
          if (line.weighing().dilution().isPresent()) {
            diluted.add(key + " in " + line.carrier().orElse("nothing"));
            continue;
          }
          assertThat(line.weighing().scale()).as(key).isPresent();
          BigDecimal one =
              line.weighing()
                  .target()
                  .grams()
                  .divide(BigDecimal.valueOf(line.weighing().parts()), 6, RoundingMode.DOWN);
          double percent = line.line().dose().isBasis() ? 2 : 1;
          assertThat(
                  line.weighing().scale().orElseThrow().relativeError(one).percent().doubleValue())
              .as(key)
              .isLessThanOrEqualTo(percent);
        }
      }
    }
    assertThat(diluted).containsExactly("lime-air/orchard-lunch/1/froth/lecithin in water");
  }

  /** A dose into a vessel that its scale cannot carry is weighed apart; common practice. */
  @Test
  void doseIntoAHeavyVesselIsWeighedApart() {
    WeighLine salt = find("brined-chicken/orchard-lunch/1/brine", "salt");
    assertThat(salt.apart()).isTrue();
    assertThat(salt.weighing().scale().orElseThrow().code()).isEqualTo("bench");
    WeighLine chloride = find("pearl-bath/pier-reception/1/stir", "calcium-chloride");
    assertThat(chloride.apart()).isTrue();
    assertThat(chloride.weighing().scale().orElseThrow().code()).isEqualTo("fine");
    assertThat(find("sphere-base/pier-reception/1/shear", "xanthan").apart()).isFalse();
  }

  /** Source: catering textbook, 110 guests, 6 oz cooked at 75 %: 55 lb, here in two ovens. */
  @Test
  void banquetMeatIsFiftyFivePounds() {
    WeighLine beef = find("banquet-beef/harbour-banquet/1/roast", "beef");
    BigDecimal pound = new BigDecimal("453.59237");
    assertThat(beef.weighing().target().grams().multiply(BigDecimal.valueOf(2)))
        .isEqualByComparingTo(pound.multiply(BigDecimal.valueOf(55)));
    assertThat(sheet.pulls().get("beef").number())
        .isEqualByComparingTo(pound.multiply(BigDecimal.valueOf(55)));
  }

  /** Source: worked percent worksheet, 73 loaves of 390 g: 16 747.06 g of flour, in three fills. */
  @Test
  void doughOfSaturdayIsTheWorksheets() {
    WeighLine flour = find("bread/supper.2027-06-12/1/mix", "flour");
    assertThat(flour.weighing().target().grams().doubleValue() * 3)
        .isCloseTo(16747.06, within(0.01));
  }

  /** Source: handout factor 1.19 for 3 lb of pared cucumber; 3.57 lb to the hundredth. */
  @Test
  void cucumbersArePulledByTheHandout() {
    double pounds = sheet.pulls().get("cucumber").number().doubleValue() / 453.59237;
    assertThat(pounds).isCloseTo(3.57, within(0.005));
  }

  @Test
  void pullsAreTheSumOfAllLinesBeforeTrim() {
    SortedMap<String, BigDecimal> pulls = new TreeMap<>();
    sheet.pulls().forEach((code, amount) -> pulls.put(code, amount.number()));
    SortedMap<String, BigDecimal> fetched = new TreeMap<>(expected.pulls);
    for (Task task : sheet.tasks()) {
      List<WeighLine> lines = task.weigh().stream().flatMap(g -> g.lines().stream()).toList();
      lines.forEach(line -> fetchWholeMix(line, lines, fetched));
    }
    assertNear(pulls, fetched);
  }

  /**
   * A dose taken from a mix needs all of the mix: its substance, and the carrier besides its own.
   */
  private static void fetchWholeMix(
      WeighLine line, List<WeighLine> lines, SortedMap<String, BigDecimal> fetched) {
    line.weighing()
        .dilution()
        .ifPresent(
            mix -> {
              BigDecimal more = mix.substance().grams().subtract(line.pulled().grams());
              fetched.merge(line.line().item().code(), more, BigDecimal::add);
              lines.stream()
                  .filter(other -> other.line().code().equals(line.carrier().orElseThrow()))
                  .forEach(
                      other ->
                          fetched.merge(
                              other.line().item().code(), mix.carrier().grams(), BigDecimal::add));
            });
  }

  /** By hand: 98 pieces of 5 mL take 98 x (0.741 + 1.25) mL, far from the least level. */
  @Test
  void oneBathAndItsSpareServeTheReception() {
    assertThat(sheet.baths()).hasSize(1);
    PrepSheet.BathSheet bath = sheet.baths().get(0);
    assertThat(bath.answer().uses()).hasSize(1);
    assertThat(bath.answer().uses().get(0).pieces()).isEqualTo(98);
    assertThat(bath.answer().uses().get(0).lostMl()).isCloseTo(98 * (0.741 + 1.25), within(0.1));
    assertThat(bath.answer().changes()).isEmpty();
    assertThat(bath.answer().spares()).isOne();
  }

  /** A dilution needs a line that gives up its carrier; alone it is said to be too small. */
  @Test
  void doseThatNothingCanCarryIsNotDiluted() {
    PrepSheet tiny = plan(text().replace("{\"sun\": \"1 kg\"}", "{\"sun\": \"0.1 g\"}"));
    WeighLine leek = find(tiny, "cut-leeks/supper.2027-06-13/1/cut", "leek");
    assertThat(leek.weighing().target().grams()).isEqualByComparingTo("0.1");
    assertThat(leek.weighing().scale()).isEmpty();
    assertThat(leek.weighing().dilution()).isEmpty();
    assertThat(leek.apart()).isFalse();
  }

  private WeighLine find(String task, String code) {
    return find(sheet, task, code);
  }

  private static WeighLine find(PrepSheet sheet, String task, String code) {
    return sheet.tasks().stream()
        .filter(made -> made.id().equals(task))
        .flatMap(made -> made.weigh().stream())
        .flatMap(group -> group.lines().stream())
        .filter(line -> line.line().code().equals(code))
        .findFirst()
        .orElseThrow();
  }

  private static void assertNear(
      SortedMap<String, BigDecimal> actual, SortedMap<String, BigDecimal> expected) {
    assertThat(actual.keySet()).isEqualTo(expected.keySet());
    expected.forEach(
        (key, value) ->
            assertThat(actual.get(key).subtract(value).abs())
                .as(key + ": " + actual.get(key) + ", expected " + value)
                .isLessThanOrEqualTo(NEAR));
  }

  private static PrepSheet plan(String book) {
    BookReader.Outcome outcome = new BookReader(Reference.load()).read(book.getBytes(UTF_8));
    assertThat(outcome.problems()).isEmpty();
    return Planning.plan(
        outcome.book().orElseThrow(),
        new PlanRequest(LocalDate.of(2027, 6, 10), 4, Instant.parse("2027-06-10T04:00:00Z")),
        Because.NOT_ASKED);
  }

  private static String text() {
    try (InputStream stream =
        PublishedWeekendTest.class.getResourceAsStream("published/book.json")) {
      return new String(stream.readAllBytes(), UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
