package halfgram.pages;

import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Quantity;
import halfgram.measure.Rounding;
import halfgram.measure.Unit;
import halfgram.words.Figures;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** An amount the way one would type it into a field, and the way the book reads it. */
public final class TypedAmount {
  /** Ten tonnes, or as many pieces: more is in no tub. */
  private static final BigDecimal MOST = BigDecimal.valueOf(10_000_000);

  /**
   * "5.9kg", "5,9 KG", "84": a number, and perhaps a word right behind it. A comma before three
   * digits could be thousands, so it is not taken for a point.
   */
  private static final Pattern TYPED =
      Pattern.compile("(\\d+(?:\\.\\d+|,\\d{1,2}|,\\d{4,})?)\\s*(\\p{L}*)\\.?");

  private static final Set<String> PIECES =
      Set.of("", "piece", "pieces", "pc", "pcs", "pieza", "piezas", "pz", "pièce", "pièces", "p");

  private TypedAmount() {}

  /**
   * The amount that was typed, to the microgram; empty when it is none, one of another dimension,
   * not whole for pieces, or more than ten tonnes.
   *
   * @param dimension MASS or COUNT
   */
  public static Optional<Amount> read(String text, Dimension dimension) {
    Matcher typed = TYPED.matcher(TypedNumber.pointed(text));
    if (!typed.matches()) {
      return Optional.empty();
    }
    String unit = typed.group(2).toLowerCase(Locale.ROOT);
    boolean pieces = dimension == Dimension.COUNT;
    String word = pieces && PIECES.contains(unit) ? "piece" : unit;
    return Quantity.parse(typed.group(1).replace(',', '.') + " " + word)
        .flatMap(Quantity::canonical)
        .filter(found -> found.dimension() == dimension)
        .filter(found -> !pieces || found.number().stripTrailingZeros().scale() <= 0)
        .filter(found -> found.number().compareTo(MOST) <= 0)
        .map(found -> found.rounded(Rounding.TO_MICROGRAM));
  }

  /**
   * So many pieces, in whatever language, as the book writes them: "3 pz" is "3 piece". Any other
   * text is as it was typed.
   */
  public static String booked(String text) {
    Matcher typed = TYPED.matcher(TypedNumber.pointed(text.strip()));
    boolean pieces =
        typed.matches()
            && !typed.group(2).isEmpty()
            && PIECES.contains(typed.group(2).toLowerCase(Locale.ROOT));
    return pieces ? typed.group(1).replace(',', '.') + " " + Unit.PIECE.symbol() : text;
  }

  /** A text as a form shows it: so many pieces in the words of its language. */
  public static String shown(String text, Messages words) {
    String booked = booked(text);
    return booked.endsWith(" " + Unit.PIECE.symbol())
        ? Quantity.parse(booked).map(words::typed).orElse(text)
        : text;
  }

  /** As {@link #read}; what stands in the field as it was shown is exactly the amount shown. */
  public static Optional<Amount> read(String text, Amount shown) {
    boolean same =
        shown.dimension() == Dimension.MASS && Figures.typedForms(shown).contains(text.strip());
    return same ? Optional.of(shown) : read(text, shown.dimension());
  }
}
