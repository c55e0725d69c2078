package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.testkit.BookText;
import halfgram.testkit.Cast;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What less of an ingredient still makes, on the cast: 20 bowls of 200 g, broth of 20 % leek. */
class ShortPlatesTest {
  private static final LocalDate DAY = LocalDate.of(2026, 6, 12);

  @Test
  void aMakeIsScaledToWhatThereIsAndSoAreItsPlates() {
    PrepSheet sheet = sheet("{}");
    Amount needed = sheet.pulls().get("leek");
    // 4000 g of broth from 5000 g of water and leek, 20 % of it leek.
    assertThat(needed).isEqualByComparingTo(Amount.grams(1000));
    List<ShortPlates> three = ShortPlates.of(sheet, "leek", Amount.grams(750), task -> true);
    assertThat(three).hasSize(1);
    assertThat(three.get(0).possible()).isEqualTo(15);
    assertThat(three.get(0).shortBy()).isEqualTo(5);
    assertThat(ShortPlates.of(sheet, "leek", needed, task -> true)).isEmpty();
    assertThat(ShortPlates.of(sheet, "leek", Amount.NO_MASS, task -> true).get(0).possible())
        .isZero();
  }

  @Test
  void whatIsLeftOutOfAComponentIsLeftOutOfWhatItGoesInto() {
    PrepSheet sheet = sheet(SOUP);
    Amount needed = sheet.pulls().get("leek");
    List<ShortPlates> half =
        ShortPlates.of(sheet, "leek", Amount.grams(needed.number()).dividedBy(2), task -> true);
    assertThat(half).hasSize(1);
    assertThat(half.get(0).possible()).isEqualTo(10);
  }

  @Test
  void platesForDietsComeFirst() {
    PrepSheet sheet = sheet(DIETS);
    Amount half = sheet.pulls().get("leek").dividedBy(2);
    List<ShortPlates> less = ShortPlates.of(sheet, "leek", half, task -> true);
    assertThat(less).isNotEmpty().allMatch(plates -> plates.plates().diets().isEmpty());
  }

  @Test
  void whoTakesItFirstGetsIt() {
    PrepSheet sheet = sheet(TWO);
    Amount needed = sheet.pulls().get("leek");
    assertThat(needed).isEqualByComparingTo(Amount.grams(2000));
    List<ShortPlates> less = ShortPlates.of(sheet, "leek", Amount.grams(1500), task -> true);
    assertThat(less).hasSize(1);
    assertThat(less.get(0).run().id()).startsWith("supper");
    assertThat(less.get(0).shortBy()).isEqualTo(10);
  }

  @Test
  void whatHasTakenItsPartTakesNoMore() {
    PrepSheet sheet = sheet("{}");
    assertThat(ShortPlates.of(sheet, "leek", Amount.NO_MASS, task -> false)).isEmpty();
  }

  private static final String SOUP =
      """
      {formulas: [{code: 'soup', name: 'Soup', versions: [{version: 1,
         lines: [{component: 'broth', basis: 100}],
         steps: [{code: 'stir', do: 'Stir', station: 'stove', handsOn: {fixed: '30 min'}}],
         outputs: [{code: 'soup', hold: {max: '6 h'}}]}]}],
       dishes: [{code: 'bowl', name: 'Bowl', plate: [{component: 'soup', amount: '200 g'}]}]}
      """;

  private static final String DIETS =
      """
      {events: [{code: 'supper', name: 'Supper', date: '2026-06-12', covers: {expected: 20},
        buffer: 0, diets: [{diets: ['dairy-free'], count: 6, spare: 0}],
        services: [{code: 'dinner', start: '18:00', end: '21:00',
          courses: [{code: 'main', name: 'Main', at: '18:30',
            dishes: [{dish: 'bowl', share: 100}]}]}]}]}
      """;

  /** A lunch of 20 before the supper, from broth of its own: it keeps for an hour. */
  private static final String TWO =
      """
      {formulas: [{code: 'broth', name: 'Broth', versions: [{version: 1,
         lines: [{ingredient: 'water', basis: 80}, {ingredient: 'leek', basis: 20}],
         steps: [{code: 'boil', do: 'Boil', station: 'stove', handsOn: {fixed: '10 min'},
           unattended: {fixed: '50 min'}, yield: 80}],
         outputs: [{code: 'broth', hold: {max: '3 h', why: 'safety', source: 'here'}}]}]}],
       events: [{code: 'lunch', name: 'Lunch', date: '2026-06-12', covers: {expected: 20},
        buffer: 0, services: [{code: 'noon', start: '12:00', end: '13:00',
          courses: [{code: 'main', name: 'Main', at: '12:30',
            dishes: [{dish: 'bowl', share: 100}]}]}]}]}
      """;

  private static PrepSheet sheet(String over) {
    KitchenBook book = BookText.read(Cast.theHeronWith(over));
    PlanRequest request = new PlanRequest(DAY, 1, book.kitchen().clock().start(DAY));
    return Planning.plan(book, request, Because.NOT_ASKED);
  }
}
