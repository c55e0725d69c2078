package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Who washes what between two jobs, worked out of a plan by itself: the same plan has the same
 * washes, however it came about.
 *
 * <p>Rules. Hands wash a machine after the one and before the other job begins, early enough for it
 * to dry; whoever worked on it last at once, if they are free and may, else the first who is. What
 * leaves least time is settled first; a wash that finds nobody then is settled before the others,
 * as often as that leads to something new. Between two jobs that do not move nobody has to wash.
 */
final class Washing {
  private final Layout layout;
  private final Grid grid;
  private final long[][] busy;
  private final List<Needed> needed = new ArrayList<>();

  /** By machine and unit; none of a machine that nobody washes by hand. */
  private final Unit[][] units;

  /** A job that moves beside the wash that found nobody; -1: none. */
  private int failing = -1;

  Washing(Grid grid) {
    this.grid = grid;
    layout = grid.layout;
    busy = new long[layout.here.length][];
    units = new Unit[layout.scrub.length][];
    for (int m = 0; m < units.length; m++) {
      units[m] = new Unit[layout.scrub[m] > 0 ? grid.machinery.owner[m].length : 0];
      Arrays.setAll(units[m], u -> new Unit());
    }
  }

  /** Washes of a unit as it was when it was last looked at. */
  private static final class Unit {
    private final List<Needed> needed = new ArrayList<>();
    private int changes = -1;
  }

  /** A wash of a unit within a span, with what was settled: who, and from when. */
  private static final class Needed {
    private final int machine;
    private final int unit;
    private final int after;
    private final int before;
    private final int from;
    private final int to;
    private int cook = -1;
    private int start = -1;

    Needed(int machine, int unit, int after, int before, int from, int to) {
      this.machine = machine;
      this.unit = unit;
      this.after = after;
      this.before = before;
      this.from = from;
      this.to = to;
    }
  }

  /** Whether there are hands for every wash. */
  boolean isSettled() {
    failing = -1;
    if (!layout.washesByHand) {
      return true;
    }
    look();
    for (int first = 0; first < needed.size(); ) {
      int lost = settle();
      if (lost < 0) {
        return true;
      }
      if (lost < Math.max(first, 1)) {
        Needed one = needed.get(lost);
        failing = layout.isFixed(one.before) ? one.after : one.before;
        return false;
      }
      needed.add(0, needed.remove(lost));
      first++;
    }
    return true;
  }

  /** A job without which there would be hands, when there are not. */
  int failing() {
    return failing;
  }

  /** The washes of a plan that is settled. */
  List<Rota.Wash> list() {
    return !layout.washesByHand || !isSettled()
        ? List.of()
        : needed.stream()
            .filter(one -> one.cook >= 0)
            .map(
                one ->
                    new Rota.Wash(
                        one.machine, one.unit, one.start, one.cook, one.after, one.before))
            .sorted(
                Comparator.comparingInt(Rota.Wash::start)
                    .thenComparingInt(Rota.Wash::machine)
                    .thenComparingInt(Rota.Wash::unit))
            .toList();
  }

  private void look() {
    needed.clear();
    for (int m = 0; m < units.length; m++) {
      for (int u = 0; u < units[m].length; u++) {
        Unit unit = units[m][u];
        if (unit.changes != grid.machinery.changes[m][u]) {
          unit.changes = grid.machinery.changes[m][u];
          unit.needed.clear();
          look(m, u, unit.needed);
        }
        needed.addAll(unit.needed);
      }
    }
    needed.sort(
        Comparator.comparing(this::isFixed)
            .thenComparingInt(one -> one.to - one.from - layout.scrub[one.machine])
            .thenComparingInt(one -> one.from)
            .thenComparingInt(one -> one.machine)
            .thenComparingInt(one -> one.unit));
  }

  private void look(int machine, int unit, List<Needed> into) {
    int[] of = grid.machinery.owner[machine][unit];
    int last = -1;
    int end = 0;
    for (int t = 0; t < of.length; t++) {
      int j = of[t];
      if (j < 0) {
        continue;
      }
      if (last >= 0 && j != last && layout.wash(machine, last, j) > 0) {
        int to = layout.scrubbed(machine, t, grid.start[j]);
        into.add(new Needed(machine, unit, last, j, end, to));
      }
      last = j;
      end = t + 1;
    }
  }

  private boolean isFixed(Needed one) {
    return layout.isFixed(one.after) && layout.isFixed(one.before);
  }

  /** Settles one after the other; the place of the first that finds nobody, -1: none. */
  private int settle() {
    for (int c = 0; c < busy.length; c++) {
      busy[c] = grid.busy(c).clone();
    }
    for (int i = 0; i < needed.size(); i++) {
      Needed one = needed.get(i);
      if (!find(one) && !isFixed(one)) {
        return i;
      }
    }
    return -1;
  }

  private boolean find(Needed one) {
    int[] washers = layout.washers[one.machine];
    int length = layout.scrub[one.machine];
    one.cook = -1;
    for (int t = one.from; t + length <= one.to; t++) {
      if (isTaken(one, grid.cooks[one.after], t)
          || isTaken(one, grid.cooks[one.before], t)
          || isTaken(one, washers, t)) {
        return true;
      }
    }
    return false;
  }

  private boolean isTaken(Needed one, int[] cooks, int t) {
    int to = t + layout.scrub[one.machine];
    for (int c : cooks) {
      if (Layout.isAmong(c, layout.washers[one.machine]) && Grid.isFree(busy[c], t, to)) {
        one.cook = c;
        one.start = t;
        for (int s = t; s < to; s++) {
          busy[c][s >> 6] |= 1L << s;
        }
        return true;
      }
    }
    return false;
  }
}
