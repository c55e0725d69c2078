package halfgram.pass;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.pass.Entry.PlateKey;
import halfgram.prep.ServiceRun;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
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
  /** Dishes for more guests than this are not one for each. */
  private static final Ratio SPARE = new Ratio(new BigDecimal("1.5"));

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

  /**
   * Of alternatives, the guests who get one of them: dishes of a course, each for some of the
   * guests and together for all of them, or for a few more so that nobody goes without their choice
   * (common practice).
   *
   * <p>Example: of 71 guests 65 % are reckoned to take the fish and 45 % the other: 47 and 32
   * plates may be asked for, 71 will be.
   */
  static Map<PlateKey, Integer> choosing(Event event, ServiceRun run) {
    Map<PlateKey, Integer> choosing = new LinkedHashMap<>();
    for (ServiceRun.Plates of : run.plates()) {
      List<ServiceRun.Plates> dishes =
          run.plates().stream()
              .filter(other -> other.course().equals(of.course()))
              .filter(other -> other.diets().equals(of.diets()))
              .toList();
      if (!of.course().isEmpty() && areAlternatives(dishes)) {
        choosing.put(PlateKey.of(of), guests(event, of));
      }
    }
    return choosing;
  }

  private static boolean areAlternatives(List<ServiceRun.Plates> dishes) {
    Ratio all = Ratio.ZERO;
    for (ServiceRun.Plates of : dishes) {
      if (of.perCover() != 1 || of.share().compareTo(Ratio.ONE) >= 0) {
        return false;
      }
      all = all.plus(of.share());
    }
    return all.compareTo(Ratio.ONE) >= 0 && all.compareTo(SPARE) <= 0;
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
