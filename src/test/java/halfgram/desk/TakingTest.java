package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.formula.ComponentRef;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** From which tubs something is taken. */
class TakingTest {
  private static final Tub KEPT = tub("a", 100, new Reservation("gala", Amount.grams(80)));
  private static final Tub FREE = tub("b", 50);

  @Test
  void whatThePlanNamedGoesFirst() {
    Map<String, Amount> planned = Map.of("b", Amount.grams(30), "a", Amount.grams(5));
    assertThat(take(35, planned, Optional.empty())).containsExactly(5, 30);
  }

  @Test
  void thenWhatNobodyHasKeptFirstExpiredFirst() {
    assertThat(take(60, Map.of(), Optional.empty())).containsExactly(20, 40);
  }

  @Test
  void anEventHasItsOwn() {
    assertThat(take(60, Map.of(), Optional.of("gala"))).containsExactly(60, 0);
  }

  @Test
  void whatAnotherKeptIsTakenLastAndNoTubGivesMoreThanItHas() {
    assertThat(take(100, Map.of(), Optional.empty())).containsExactly(50, 50);
    assertThat(take(500, Map.of("b", Amount.grams(90)), Optional.empty())).containsExactly(100, 50);
  }

  /** Grams taken from the one that keeps and from the free one. */
  private static List<Integer> take(
      int grams, Map<String, Amount> planned, Optional<String> event) {
    Map<Tub, Amount> taken = Taking.of(List.of(KEPT, FREE), Amount.grams(grams), planned, event);
    return List.of(KEPT, FREE).stream()
        .map(tub -> taken.getOrDefault(tub, Amount.grams(0)).number().intValueExact())
        .toList();
  }

  private static Tub tub(String code, int grams, Reservation... kept) {
    Instant made = Instant.parse("2026-12-05T08:00:00Z");
    Lot lot =
        new Lot(
            code,
            new ComponentRef("dill-oil", Optional.empty(), OptionalInt.empty()),
            Amount.grams(grams),
            made,
            made.plusSeconds(86_400),
            "walk-in",
            Optional.empty(),
            List.of(kept));
    return new Tub(
        UUID.nameUUIDFromBytes(code.getBytes(StandardCharsets.UTF_8)),
        lot,
        Optional.empty(),
        1,
        false);
  }
}
