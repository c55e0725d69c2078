package halfgram.pages.wall;

import halfgram.prep.Task;
import halfgram.prep.timer.Holds;
import halfgram.prep.timer.Timer;
import halfgram.prep.timer.Timers;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The timers of a station: pieces in a bath to lift, then what rings, then what runs, the next
 * first. A lift rings until it is entered; in hand its bath counts it down itself.
 */
final class TimerRows {
  private static final List<Integer> LATER = List.of(2, 5, 10);

  /** What is shown at once; a run further away waits behind a press. */
  private static final Duration NEAR = Duration.ofHours(2);

  private static final int MOST = 3;

  /** How many pieces in baths are told apart at once. */
  private static final int MOST_LIFTS = 2;

  /**
   * One timer.
   *
   * @param task whose it is
   * @param look "runs", "rings", "over", "taste", "tasted", "bin"
   * @param what what it is about
   * @param sub what is up, or comes next
   * @param since as milliseconds
   * @param until what it counts to, as milliseconds
   * @param rings when it sounds next, as milliseconds; zero for one that does not
   * @param left the time left, in words; empty when it is up
   * @param laters minutes by which it can be put off
   * @param bin what is written down when it goes in the bin; empty for what does not
   */
  record Row(
      String task,
      String name,
      String look,
      String what,
      String sub,
      long since,
      long until,
      long rings,
      String left,
      List<Integer> laters,
      String bin,
      long sequence) {
    public boolean isRinging() {
      return rings > 0 && !isRunning();
    }

    public boolean isTaste() {
      return look.equals("taste");
    }

    public boolean isBin() {
      return look.equals("bin");
    }

    public boolean isRunning() {
      return look.equals("runs") || look.equals("tasted");
    }

    /** Whether there is time left to count. */
    public boolean isCounting() {
      return isRunning() || !left.isEmpty();
    }

    /** Whether only lifting ends it. */
    public boolean isLift() {
      return name.startsWith(LiftRows.NAME);
    }

    /** Whether a cook has set it, and may end it before its time. */
    public boolean isOwn() {
      return name.startsWith("own/");
    }
  }

  /** What stands at once, and what further away. */
  record Rows(List<Row> near, List<Row> far) {
    public boolean isEmpty() {
      return near.isEmpty() && far.isEmpty();
    }

    /** Those that are up behind the press: they are named on it. */
    public List<String> farUp() {
      return far.stream().filter(row -> !row.isRunning()).map(Row::what).distinct().toList();
    }
  }

  private final Scene scene;
  private final List<LiftRows> lifts;
  private final LongSupplier sequence;

  /**
   * @param lifts of the day, and of the day before while pieces of it may still be in
   */
  TimerRows(Scene scene, List<LiftRows> lifts, LongSupplier sequence) {
    this.scene = scene;
    this.lifts = lifts;
    this.sequence = sequence;
  }

  Rows list() {
    List<Timer> all =
        Timers.list(scene.inForce().sheet().tasks(), scene.inForce().progress()).stream()
            .filter(this::isHere)
            .filter(timer -> lifts.stream().noneMatch(of -> of.isEntered(timer)))
            .filter(timer -> timer.state(scene.now()) != Timer.State.OVER)
            .sorted(
                Comparator.comparing((Timer timer) -> !isUp(timer))
                    .thenComparing(timer -> !sounds(timer))
                    .thenComparing(this::moment))
            .toList();
    Optional<Timer> first = first(all.stream().filter(this::isUp).toList());
    List<Row> in =
        lifts.stream()
            .flatMap(of -> of.list().stream())
            .sorted(Comparator.comparing(Row::until))
            .toList();
    int atOnce = Math.min(MOST_LIFTS, in.size());
    List<Row> near = new ArrayList<>(in.subList(0, atOnce));
    List<Row> far = new ArrayList<>(in.subList(atOnce, in.size()));
    first.ifPresent(timer -> near.add(row(timer)));
    for (Timer timer : all) {
      if (first.filter(timer::equals).isEmpty()) {
        boolean soon = !isUp(timer) && !moment(timer).isAfter(scene.now().plus(NEAR));
        (soon && near.size() < MOST ? near : far).add(row(timer));
      }
    }
    return new Rows(near, far);
  }

  /**
   * Of those that are up the one that stands at once: what time has run out for before what waited
   * too long. One alone, so that the task in hand keeps its room; when it is answered the next has
   * its place.
   */
  private Optional<Timer> first(List<Timer> up) {
    return up.stream()
        .min(
            Comparator.comparing((Timer timer) -> !sounds(timer))
                .thenComparing(timer -> timer.kind() == Timer.Kind.HOLD));
  }

  private boolean sounds(Timer timer) {
    return timer.rings().filter(at -> !at.isAfter(scene.now())).isPresent();
  }

  private boolean isHere(Timer timer) {
    return Stream.concat(Stream.of(timer.task()), timer.then().stream())
        .anyMatch(task -> scene.isHere(task.station()));
  }

  private boolean isUp(Timer timer) {
    Timer.State state = timer.state(scene.now());
    return state != Timer.State.RUNS && state != Timer.State.TASTED;
  }

  /** What it counts to: its end, when one that was put off rings again, when a taste ends. */
  private Instant moment(Timer timer) {
    if (timer.state(scene.now()) == Timer.State.TASTED) {
      return timer.tasted().orElseThrow().until();
    }
    return timer
        .rings()
        .filter(at -> at.isAfter(timer.due()) && timer.kind() != Timer.Kind.HOLD)
        .orElse(timer.due());
  }

  private Row row(Timer timer) {
    Instant until = moment(timer);
    Timer.State state = timer.state(scene.now());
    Duration left = Duration.between(scene.now(), until);
    return new Row(
        timer.task().id(),
        timer.name(),
        state.name().toLowerCase(Locale.ROOT),
        timer.said().orElseGet(() -> scene.names().title(timer.task())),
        sub(timer, state),
        (state == Timer.State.TASTED ? timer.tasted().orElseThrow().at() : timer.since())
            .toEpochMilli(),
        until.toEpochMilli(),
        timer.rings().map(Instant::toEpochMilli).orElse(0L),
        left.isNegative() || left.isZero() ? "" : scene.words().duration(left),
        timer.laters(scene.now(), LATER),
        state == Timer.State.BIN || state == Timer.State.TASTE
            ? scene.words().say("timer.bin-note", scene.time(timer.due()), timer.reason().source())
            : "",
        sequence.getAsLong());
  }

  private String sub(Timer timer, Timer.State state) {
    String due = scene.time(timer.due());
    String then =
        timer.then().stream().map(this::name).distinct().collect(Collectors.joining(", "));
    return switch (timer.kind()) {
      case STANDS ->
          state == Timer.State.RUNS
              ? scene.words().say("timer.stands", due)
              : scene.words().say("timer.stood");
      case RESTS ->
          state == Timer.State.RUNS
              ? scene.words().say("timer.rests", due, then)
              : scene.words().say("timer.rested", then);
      case HOLD ->
          switch (state) {
            case BIN -> scene.words().say("timer.bin", due);
            case TASTE ->
                timer
                    .tasted()
                    .map(taste -> said("timer.taste-again", taste))
                    .orElseGet(() -> scene.words().say("timer.taste", due));
            case TASTED -> said("timer.tasted-until", timer.tasted().orElseThrow());
            default -> scene.words().say("timer.hold", then, due);
          };
      case OWN -> scene.words().say("timer.own", due);
    };
  }

  /** "tasted 16:05 by Ines, good until 16:35". */
  private String said(String key, Holds.Taste taste) {
    return scene
        .words()
        .say(key, scene.time(taste.at()), scene.person(taste.cook()), scene.time(taste.until()));
  }

  /** What comes next, without the name when it is the same thing's. */
  private String name(Task task) {
    return scene.names().title(task);
  }
}
