package halfgram.prep.netting;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.formula.ComponentRef;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is drawn from a batch that will be late, and in what order. */
class NettingTest {
  private static final Instant SIX = Instant.parse("2026-12-05T17:00:00Z");

  /** Ready a quarter of an hour after six, nothing made anew would be sooner. */
  private static Stock late(int left, Map<String, Stock.Meant> meant) {
    Instant ready = SIX.plusSeconds(900);
    Instant useBy = SIX.plusSeconds(86_400);
    Lot lot =
        new Lot(
            "ribbons/dinner/1",
            ComponentRef.of("ribbons"),
            Amount.grams(left),
            ready,
            useBy,
            "fridge",
            Optional.empty(),
            List.of());
    return new Stock(lot, ready, useBy, useBy, meant);
  }

  private static Stock.Meant meant(int amount) {
    return new Stock.Meant(Amount.grams(amount), SIX.plusSeconds(900), Duration.ZERO);
  }

  private static Need need(String user, int amount, Instant readyBy) {
    return new Need(
        user, user, Optional.empty(), 0, Amount.grams(amount), readyBy, readyBy, readyBy, readyBy);
  }

  @Test
  void whoIsServedLateTakesWhatTheBatchWasBegunForAndLeavesTheOthersTheirs() {
    Need dinner = need("dinner", 12, SIX);
    Need lunch = need("lunch", 5, SIX.plusSeconds(43_200));
    Stock batch = late(10, Map.of("dinner", meant(5), "lunch", meant(5)));
    Netting.Netted netted = Netting.net(List.of(dinner, lunch), List.of(batch), List.of("ribbons"));
    assertThat(netted.draws())
        .containsExactly(
            new Draw(batch.lot(), dinner, Amount.grams(5)),
            new Draw(batch.lot(), lunch, Amount.grams(5)));
    assertThat(netted.open()).containsExactly(dinner.with(Amount.grams(7)));
  }

  @Test
  void aBatchServesLateNobodyItWasNotBegunFor() {
    Need dinner = need("dinner", 12, SIX);
    Stock batch = late(10, Map.of("lunch", meant(5)));
    Netting.Netted netted = Netting.net(List.of(dinner), List.of(batch), List.of("ribbons"));
    assertThat(netted.draws()).isEmpty();
    assertThat(netted.open()).containsExactly(dinner);
  }
}
