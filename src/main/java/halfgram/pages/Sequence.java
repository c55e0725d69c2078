package halfgram.pages;

import halfgram.desk.Desk;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.atomic.AtomicLong;

/** Numbers for forms: each is the device's own number of what is entered with it. */
public final class Sequence {
  private final Desk desk;
  private final AtomicLong last = new AtomicLong();

  public Sequence(Desk desk) {
    this.desk = desk;
  }

  /** A number that no other form of this server has: the time in microseconds, or one more. */
  public long next() {
    long micros = ChronoUnit.MICROS.between(Instant.EPOCH, desk.now());
    return last.updateAndGet(before -> Math.max(before + 1, micros));
  }
}
