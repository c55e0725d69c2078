package halfgram.prep;

import halfgram.event.Replaced;
import halfgram.formula.AllergenTrace;
import halfgram.menu.PlateItem;
import halfgram.menu.Swap;
import halfgram.menu.Variant;
import halfgram.prep.ServiceRun.Plates;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/**
 * Plates with the swaps of their service.
 *
 * <p>Rules. A swap is on every plate of its dish that has the item, those of variants too. A plate
 * for a diet that could not have it keeps what it has: nobody's allergen comes in by a swap.
 */
public final class Swapped {
  private final KitchenBook book;
  private final AllergenTrace trace;

  public Swapped(KitchenBook book, AllergenTrace trace) {
    this.book = book;
    this.trace = trace;
  }

  /** The plates as they are served. */
  public Plates of(Plates plates, List<Replaced> swaps) {
    List<PlateItem> standard = plates.dish().plate();
    List<PlateItem> served = plates.items();
    for (Replaced one : swaps) {
      if (one.dish().equals(plates.dish().code())) {
        standard = one.swap().on(standard);
        served =
            findBreach(served, one.swap(), plates.diets()).isEmpty()
                ? one.swap().on(served)
                : served;
      }
    }
    if (standard.equals(plates.dish().plate()) && served.equals(plates.items())) {
      return plates;
    }
    boolean asTheDish = plates.variant().isEmpty() && served.equals(standard);
    Optional<Variant> variant =
        asTheDish
            ? Optional.empty()
            : Optional.of(
                new Variant(
                    plates.diets(),
                    plates.variant().map(Variant::name).orElse(plates.dish().name()),
                    served));
    return new Plates(
        plates.course(),
        plates.dish().with(standard),
        plates.diets(),
        variant,
        plates.share(),
        plates.guests(),
        plates.perCover(),
        plates.count());
  }

  /** What a diet forbids of a plate with a swap; empty when the item is not on it. */
  public Optional<Plated.Breach> findBreach(
      List<PlateItem> plate, Swap swap, SortedSet<String> diets) {
    return swap.applies(plate)
        ? Plated.findBreach(book, trace, swap.on(plate), diets)
        : Optional.empty();
  }
}
