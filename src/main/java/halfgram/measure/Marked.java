package halfgram.measure;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Measures marked in a text, so that they can be shown in the units a kitchen reads.
 *
 * <p>A mark is a pair of braces around a number with its unit: a temperature, a mass, a volume or a
 * length. Other braces are the text's own, and a measure without braces stays as it was typed.
 *
 * <p>Example: "melt into the cream at {55 °C}, {250 g} at a time".
 */
public final class Marked {
  private static final Pattern BRACES = Pattern.compile("\\{([^{}]*)\\}");
  private static final Pattern NUMBER = Pattern.compile("\\s*-?\\d.*", Pattern.DOTALL);

  /** Blanks that a French keyboard or a word processor puts before a unit. */
  private static final Pattern BLANK = Pattern.compile("[\\u00a0\\u202f]");

  private Marked() {}

  /** How each kind of measure is written. */
  public interface Writer {
    String temperature(Temperature typed);

    /** A mass, a volume or a length, as {@link #read} knows it. */
    String quantity(Quantity typed);
  }

  /** The text with every mark as the writer writes it. */
  public static String written(String text, Writer writer) {
    if (text.indexOf('{') < 0) {
      return text;
    }
    return BRACES
        .matcher(text)
        .replaceAll(
            found ->
                Matcher.quoteReplacement(
                    findWritten(found.group(1), writer).orElse(found.group())));
  }

  /** What stands between braces, as the writer writes it; empty when it is no measure. */
  public static Optional<String> findWritten(String inside, Writer writer) {
    String typed = plain(inside);
    return Temperature.parse(typed)
        .map(writer::temperature)
        .or(() -> read(typed).map(writer::quantity));
  }

  private static Optional<Quantity> read(String typed) {
    return Quantity.parse(typed)
        .filter(
            quantity ->
                Length.find(quantity).isPresent()
                    || Unit.find(quantity.unit())
                        .filter(unit -> unit.dimension() != Dimension.COUNT)
                        .isPresent());
  }

  /** The first pair of braces around a number that is no measure, as it stands. */
  public static Optional<String> findUnread(String text) {
    return BRACES
        .matcher(text)
        .results()
        .filter(found -> NUMBER.matcher(found.group(1)).matches())
        .filter(found -> !isRead(plain(found.group(1))))
        .map(found -> found.group())
        .findFirst();
  }

  private static boolean isRead(String typed) {
    return Temperature.parse(typed).isPresent() || read(typed).isPresent();
  }

  private static String plain(String inside) {
    return BLANK.matcher(inside).replaceAll(" ").strip();
  }
}
