package halfgram.book;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Durations as people write them: "45 min", "1 h 30 min", "2 d", "40 s"; at most 400 days. */
final class Durations {
  private static final Pattern PART = Pattern.compile("(\\d{1,6}(?:\\.\\d{1,3})?) (d|h|min|s)");
  private static final Map<String, Long> SECONDS =
      Map.of("d", 86_400L, "h", 3_600L, "min", 60L, "s", 1L);
  private static final Duration LONGEST = Duration.ofDays(400);

  private Durations() {}

  static Optional<Duration> parse(String text) {
    Matcher part = PART.matcher(text.strip());
    Duration sum = Duration.ZERO;
    int at = 0;
    while (part.find() && text.strip().substring(at, part.start()).isBlank()) {
      long unit = SECONDS.getOrDefault(part.group(2), 0L);
      BigDecimal seconds = new BigDecimal(part.group(1)).multiply(BigDecimal.valueOf(unit));
      sum = sum.plusMillis(seconds.movePointRight(3).longValue());
      at = part.end();
    }
    boolean whole = at > 0 && at == text.strip().length();
    return whole && sum.compareTo(LONGEST) <= 0 ? Optional.of(sum) : Optional.empty();
  }
}
