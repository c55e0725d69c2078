package halfgram.pages;

import java.util.regex.Pattern;

/** A number as it is typed where people write a comma before the decimals. */
public final class TypedNumber {

  /** A comma before three digits could be thousands: it stays as it is, and is told. */
  private static final Pattern COMMA =
      Pattern.compile("-?\\d{1,9},(?:\\d{1,2}|\\d{4,9})(?:\\s*[\\p{L}°%#].{0,24})?");

  private TypedNumber() {}

  /** "1,5 kg" as the book writes it, "1.5 kg"; anything else as typed. */
  public static String pointed(String typed) {
    String text = typed.strip();
    return COMMA.matcher(text).matches() ? text.replaceFirst(",", ".") : text;
  }
}
