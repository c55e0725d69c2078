package halfgram.measure;

import java.time.Instant;

/** A span of time, start included, end excluded; never negative. */
public record Window(Instant start, Instant end) {
  public Window {
    if (end.isBefore(start)) {
      throw new IllegalArgumentException("a window ends before it starts: " + start + " " + end);
    }
  }
}
