package halfgram.pages;

import halfgram.desk.Desk;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Numbers for forms: each is the device's own number of what is entered with it. Its last digits
 * are this process's own, so that two servers of one kitchen do not give the same.
 */
public final class Sequence {
  private static final int PROCESSES = 256;
  private static final int OWN = new SecureRandom().nextInt(PROCESSES);

  private final Desk desk;
  private final AtomicLong last = new AtomicLong();

  public Sequence(Desk desk) {
    this.desk = desk;
  }

  /** A number that no other form has: the time in microseconds, or one more; and the process. */
  public long next() {
    long micros = ChronoUnit.MICROS.between(Instant.EPOCH, desk.now());
    return last.updateAndGet(before -> Math.max(before + 1, micros)) * PROCESSES + OWN;
  }
}
