package halfgram.prep;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;

/**
 * A service served otherwise than its menu says: another amount of something on every plate of a
 * dish, some guests another dish of the course, or again as the menu has it.
 *
 * <p>Example, in words: {@code portion trout-plate yoghurt-spheres 2 piece}; {@code split char-main
 * celeriac-main 15.1}, percent of the guests; {@code menu trout-plate yoghurt-spheres}.
 *
 * @param other code of what is on the plate; of the dish that is served instead
 * @param number an amount; percent of the guests; empty for as the menu has it
 */
public record Serving(Kind kind, String dish, String other, String number) {
  private static final int PERCENT_DECIMALS = 6;
  private static final int GRAM_DECIMALS = 1;

  /** What is served otherwise. */
  public enum Kind {
    PORTION,
    SPLIT,
    MENU;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** What is on a plate in another amount: whole pieces, or tenths of a gram, never more. */
  static Serving portion(String dish, String item, Amount amount) {
    boolean pieces = amount.dimension() == Dimension.COUNT;
    BigDecimal number = amount.number().setScale(pieces ? 0 : GRAM_DECIMALS, RoundingMode.DOWN);
    String said = Exact.plain(number, GRAM_DECIMALS) + (pieces ? " piece" : " g");
    return new Serving(Kind.PORTION, dish, item, said);
  }

  /** So many of so many guests get another dish; rounded so that no plate too many is left. */
  static Serving split(String dish, String instead, long plates, long guests) {
    BigDecimal percent =
        BigDecimal.valueOf(plates)
            .movePointRight(2)
            .divide(BigDecimal.valueOf(guests), PERCENT_DECIMALS, RoundingMode.CEILING);
    return new Serving(Kind.SPLIT, dish, instead, Exact.plain(percent, PERCENT_DECIMALS));
  }

  /** From its words; empty when they say nothing of the kind. */
  public static Optional<Serving> parse(String words) {
    List<String> parts = List.of(words.strip().split("\\s+", 4));
    if (parts.size() < 3) {
      return Optional.empty();
    }
    for (Kind kind : Kind.values()) {
      boolean whole = parts.size() == (kind == Kind.MENU ? 3 : 4);
      if (kind.word().equals(parts.get(0)) && whole) {
        String number = kind == Kind.MENU ? "" : parts.get(3);
        return Optional.of(new Serving(kind, parts.get(1), parts.get(2), number));
      }
    }
    return Optional.empty();
  }

  /** In words, as {@link #parse} reads them. */
  public String words() {
    return (kind.word() + " " + dish + " " + other + " " + number).strip();
  }
}
