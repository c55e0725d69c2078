package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Makes a first plan, block by block, and betters it: at first, and as long as something has no
 * place, some blocks are taken out and put back in another order; then a few jobs look for better
 * places together ({@link Refit}). What is worse is kept now and then, ever more seldom.
 *
 * <p>Sources: P. Shaw, "Using constraint programming and local search methods to solve vehicle
 * routing problems", CP-98 (taking out what is related); G. Schrimpf et al., Journal of
 * Computational Physics 159 (2000) 139 (ruin and recreate); S. Kirkpatrick, C. D. Gelatt, M. P.
 * Vecchi, Science 220 (1983) 671 (annealing).
 */
final class Search {
  private static final int SLICE = 500;
  private static final int PUSHED = 6;

  /** In the first of so many parts of a search whole blocks are put back in another order. */
  private static final int PARTS = 16;

  /** While something is late, in the first of so many. */
  private static final int PARTS_LATE = 2;

  /** Rounds between two looks at whether something is late. */
  private static final int LATE_LOOK = 32;

  private static final int ROUNDS = 30;
  private static final double HEAT = 0.02;
  private static final double LEAST_HEAT = 8;
  private static final double MOST_HEAT = 40;
  private static final double COLD = 0.3;

  private final Layout layout;
  private final Blocks blocks;
  private final Costs costs;
  private final Grid grid;
  private final Washing washing;
  private final Insertion insertion;
  private final Ruin ruin;
  private final Polish polish;
  private final Refit refit;

  /** Blocks of which something can move. */
  private final int[] movable;

  private final SplittableRandom random;

  private final int[] bestStart;
  private final int[][] bestCooks;
  private final int[][] bestUnits;
  private long best = Long.MAX_VALUE;
  private int done;
  private boolean cut;

  /** Blocks touched in this round, with where their jobs were. */
  private final int[] touched;

  private int touchedCount;
  private final boolean[] isTouched;
  private final int[] oldStart;
  private final int[][] oldCooks;
  private final int[][] oldUnits;

  Search(Layout layout, Blocks blocks, long seed) {
    this.layout = layout;
    this.blocks = blocks;
    costs = new Costs(layout);
    grid = new Grid(layout);
    random = new SplittableRandom(seed);
    washing = new Washing(grid);
    insertion = new Insertion(grid, blocks, costs, washing, random);
    ruin = new Ruin(grid, blocks, costs, random);
    polish = new Polish(grid, costs, washing, random);
    movable =
        IntStream.range(0, blocks.jobs.length)
            .filter(b -> !blocks.isFixed(b) && !blocks.isContradictory(b))
            .toArray();
    Handful few = new Handful(grid, blocks, costs, ruin, movable, random);
    refit = new Refit(grid, costs, washing, few, random);
    bestStart = new int[layout.size];
    bestCooks = new int[layout.size][];
    bestUnits = new int[layout.size][];
    touched = new int[blocks.jobs.length];
    isTouched = new boolean[blocks.jobs.length];
    oldStart = new int[layout.size];
    oldCooks = new int[layout.size][];
    oldUnits = new int[layout.size][];
  }

  Rota run(Budget budget) {
    first();
    keep(costs.of(grid));
    forget();
    complete();
    improve(budget);
    if (done > 0) {
      polishBest();
    }
    return rota();
  }

  /** What is fixed; what still fits where the plan in force has it; the rest in order. */
  private void first() {
    force(true);
    force(false);
    List<Integer> rest = new ArrayList<>();
    List<Integer> asBefore = new ArrayList<>();
    for (int b : blocks.order) {
      if (!grid.isPlaced(blocks.jobs[b])) {
        (isAsBefore(b) ? asBefore : rest).add(b);
      }
    }
    for (int b : asBefore) {
      if (!isCompleted(b)) {
        rest.add(b);
      }
    }
    while (!washing.isSettled()) {
      int b = blocks.of[washing.failing()];
      takeOut(b);
      rest.add(b);
    }
    insertion.patience(2);
    putIn(rest, 3 * rest.size());
    insertion.patience(1);
  }

  /** First what has its people, then what takes whoever is left. */
  private void force(boolean named) {
    for (int j = 0; j < layout.size; j++) {
      if (layout.isFixed(j) && named == layout.cooksBefore[j].length > 0) {
        grid.force(j);
      }
    }
  }

  /** Puts what the plan in force names of a block exactly where it was, if all of it fits there. */
  private boolean isAsBefore(int b) {
    List<Integer> put = new ArrayList<>();
    for (int j : blocks.jobs[b]) {
      if (layout.isFixed(j) || layout.before[j] < 0) {
        continue;
      }
      if (!isAsBeforeJob(j)) {
        put.forEach(grid::remove);
        return false;
      }
      put.add(j);
    }
    return !put.isEmpty();
  }

  /** Puts what it does not name as early after the others as can be. */
  private boolean isCompleted(int b) {
    for (int j : blocks.jobs[b]) {
      if (grid.start[j] < 0 && !isPutEarly(j)) {
        takeOut(b);
        return false;
      }
    }
    return true;
  }

  private boolean isAsBeforeJob(int j) {
    int t = layout.before[j];
    if (t < layout.head[j] || t + layout.length[j] > layout.slots || !grid.inLags(j, t)) {
      return false;
    }
    if (grid.isPutAsBefore(j)) {
      return true;
    }
    boolean fits = grid.fits(j, t);
    if (fits) {
      grid.place(j, t, random);
    }
    return fits;
  }

  private boolean isPutEarly(int j) {
    for (int t = layout.head[j]; t + layout.length[j] <= layout.slots; t++) {
      if (grid.inLags(j, t) && grid.fits(j, t)) {
        grid.place(j, t, random);
        return true;
      }
    }
    return false;
  }

  /**
   * Puts blocks in, one after the other. One that has no place between what is there pushes out the
   * blocks that come after it, or that a longest time ties to it, or what its cooks and machines do
   * about the time it wants; those then go in after it; and so on, a few times.
   */
  private void putIn(List<Integer> queue, int pushes) {
    int left = pushes;
    List<Integer> todo = new ArrayList<>(queue);
    while (!todo.isEmpty()) {
      int b = todo.remove(0);
      if (grid.isPlaced(blocks.jobs[b]) || insertion.insert(b) || left <= 0) {
        continue;
      }
      left--;
      List<Integer> out = ruin.inTheWay(b);
      out.forEach(this::takeOut);
      insertion.insert(b);
      todo.addAll(0, out);
    }
  }

  private void takeOut(int b) {
    touch(b);
    for (int j : blocks.jobs[b]) {
      if (!layout.isFixed(j) && grid.start[j] >= 0) {
        grid.remove(j);
      }
    }
  }

  private void touch(int b) {
    if (isTouched[b]) {
      return;
    }
    isTouched[b] = true;
    touched[touchedCount++] = b;
    for (int j : blocks.jobs[b]) {
      oldStart[j] = grid.start[j];
      oldCooks[j] = grid.cooks[j];
      oldUnits[j] = grid.units[j];
    }
  }

  private void forget() {
    for (int i = 0; i < touchedCount; i++) {
      isTouched[touched[i]] = false;
    }
    touchedCount = 0;
  }

  /** A first plan that leaves something out makes room for it, in a few rounds. */
  private void complete() {
    for (int i = 0; i < ROUNDS && movable.length > 0 && isIncomplete(best); i++) {
      long more = regroup(0, true);
      if (more != Refit.NONE) {
        keep(best + more);
      }
    }
  }

  private boolean isIncomplete(long cost) {
    return cost >= layout.day.prices().leftOut();
  }

  private void improve(Budget budget) {
    if (movable.length == 0 || budget.iterations() == 0) {
      return;
    }
    long now = best;
    double mild = Billing.of(layout, bestStart, bestCooks).mild();
    double hot = Math.min(MOST_HEAT, Math.max(HEAT * mild, LEAST_HEAT));
    boolean late = false;
    for (int i = 0; i < budget.iterations() && best > 0; i++) {
      if (i % SLICE == 0 && i > 0 && budget.stop().getAsBoolean()) {
        cut = true;
        break;
      }
      done++;
      double temperature = hot * StrictMath.pow(COLD / hot, (double) i / budget.iterations());
      // The most a plan may cost more and still be kept: annealing's chance, drawn beforehand.
      long allowed = (long) (-temperature * StrictMath.log(1 - random.nextDouble()));
      boolean incomplete = isIncomplete(now);
      late = i % LATE_LOOK == 0 ? isLate() : late;
      boolean byBlocks =
          incomplete ? i % 2 == 0 : i < budget.iterations() / (late ? PARTS_LATE : PARTS);
      long more = byBlocks ? regroup(allowed, incomplete) : refit.change(allowed);
      if (more != Refit.NONE) {
        now += more;
        if (now < best) {
          keep(now);
        }
      }
    }
  }

  private boolean isLate() {
    for (int j = 0; j < layout.size; j++) {
      if (grid.start[j] >= 0 && costs.late(j, grid.start[j]) > 0) {
        return true;
      }
    }
    return false;
  }

  /** Takes some blocks out and puts them back in another order; what the plan costs more. */
  private long regroup(long allowed, boolean incomplete) {
    long crew = costs.ofCrew(grid);
    List<Integer> out = ruin.choose(movable, incomplete);
    out.forEach(this::touch);
    out.forEach(this::takeOut);
    insertion.patience(incomplete ? 2 : 1);
    putIn(out, PUSHED + out.size());
    long more =
        costs.ofCrew(grid) - crew + touched(grid.start, grid.cooks) - touched(oldStart, oldCooks);
    boolean kept = more <= allowed && washing.isSettled();
    if (!kept) {
      putBack();
    }
    forget();
    return kept ? more : Refit.NONE;
  }

  /** What the blocks touched cost, with what waits between them and the rest. */
  private long touched(int[] start, int[][] cooks) {
    long sum = 0;
    for (int i = 0; i < touchedCount; i++) {
      for (int j : blocks.jobs[touched[i]]) {
        sum += costs.ofPlaced(j, start[j], cooks[j]);
        for (Between lag : layout.out[j]) {
          int to = isTouched[blocks.of[lag.to()]] ? start[lag.to()] : grid.start[lag.to()];
          sum += start[j] < 0 || to < 0 ? 0 : costs.ofLag(lag, start[j], to);
        }
        for (Between lag : layout.in[j]) {
          int from = grid.start[lag.from()];
          boolean counted = isTouched[blocks.of[lag.from()]];
          sum += counted || start[j] < 0 || from < 0 ? 0 : costs.ofLag(lag, from, start[j]);
        }
      }
    }
    return sum;
  }

  private void polishBest() {
    putBest();
    polish.all();
    long cost = costs.of(grid);
    if (cost < best) {
      keep(cost);
    }
  }

  private void putBest() {
    for (int j = 0; j < layout.size; j++) {
      if (!layout.isFixed(j) && grid.start[j] >= 0) {
        grid.remove(j);
      }
    }
    for (int j = 0; j < layout.size; j++) {
      if (!layout.isFixed(j) && bestStart[j] >= 0) {
        grid.put(j, bestStart[j], bestCooks[j], bestUnits[j]);
      }
    }
  }

  private void putBack() {
    for (int i = 0; i < touchedCount; i++) {
      for (int j : blocks.jobs[touched[i]]) {
        if (!layout.isFixed(j) && grid.start[j] >= 0) {
          grid.remove(j);
        }
      }
    }
    for (int i = 0; i < touchedCount; i++) {
      for (int j : blocks.jobs[touched[i]]) {
        if (!layout.isFixed(j) && oldStart[j] >= 0) {
          grid.put(j, oldStart[j], oldCooks[j], oldUnits[j]);
        }
      }
    }
  }

  private void keep(long cost) {
    best = cost;
    System.arraycopy(grid.start, 0, bestStart, 0, bestStart.length);
    System.arraycopy(grid.cooks, 0, bestCooks, 0, bestCooks.length);
    System.arraycopy(grid.units, 0, bestUnits, 0, bestUnits.length);
  }

  private Rota rota() {
    List<Optional<Rota.Place>> places = new ArrayList<>(layout.size);
    for (int j = 0; j < layout.size; j++) {
      places.add(
          bestStart[j] < 0
              ? Optional.empty()
              : Optional.of(
                  new Rota.Place(bestStart[j], boxed(bestCooks[j]), boxed(bestUnits[j]))));
    }
    putBest();
    Rota.Bill bill = Billing.of(layout, bestStart, bestCooks);
    return new Rota(places, washing.list(), bill, done, cut, layout.yielding);
  }

  private static List<Integer> boxed(int[] some) {
    return Arrays.stream(some).boxed().toList();
  }
}
