package halfgram.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** Text in columns of a fixed width, numbers aligned on the decimal point. */
final class Columns {
  static final int WIDTH = 100;
  private static final int WHOLE = 7;
  private static final int DECIMALS = 3;

  private Columns() {}

  /** A number with exactly so many decimals, its point always in the same column. */
  static String aligned(BigDecimal number, int decimals) {
    String shown =
        number.setScale(Math.min(decimals, DECIMALS), RoundingMode.HALF_UP).toPlainString();
    int point = shown.indexOf('.');
    int whole = point < 0 ? shown.length() : point;
    int tail = point < 0 ? DECIMALS + 1 : DECIMALS - (shown.length() - point - 1);
    return " ".repeat(Math.max(0, WHOLE - whole)) + shown + " ".repeat(tail);
  }

  static String left(String text, int width) {
    return text.length() >= width ? text : text + " ".repeat(width - text.length());
  }

  static String right(String text, int width) {
    return text.length() >= width ? text : " ".repeat(width - text.length()) + text;
  }

  /** The text broken at blanks, each line after the first indented. */
  static String wrap(String text, int indent) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ", -1)) {
      if (line.length() > 0 && line.length() + 1 + word.length() > WIDTH - indent) {
        lines.add(line.toString());
        line.setLength(0);
      }
      line.append(line.length() == 0 ? "" : " ").append(word);
    }
    lines.add(line.toString());
    return String.join("\n" + " ".repeat(indent), lines);
  }
}
