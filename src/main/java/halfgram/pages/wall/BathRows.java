package halfgram.pages.wall;

import halfgram.measure.Amount;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.technique.bath.BathDay;
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
  private final Messages words;

  BathRows(Scene scene) {
    this.scene = scene;
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
        count(sheet.answer(), run, planned, done);
        here |= dropTask(run).filter(task -> scene.isHere(task.station())).isPresent();
      }
    }
    return here
        ? sheet.answer().uses().stream()
            .filter(use -> planned.containsKey(use.label()))
            .map(
                use ->
                    row(
                        sheet,
                        use,
                        planned.getOrDefault(use.label(), 0L),
                        done.getOrDefault(use.label(), 0L)))
            .toList()
        : List.of();
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
    List<BathDay.Change> changes =
        answer.changes().stream().filter(one -> one.run().equals(run.make().id())).toList();
    List<String> taken = begin(answer, run, changes, (int) bath.values().number("baths"));
    for (long drop = 0; drop < bath.drops(pieces); drop++) {
      int slot = (int) (drop % taken.size());
      for (BathDay.Change change : changes) {
        if (change.afterDrop() == drop && change.old().equals(taken.get(slot))) {
          taken.set(slot, change.fresh());
        }
      }
      planned.merge(taken.get(slot), 1L, Long::sum);
      if ((drop + 1) * bath.perDrop() <= out || out >= pieces) {
        done.merge(taken.get(slot), 1L, Long::sum);
      }
    }
  }

  /** The baths a run begins with, worn ones that it renews at once included. */
  private static List<String> begin(
      BathDay.Answer answer, PrepSheet.BathRun run, List<BathDay.Change> changes, int turns) {
    Set<String> fresh = new LinkedHashSet<>();
    changes.forEach(change -> fresh.add(change.fresh()));
    Set<String> first = new LinkedHashSet<>();
    changes.stream()
        .filter(change -> change.afterDrop() < turns && !fresh.contains(change.old()))
        .forEach(change -> first.add(change.old()));
    answer.uses().stream()
        .filter(use -> use.runs().contains(run.make().id()) && !fresh.contains(use.label()))
        .forEach(use -> first.add(use.label()));
    List<String> taken = new ArrayList<>(first);
    return taken.isEmpty()
        ? new ArrayList<>(List.of(answer.uses().get(0).label()))
        : new ArrayList<>(taken.subList(0, Math.min(turns, taken.size())));
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
    String step = run.make().version().technique().map(use -> use.step()).orElse("");
    return Optional.ofNullable(scene.byId().get(run.make().id() + "/" + step));
  }

  private Row row(PrepSheet.BathSheet sheet, BathDay.Use use, long planned, long done) {
    Set<String> users = new LinkedHashSet<>();
    Set<String> carried = new java.util.TreeSet<>();
    for (String run : use.runs()) {
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
        use.label(),
        scene.names().componentName(halfgram.formula.ComponentRef.of(sheet.formula())),
        String.join(", ", users),
        scene.names().contains(carried),
        left,
        planned,
        renewal(sheet, use),
        Math.max(STEP, height),
        bars);
  }

  private String renewal(PrepSheet.BathSheet sheet, BathDay.Use use) {
    return sheet.answer().changes().stream()
        .filter(change -> change.old().equals(use.label()))
        .map(
            change ->
                words.say(
                    "wall.bath-then",
                    change.fresh(),
                    scene.time(change.at()),
                    words.say(change.rule().key())))
        .findFirst()
        .orElse("");
  }
}
