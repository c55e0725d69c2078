package halfgram.pages.today;

import halfgram.measure.Exact;
import halfgram.measure.Window;
import halfgram.pages.Rack;
import halfgram.prep.Paths;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.station.Station;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Draws the day by station. What would cover something else goes a row lower; what happens outside
 * the hours drawn ends at their edge.
 */
final class Draughting {
  /** Letters of a name in the drawing. */
  private static final int LONGEST = 36;

  private static final int BAR_ROW = 22;
  private static final int LABEL_ROW = 42;
  private static final int LABEL_BELOW = 32;
  private static final int MIDDLE = 9;
  private static final int FLAG_ROW = 22;

  /** How much of the width a letter takes on the narrowest drawing there is, in percent. */
  private static final double LETTER = 0.86;

  private static final double BOLD_LETTER = 1.05;
  private static final double GAP = 0.5;

  private final Shown shown;
  private final Window window;

  private Draughting(Shown shown) {
    this.shown = shown;
    this.window = window(shown);
  }

  static Drawing draw(Shown shown) {
    return new Draughting(shown).draw();
  }

  /** The opening hours, wider where work or a service lies outside, within the business day. */
  private static Window window(Shown shown) {
    Window open = shown.book().kitchen().open(shown.day());
    Instant first = open.start();
    Instant last = open.end();
    for (Task task : shown.sheet().tasks()) {
      first = task.start().isBefore(first) ? task.start() : first;
      last = task.handsOff().isAfter(last) ? task.handsOff() : last;
    }
    for (ServiceRun run : shown.sheet().services()) {
      first = run.window().start().isBefore(first) ? run.window().start() : first;
      last = run.window().end().isAfter(last) ? run.window().end() : last;
    }
    Instant dayStart = shown.clock().start(shown.day());
    Instant dayEnd = shown.clock().start(shown.day().plusDays(1));
    first = first.isBefore(dayStart) ? dayStart : first.truncatedTo(ChronoUnit.HOURS);
    last = last.isAfter(dayEnd) ? dayEnd : last;
    return new Window(first, last);
  }

  private Drawing draw() {
    List<Drawing.Flag> flags = new ArrayList<>();
    List<Drawing.Line> lines = new ArrayList<>();
    List<Drawing.Hour> hours = new ArrayList<>();
    hours(lines, hours);
    int rows = flags(flags, lines);
    List<Drawing.Lane> lanes = shown.book().stations().values().stream().map(this::lane).toList();
    return new Drawing(
        shown.sheet().tasks().isEmpty(),
        String.valueOf(rows * FLAG_ROW + 4),
        flags,
        lines,
        hours,
        lanes);
  }

  private void hours(List<Drawing.Line> lines, List<Drawing.Hour> hours) {
    ZonedDateTime at = window.start().atZone(shown.clock().zone());
    while (!at.toInstant().isAfter(window.end())) {
      if (at.getHour() % 2 == 0) {
        double x = place(at.toInstant());
        lines.add(new Drawing.Line(percent(x), "hour"));
        String anchor = x < 1 ? "start" : x > 99 ? "end" : "middle";
        hours.add(new Drawing.Hour(percent(x), anchor, String.valueOf(at.getHour())));
      }
      at = at.plusHours(1);
    }
  }

  private int flags(List<Drawing.Flag> flags, List<Drawing.Line> lines) {
    Rack rack = new Rack();
    List<ServiceRun> runs =
        shown.sheet().services().stream()
            .sorted(Comparator.comparing((ServiceRun run) -> run.window().start()))
            .toList();
    for (ServiceRun run : runs) {
      double x = place(run.window().start());
      String covers = run.covers().isPresent() ? run.covers().getAsInt() + " " : "";
      flag(flags, rack, x, covers, brief(shown.text(run.name())));
      lines.add(new Drawing.Line(percent(x), "service"));
    }
    boolean inside = !shown.now().isBefore(window.start()) && shown.now().isBefore(window.end());
    if (shown.phase() == Shown.Phase.NOW && inside) {
      double x = place(shown.now());
      flag(flags, rack, x, "", shown.words().say("today.now", shown.time(shown.now())));
      lines.add(new Drawing.Line(percent(x), "now"));
    }
    return rack.rows();
  }

  private void flag(List<Drawing.Flag> flags, Rack rack, double x, String covers, String name) {
    double width = (covers.length() + name.length()) * BOLD_LETTER;
    boolean left = x + width > 100;
    int row = left ? rack.place(x - width, x + GAP) : rack.place(x - GAP, x + width);
    flags.add(
        new Drawing.Flag(
            percent(x),
            String.valueOf(row * FLAG_ROW + 15),
            left ? "end" : "start",
            left ? "-4" : "4",
            covers,
            name));
  }

  /** A drawing has no second line. */
  private static String brief(String name) {
    return name.length() > LONGEST ? name.substring(0, LONGEST - 1).strip() + "\u2026" : name;
  }

  private Drawing.Lane lane(Station station) {
    List<Task> tasks =
        shown.sheet().tasks().stream()
            .filter(task -> task.station().equals(station.code()))
            .sorted(Comparator.comparing(Task::start).thenComparing(Task::id))
            .toList();
    List<Drawn> drawn = new ArrayList<>();
    Rack rack = new Rack();
    tasks.forEach(task -> drawn.add(drawn(task, rack)));
    int[] tops = tops(drawn, rack.rows());
    List<Drawing.Bar> bars = new ArrayList<>();
    List<Drawing.Alone> alone = new ArrayList<>();
    List<Drawing.Label> labels = new ArrayList<>();
    drawn.forEach(one -> one.put(tops[one.row], bars, alone, labels));
    return new Drawing.Lane(
        shown.text(station.name()),
        Verdict.load(shown, station),
        tasks.isEmpty() ? "" : shown.why(Paths.load(station.code())),
        said(station, tasks),
        String.valueOf(Math.max(tops[tops.length - 1], BAR_ROW) + 4),
        bars,
        alone,
        labels);
  }

  private String said(Station station, List<Task> tasks) {
    return tasks.isEmpty()
        ? shown.words().say("today.lane-empty", station.name())
        : shown
            .words()
            .say(
                "today.lane",
                station.name(),
                tasks.size(),
                shown.time(tasks.get(0).start()),
                shown.time(tasks.stream().map(Task::end).max(Instant::compareTo).orElseThrow()));
  }

  /** Where each row begins, and last where they all end: rows with writing are higher. */
  private static int[] tops(List<Drawn> drawn, int rows) {
    int[] tops = new int[rows + 1];
    for (int row = 0; row < rows; row++) {
      int at = row;
      boolean written = drawn.stream().anyMatch(one -> one.row == at && !one.label.isEmpty());
      tops[row + 1] = tops[row] + (written ? LABEL_ROW : BAR_ROW);
    }
    return tops;
  }

  private Drawn drawn(Task task, Rack rack) {
    double from = place(task.start());
    double off = Math.max(place(task.handsOff()), from + 0.2);
    double end = place(task.end());
    String label = label(task);
    double width = label.length() * LETTER;
    boolean left = from + width > 100;
    double first = left ? Math.min(from, end - width) : from;
    double last = left ? Math.max(off, end) : Math.max(Math.max(off, end), from + width);
    return new Drawn(task, from, off, end, label, left, rack.place(first, last + GAP));
  }

  /** What stands alone, and what is not simply to do, is said in words. */
  private String label(Task task) {
    StateWords state = StateWords.of(shown, task);
    boolean told =
        shown.progress(task).state() == TaskState.ON_IT
            || shown.progress(task).state() == TaskState.PART_DONE
            || shown.progress(task).state() == TaskState.PROBLEM;
    boolean late = !state.late().isEmpty();
    if (task.unattended().isZero() && !told && !late) {
      return "";
    }
    String name = brief(shown.names().title(task));
    String said = told ? state.word() + ": " + name : name;
    return late ? said + ", " + state.late() : said;
  }

  private double place(Instant at) {
    double all = Duration.between(window.start(), window.end()).toSeconds();
    double gone = Duration.between(window.start(), at).toSeconds();
    return Math.min(100, Math.max(0, 100 * gone / all));
  }

  private static String percent(double x) {
    return Exact.plain(BigDecimal.valueOf(x), 2) + "%";
  }

  /** One task with its place. */
  private final class Drawn {
    private final Task task;
    private final double from;
    private final double off;
    private final double end;
    private final String label;
    private final boolean left;
    private final int row;

    private Drawn(
        Task task, double from, double off, double end, String label, boolean left, int row) {
      this.task = task;
      this.from = from;
      this.off = off;
      this.end = end;
      this.label = label;
      this.left = left;
      this.row = row;
    }

    private void put(
        int top, List<Drawing.Bar> bars, List<Drawing.Alone> alone, List<Drawing.Label> labels) {
      String kind = shown.progress(task).state().name().toLowerCase(Locale.ROOT);
      boolean late = !StateWords.late(shown, task).isEmpty() && kind.equals("to_do");
      bars.add(
          new Drawing.Bar(
              percent(from),
              String.valueOf(top + 1),
              percent(off - from),
              (late ? "late" : kind.replace('_', '-')),
              shown.time(task.start()) + " " + shown.names().title(task)));
      if (end > off) {
        alone.add(new Drawing.Alone(percent(off), percent(end), String.valueOf(top + MIDDLE)));
      }
      if (!label.isEmpty()) {
        labels.add(
            new Drawing.Label(
                percent(left ? Math.max(off, end) : from),
                String.valueOf(top + LABEL_BELOW),
                left ? "end" : "start",
                label,
                late ? "late" : kind.replace('_', '-')));
      }
    }
  }
}
