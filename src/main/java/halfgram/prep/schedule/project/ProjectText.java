package halfgram.prep.schedule.project;

import halfgram.input.Problem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The two texts in which projects are exchanged, read with every problem at once.
 *
 * <p>PSPLIB {@code .sm} (R. Kolisch, A. Sprecher, European Journal of Operational Research 96,
 * 1996): sections with headings; a successor may start when the activity is over. Jobs count from
 * 1.
 *
 * <p>ProGen/max {@code .sch} (C. Schwindt, 1996): a row of counts; for each activity its number,
 * modes (1), how many successors, the successors, and as many lags in brackets, start to start, a
 * negative one a maximum lag; for each its number, mode, duration and demands; the capacities.
 * Activities count from 0, with one more at either end than the first row says.
 */
public final class ProjectText {

  /** A project, or what is wrong with its text; a problem's path is the line. */
  public record Reading(Optional<Project> project, List<Problem> problems) {
    public Reading {
      problems = List.copyOf(problems);
    }
  }

  /** The texts there are. */
  public enum Format {
    SM,
    SCH;

    /** The format that the end of a file's name says. */
    public static Optional<Format> ofName(String name) {
      String lower = name.toLowerCase(Locale.ROOT);
      if (lower.endsWith(".sm")) {
        return Optional.of(SM);
      }
      return lower.endsWith(".sch") ? Optional.of(SCH) : Optional.empty();
    }
  }

  private final Rows rows;
  private int[] durations = new int[0];
  private int[][] demands = new int[0][];
  private int[] capacities = new int[0];
  private final List<Project.Arc> arcs = new ArrayList<>();

  private ProjectText(Rows rows) {
    this.rows = rows;
  }

  /** Reads a text; never throws for one. */
  public static Reading read(Format format, String text) {
    ProjectText reader = new ProjectText(new Rows(text));
    if (format == Format.SM) {
      reader.sections();
      return reader.reading(1);
    }
    reader.rows();
    return reader.reading(0);
  }

  private Reading reading(int firstNumber) {
    if (rows.isGood() && Project.horizon(durations, arcs) > Project.MOST_HORIZON) {
      rows.problem(
          1,
          Long.toString(Project.horizon(durations, arcs)),
          "project.horizon",
          Project.MOST_HORIZON);
    }
    return rows.isGood()
        ? new Reading(
            Optional.of(new Project(firstNumber, durations, demands, capacities, arcs)), List.of())
        : new Reading(Optional.empty(), rows.problems());
  }

  // ---- .sm ----

  private void sections() {
    int n = count("jobs", 2, Project.MOST_ACTIVITIES);
    int renewable = count("- renewable", 0, Project.MOST_RESOURCES);
    count("- nonrenewable", 0, 0);
    count("- doubly constrained", 0, 0);
    if (!rows.isGood() || !rows.skipTo("PRECEDENCE RELATIONS")) {
      return;
    }
    rows.take();
    List<Rows.Row> successors = new ArrayList<>();
    for (int i = 0; i < n && startsWithNumber(); i++) {
      successors.add(rows.take());
    }
    checkCount(successors.size(), n);
    if (!rows.skipTo("REQUESTS/DURATIONS")) {
      return;
    }
    rows.take();
    if (rows.peek().text().startsWith("-")) {
      rows.take();
    }
    work(n, renewable, 1);
    for (int i = 0; i < successors.size(); i++) {
      successors(successors.get(i), i, n);
    }
    if (rows.skipTo("RESOURCEAVAILABILITIES")) {
      rows.take();
      capacities(renewable);
    }
  }

  /** A count behind a colon. */
  private int count(String heading, int least, int most) {
    if (!rows.skipTo(heading)) {
      return least;
    }
    Rows.Row row = rows.found();
    String[] parts = row.text().split(":", 2);
    String word = parts.length < 2 ? "" : parts[1].strip().split(" ", 2)[0];
    return rows.whole(row.line(), word, least, most);
  }

  private boolean startsWithNumber() {
    return rows.hasNext() && rows.peek().words().get(0).matches("[+-]?\\d+");
  }

  private void successors(Rows.Row row, int activity, int n) {
    if (!begins(row, activity, 1)) {
      return;
    }
    int count = rows.whole(row, 2, 0, n);
    if (rows.hasWords(row, 3 + count)) {
      for (int k = 0; k < count; k++) {
        int to = rows.whole(row, 3 + k, 1, n) - 1;
        arcs.add(new Project.Arc(activity, to, durations[activity]));
      }
    }
  }

  // ---- .sch ----

  private void rows() {
    Rows.Row counts = rows.take();
    if (!rows.hasWords(counts, 4)) {
      return;
    }
    int n = rows.whole(counts, 0, 0, Project.MOST_ACTIVITIES - 2) + 2;
    int renewable = rows.whole(counts, 1, 0, Project.MOST_RESOURCES);
    rows.whole(counts, 2, 0, 0);
    rows.whole(counts, 3, 0, 0);
    if (!rows.isGood()) {
      return;
    }
    for (int i = 0; i < n && rows.hasNext(); i++) {
      Rows.Row row = rows.take();
      if (begins(row, i, 0)) {
        int count = rows.whole(row, 2, 0, n);
        if (rows.hasWords(row, 3 + 2 * count)) {
          for (int k = 0; k < count; k++) {
            int to = rows.whole(row, 3 + k, 0, n - 1);
            arcs.add(new Project.Arc(i, to, rows.lag(row, 3 + count + k)));
          }
        }
      }
    }
    work(n, renewable, 0);
    capacities(renewable);
    if (rows.hasNext()) {
      rows.problem(rows.peek().line(), rows.peek().text(), "project.end");
    }
  }

  // ---- both ----

  /** Number, mode, duration and demands of each activity. */
  private void work(int n, int renewable, int firstNumber) {
    durations = new int[n];
    demands = new int[n][renewable];
    int i = 0;
    while (i < n && startsWithNumber()) {
      Rows.Row row = rows.take();
      if (begins(row, i, firstNumber) && rows.hasWords(row, 3 + renewable)) {
        durations[i] = rows.whole(row, 2, 0, i == 0 ? 0 : Project.MOST);
        for (int r = 0; r < renewable; r++) {
          demands[i][r] = rows.whole(row, 3 + r, 0, Project.MOST);
        }
      }
      i++;
    }
    checkCount(i, n);
  }

  private void capacities(int renewable) {
    Rows.Row row = rows.take();
    if (rows.hasWords(row, renewable)) {
      capacities = new int[renewable];
      for (int r = 0; r < renewable; r++) {
        capacities[r] = rows.whole(row, r, 0, Project.MOST);
      }
    }
  }

  /** Whether a row is long enough to be the next activity's; says if it is another's. */
  private boolean begins(Rows.Row row, int activity, int firstNumber) {
    int number = activity + firstNumber;
    if (row.words().size() < 3) {
      rows.problem(row.line(), row.text(), "project.row", number);
      return false;
    }
    rows.whole(row, 0, number, number);
    rows.whole(row, 1, 1, 1);
    return true;
  }

  private void checkCount(int found, int wanted) {
    if (found < wanted) {
      rows.problem(rows.peek().line(), rows.peek().text(), "project.rows", found, wanted);
    }
  }
}
