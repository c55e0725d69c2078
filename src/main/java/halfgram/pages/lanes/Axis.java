package halfgram.pages.lanes;

import halfgram.measure.Exact;
import halfgram.measure.Window;
import halfgram.prep.ServiceRun;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Present;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;

/**
 * The hours along the top: those the kitchen is open, wider where somebody is there or work or a
 * service lies outside, within the business day. Places are percents of the width.
 */
record Axis(Window window) {

  static Axis of(Crewed day, List<Present> people) {
    Window open = day.book().kitchen().open(day.day());
    Instant first = open.start();
    Instant last = open.end();
    for (Present one : people) {
      for (Window hours : one.hours()) {
        first = earlier(first, hours.start());
        last = later(last, hours.end());
      }
    }
    for (Bar bar : day.bars()) {
      for (Placed.Hands hands : bar.placed().hands()) {
        first = earlier(first, hands.from());
        last = later(last, hands.to());
      }
    }
    for (Errand one : day.errands()) {
      first = earlier(first, one.strip().from());
      last = later(last, one.strip().off());
    }
    for (ServiceRun run : day.sheet().services()) {
      first = earlier(first, run.window().start());
      last = later(last, run.window().end());
    }
    first = later(first, day.clock().start(day.day())).truncatedTo(ChronoUnit.HOURS);
    Instant end = earlier(last, day.clock().start(day.day().plusDays(1)));
    Instant hour = end.truncatedTo(ChronoUnit.HOURS);
    return new Axis(new Window(first, hour.equals(end) ? end : hour.plus(1, ChronoUnit.HOURS)));
  }

  private static Instant earlier(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }

  private static Instant later(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  /** What lies outside the hours drawn ends at their edge. */
  double place(Instant at) {
    double all = Duration.between(window.start(), window.end()).toSeconds();
    double gone = Duration.between(window.start(), at).toSeconds();
    return Math.min(100, Math.max(0, 100 * gone / all));
  }

  boolean holds(Instant at) {
    return !at.isBefore(window.start()) && at.isBefore(window.end());
  }

  static String percent(double x) {
    return Exact.plain(BigDecimal.valueOf(x), 2) + "%";
  }
}
