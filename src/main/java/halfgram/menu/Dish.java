package halfgram.menu;

import halfgram.kitchen.Text;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.function.Predicate;

/**
 * A dish: what lies on a plate, its variants, and what is done only at the pass.
 *
 * @param finish last steps, in order
 * @param swaps what may stand in for what, should something run short
 */
public record Dish(
    String code,
    Text name,
    List<PlateItem> plate,
    List<Text> finish,
    List<Variant> variants,
    List<Swap> swaps,
    Optional<Plating> plating) {
  public Dish {
    plate = List.copyOf(plate);
    finish = List.copyOf(finish);
    variants = List.copyOf(variants);
    swaps = List.copyOf(swaps);
  }

  /** The dish with something else on its plate. */
  public Dish with(List<PlateItem> other) {
    return new Dish(code, name, other, finish, variants, swaps, plating);
  }

  /**
   * The variant that these diets get: one made for just them, else none when the dish as it is
   * suits them, else the one made for them and the fewest others.
   *
   * @param suits whether a plate is free of all that the diets forbid
   */
  public Optional<Variant> findVariant(SortedSet<String> diets, Predicate<List<PlateItem>> suits) {
    Optional<Variant> own =
        variants.stream().filter(variant -> variant.diets().equals(diets)).findFirst();
    if (diets.isEmpty() || own.isPresent() || suits.test(plate)) {
      return own;
    }
    return variants.stream()
        .filter(variant -> variant.diets().containsAll(diets))
        .min(Comparator.comparingInt(variant -> variant.diets().size()));
  }
}
