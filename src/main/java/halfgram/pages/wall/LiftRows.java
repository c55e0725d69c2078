package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.timer.Timer;
import halfgram.technique.bath.LiveBaths;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Pieces that are in a bath, as timers: each rings when it is to be lifted, until it is. */
final class LiftRows {
  /** How the names of such timers begin. */
  static final String NAME = "lift/";

  private final Scene scene;
  private final BathBoard board;
  private final Optional<Task> inHand;

  LiftRows(Scene scene, BathBoard board, Optional<Task> inHand) {
    this.scene = scene;
    this.board = board;
    this.inHand = inHand;
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
    rows.sort(Comparator.comparing(TimerRows.Row::until));
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
