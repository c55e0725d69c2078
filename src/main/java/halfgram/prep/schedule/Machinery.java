package halfgram.prep.schedule;

import java.util.Arrays;

/**
 * Which unit of which machine is whose, slot by slot, so that a wash between two jobs is found by
 * looking as many slots aside as a wash takes.
 */
final class Machinery {
  private static final int[] NONE = {};
  private static final int FREE = -1;
  private static final int SHUT = -2;

  /** With this much time more than a wash takes somebody will have hands for it, most likely. */
  private static final int NEAR = 12;

  private final Layout layout;
  private final Grid grid;

  /** By machine, unit and slot. */
  final int[][][] owner;

  /** By machine and unit, how often something was put on it or taken off. */
  final int[][] changes;

  /** The units last found, use by use. */
  private final int[] chosen;

  Machinery(Grid grid) {
    this.grid = grid;
    layout = grid.layout;
    owner = new int[layout.day.machines().size()][][];
    changes = new int[owner.length][];
    for (int m = 0; m < owner.length; m++) {
      owner[m] = owners(layout.day.machines().get(m));
      changes[m] = new int[owner[m].length];
    }
    int most = layout.day.machines().stream().mapToInt(Machine::units).max().orElse(0);
    chosen = new int[most * 8 + 8];
  }

  private int[][] owners(Machine machine) {
    int[][] of = new int[machine.units()][layout.slots];
    for (int[] unit : of) {
      Arrays.fill(unit, FREE);
    }
    for (Machine.Out out : machine.out()) {
      for (int u = Math.max(0, of.length - out.units()); u < of.length; u++) {
        int to = Math.min(layout.slots, out.span().to());
        Arrays.fill(of[u], Math.min(Math.max(0, out.span().from()), to), to, SHUT);
      }
    }
    return of;
  }

  /** Whether there are units for all uses of a job at a slot; they are kept in mind. */
  boolean fits(int j, int t) {
    int found = 0;
    for (Job.Use use : layout.uses[j]) {
      int from = t + layout.from(j, use);
      int to = end(j, t, use);
      int wanted = use.units();
      int[][] of = owner[use.machine()];
      for (int u = 0; u < of.length && wanted > 0; u++) {
        if (from == to || isFree(use.machine(), of[u], j, t, from, to)) {
          chosen[found++] = u;
          wanted--;
        }
      }
      if (wanted > 0) {
        return false;
      }
    }
    return staysFree(j, t);
  }

  /** The units found for a job, use by use. */
  int[] found(int j) {
    int needed = needed(j);
    return needed == 0 ? NONE : Arrays.copyOf(chosen, needed);
  }

  /** Whether given units are free for a job at a slot. */
  boolean areFree(int j, int t, int[] of) {
    if (of.length != needed(j)) {
      return false;
    }
    int at = 0;
    for (Job.Use use : layout.uses[j]) {
      int from = t + layout.from(j, use);
      int to = end(j, t, use);
      int[][] all = owner[use.machine()];
      for (int k = 0; k < use.units(); k++) {
        int u = of[at++];
        if (u >= all.length || (from < to && !isFree(use.machine(), all[u], j, t, from, to))) {
          return false;
        }
      }
    }
    return staysFree(j, t);
  }

  private int needed(int j) {
    int count = 0;
    for (Job.Use use : layout.uses[j]) {
      count += use.units();
    }
    return count;
  }

  /** When a use is over: what stands on it stays until somebody has taken it out. */
  private int end(int j, int t, Job.Use use) {
    int to = t + layout.to(j, use);
    int last = layout.until[j];
    boolean out = last >= 0 && use.during() != Job.During.HANDS && grid.start[last] >= 0;
    return out ? Math.max(to, grid.start[last] + layout.holds[j]) : to;
  }

  /** Whether what a job takes out can stay where it stands until then. */
  private boolean staysFree(int j, int t) {
    int held = layout.frees[j];
    if (held < 0 || grid.start[held] < 0) {
      return true;
    }
    int at = 0;
    for (Job.Use use : layout.uses[held]) {
      for (int k = 0; k < use.units() && at < grid.units[held].length; k++) {
        int[] of = owner[use.machine()][grid.units[held][at++]];
        int from = grid.start[held] + layout.to(held, use);
        if (use.during() != Job.During.HANDS
            && !isFreeAfter(use.machine(), of, held, from, t + layout.holds[held])) {
          return false;
        }
      }
    }
    return true;
  }

  /** Between two that do not move nobody has to wash. */
  private boolean isFixed(int one, int other) {
    return layout.isFixed(one) && layout.isFixed(other);
  }

  /** Whether some hands are free for a wash between two jobs, of which one is about to be put. */
  private boolean haveHands(int machine, int from, int to) {
    int length = layout.scrub[machine];
    for (int t = Math.max(0, from); t + length <= to; t++) {
      for (int c : layout.washers[machine]) {
        if (grid.isFree(c, t, t + length)) {
          return true;
        }
      }
    }
    return false;
  }

  private boolean isFreeAfter(int machine, int[] of, int j, int from, int to) {
    for (int t = from; t < to; t++) {
      if (of[t] != FREE) {
        return false;
      }
    }
    boolean hands = layout.scrub[machine] > 0;
    int last = Math.min(layout.slots, to + layout.wash[machine] + (hands ? NEAR : 0));
    for (int t = to; t < last; t++) {
      if (of[t] >= 0) {
        int next = of[t];
        int wash = layout.wash(machine, j, next);
        return t - to >= wash
            && (wash == 0
                || !hands
                || isFixed(j, next)
                || haveHands(machine, to, layout.scrubbed(machine, t, grid.start[next])));
      }
    }
    return true;
  }

  private boolean isFree(int machine, int[] of, int j, int t, int from, int to) {
    if (!isFreeAfter(machine, of, j, from, to)) {
      return false;
    }
    boolean hands = layout.scrub[machine] > 0;
    int first = Math.max(0, from - layout.wash[machine] - (hands ? NEAR : 0));
    for (int s = from - 1; s >= first; s--) {
      if (of[s] >= 0) {
        int wash = layout.wash(machine, of[s], j);
        return from - 1 - s >= wash
            && (wash == 0
                || !hands
                || isFixed(j, of[s])
                || haveHands(machine, s + 1, layout.scrubbed(machine, from, t)));
      }
    }
    return true;
  }

  /** Takes the units of a placed job, or lets them go. */
  void mark(int j, boolean on) {
    int t = grid.start[j];
    int at = 0;
    for (Job.Use use : layout.uses[j]) {
      for (int k = 0; k < use.units() && at < grid.units[j].length; k++) {
        int u = grid.units[j][at++];
        Arrays.fill(
            owner[use.machine()][u], t + layout.from(j, use), end(j, t, use), on ? j : FREE);
        changes[use.machine()][u]++;
      }
    }
    int held = layout.frees[j];
    if (held >= 0 && grid.start[held] >= 0) {
      hold(held, t + layout.holds[held], on);
    }
  }

  /** Keeps what a job stands on taken beyond its end. */
  private void hold(int held, int to, boolean on) {
    int at = 0;
    for (Job.Use use : layout.uses[held]) {
      for (int k = 0; k < use.units() && at < grid.units[held].length; k++) {
        int u = grid.units[held][at++];
        int from = grid.start[held] + layout.to(held, use);
        if (use.during() != Job.During.HANDS && from < to) {
          int[] of = owner[use.machine()][u];
          Arrays.fill(of, from, Math.min(layout.slots, to), on ? held : FREE);
          changes[use.machine()][u]++;
        }
      }
    }
  }
}
