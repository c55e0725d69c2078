package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.timer.Timer;
import halfgram.technique.bath.LiveBaths;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Pieces that are in a bath, as timers: each rings when it is to be lifted, until it is. */
final class LiftRows {
  /** How the names of such timers begin. */
  static final String NAME = "lift/";

  /** How long after a day has begun pieces of the day before may still be in: no skin takes so. */
  private static final Duration OVER = Duration.ofHours(2);

  private final Scene scene;
  private final BathBoard board;
  private final Optional<Task> inHand;

  LiftRows(Scene scene, BathBoard board, Optional<Task> inHand) {
    this.scene = scene;
    this.board = board;
    this.inHand = inHand;
  }

  /** Whether pieces that went in on the day before may still be in. */
  static boolean isOverNight(Scene scene) {
    Instant start = scene.house().book().kitchen().clock().start(scene.day());
    return scene.now().isBefore(start.plus(OVER));
  }

  /** Whether it times a whole run of which the drops are entered: those have their own times. */
  boolean isEntered(Timer timer) {
    return timer.kind() == Timer.Kind.STANDS
        && runs()
            .filter(run -> BathBoard.task(run.planned()).equals(timer.task().id()))
            .anyMatch(run -> !run.drops().isEmpty());
  }

  /** A run with the drops that are entered of it. */
  private record AtBath(PrepSheet.BathRun planned, List<LiveBaths.Drop> drops) {}

  private Stream<AtBath> runs() {
    return board.basins().stream()
        .flatMap(
            basin ->
                basin.runs().stream()
                    .map(run -> new AtBath(run, basin.live().dropsOf(run.make().id()))));
  }

  /** Pieces that are in, by when to lift them; those in hand are counted down there. */
  List<TimerRows.Row> list() {
    List<TimerRows.Row> rows = new ArrayList<>();
    runs()
        .forEach(
            run ->
                Optional.ofNullable(scene.byId().get(BathBoard.task(run.planned())))
                    .filter(task -> scene.isHere(task.station()))
                    .filter(task -> inHand.filter(task::equals).isEmpty())
                    .ifPresent(
                        task ->
                            run.drops().stream()
                                .filter(LiveBaths.Drop::isIn)
                                .forEach(drop -> rows.add(lift(task, drop)))));
    return rows;
  }

  private TimerRows.Row lift(Task task, LiveBaths.Drop drop) {
    Duration left = Duration.between(scene.now(), drop.due());
    boolean runs = left.toMillis() > 0;
    return new TimerRows.Row(
        task.id(),
        NAME + drop.id(),
        runs ? "runs" : "rings",
        scene.names().title(task),
        scene.words().say("bath.lift-at", drop.number(), AtBaths.seconds(scene, drop.due())),
        drop.at().toEpochMilli(),
        drop.due().toEpochMilli(),
        drop.due().toEpochMilli(),
        runs ? scene.words().duration(left) : "",
        List.of(),
        "",
        0);
  }
}
