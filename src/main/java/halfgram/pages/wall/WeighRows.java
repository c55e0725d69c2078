package halfgram.pages.wall;

import halfgram.ingredient.Scale;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.pages.MethodLine;
import halfgram.prep.Method;
import halfgram.prep.Task;
import halfgram.prep.WeighGroup;
import halfgram.prep.WeighLine;
import halfgram.web.Visit;
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
   * @param beside the same in the kitchen's other units, or nothing
   * @param heed what it must not be taken for
   * @param total what the scale shows with it, for who does not tare; empty for the first on it
   * @param which names on the tubs that look alike, to be told apart first; empty when that is done
   * @param wrong what was taken for it a moment ago
   * @param read whether the tub was read
   * @param joined whether a sentence further down speaks of this line
   * @param then what is done when it is in
   */
  record Row(
      String path,
      String whole,
      String fraction,
      String unit,
      String name,
      String scale,
      String beside,
      String heed,
      List<String> notes,
      String total,
      List<Which> which,
      String wrong,
      boolean read,
      Place place,
      long sequence,
      boolean joined,
      List<MethodLine> then) {
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

  /** A name on a tub: of the line's own has no number. */
  record Which(String name, int number) implements Comparable<Which> {
    static final int OWN = 0;

    @Override
    public int compareTo(Which other) {
      return name.compareTo(other.name);
    }
  }

  /**
   * What was said of the tub in the hand.
   *
   * @param line path of the line; empty when nothing was said
   * @param number of the name that was pressed, empty while it is asked
   */
  record TubRead(String line, Optional<Integer> number) {
    static final TubRead NOTHING = new TubRead("", Optional.empty());

    /**
     * As a page is asked for it, "3" the third name like it, "0" its own; or asked for again where
     * a weight was sent without.
     */
    static TubRead of(Visit visit, TickForm rejected) {
      return rejected.line().isEmpty()
          ? of(visit.query("line"), visit.query("tub"))
          : new TubRead(rejected.line(), Optional.empty());
    }

    private static TubRead of(String line, String number) {
      return new TubRead(
          line, Optional.of(number).filter(text -> text.matches("\\d{1,3}")).map(Integer::valueOf));
    }

    private boolean isOf(WeighLine of) {
      return line.equals(of.path());
    }

    private boolean isRight(WeighLine of) {
      return isOf(of) && number.filter(it -> it == Which.OWN).isPresent();
    }

    private Optional<Integer> wrong(WeighLine of) {
      return isOf(of)
          ? number.filter(it -> it > Which.OWN && it <= of.lookAlikes().size())
          : Optional.empty();
    }
  }

  private final Scene scene;
  private final WeighWords words;
  private final Task task;
  private final TubRead tub;
  private final LongSupplier sequence;
  private final Method method;

  WeighRows(Scene scene, Task task, TubRead tub, LongSupplier sequence) {
    this.scene = scene;
    this.tub = tub;
    this.words =
        new WeighWords(
            scene.book(), scene.words(), task.weigh(), task.fill().count(), scene.names()::user);
    this.task = task;
    this.sequence = sequence;
    this.method = Method.of(task);
  }

  /** What is done before anything is weighed, or without weighing. */
  List<MethodLine> first() {
    return MethodLine.of(method.first(), scene.words());
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
      List<Row> rows = new ArrayList<>();
      Mass in = Mass.ZERO;
      Optional<Scale> scale = Optional.empty();
      for (WeighLine line : group.lines()) {
        if (line.apart() || !line.weighing().scale().equals(scale)) {
          in = Mass.ZERO;
        }
        String total = in.isZero() ? "" : total(group, in.plus(line.weighing().target()), line);
        rows.add(row(line, weighed, line.path().equals(next), total));
        in = line.apart() ? Mass.ZERO : in.plus(line.weighing().target());
        scale = line.weighing().scale();
      }
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

  /**
   * Only a vessel into which everything is weighed as it is can be read without taring, and only as
   * long as it stays on its scale: on another one it is tared, and from there on it counts anew.
   */
  private String total(WeighGroup group, Mass in, WeighLine line) {
    boolean plain =
        group.lines().stream()
            .allMatch(
                one ->
                    one.counted().isEmpty()
                        && one.weighing().dilution().isEmpty()
                        && one.weighing().parts() == 1);
    if (!plain || line.apart()) {
      return "";
    }
    int places = Math.max(0, words.figure(line).fraction().length() - 1);
    return scene.words().say("wall.total", Exact.plain(in.grams(), places));
  }

  private List<Which> which(WeighLine line) {
    List<Which> names = new ArrayList<>();
    names.add(new Which(words.figure(line).name(), Which.OWN));
    for (int i = 0; i < line.lookAlikes().size(); i++) {
      names.add(new Which(scene.words().text(line.lookAlikes().get(i)), i + 1));
    }
    return names.stream().sorted().toList();
  }

  private Row row(WeighLine line, SortedMap<String, Mass> weighed, boolean next, String total) {
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
    boolean done = in.isPresent() && more.isEmpty();
    boolean asks =
        !done
            && !line.lookAlikes().isEmpty()
            && !tub.isRight(line)
            && (next || tub.isOf(line))
            && !scene.isOver(task);
    return new Row(
        line.path(),
        (more.isPresent() ? "+" : "") + figure.whole(),
        figure.fraction(),
        figure.unit(),
        figure.name(),
        figure.scale(),
        figure.beside(),
        words.heed(line).orElse(""),
        notes,
        more.isPresent() ? "" : total,
        asks ? which(line) : List.of(),
        tub.wrong(line)
            .map(number -> scene.words().text(line.lookAlikes().get(number - 1)))
            .orElse(""),
        tub.isRight(line),
        done ? Place.DONE : place,
        sequence.getAsLong(),
        method.joined().contains(line.path()),
        MethodLine.of(method.below(line), scene.words()));
  }
}
