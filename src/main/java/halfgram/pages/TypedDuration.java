package halfgram.pages;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A duration as people type it. */
public final class TypedDuration {
  private static final Pattern PART =
      Pattern.compile(
          "(\\d+(?:\\.\\d+)?)\\s*(days?|d|hours?|hrs?|h|minutes?|mins?|seconds?|secs?|s)");

  private static final Pattern WHOLE = Pattern.compile("(?:" + PART.pattern() + "\\s*)+");

  private TypedDuration() {}

  /** "2 hours" is 2 h, "1h 30min" 1 h 30 min; what is no duration stays as it was typed. */
  public static String of(String typed) {
    if (!WHOLE.matcher(typed).matches()) {
      return typed;
    }
    List<String> parts = new ArrayList<>();
    Matcher part = PART.matcher(typed);
    while (part.find()) {
      String word = part.group(2);
      parts.add(part.group(1) + " " + (word.startsWith("m") ? "min" : word.substring(0, 1)));
    }
    return String.join(" ", parts);
  }
}
