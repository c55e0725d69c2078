package halfgram.pass;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.pass.Entry.PlateKey;
import halfgram.prep.ServiceRun;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How many plates the guests are to get: of the final number, else the expected; without the buffer
 * and without spares, which are there for what goes wrong.
 *
 * <p>Example: 84 guests, 13 of them with diets, a main at 65 %: 71 x 0.65 is 47 plates, not the 52
 * that were made for.
 */
final class Guests {
  private Guests() {}

  static Map<PlateKey, Integer> plates(Event event, ServiceRun run) {
    Map<PlateKey, Integer> plates = new LinkedHashMap<>();
    for (ServiceRun.Plates of : run.plates()) {
      int served =
          (int)
              Amount.pieces(guests(event, of))
                  .times(of.share())
                  .rounded(Rounding.UP_TO_WHOLE)
                  .pieces();
      plates.merge(PlateKey.of(of), served * of.perCover(), Integer::sum);
    }
    return plates;
  }

  private static int guests(Event event, ServiceRun.Plates plates) {
    if (plates.diets().isEmpty()) {
      return Math.max(0, event.covers().counted() - event.dietGuests());
    }
    Optional<DietCount> diet =
        event.diets().stream().filter(one -> one.diets().equals(plates.diets())).findFirst();
    return diet.map(DietCount::count).orElse(plates.guests());
  }
}
