package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/**
 * Makes a first plan, block by block, and betters it: some blocks are taken out and put back in
 * another order; what is worse is kept now and then, ever more seldom.
 *
 * <p>Sources: P. Shaw, "Using constraint programming and local search methods to solve vehicle
 * routing problems", CP-98 (taking out what is related); G. Schrimpf et al., Journal of
 * Computational Physics 159 (2000) 139 (ruin and recreate); S. Kirkpatrick, C. D. Gelatt, M. P.
 * Vecchi, Science 220 (1983) 671 (annealing).
 */
final class Search {
  private static final int SLICE = 500;
  private static final int MOST_OUT = Integer.getInteger("mo",5);
  private static final int PUSHED = 6;
  private static final double HEAT = 0.02;
  private static final double COLD = 0.01;

  private final Layout layout;
  private final Blocks blocks;
  private final Costs costs;
  private final Grid grid;
  private final Insertion insertion;
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

  /** Slots of hands and of machines that a block takes. */
  private final int[] work;

  Search(Layout layout, Blocks blocks, long seed) {
    this.layout = layout;
    this.blocks = blocks;
    costs = new Costs(layout);
    grid = new Grid(layout);
    random = new SplittableRandom(seed);
    insertion = new Insertion(grid, blocks, costs, random);
    bestStart = new int[layout.size];
    bestCooks = new int[layout.size][];
    bestUnits = new int[layout.size][];
    touched = new int[blocks.jobs.length];
    isTouched = new boolean[blocks.jobs.length];
    oldStart = new int[layout.size];
    oldCooks = new int[layout.size][];
    oldUnits = new int[layout.size][];
    work = new int[blocks.jobs.length];
    for (int j = 0; j < layout.size; j++) {
      work[blocks.of[j]] += layout.hands[j] * layout.handsOn[j] + layout.length[j] - layout.handsOn[j];
    }
  }

  Rota run(Budget budget) {
    first();
    keep(costs.of(grid));
    improve(budget);
    if (done > 0) {
      polishBest();
    }
    return rota();
  }

  /** What is fixed; what still fits where the plan in force has it; the rest in order. */
  private void first() {
    for (int j = 0; j < layout.size; j++) {
      if (layout.isFixed(j)) {
        grid.force(j);
      }
    }
    List<Integer> rest = new ArrayList<>();
    for (int b : blocks.order) {
      if (isPlaced(b)) {
        continue;
      }
      if (!isAsBefore(b)) {
        rest.add(b);
      }
    }
    insertion.patience(2);
    putIn(rest, 3 * rest.size());
    insertion.patience(1);
  }

  /** Puts a block exactly where it was, if everything of it still fits there. */
  private boolean isAsBefore(int b) {
    List<Integer> put = new ArrayList<>();
    for (int j : blocks.jobs[b]) {
      if (layout.isFixed(j)) {
        continue;
      }
      int t = layout.before[j];
      if (t < layout.head[j] || t < 0 || !inLags(j, t) || !grid.fits(j, t)) {
        put.forEach(grid::remove);
        return false;
      }
      grid.place(j, t, random);
      put.add(j);
    }
    return true;
  }

  private boolean inLags(int j, int t) {
    for (Between lag : layout.in[j]) {
      int from = grid.start[lag.from()];
      if (from >= 0 && !holds(lag, from, t)) {
        return false;
      }
    }
    for (Between lag : layout.out[j]) {
      int to = grid.start[lag.to()];
      if (to >= 0 && !holds(lag, t, to)) {
        return false;
      }
    }
    return true;
  }

  private boolean holds(Between lag, int from, int to) {
    int apart = to - from - layout.length[lag.from()];
    return apart >= lag.min() && !(layout.isHard(lag) && apart > lag.max().getAsInt());
  }

  private boolean isPlaced(int b) {
    for (int j : blocks.jobs[b]) {
      if (grid.start[j] < 0) {
        return false;
      }
    }
    return true;
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
      if (isPlaced(b) || insertion.insert(b) || left <= 0) {
        continue;
      }
      left--;
      List<Integer> out = after(b);
      if (out.isEmpty()) {
        out = earlier(b);
      }
      if (out.isEmpty()) {
        out = inTheWay(b);
      }
      out.forEach(this::takeOut);
      insertion.insert(b);
      todo.addAll(0, out);
    }
  }

  /** Blocks with whose cooks and machines there would be room for one, most likely. */
  private List<Integer> inTheWay(int b) {
    List<Integer> out = new ArrayList<>(List.of(b));
    rivals(out, b, MOST_OUT);
    out.remove(0);
    out.removeIf(other -> !isAnyPlaced(other));
    return out;
  }

  /** Blocks placed that wait for one, and whatever waits for those. */
  private List<Integer> after(int b) {
    return reached(b, true);
  }

  /** Blocks placed that a longest time ties to what comes after. */
  private List<Integer> earlier(int b) {
    List<Integer> found = new ArrayList<>();
    for (int j : blocks.jobs[b]) {
      for (Between lag : layout.in[j]) {
        int other = blocks.of[lag.from()];
        if (layout.isHard(lag)
            && other != b
            && grid.start[lag.from()] >= 0
            && !found.contains(other)
            && !isAllFixed(other)) {
          found.add(other);
        }
      }
    }
    return found;
  }

  private List<Integer> reached(int b, boolean forward) {
    List<Integer> found = new ArrayList<>();
    List<Integer> todo = new ArrayList<>(List.of(b));
    while (!todo.isEmpty()) {
      int at = todo.remove(todo.size() - 1);
      for (int j : blocks.jobs[at]) {
        for (Between lag : forward ? layout.out[j] : layout.in[j]) {
          int other = blocks.of[forward ? lag.to() : lag.from()];
          if (other != at
              && other != b
              && !found.contains(other)
              && !isAllFixed(other)
              && isAnyPlaced(other)) {
            found.add(other);
            todo.add(other);
          }
        }
      }
    }
    return found;
  }

  private boolean isAllFixed(int b) {
    for (int j : blocks.jobs[b]) {
      if (!layout.isFixed(j)) {
        return false;
      }
    }
    return true;
  }

  private boolean isAnyPlaced(int b) {
    for (int j : blocks.jobs[b]) {
      if (!layout.isFixed(j) && grid.start[j] >= 0) {
        return true;
      }
    }
    return false;
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

  private void improve(Budget budget) {
    forget();
    int[] movable =
        java.util.stream.IntStream.range(0, blocks.jobs.length)
            .filter(b -> !isAllFixed(b) && !blocks.isContradictory(b))
            .toArray();
    if (movable.length == 0) {
      return;
    }
    long now = best;
    long crewNow = costs.ofCrew(grid);
    double hot = Math.max(HEAT * rota().bill().mild(), 1e-9);
    for (int i = 0; i < budget.iterations() && best > 0; i++) {
      if (i % SLICE == 0 && i > 0 && budget.stop().getAsBoolean()) {
        cut = true;
        break;
      }
      done++;
      double temperature = hot * StrictMath.pow(COLD, (double) i / budget.iterations());
      List<Integer> out = choose(movable, now >= layout.day.prices().leftOut());
      out.forEach(this::touch);
      out.forEach(this::takeOut);
      insertion.patience(now >= layout.day.prices().leftOut() ? 2 : 1);
      putIn(out, PUSHED + out.size());
      long crew = costs.ofCrew(grid);
      long cost = now - crewNow + crew + touched(grid.start, grid.cooks) - touched(oldStart, oldCooks);
      if (cost <= now || random.nextDouble() < StrictMath.exp((now - cost) / temperature)) {
        now = cost;
        crewNow = crew;
        if (cost < best) {
          keep(cost);
        }
      } else {
        putBack();
      }
      forget();
    }
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
    polish();
    long cost = costs.of(grid);
    if (cost < best) {
      keep(cost);
    }
  }

  /** Moves single jobs to where they cost least, as long as one gains by it. */
  private void polish() {
    boolean moved = true;
    for (int round = 0; moved && round < ROUNDS; round++) {
      moved = false;
      for (int j = layout.size - 1; j >= 0; j--) {
        if (!layout.isFixed(j) && grid.start[j] >= 0) {
          moved |= polish(j);
        }
      }
    }
  }

  private boolean polish(int j) {
    int was = grid.start[j];
    long before = costs.around(grid, j, was);
    if (before == 0) {
      return false;
    }
    int[] people = grid.cooks[j];
    int[] machines = grid.units[j];
    long crew = costs.ofCrew(grid);
    long own = before + costs.ofPeople(j, people);
    grid.remove(j);
    int best = was;
    long least = before;
    for (int t = layout.head[j]; t + layout.length[j] <= layout.slots; t++) {
      if (t != was && inLags(j, t)) {
        long cost = costs.around(grid, j, t);
        if (cost < least && grid.fits(j, t)) {
          best = t;
          least = cost;
        }
      }
    }
    if (best != was) {
      grid.place(j, best, random);
      long now = least + costs.ofPeople(j, grid.cooks[j]) + costs.ofCrew(grid);
      if (now < own + crew) {
        return true;
      }
      grid.remove(j);
    }
    grid.put(j, was, people, machines);
    return false;
  }

  private static final int ROUNDS = 8;

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

  /**
   * Some blocks to take out: one by its cost or by chance; with it what is tied to it by lags, or
   * what its cooks and machines do about the time it wants, so that room comes up where it is used.
   */
  private List<Integer> choose(int[] movable, boolean incomplete) {
    int most = 1 + random.nextInt(MOST_OUT);
    int seed = seed(movable, incomplete);
    List<Integer> out = new ArrayList<>(List.of(seed));
    int kind = random.nextInt(4);
    if (kind == 0 || kind == 1 && random.nextBoolean()) {
      chain(out, most);
    } else if (kind == 1) {
      int centre = middle(seed);
      for (int i = 0; i < 2 * most && out.size() < most; i++) {
        add(out, near(movable, centre));
      }
    } else {
      if (random.nextInt(3) == 0) {
        chain(out, 1 + most / 2);
      }
      int from = random.nextInt(out.size());
      rivals(out, out.get(from), most);
    }
    sort(out);
    return out;
  }

  private void add(List<Integer> out, int b) {
    if (b >= 0 && !out.contains(b) && !isAllFixed(b)) {
      out.add(b);
    }
  }

  private void chain(List<Integer> out, int most) {
    for (int i = 0; i < 3 * most && out.size() < most; i++) {
      add(out, linked(out));
    }
  }

  /** What the cooks or machines that a block needs do about the time it wants. */
  private void rivals(List<Integer> out, int b, int most) {
    int[] jobs = blocks.jobs[b];
    int j = jobs[random.nextInt(jobs.length)];
    int wanted = layout.target[j] - layout.length[j];
    int at = grid.start[j] < 0 || random.nextInt(3) == 0 ? wanted : grid.start[j];
    int times = 1 + random.nextInt(2);
    for (int i = 0; i < times; i++) {
      if (layout.hands[j] > 0 && (layout.uses[j].length == 0 || random.nextBoolean())) {
        int cook = layout.able[j][random.nextInt(layout.able[j].length)];
        nearest(out, cook, -1, at, out.size() + 1 + random.nextInt(most));
      } else if (layout.uses[j].length > 0) {
        int machine = layout.uses[j][random.nextInt(layout.uses[j].length)].machine();
        nearest(out, -1, machine, at, out.size() + 1 + random.nextInt(most));
      }
    }
  }

  /** Adds the blocks with the jobs of a cook, or on a machine, that are nearest to a slot. */
  private void nearest(List<Integer> out, int cook, int machine, int at, int until) {
    while (out.size() < until) {
      int best = -1;
      int distance = Integer.MAX_VALUE;
      for (int j = 0; j < layout.size; j++) {
        int t = grid.start[j];
        if (t < 0 || layout.isFixed(j)) {
          continue;
        }
        int off = t > at ? t - at : Math.max(0, at - t - layout.length[j]);
        if (off < distance
            && (cook >= 0 ? does(cook, j) : uses(machine, j))
            && !out.contains(blocks.of[j])) {
          distance = off;
          best = blocks.of[j];
        }
      }
      if (best < 0) {
        return;
      }
      out.add(best);
    }
  }

  private boolean does(int cook, int j) {
    for (int c : grid.cooks[j]) {
      if (c == cook) {
        return true;
      }
    }
    return false;
  }

  private boolean uses(int machine, int j) {
    for (Job.Use use : layout.uses[j]) {
      if (use.machine() == machine) {
        return true;
      }
    }
    return false;
  }

  private int seed(int[] movable, boolean incomplete) {
    if (incomplete && random.nextBoolean()) {
      int from = random.nextInt(movable.length);
      for (int i = 0; i < movable.length; i++) {
        int b = movable[(from + i) % movable.length];
        if (!isPlaced(b)) {
          return b;
        }
      }
    }
    if (random.nextInt(4) == 0) {
      return movable[random.nextInt(movable.length)];
    }
    int chosen = movable[random.nextInt(movable.length)];
    long worst = -1;
    int looks = 2 + random.nextInt(8);
    for (int i = 0; i < looks; i++) {
      int b = movable[random.nextInt(movable.length)];
      long cost = 0;
      for (int j : blocks.jobs[b]) {
        cost += grid.start[j] < 0 ? 0 : costs.around(grid, j, grid.start[j]);
      }
      if (cost > worst) {
        worst = cost;
        chosen = b;
      }
    }
    return chosen;
  }

  private int middle(int b) {
    for (int j : blocks.jobs[b]) {
      if (grid.start[j] >= 0) {
        return grid.start[j];
      }
    }
    return layout.target[blocks.jobs[b][0]];
  }

  /** A block tied by a lag to one of those already chosen; -1: none. */
  private int linked(List<Integer> out) {
    int b = out.get(random.nextInt(out.size()));
    int[] jobs = blocks.jobs[b];
    int j = jobs[random.nextInt(jobs.length)];
    Between[] lags = random.nextBoolean() ? layout.in[j] : layout.out[j];
    if (lags.length == 0) {
      return -1;
    }
    Between lag = lags[random.nextInt(lags.length)];
    int other = blocks.of[lag.from() == j ? lag.to() : lag.from()];
    return other == b ? -1 : other;
  }

  private int near(int[] movable, int centre) {
    for (int i = 0; i < 8; i++) {
      int b = movable[random.nextInt(movable.length)];
      if (Math.abs(middle(b) - centre) <= NEAR) {
        return b;
      }
    }
    return -1;
  }

  private static final int NEAR = 12;

  /** The order to put blocks back in: by chance, users first, the largest first. */
  private void sort(List<Integer> out) {
    for (int i = out.size() - 1; i > 0; i--) {
      int k = random.nextInt(i + 1);
      Integer other = out.get(k);
      out.set(k, out.get(i));
      out.set(i, other);
    }
    int by = random.nextInt(8);
    if (by < 3) {
      out.sort((a, b) -> layout.target[last(b)] - layout.target[last(a)]);
    } else if (by == 3) {
      out.sort((a, b) -> work[b] - work[a]);
    } else if (by == 5) {
      out.sort((a, b) -> blocks.room[a] - blocks.room[b]);
    } else if (by == 4) {
      out.sort((a, b) -> layout.target[last(a)] - layout.target[last(b)]);
    }
  }

  private int last(int b) {
    return blocks.jobs[b][blocks.jobs[b].length - 1];
  }

  private void keep(long cost) {
    best = cost;
    System.arraycopy(grid.start, 0, bestStart, 0, bestStart.length);
    System.arraycopy(grid.cooks, 0, bestCooks, 0, bestCooks.length);
    System.arraycopy(grid.units, 0, bestUnits, 0, bestUnits.length);
  }

  long best() {
    return best;
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
    return new Rota(places, Billing.of(layout, bestStart, bestCooks), done, cut, layout.yielding);
  }

  private static List<Integer> boxed(int[] some) {
    return Arrays.stream(some).boxed().toList();
  }
}
