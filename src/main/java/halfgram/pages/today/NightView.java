package halfgram.pages.today;

import halfgram.measure.Amount;
import halfgram.pages.MissedLines;
import halfgram.prep.Missed;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.WeighLine;
import halfgram.station.Container;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.NightWords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The close-of-day list: what tonight must do for another day.
 *
 * @param date of tonight
 * @param left how many are still to do, in words
 * @param missed of the evening before, still to be made good
 * @param baths whether the day has baths
 */
record NightView(String date, String left, MissedLines missed, boolean baths, List<Row> rows) {

  /**
   * One task.
   *
   * @param take what to fetch
   * @param into packs and place
   * @param ready until when it stands; empty when it need not
   * @param tick where it is ticked
   */
  record Row(
      String start,
      String what,
      String where,
      String amount,
      String take,
      String into,
      String ready,
      String useBy,
      String serves,
      StateWords state,
      String tick) {}

  static NightView of(Shown shown, List<Missed> missed) {
    List<Task> tasks = shown.sheet().tonight();
    long open = tasks.stream().filter(task -> !StateWords.isDone(shown, task)).count();
    NightWords said = new NightWords(shown.book(), shown.sheet(), shown.words());
    return new NightView(
        shown.words().date(shown.day()),
        tasks.isEmpty() ? "" : shown.words().say("night.left", open, tasks.size()),
        MissedLines.of(missed.stream().map(said::missed).toList(), shown.day(), ""),
        !shown.sheet().runs().isEmpty(),
        tasks.stream().map(task -> row(shown, task)).toList());
  }

  private static Row row(Shown shown, Task task) {
    Messages words = shown.words();
    var station = shown.book().stations().get(task.station());
    List<String> takes =
        task.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .map(line -> take(shown, line))
            .toList();
    return new Row(
        shown.time(task.start()),
        shown.names().title(task),
        station == null ? task.station() : shown.text(station.name()),
        task.stored().isEmpty() ? "" : shown.names().amount(task.stored().get(0).made()),
        takes.isEmpty() ? "" : words.say("night.take", String.join(", ", takes)),
        String.join("; ", task.stored().stream().map(stored -> into(shown, stored)).toList()),
        ready(shown, task),
        useBy(shown, task),
        shown.names().user(task.make().service(), shown.day()),
        StateWords.of(shown, task),
        "wall/" + Visit.encoded(task.station()) + "?task=" + Visit.encoded(task.id()));
  }

  private static String take(Shown shown, WeighLine line) {
    return shown.text(line.name()) + " " + shown.names().amount(Amount.of(line.pulled()));
  }

  /** "3 × 4 kg, 1.2 kg, bath pan, walk-in". */
  private static String into(Shown shown, Stored stored) {
    List<String> parts = new ArrayList<>();
    Map<String, Integer> packs = new LinkedHashMap<>();
    stored.fills().forEach(fill -> packs.merge(shown.names().amount(fill), 1, Integer::sum));
    packs.forEach((amount, count) -> parts.add(count == 1 ? amount : count + " × " + amount));
    stored.container().map(Container::name).map(shown::text).ifPresent(parts::add);
    if (!stored.output().hold().place().isEmpty()) {
      parts.add(stored.output().hold().place());
    }
    return parts.isEmpty() ? "" : shown.words().say("night.into", String.join(", ", parts));
  }

  private static String ready(Shown shown, Task task) {
    Duration rest =
        task.stored().stream()
            .map(stored -> stored.output().rest().min())
            .max(Duration::compareTo)
            .orElse(Duration.ZERO);
    Instant ready = task.end().plus(rest);
    return rest.isZero() && task.unattended().isZero()
        ? ""
        : shown.words().say("night.ready", shown.words().moment(ready));
  }

  private static String useBy(Shown shown, Task task) {
    return task.stored().isEmpty()
        ? ""
        : shown.words().say("night.use-by", shown.words().moment(task.stored().get(0).useBy()));
  }
}
