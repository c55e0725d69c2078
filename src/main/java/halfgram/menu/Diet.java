package halfgram.menu;

import halfgram.formula.AllergenTrace.Carried;
import halfgram.kitchen.Text;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;

/** A diet by what it goes without: allergens, and tags such as meat. */
public record Diet(
    String code, Text name, SortedSet<String> without, SortedSet<String> withoutTags) {

  /** What in there this diet forbids, with the way it came in: "milk: base > cream". */
  public Optional<String> findBreach(Carried carried) {
    return without.stream()
        .filter(code -> carried.allergens().containsKey(code))
        .map(code -> way(code, carried.allergens()))
        .findFirst()
        .or(
            () ->
                withoutTags.stream()
                    .filter(tag -> carried.tags().containsKey(tag))
                    .map(tag -> way(tag, carried.tags()))
                    .findFirst());
  }

  private static String way(String code, Map<String, List<String>> ways) {
    return code + ": " + String.join(" > ", ways.getOrDefault(code, List.of()));
  }
}
