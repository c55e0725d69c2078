package halfgram.pages.today;

import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A tub that is past its date, or will be before anything on the sheet takes it.
 *
 * @param tone "heed" when it is past its date
 */
record Bin(
    String by, String what, String code, String amount, String said, String href, String tone) {

  /** First expired first, up to the end of tomorrow. */
  static List<Bin> of(Shown shown, List<Tub> tubs) {
    Instant end = shown.clock().start(shown.day().plusDays(2));
    Map<String, Amount> free =
        shown.sheet().leftTubs(shown.book()).entrySet().stream()
            .collect(Collectors.toMap(entry -> entry.getKey().code(), Map.Entry::getValue));
    List<Bin> bins = new ArrayList<>();
    for (Tub tub : tubs) {
      Lot lot = tub.lot();
      if (!lot.useBy().isAfter(shown.now())) {
        bins.add(bin(shown, lot, lot.left(), "today.past-date", "heed"));
      } else if (!lot.useBy().isAfter(end)) {
        Optional.ofNullable(free.get(lot.code()))
            .map(lot.left()::atMost)
            .filter(Amount::isPositive)
            .ifPresent(left -> bins.add(bin(shown, lot, left, "today.nothing-takes", "open")));
      }
    }
    return bins;
  }

  private static Bin bin(Shown shown, Lot lot, Amount left, String key, String tone) {
    Messages words = shown.words();
    return new Bin(
        words.moment(lot.useBy()),
        shown.names().componentName(lot.component()),
        lot.code(),
        shown.names().amount(left),
        words.say(key),
        shown.address("stock#tub-" + Visit.encoded(lot.code())),
        tone);
  }
}
