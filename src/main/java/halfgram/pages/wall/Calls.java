package halfgram.pages.wall;

import java.util.Comparator;
import java.util.List;

/**
 * What is called to a wall, above the task in hand: courses about now, and where a chef is wanted.
 *
 * <p>Rules. So few at once that they stand in one row on a tablet: a place for a chef who is
 * wanted, the rest for courses, those first to which nobody has said go. Others wait behind a
 * press.
 */
record Calls(
    List<CallRow> courses,
    List<CalledRow> wanted,
    List<CallRow> farCourses,
    List<CalledRow> farWanted) {
  private static final int ROW = 3;

  /** Of courses and calls for a chef, each in order. */
  static Calls of(List<CallRow> all, List<CalledRow> wanted) {
    List<CallRow> courses =
        all.stream().sorted(Comparator.comparing(call -> !call.go().isEmpty())).toList();
    int first = Math.min(courses.size(), wanted.isEmpty() ? ROW : ROW - 1);
    int then = Math.min(wanted.size(), ROW - first);
    return new Calls(
        courses.subList(0, first),
        wanted.subList(0, then),
        courses.subList(first, courses.size()),
        wanted.subList(then, wanted.size()));
  }

  public boolean isEmpty() {
    return courses.isEmpty() && wanted.isEmpty();
  }

  /** How many wait behind a press. */
  public int more() {
    return farCourses.size() + farWanted.size();
  }
}
