package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.measure.Amount;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.LiveBaths;
import halfgram.technique.bath.SphereBath;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The baths of the day: how many of the drops planned for each are still to come.
 *
 * <p>Rule. The drops of a run go to its baths in turn. As far as a run has come is told by its
 * ticks alone: all of it when its drop is done; else the pieces somebody entered as part done, or
 * the pieces before the last bath somebody made fresh.
 */
final class BathRows {
  private static final int BAR = 8;
  private static final int STEP = 10;

  /**
   * One bath.
   *
   * @param contains what its pieces leave in it
   * @param then when it is renewed and why; empty for one that lasts
   * @param inside when pieces in it are to be lifted
   * @param href its life, within the kitchen
   * @param bars one for each drop still to come, from the bottom
   */
  record Row(
      String label,
      String formula,
      String serves,
      String contains,
      long left,
      long planned,
      String then,
      List<String> inside,
      String href,
      int height,
      List<Integer> bars) {
    public boolean isOver() {
      return left == 0;
    }

    /** What of the drawing is seen. */
    public String box() {
      return "0 0 48 " + (height + 8);
    }

    /** The pan, open at the top. */
    public String pan() {
      return "M3 0V" + (height + 5) + "H45V0";
    }
  }

  private final Scene scene;
  private final BathBoard board;
  private final Messages words;

  BathRows(Scene scene, BathBoard board) {
    this.scene = scene;
    this.board = board;
    this.words = scene.words();
  }

  List<Row> list() {
    List<Row> rows = new ArrayList<>();
    for (PrepSheet.BathSheet sheet : scene.inForce().sheet().baths()) {
      if (sheet.day().equals(scene.day())) {
        rows.addAll(rows(sheet));
      }
    }
    return rows;
  }

  private List<Row> rows(PrepSheet.BathSheet sheet) {
    Map<String, Long> planned = new LinkedHashMap<>();
    Map<String, Long> done = new LinkedHashMap<>();
    boolean here = false;
    for (PrepSheet.BathRun run : scene.inForce().sheet().runs()) {
      boolean listed =
          sheet.answer().uses().stream().anyMatch(use -> use.runs().contains(run.make().id()));
      if (listed) {
        if (!countEntries(sheet, run, planned, done)) {
          count(sheet.answer(), run, planned, done);
        }
        here |= dropTask(run).filter(task -> scene.isHere(task.station())).isPresent();
      }
    }
    if (!here) {
      return List.of();
    }
    List<String> labels = new ArrayList<>();
    basin(sheet).ifPresent(basin -> labels.addAll(basin.labels()));
    planned.keySet().stream().filter(label -> !labels.contains(label)).forEach(labels::add);
    return labels.stream()
        .filter(planned::containsKey)
        .map(
            label ->
                row(sheet, label, planned.getOrDefault(label, 0L), done.getOrDefault(label, 0L)))
        .toList();
  }

  private Optional<BathBoard.Basin> basin(PrepSheet.BathSheet sheet) {
    return board.find(sheet.formula());
  }

  /** Adds the drops that were entered and those still to come; false when none was entered. */
  private boolean countEntries(
      PrepSheet.BathSheet sheet,
      PrepSheet.BathRun run,
      Map<String, Long> planned,
      Map<String, Long> done) {
    String id = run.make().id();
    Optional<LiveBaths> live = basin(sheet).map(BathBoard.Basin::live);
    List<LiveBaths.Drop> drops = live.map(of -> of.dropsOf(id)).orElse(List.of());
    if (live.isEmpty() || drops.isEmpty()) {
      return false;
    }
    for (LiveBaths.Drop drop : drops) {
      planned.merge(drop.label(), 1L, Long::sum);
      done.merge(drop.label(), 1L, Long::sum);
    }
    boolean open = dropTask(run).filter(task -> !scene.isOver(task)).isPresent();
    if (open) {
      live.get()
          .coming(live.get().findRun(id).orElseThrow(), sheet.answer(), scene.now())
          .forEach((label, more) -> planned.merge(label, more, Long::sum));
    }
    return true;
  }

  /** Adds the drops of a run to the baths they go into. */
  private void count(
      BathDay.Answer answer,
      PrepSheet.BathRun run,
      Map<String, Long> planned,
      Map<String, Long> done) {
    SphereBath bath = run.bath();
    long pieces = run.make().scaled().formed();
    long out = piecesDone(answer, run, pieces);
    List<String> turns = turns(answer, run);
    for (int drop = 0; drop < turns.size(); drop++) {
      planned.merge(turns.get(drop), 1L, Long::sum);
      if ((drop + 1L) * bath.perDrop() <= out || out >= pieces) {
        done.merge(turns.get(drop), 1L, Long::sum);
      }
    }
  }

  /** The bath of each drop of a run, as planned. */
  static List<String> turns(BathDay.Answer answer, PrepSheet.BathRun run) {
    SphereBath bath = run.bath();
    List<BathDay.Change> changes =
        answer.changes().stream().filter(one -> one.run().equals(run.make().id())).toList();
    List<String> taken = answer.begin(run.make().id(), (int) bath.values().number("baths"));
    List<String> turns = new ArrayList<>();
    for (long drop = 0; drop < bath.drops(run.make().scaled().formed()); drop++) {
      int slot = (int) (drop % taken.size());
      for (BathDay.Change change : changes) {
        if (change.afterDrop() == drop && change.old().equals(taken.get(slot))) {
          taken.set(slot, change.fresh());
        }
      }
      turns.add(taken.get(slot));
    }
    return turns;
  }

  private long piecesDone(BathDay.Answer answer, PrepSheet.BathRun run, long pieces) {
    TaskProgress progress = dropTask(run).map(scene::progress).orElse(TaskProgress.NONE);
    if (progress.state() == TaskState.DONE) {
      return pieces;
    }
    long said =
        progress
            .amount()
            .filter(amount -> amount.dimension() == halfgram.measure.Dimension.COUNT)
            .map(Amount::pieces)
            .orElse(0L);
    long renewed =
        answer.changes().stream()
            .filter(change -> change.run().equals(run.make().id()))
            .filter(change -> isDone(run, change))
            .map(BathDay.Change::pieces)
            .max(Comparator.naturalOrder())
            .orElse(0L);
    return Math.min(pieces, Math.max(said, renewed));
  }

  private boolean isDone(PrepSheet.BathRun run, BathDay.Change change) {
    return scene.inForce().sheet().tasks().stream()
        .filter(task -> task.make().id().equals(run.make().id()))
        .filter(task -> task.id().endsWith("/bath-" + change.fresh()))
        .anyMatch(scene::isDone);
  }

  private Optional<Task> dropTask(PrepSheet.BathRun run) {
    String step = run.make().version().dropping().map(use -> use.step()).orElse("");
    return Optional.ofNullable(scene.byId().get(run.make().id() + "/" + step));
  }

  private Row row(PrepSheet.BathSheet sheet, String label, long planned, long done) {
    Set<String> runs = new LinkedHashSet<>();
    sheet.answer().uses().stream()
        .filter(use -> use.label().equals(label))
        .forEach(use -> runs.addAll(use.runs()));
    Optional<LiveBaths.Bath> bath = basin(sheet).flatMap(of -> of.live().findBath(label));
    bath.ifPresent(of -> runs.addAll(of.runs()));
    Set<String> users = new LinkedHashSet<>();
    Set<String> carried = new java.util.TreeSet<>();
    bath.ifPresent(of -> carried.addAll(of.carries()));
    for (String run : runs) {
      users.add(scene.names().user(run));
      scene.inForce().sheet().tasks().stream()
          .filter(task -> task.make().id().equals(run))
          .forEach(task -> carried.addAll(task.allergens()));
    }
    long left = planned - done;
    List<Integer> bars = new ArrayList<>();
    int height = (int) planned * STEP;
    for (int bar = 1; bar <= left; bar++) {
      bars.add(height - bar * STEP + STEP - BAR);
    }
    return new Row(
        label,
        scene.names().componentName(halfgram.formula.ComponentRef.of(sheet.formula())),
        String.join(", ", users),
        scene.names().contains(carried),
        left,
        planned,
        bath.isPresent() ? ended(bath.get()) : renewal(sheet, label),
        in(sheet, label),
        BathBoard.href(scene.day(), sheet.formula(), label),
        Math.max(STEP, height),
        bars);
  }

  /** What took its place; empty while it is in use. */
  private String ended(LiveBaths.Bath bath) {
    return bath.ended()
        .map(change -> words.say("bath.gone", scene.time(change.at()), change.fresh().orElse("")))
        .orElse("");
  }

  private List<String> in(PrepSheet.BathSheet sheet, String label) {
    return basin(sheet).stream()
        .flatMap(basin -> basin.live().dropsInto(label).stream())
        .filter(LiveBaths.Drop::isIn)
        .map(drop -> words.say("bath.lift-at", drop.number(), AtBaths.seconds(scene, drop.due())))
        .toList();
  }

  private String renewal(PrepSheet.BathSheet sheet, String label) {
    return sheet.answer().changes().stream()
        .filter(change -> change.old().equals(label))
        .map(this::renewal)
        .findFirst()
        .orElse("");
  }

  /** When it was planned for a time that is over, that it comes, and not when. */
  private String renewal(BathDay.Change change) {
    String why = words.say(change.rule().key());
    return change.at().isBefore(scene.now())
        ? words.say("bath.then", change.fresh(), why)
        : words.say("wall.bath-then", change.fresh(), scene.time(change.at()), why);
  }
}
