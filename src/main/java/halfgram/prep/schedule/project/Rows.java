package halfgram.prep.schedule.project;

import halfgram.input.Problem;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.List;

/**
 * The rows of a text of numbers, one after another, with every problem met on the way: where (the
 * line, counted from 1), what stands there, what would be accepted.
 */
final class Rows {

  /** A line that is not empty, as words. */
  record Row(int line, List<String> words) {
    String text() {
      return String.join(" ", words);
    }
  }

  private final List<Row> rows = new ArrayList<>();
  private final List<Problem> problems = new ArrayList<>();
  private int next;
  private int lines = 1;

  Rows(String text) {
    int line = 0;
    for (String said : text.replace("\uFEFF", "").replace("\u001A", "").split("\\R", -1)) {
      line++;
      String tidy = said.replaceAll("\\[\\s+", "[").replaceAll("\\s+]", "]").strip();
      if (!tidy.isEmpty()) {
        rows.add(new Row(line, List.of(tidy.split("\\s+"))));
        lines = line;
      }
    }
  }

  List<Problem> problems() {
    return List.copyOf(problems);
  }

  boolean isGood() {
    return problems.isEmpty();
  }

  boolean hasNext() {
    return next < rows.size();
  }

  Row peek() {
    return hasNext() ? rows.get(next) : new Row(lines, List.of());
  }

  /** The next row, and on; at the end a row without words. */
  Row take() {
    Row row = peek();
    next++;
    return row;
  }

  /** Goes on to behind the first row from here that begins so; false when there is none. */
  boolean skipTo(String beginning) {
    for (int i = next; i < rows.size(); i++) {
      if (rows.get(i).text().regionMatches(true, 0, beginning, 0, beginning.length())) {
        next = i + 1;
        return true;
      }
    }
    problem(peek().line(), "", "project.no-section", beginning);
    return false;
  }

  /** The row that {@link #skipTo} went behind. */
  Row found() {
    return rows.get(next - 1);
  }

  void problem(int line, String value, String key, Object... args) {
    problems.add(new Problem(Integer.toString(line), value, Message.of(key, args)));
  }

  /** A whole number of a row; one that is none or out of range is a problem, and {@code least}. */
  int whole(Row row, int at, int least, int most) {
    String word = at < row.words().size() ? row.words().get(at) : "";
    return whole(row.line(), word, least, most);
  }

  int whole(int line, String word, int least, int most) {
    if (word.matches("[+-]?\\d{1,9}")) {
      int number = Integer.parseInt(word);
      if (number >= least && number <= most) {
        return number;
      }
    }
    problem(line, word, "project.number", least, most);
    return least;
  }

  /** A number in brackets. */
  int lag(Row row, int at) {
    String word = row.words().get(at);
    if (word.matches("\\[[+-]?\\d{1,9}]")) {
      int number = Integer.parseInt(word.substring(1, word.length() - 1));
      if (Math.abs(number) <= Project.MOST) {
        return number;
      }
    }
    problem(row.line(), word, "project.lag", Project.MOST);
    return 0;
  }

  /** Whether a row has exactly so many words; else a problem. */
  boolean hasWords(Row row, int count) {
    if (row.words().size() != count) {
      problem(row.line(), row.text(), "project.words", row.words().size(), count);
      return false;
    }
    return true;
  }
}
