package halfgram.technique;

import halfgram.technique.Input.Origin;
import java.util.List;

/**
 * What lecithin is made of, which is an allergen more often than not: of unknown origin it counts
 * as soy and egg. Source: agriculture departments.
 */
public final class Lecithin {
  private static final String ORIGIN = "origin";
  private static final String UNKNOWN = "unknown";
  private static final String SUNFLOWER = "sunflower";

  private Lecithin() {}

  /** The input that asks for it. */
  public static Input origin() {
    return Input.choice(ORIGIN, UNKNOWN, "soy", "egg", SUNFLOWER).from(Origin.TUB);
  }

  /**
   * Warns of it.
   *
   * @param unknown the sentence where nobody has said what it is made of
   * @param named the sentence that names the allergen
   */
  public static void warn(Working working, Values values, String unknown, String named) {
    if (values.is(ORIGIN, UNKNOWN)) {
      working.warn(unknown);
    } else if (isAllergen(values)) {
      working.warn(named, values.word(ORIGIN));
    }
  }

  /** What it adds to its step. */
  public static List<Addition> additions(Values values) {
    return isAllergen(values) ? List.of(new Addition.Caution("allergen-contact")) : List.of();
  }

  private static boolean isAllergen(Values values) {
    return !values.is(ORIGIN, SUNFLOWER);
  }
}
