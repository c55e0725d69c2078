package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.menu.Dish;
import halfgram.menu.Plating;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * The plating of a dish in a course or pick-up: backwards from the fire.
 *
 * <p>Rules. It starts as long before the fire as its plates take and its last steps after them,
 * down to the whole minute. Its plates are those that were made for, buffer and spares included, so
 * that there is time for all of them; of a pick-up its share, up to a whole plate. A dish of which
 * the book does not say how it is plated has none.
 *
 * <p>Example: 94 plates, three people at two a minute each, 40 s of last steps, fire at 18:45: 16
 * min 20 s, so from 18:28.
 */
public record PlatingLine(Fire fire, Dish dish, Plating plating, int plates, Instant start) {

  /** Of a service, in the order they start. */
  public static List<PlatingLine> list(KitchenBook book, ServiceRun run) {
    List<PlatingLine> lines = new ArrayList<>();
    for (Fire fire : Fire.list(book, run)) {
      Map<Dish, Integer> plates = new LinkedHashMap<>();
      for (ServiceRun.Plates of : run.plates()) {
        if (of.course().isEmpty() || of.course().equals(fire.code())) {
          Dish dish = book.dishes().getOrDefault(of.dish().code(), of.dish());
          plates.merge(dish, of.count(), Integer::sum);
        }
      }
      plates.forEach(
          (dish, count) ->
              dish.plating().ifPresent(plating -> lines.add(of(fire, dish, plating, count))));
    }
    lines.sort(Comparator.comparing(PlatingLine::start));
    return lines;
  }

  private static PlatingLine of(Fire fire, Dish dish, Plating plating, int count) {
    int plates =
        (int) Amount.pieces(count).times(fire.share()).rounded(Rounding.UP_TO_WHOLE).pieces();
    Instant start = fire.at().minus(plating.length(plates)).truncatedTo(ChronoUnit.MINUTES);
    return new PlatingLine(fire, dish, plating, plates, start);
  }

  /** Trays to carry them; empty when nobody said what one carries. */
  public OptionalInt trays() {
    return plating.trays(plates);
  }
}
