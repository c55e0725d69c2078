package halfgram.prep;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.menu.Diet;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** How values are written in derivations: plainly, with their unit, in no language. */
final class Notes {
  private Notes() {}

  static String grams(BigDecimal grams) {
    return Exact.plain(grams, 6) + " g";
  }

  static String grams(Amount amount) {
    return grams(amount.number());
  }

  static String grams(Mass mass) {
    return grams(mass.grams());
  }

  static String amount(Amount amount) {
    return amount.dimension() == Dimension.COUNT
        ? Exact.plain(amount.number(), 4) + " pc"
        : grams(amount);
  }

  static String percent(Ratio ratio) {
    return Exact.plain(ratio.percent(), 4) + " %";
  }

  static String minutes(Duration duration) {
    return duration.toMinutes() + " min";
  }

  /** How many plates of a dish, and for which diets when it is made for them. */
  static Because.Input plates(KitchenBook book, ServiceRun run, ServiceRun.Plates plates) {
    List<Text> diets =
        plates.diets().stream()
            .flatMap(code -> Optional.ofNullable(book.diets().get(code)).stream())
            .map(Diet::name)
            .toList();
    Text dish = plates.dish().name();
    return Because.Input.derived(
        diets.isEmpty()
            ? Message.of("why.plates-of", dish)
            : Message.of("why.plates-of-for", dish, diets),
        String.valueOf(plates.count()),
        Paths.plates(run, plates));
  }

  static String time(KitchenBook book, Instant instant) {
    return instant.atZone(book.kitchen().clock().zone()).toLocalDateTime().toString();
  }
}
