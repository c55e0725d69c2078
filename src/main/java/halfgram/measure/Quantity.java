package halfgram.measure;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A quantity as somebody typed it: a number and a unit word. The unit is kept; the canonical value
 * is derived. A word that is no {@link Unit} is a household word of one ingredient (bunch, sprig).
 *
 * <p>Examples: "1.5 kg", "6 oz", "2 bunch", "3 #16" (three level scoops of a number 16 disher).
 */
public record Quantity(BigDecimal number, String unit) {
  private static final Pattern FORM = Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?)\\s+(\\S{1,24})");
  private static final String PIECES = "pieces";
  private static final Pattern DISHER = Pattern.compile("#([1-9]\\d{0,2})");

  public static Optional<Quantity> parse(String text) {
    Matcher form = FORM.matcher(text.strip());
    return form.matches()
        ? Optional.of(new Quantity(new BigDecimal(form.group(1)), unit(form.group(2))))
        : Optional.empty();
  }

  /** The word a unit is known by: of pieces, however many, "piece". */
  public static String unit(String typed) {
    return typed.equals(PIECES) ? Unit.PIECE.symbol() : typed;
  }

  public static Quantity of(String text) {
    return parse(text).orElseThrow(() -> new IllegalArgumentException(text));
  }

  /** The amount in base units, or empty when the unit is a household word. */
  public Optional<Amount> canonical() {
    Matcher disher = DISHER.matcher(unit);
    if (disher.matches()) {
      BigDecimal scoop = Unit.QUART.factor().divide(new BigDecimal(disher.group(1)), Exact.DIGITS);
      return Optional.of(new Amount(number.multiply(scoop, Exact.DIGITS), Dimension.VOLUME));
    }
    return Unit.find(unit)
        .map(known -> new Amount(number.multiply(known.factor()), known.dimension()));
  }

  @Override
  public String toString() {
    return String.format(Locale.ROOT, "%s %s", number.toPlainString(), unit);
  }
}
