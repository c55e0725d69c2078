package halfgram.pages.wall;

import halfgram.formula.Gate;
import halfgram.pages.EntryFields;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.UnaryOperator;

/**
 * What was done on paper as sent by a form, as typed, task by task.
 *
 * <p>Names of fields: {@code task-0}, {@code started-0}, {@code done-0}, {@code came-0}, {@code
 * made-0}, {@code who-0}, {@code note-0}, {@code sure-0}, {@code sequence-0} and so on; of what was
 * said at its gate {@code verdict-0}, {@code tried-0}, {@code skin-0}, {@code item-0}, {@code
 * amount-0}.
 */
record PaperForm(List<Row> rows) {
  /** More tasks no day has. */
  private static final int MOST = 1000;

  /** As many numbers of its own has each row. */
  static final int NUMBERS = 4;

  static final PaperForm NONE = new PaperForm(List.of());

  /** What a task came to. */
  enum Came {
    DONE,
    PART_DONE,
    PROBLEM,
    /** Nothing: there is only something to know. */
    NOTE
  }

  /**
   * What was said at the gate of a task.
   *
   * @param verdict "GO", "ADJUST", "FAIL", or empty
   * @param tried when
   * @param said a word for each check, by its own word
   * @param item code of what went in
   */
  record Tried(String verdict, String tried, Map<String, String> said, String item, String amount) {
    static final Tried NONE = new Tried("", "", Map.of(), "", "");

    boolean isFilled() {
      return !(verdict + tried + item + amount + String.join("", said.values())).isBlank();
    }
  }

  /**
   * One task.
   *
   * @param who empty: as the row above that is filled
   * @param sequences the device's numbers: of the start, of what it came to, and at its gate of
   *     what went in, and of the verdict
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
      List<Long> sequences,
      Tried gate) {

    /** Whether there is anything to enter. */
    boolean isFilled() {
      return isMoved() || !note.isBlank() || came == Came.NOTE || gate.isFilled();
    }

    /** Whether it says that anything was done. */
    boolean isMoved() {
      return (!(started + done + made).isBlank() && came != Came.NOTE)
          || came == Came.PART_DONE
          || came == Came.PROBLEM;
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
        sequences(field.apply("sequence" + of)),
        tried(field, of));
  }

  private static Tried tried(UnaryOperator<String> field, String of) {
    Map<String, String> said = new LinkedHashMap<>();
    for (Gate.Check check : Gate.Check.values()) {
      String word = field.apply(check.word() + of);
      if (check.words().contains(word)) {
        said.put(check.word(), word);
      }
    }
    return new Tried(
        field.apply("verdict" + of),
        field.apply("tried" + of).strip(),
        said,
        field.apply("item" + of),
        field.apply("amount" + of).strip());
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
    return rows.stream().allMatch(row -> row.sequences().size() == NUMBERS);
  }

  boolean isFilled() {
    return rows.stream().anyMatch(Row::isFilled);
  }
}
