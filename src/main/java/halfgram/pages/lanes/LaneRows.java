package halfgram.pages.lanes;

import halfgram.measure.Window;
import halfgram.pages.Rack;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * The bars of one lane in as many rows as they need. A bar is as wide as its time; what can be
 * pressed is never smaller than a finger needs, so short tasks one after the other step down. A
 * name stands in its bar when there is room, beside it when nothing else comes soon, else there is
 * its number.
 */
record LaneRows(String height, List<Drawing.Alone> alone, List<Drawing.Mark> marks) {
  private static final int ROW = 28;
  private static final int BAR = 20;
  private static final int MOST_ROWS = 5;

  /** How much of the width things take on the narrowest drawing there is, in percent. */
  private static final double LETTER = 0.76;

  private static final double PRESSED = 2.9;
  private static final double PAD = 0.7;
  private static final double THIN = 0.35;

  /**
   * The rows of a lane.
   *
   * @param least height, for what is written beside it
   */
  static LaneRows of(Axis axis, List<Strip> strips, int least) {
    Placing full = new Placing(axis, true);
    full.place(strips);
    Placing placing = full;
    if (full.rack.rows() > MOST_ROWS) {
      placing = new Placing(axis, false);
      placing.place(strips);
    }
    int height = Math.max(Math.max(1, placing.rack.rows()) * ROW + 2, least);
    return new LaneRows(String.valueOf(height), placing.alone, placing.marks);
  }

  private static final class Placing {
    private final Axis axis;

    /** Whether nothing lies over what stands alone. */
    private final boolean roomy;

    private final Rack rack = new Rack();
    private final List<Drawing.Alone> alone = new ArrayList<>();
    private final List<Drawing.Mark> marks = new ArrayList<>();

    private Placing(Axis axis, boolean roomy) {
      this.axis = axis;
      this.roomy = roomy;
    }

    private void place(List<Strip> strips) {
      for (int i = 0; i < strips.size(); i++) {
        double next = i + 1 < strips.size() ? axis.place(strips.get(i + 1).from()) : 100;
        place(strips.get(i), next);
      }
    }

    private void place(Strip strip, double next) {
      double from = axis.place(strip.from());
      double off = Math.max(axis.place(strip.off()), Math.min(100, from + THIN));
      double end = Math.max(axis.place(strip.end()), off);
      String name = strip.name();
      boolean named = wide(name) <= off - from || off + wide(name) <= Math.min(next, 100);
      String said = named ? name : strip.brief();
      boolean inside = wide(said) <= off - from;
      boolean left = !inside && off + wide(said) > 100;
      double first = left ? from - wide(said) : from;
      double last = inside || left ? off : off + wide(said);
      double hit = Math.max(off - from, PRESSED);
      double hitFrom = Math.min(from, 100 - hit);
      last = Math.max(last, hitFrom + hit);
      int row = rack.place(Math.min(first, hitFrom), roomy ? Math.max(last, end) : last);
      int top = row * ROW + 1;
      if (end > off) {
        alone.add(
            new Drawing.Alone(
                Axis.percent(off), Axis.percent(end), String.valueOf(top + BAR + 3), strip.kind()));
      }
      marks.add(
          new Drawing.Mark(
              strip.href(),
              strip.told(),
              strip.kind(),
              Axis.percent(from),
              String.valueOf(top + 2),
              Axis.percent(off - from),
              pauses(strip),
              Axis.percent(hitFrom),
              Axis.percent(hit),
              Axis.percent(inside ? from : left ? from : off),
              String.valueOf(top + 17),
              left ? "-4" : "4",
              left ? "end" : "start",
              inside,
              said));
    }

    /** Nobody works in a break: long work goes on after it. */
    private List<Drawing.Pause> pauses(Strip strip) {
      List<Drawing.Pause> pauses = new ArrayList<>();
      for (Window away : strip.away()) {
        double start = axis.place(later(away.start(), strip.from()));
        double width = axis.place(earlier(away.end(), strip.off())) - start;
        if (width > 0) {
          pauses.add(new Drawing.Pause(Axis.percent(start), Axis.percent(width)));
        }
      }
      return pauses;
    }

    private static Instant later(Instant one, Instant other) {
      return one.isAfter(other) ? one : other;
    }

    private static Instant earlier(Instant one, Instant other) {
      return one.isBefore(other) ? one : other;
    }

    private static double wide(String said) {
      return said.length() * LETTER + PAD;
    }
  }
}
