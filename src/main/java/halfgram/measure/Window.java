package halfgram.measure;

import java.time.Duration;
import java.time.Instant;

/** A span of time, start included, end excluded; never negative. */
public record Window(Instant start, Instant end) {
  public Window {
    if (end.isBefore(start)) {
      throw new IllegalArgumentException("a window ends before it starts: " + start + " " + end);
    }
  }

  public Duration length() {
    return Duration.between(start, end);
  }

  public boolean contains(Instant instant) {
    return !instant.isBefore(start) && instant.isBefore(end);
  }
}
