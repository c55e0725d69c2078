package halfgram.pages;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A time of day as people type it. */
public final class TypedTime {
  private static final Pattern TIME = Pattern.compile("(\\d{1,2})[.:hH ]?([0-5]\\d)");

  /** A whole hour: "8", "16h". */
  private static final Pattern HOUR = Pattern.compile("([01]?\\d|2[0-3]) ?[hH]?");

  /** By a clock of twelve hours: "4:05 pm", "4 pm", "4:05 p. m.". */
  private static final Pattern HALF_DAY =
      Pattern.compile(
          "(1[0-2]|0?[1-9])(?:[.:hH ]?([0-5]\\d))?[ \\u00a0\\u202f]*([ap])[."
              + " \\u00a0\\u202f]*m?\\.?",
          Pattern.CASE_INSENSITIVE);

  private static final int NOON = 12;

  private TypedTime() {}

  /**
   * "9.30" and "930" are 09:30, "8" is 08:00, "4 pm" is 16:00; what is no time stays as it was
   * typed.
   */
  public static String of(String typed) {
    Matcher half = HALF_DAY.matcher(typed.strip());
    if (half.matches()) {
      boolean after = half.group(3).toLowerCase(Locale.ROOT).equals("p");
      int hour = Integer.parseInt(half.group(1)) % NOON + (after ? NOON : 0);
      String minute = half.group(2) == null ? "00" : half.group(2);
      return (hour < 10 ? "0" : "") + hour + ":" + minute;
    }
    Matcher hour = HOUR.matcher(typed.strip());
    if (hour.matches()) {
      return (hour.group(1).length() == 1 ? "0" : "") + hour.group(1) + ":00";
    }
    Matcher time = TIME.matcher(typed.strip());
    return time.matches()
        ? (time.group(1).length() == 1 ? "0" : "") + time.group(1) + ":" + time.group(2)
        : typed.strip();
  }

  /** Whether it is a time that a clock of twelve hours shows twice a day, without saying which. */
  public static boolean isEither(String typed) {
    Matcher time = TIME.matcher(of(typed));
    return !HALF_DAY.matcher(typed.strip()).matches()
        && time.matches()
        && Integer.parseInt(time.group(1)) <= NOON
        && Integer.parseInt(time.group(1)) > 0;
  }
}
