package halfgram.menu;

import halfgram.kitchen.Text;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/**
 * A dish: what lies on a plate, its variants, and what is done only at the pass.
 *
 * @param finish last steps, in order
 */
public record Dish(
    String code, Text name, List<PlateItem> plate, List<Text> finish, List<Variant> variants) {
  public Dish {
    plate = List.copyOf(plate);
    finish = List.copyOf(finish);
    variants = List.copyOf(variants);
  }

  /** The variant that serves all these diets; of several the one made for the fewest. */
  public Optional<Variant> findVariant(SortedSet<String> diets) {
    return variants.stream()
        .filter(variant -> variant.diets().containsAll(diets))
        .min(Comparator.comparingInt(variant -> variant.diets().size()));
  }

  /** The plate for these diets: a variant where there is one, else the dish as it is. */
  public List<PlateItem> plateFor(SortedSet<String> diets) {
    return diets.isEmpty() ? plate : findVariant(diets).map(Variant::plate).orElse(plate);
  }
}
