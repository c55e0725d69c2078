package halfgram.pages;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A time of day as people type it. */
public final class TypedTime {
  private static final Pattern TIME = Pattern.compile("(\\d{1,2})[.:hH ]?(\\d\\d)");

  private TypedTime() {}

  /** "9.30" and "930" are 09:30; what is no time stays as it was typed. */
  public static String of(String typed) {
    Matcher time = TIME.matcher(typed.strip());
    return time.matches()
        ? (time.group(1).length() == 1 ? "0" : "") + time.group(1) + ":" + time.group(2)
        : typed.strip();
  }
}
