package halfgram.pages.wall;

import halfgram.measure.Amount;
import halfgram.measure.Mass;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.words.WeighWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.function.LongSupplier;
import java.util.stream.Stream;

/**
 * The weigh list of a task: the number is what the hand needs next, cut at its point so that all
 * points stand in one line.
 */
final class WeighRows {
  /** Lines that go into one vessel. */
  record Group(String into, List<Row> rows) {}

  /** Where a line stands. */
  enum Place {
    DONE,
    NOW,
    LATER
  }

  /**
   * One line.
   *
   * @param whole digits before the point
   * @param fraction the point and what follows, or nothing
   * @param heed what it must not be taken for
   */
  record Row(
      String path,
      String whole,
      String fraction,
      String unit,
      String name,
      String scale,
      String heed,
      List<String> notes,
      Place place,
      long sequence) {
    public String number() {
      return whole + fraction;
    }

    public boolean isDone() {
      return place == Place.DONE;
    }

    public boolean isNow() {
      return place == Place.NOW;
    }
  }

  private final Scene scene;
  private final WeighWords words;
  private final Task task;
  private final LongSupplier sequence;

  WeighRows(Scene scene, Task task, LongSupplier sequence) {
    this.scene = scene;
    this.words =
        new WeighWords(
            scene.book(), scene.words(), task.weigh(), task.fill().count(), scene.names()::user);
    this.task = task;
    this.sequence = sequence;
  }

  List<Group> list() {
    SortedMap<String, Mass> weighed = scene.progress(task).weighed();
    String next =
        scene.isOver(task)
            ? ""
            : lines()
                .filter(line -> !isIn(line, weighed))
                .map(WeighLine::path)
                .findFirst()
                .orElse("");
    List<Group> groups = new ArrayList<>();
    for (WeighGroup group : task.weigh()) {
      List<Row> rows =
          group.lines().stream().map(line -> row(line, weighed, line.path().equals(next))).toList();
      groups.add(new Group(words.into(group).orElse(""), rows));
    }
    return groups;
  }

  private Stream<WeighLine> lines() {
    return task.weigh().stream().flatMap(group -> group.lines().stream());
  }

  /** Whether all that is asked for of it has been weighed. */
  private static boolean isIn(WeighLine line, SortedMap<String, Mass> weighed) {
    return Optional.ofNullable(weighed.get(line.path()))
        .filter(in -> line.lacking(in).isEmpty())
        .isPresent();
  }

  private Row row(WeighLine line, SortedMap<String, Mass> weighed, boolean next) {
    Optional<Mass> in = Optional.ofNullable(weighed.get(line.path()));
    Optional<WeighLine> more = in.flatMap(line::lacking);
    WeighWords.Figure figure = words.figure(more.orElse(line));
    Place place = next ? Place.NOW : Place.LATER;
    List<String> notes = new ArrayList<>(words.notes(line));
    more.ifPresent(
        of ->
            notes.add(
                0,
                scene
                    .words()
                    .say("wall.more-in", scene.words().amount(Amount.of(in.orElseThrow())))));
    return new Row(
        line.path(),
        (more.isPresent() ? "+" : "") + figure.whole(),
        figure.fraction(),
        figure.unit(),
        figure.name(),
        figure.scale(),
        words.heed(line).orElse(""),
        notes,
        in.isPresent() && more.isEmpty() ? Place.DONE : place,
        sequence.getAsLong());
  }
}
