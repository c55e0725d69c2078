package halfgram.prep;

import halfgram.kitchen.Kitchen;
import halfgram.measure.Window;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * The kitchen's opening hours over a horizon. Hands-on work that by its lags would be due while the
 * kitchen is closed is done before it closed: that is what tonight does for tomorrow.
 */
public final class OpenHours {
  private static final long SECONDS_PER_DAY = 86_400;

  private final Kitchen kitchen;
  private final LocalDate first;
  private final long firstSecond;
  private final List<Window> days = new ArrayList<>();
  private final List<Long> starts = new ArrayList<>();

  /**
   * @param first and last business day of the horizon
   */
  public OpenHours(Kitchen kitchen, LocalDate first, LocalDate last) {
    this.kitchen = kitchen;
    this.first = first;
    this.firstSecond = kitchen.clock().start(first).getEpochSecond();
    for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
      days.add(kitchen.open(day));
      starts.add(kitchen.clock().start(day).getEpochSecond());
    }
  }

  /**
   * The latest start, at or before the wanted one, from which work of that length stays within
   * opening hours; work longer than a day's hours starts when the kitchen opens.
   */
  public Instant latestStart(Instant wanted, Duration length) {
    for (int index = index(wanted); ; index--) {
      Window open = open(index);
      Instant latest = open.end().minus(length);
      if (latest.isBefore(open.start())) {
        latest = open.start();
      }
      Instant start = wanted.isBefore(latest) ? wanted : latest;
      if (!start.isBefore(open.start())) {
        return start;
      }
    }
  }

  /** When the kitchen closed the evening before the business day of a moment. */
  public Instant eveningBefore(Instant moment) {
    return open(index(moment) - 1).end();
  }

  /**
   * The position of a moment's business day; a day's start may lie up to an hour off its average.
   */
  private int index(Instant moment) {
    long second = moment.getEpochSecond();
    int index = (int) Math.floorDiv(second - firstSecond + SECONDS_PER_DAY / 2, SECONDS_PER_DAY);
    return second < start(index) ? index - 1 : index;
  }

  private long start(int index) {
    return index >= 0 && index < starts.size()
        ? starts.get(index)
        : kitchen.clock().start(first.plusDays(index)).getEpochSecond();
  }

  private Window open(int index) {
    return index >= 0 && index < days.size()
        ? days.get(index)
        : kitchen.open(first.plusDays(index));
  }
}
