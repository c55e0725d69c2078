package halfgram.pages.today;

import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Instant;
import java.util.List;

/** What the page of a day shows. */
record TodayView(String date, List<Row> rows) {
  /** One task. */
  record Row(String start, String what, String state) {}

  static TodayView of(InForce inForce, Messages words, Instant now) {
    SheetWords names = new SheetWords(inForce.book(), inForce.sheet(), words);
    List<Row> rows =
        inForce.sheet().tasks().stream().map(task -> row(inForce, task, names, words)).toList();
    return new TodayView(words.date(inForce.plan().day()), rows);
  }

  private static Row row(InForce inForce, Task task, SheetWords names, Messages words) {
    return new Row(
        words.time(task.start()), names.title(task), inForce.progress(task).state().name());
  }
}
