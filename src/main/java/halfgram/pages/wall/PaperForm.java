package halfgram.pages.wall;

import halfgram.pages.EntryFields;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * What was done on paper as sent by a form, as typed, task by task.
 *
 * <p>Names of fields: {@code task-0}, {@code started-0}, {@code done-0}, {@code came-0}, {@code
 * made-0}, {@code who-0}, {@code note-0}, {@code sure-0}, {@code sequence-0} and so on.
 */
record PaperForm(List<Row> rows) {
  /** More tasks no day has. */
  private static final int MOST = 1000;

  static final PaperForm NONE = new PaperForm(List.of());

  /** What a task came to. */
  enum Came {
    DONE,
    PART_DONE,
    PROBLEM
  }

  /**
   * One task.
   *
   * @param who empty: as the row above that is filled
   * @param sequences the device's numbers of its two ticks: of the start, of what it came to
   */
  record Row(
      String task,
      String started,
      String done,
      Came came,
      String made,
      String who,
      String note,
      boolean sure,
      List<Long> sequences) {

    /** Whether there is anything to enter. */
    boolean isFilled() {
      return !(started + done + made + note).isBlank() || came != Came.DONE;
    }
  }

  static PaperForm of(UnaryOperator<String> field) {
    List<Row> rows = new ArrayList<>();
    while (rows.size() < MOST && !field.apply("task-" + rows.size()).isEmpty()) {
      rows.add(row(field, "-" + rows.size()));
    }
    return new PaperForm(rows);
  }

  private static Row row(UnaryOperator<String> field, String of) {
    return new Row(
        field.apply("task" + of),
        field.apply("started" + of).strip(),
        field.apply("done" + of).strip(),
        came(field.apply("came" + of)),
        field.apply("made" + of).strip(),
        field.apply("who" + of),
        field.apply("note" + of).strip(),
        field.apply("sure" + of).equals("yes"),
        sequences(field.apply("sequence" + of)));
  }

  private static Came came(String word) {
    for (Came one : Came.values()) {
      if (one.name().equals(word)) {
        return one;
      }
    }
    return Came.DONE;
  }

  private static List<Long> sequences(String text) {
    List<String> parts = List.of(text.split(" ", -1));
    return parts.stream().allMatch(EntryFields::isSequence)
        ? parts.stream().map(Long::valueOf).toList()
        : List.of();
  }

  /** Whether it could come from a page of ours; what a cook types is looked at afterwards. */
  boolean isReadable() {
    return rows.stream().allMatch(row -> row.sequences().size() == 2);
  }

  boolean isFilled() {
    return rows.stream().anyMatch(Row::isFilled);
  }
}
