package halfgram.pages.today;

import halfgram.prep.Paths;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import halfgram.words.WeighWords;
import java.util.List;
import java.util.Locale;

/** What goes into one vessel, in the order it goes in. */
record WeighView(String vessel, List<Line> lines) {

  /**
   * One weight: the mass on the display, the count, or what to take of a dilution.
   *
   * @param whole digits before the point
   * @param part the point and the digits behind it; empty for a whole number
   * @param warning what it is easily taken for
   */
  record Line(
      String whole,
      String part,
      String unit,
      String href,
      String name,
      String scale,
      String warning,
      List<String> notes) {}

  static List<WeighView> of(Shown shown, Task task) {
    WeighWords words =
        new WeighWords(
            shown.book(), shown.words(), task.weigh(), task.fill().count(), shown.names()::user);
    return task.weigh().stream()
        .map(
            group ->
                new WeighView(
                    words.into(group).orElse(""),
                    group.lines().stream().map(line -> line(shown, task, words, line)).toList()))
        .toList();
  }

  private static Line line(Shown shown, Task task, WeighWords words, WeighLine line) {
    WeighWords.Figure figure = words.figure(line);
    String field = figure.kind().name().toLowerCase(Locale.ROOT);
    return new Line(
        figure.whole(),
        figure.fraction(),
        figure.unit(),
        shown.why(Paths.weigh(task.make(), task.step(), line.line(), field)),
        figure.name(),
        figure.under(),
        words.heed(line).orElse(""),
        words.notes(line));
  }
}
