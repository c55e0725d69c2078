package halfgram.pages;

import halfgram.measure.Unit;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.Normalizer;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A number, and its unit if it has one, as people type it. */
public final class TypedNumber {
  /** "2 lb 3.5 oz", as pages of a customary kitchen show it. */
  private static final Pattern POUNDS =
      Pattern.compile(
          "(\\d{1,5})\\s*(?:lbs?|pounds?)\\s*(\\d{1,2}(?:[.,]\\d{1,9})?)\\s*(?:oz|ounces?)");

  private static final Pattern UNIT =
      Pattern.compile("(\\d{1,9}(?:\\.\\d{1,9})?)\\s*(\\p{L}[\\p{L}. ]{0,12}?)\\.?");

  private static final Pattern FRACTION_SIGN = Pattern.compile("[\u00bc-\u00be\u2150-\u215e]");

  /** "1 1/2 lb", "1-1/2 lb", "3/4 cup", "2 lb 3 1/2 oz": nothing but a unit behind it. */
  private static final Pattern FRACTION =
      Pattern.compile(
          "((?:\\d{1,5}\\s*(?:lbs?|pounds?)\\s*)?-?)(?:(\\d{1,5})[\\s-]\\s*)?"
              + "([1-9]\\d?)\\s*[/\u2044]\\s*([1-9]\\d?)((?:\\s*[\\p{L}°%#][^/\u2044\\d]*)?)");

  /** Decimals of a fraction that has no end: of a pound less than a microgram. */
  private static final int DECIMALS = 9;

  /** What people call a unit beside its sign. */
  private static final Map<String, Unit> CALLED =
      Map.ofEntries(
          Map.entry("lbs", Unit.POUND),
          Map.entry("pound", Unit.POUND),
          Map.entry("pounds", Unit.POUND),
          Map.entry("ounce", Unit.OUNCE),
          Map.entry("ounces", Unit.OUNCE),
          Map.entry("fl oz", Unit.FLUID_OUNCE),
          Map.entry("fl. oz", Unit.FLUID_OUNCE),
          Map.entry("floz", Unit.FLUID_OUNCE),
          Map.entry("pt", Unit.PINT),
          Map.entry("pints", Unit.PINT),
          Map.entry("qt", Unit.QUART),
          Map.entry("quarts", Unit.QUART),
          Map.entry("gallon", Unit.GALLON),
          Map.entry("gallons", Unit.GALLON),
          Map.entry("cups", Unit.CUP));

  /** A comma before three digits could be thousands: it stays as it is, and is told. */
  private static final Pattern COMMA =
      Pattern.compile("-?\\d{1,9},(?:\\d{1,2}|\\d{4,9})(?:\\s*[\\p{L}°%#].{0,24})?");

  private static final BigDecimal OUNCES = BigDecimal.valueOf(16);

  private TypedNumber() {}

  /**
   * As the book writes it: "1,5 kg" and "1½ kg" are "1.5 kg", "2 lb 3.5 oz" is "35.5 oz" and "3 qt"
   * is "3 quart"; anything else as typed.
   */
  public static String pointed(String typed) {
    String text = decimal(typed.strip());
    Matcher pounds = POUNDS.matcher(text);
    if (pounds.matches()) {
      BigDecimal ounces = new BigDecimal(pounds.group(2).replace(',', '.'));
      return ounces.add(new BigDecimal(pounds.group(1)).multiply(OUNCES)).toPlainString() + " oz";
    }
    String point = COMMA.matcher(text).matches() ? text.replaceFirst(",", ".") : text;
    Matcher unit = UNIT.matcher(point);
    Unit called = unit.matches() ? CALLED.get(unit.group(2).toLowerCase(Locale.ROOT)) : null;
    return called == null ? point : unit.group(1) + " " + called.symbol();
  }

  /** A proper fraction as decimals; anything else as typed. */
  private static String decimal(String typed) {
    String spelled =
        FRACTION_SIGN
            .matcher(typed)
            .replaceAll(sign -> " " + Normalizer.normalize(sign.group(), Normalizer.Form.NFKC));
    Matcher fraction = FRACTION.matcher(spelled.strip());
    if (!fraction.matches()) {
      return typed;
    }
    BigDecimal over = new BigDecimal(fraction.group(3));
    BigDecimal under = new BigDecimal(fraction.group(4));
    if (over.compareTo(under) >= 0) {
      return typed;
    }
    BigDecimal whole =
        fraction.group(2) == null ? BigDecimal.ZERO : new BigDecimal(fraction.group(2));
    BigDecimal part = over.divide(under, DECIMALS, RoundingMode.HALF_UP);
    String number = whole.add(part).stripTrailingZeros().toPlainString();
    return fraction.group(1) + number + fraction.group(5);
  }
}
