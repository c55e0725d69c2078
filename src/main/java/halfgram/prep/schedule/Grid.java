package halfgram.prep.schedule;

import java.util.Arrays;
import java.util.Comparator;
import java.util.SplittableRandom;

/**
 * Who and what is taken when, while a plan is being made: jobs are put on it and taken off again.
 */
final class Grid {
  final Layout layout;

  /** Where each job starts; -1: nowhere. */
  final int[] start;

  /** Its cooks, in the order of their index. */
  final int[][] cooks;

  /** The units of its machines, use by use. */
  final int[][] units;

  private final long[][] busy;
  final Machinery machinery;
  private final int[][] taken;

  final Rushes rushes;

  private final long[] run;
  private final int[] works;
  private final int[] pick;
  private final long[] worth;

  Grid(Layout layout) {
    this.layout = layout;
    start = new int[layout.size];
    Arrays.fill(start, -1);
    cooks = new int[layout.size][];
    units = new int[layout.size][];
    busy = new long[layout.here.length][];
    for (int c = 0; c < busy.length; c++) {
      busy[c] = new long[layout.here[c].length];
      for (int w = 0; w < busy[c].length; w++) {
        busy[c][w] = ~layout.here[c][w];
      }
    }
    machinery = new Machinery(this);
    taken = new int[layout.day.spaces().size()][];
    for (int s = 0; s < taken.length; s++) {
      taken[s] =
          Arrays.copyOf(
              layout.day.spaces().get(s).taken().stream().mapToInt(Integer::intValue).toArray(),
              layout.slots);
    }
    rushes = new Rushes(layout);
    run = new long[(layout.slots + 63) >> 6];
    works = new int[busy.length];
    pick = new int[busy.length];
    worth = new long[busy.length];
  }

  /** Whether there are people, machines and room for a job at a slot. */
  boolean fits(int j, int t) {
    return t >= 0 && t + layout.length[j] <= layout.slots && haveCooks(j, t) && haveThings(j, t);
  }

  /** Whether there are machines and room for a job at a slot. */
  boolean haveThings(int j, int t) {
    return machinery.fits(j, t) && haveRoom(j, t);
  }

  /** Whether there are people for a job at a slot. */
  boolean haveCooks(int j, int t) {
    int wanted = layout.hands[j];
    if (wanted == 0) {
      return true;
    }
    int there = 0;
    for (int c : layout.able[j]) {
      if (isFree(c, t, t + layout.handsOn[j]) && ++there == wanted) {
        return true;
      }
    }
    return false;
  }

  /**
   * Marks the slots from which one of those who are able is free for all of a job's hands: at no
   * other can it start.
   *
   * @param into a bit a slot
   */
  void markStarts(int j, long[] into) {
    if (layout.hands[j] == 0) {
      Arrays.fill(into, -1);
      return;
    }
    Arrays.fill(into, 0);
    for (int c : layout.able[j]) {
      for (int w = 0; w < run.length; w++) {
        run[w] = ~busy[c][w];
      }
      // Free from a slot for as many slots: up to twice as many with every step.
      for (int have = 1; have < layout.handsOn[j]; ) {
        int more = Math.min(have, layout.handsOn[j] - have);
        for (int w = 0; w < run.length; w++) {
          run[w] &= later(w, more);
        }
        have += more;
      }
      for (int w = 0; w < run.length; w++) {
        into[w] |= run[w];
      }
    }
  }

  /** A word of the run as it is so many slots later. */
  private long later(int w, int slots) {
    int word = w + (slots >> 6);
    long low = word < run.length ? run[word] >>> slots : 0;
    boolean across = (slots & 63) != 0 && word + 1 < run.length;
    return across ? low | (run[word + 1] << -slots) : low;
  }

  /** Taken and absent slots of a cook as bits. */
  long[] busy(int cook) {
    return busy[cook];
  }

  boolean isFree(int cook, int from, int to) {
    return isFree(busy[cook], from, to);
  }

  /** Whether bits are clear in slots. */
  static boolean isFree(long[] bits, int from, int to) {
    int first = from >> 6;
    int last = (to - 1) >> 6;
    long low = -1L << from;
    long high = -1L >>> (63 - ((to - 1) & 63));
    if (first == last) {
      return (bits[first] & low & high) == 0;
    }
    if ((bits[first] & low) != 0 || (bits[last] & high) != 0) {
      return false;
    }
    for (int w = first + 1; w < last; w++) {
      if (bits[w] != 0) {
        return false;
      }
    }
    return true;
  }

  private boolean haveRoom(int j, int t) {
    for (Job.Keep keep : layout.keeps[j]) {
      int room = layout.day.spaces().get(keep.space()).room();
      int[] of = taken[keep.space()];
      for (int s = t + layout.length[j]; s < Math.min(layout.slots, keep.until()); s++) {
        if (of[s] + keep.amount() > room) {
          return false;
        }
      }
    }
    return true;
  }

  boolean isPlaced(int[] jobs) {
    for (int j : jobs) {
      if (start[j] < 0) {
        return false;
      }
    }
    return true;
  }

  /** Whether a job of these that can move is on it. */
  boolean isAnyPlaced(int[] jobs) {
    for (int j : jobs) {
      if (!layout.isFixed(j) && start[j] >= 0) {
        return true;
      }
    }
    return false;
  }

  /** Whether a slot keeps every lag to what is placed. */
  boolean inLags(int j, int t) {
    for (Between lag : layout.in[j]) {
      int from = start[lag.from()];
      if (from >= 0 && !holds(lag, from, t)) {
        return false;
      }
    }
    for (Between lag : layout.out[j]) {
      int to = start[lag.to()];
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

  /** Puts a job where it fits, with the cooks that suit best. */
  void place(int j, int t, SplittableRandom random) {
    int[] people = layout.hands[j] == 0 ? NOBODY : choose(j, t, random);
    machinery.fits(j, t);
    put(j, t, people, machinery.found(j));
  }

  /** Puts a job exactly as it was, with its cooks and units, if they are all free. */
  boolean isPutAsBefore(int j) {
    int t = layout.before[j];
    int[] of = layout.unitsBefore[j];
    int[] people = layout.cooksBefore[j];
    if (!haveRoom(j, t) || people.length != layout.hands[j]) {
      return false;
    }
    for (int c : people) {
      if (!isFree(c, t, t + layout.handsOn[j]) || !Layout.isAmong(c, layout.able[j])) {
        return false;
      }
    }
    if (!machinery.areFree(j, t, of)) {
      return false;
    }
    put(j, t, people, of);
    return true;
  }

  private static final int[] NOBODY = {};

  /** Puts a job back as it was. */
  void put(int j, int t, int[] people, int[] of) {
    start[j] = t;
    cooks[j] = people;
    units[j] = of;
    mark(j, true);
  }

  /** Puts a job that does not move, whatever is there already. */
  void force(int j) {
    int t = layout.fixed[j];
    boolean machines = t >= 0 && t + layout.length[j] <= layout.slots && machinery.fits(j, t);
    int[] people = layout.cooksBefore[j].length > 0 ? layout.cooksBefore[j] : whoever(j, t);
    put(j, t, people, machines ? machinery.found(j) : NOBODY);
  }

  /** As many as there are of those that a job wants, first who can do least else. */
  private int[] whoever(int j, int t) {
    int to = Math.min(layout.slots, t + layout.handsOn[j]);
    return t < 0 || t >= to
        ? NOBODY
        : Arrays.stream(layout.able[j])
            .filter(c -> isFree(c, t, to))
            .boxed()
            .sorted(Comparator.comparingInt((Integer c) -> layout.skills[c]))
            .limit(layout.hands[j])
            .mapToInt(Integer::intValue)
            .sorted()
            .toArray();
  }

  /** Counts the hands of a job, and nothing else. */
  void work(int j, int t, int[] people) {
    int to = Math.min(layout.slots, t + layout.handsOn[j]);
    for (int c : people) {
      works[c] += layout.handsOn[j];
    }
    rushes.load(t, to, people.length);
  }

  void remove(int j) {
    mark(j, false);
    start[j] = -1;
  }

  private void mark(int j, boolean on) {
    int t = start[j];
    int to = Math.min(layout.slots, t + layout.handsOn[j]);
    for (int c : cooks[j]) {
      mark(busy[c], Math.max(0, t), to, on);
      works[c] += on ? layout.handsOn[j] : -layout.handsOn[j];
    }
    rushes.load(t, to, on ? cooks[j].length : -cooks[j].length);
    machinery.mark(j, on);
    for (Job.Keep keep : layout.keeps[j]) {
      int[] of = taken[keep.space()];
      for (int s = t + layout.length[j]; s < Math.min(layout.slots, keep.until()); s++) {
        of[s] += on ? keep.amount() : -keep.amount();
      }
    }
  }

  private static void mark(long[] bits, int from, int to, boolean on) {
    for (int s = from; s < to; ) {
      int end = Math.min(to, (s | 63) + 1);
      long some = (-1L << s) & (-1L >>> -end);
      bits[s >> 6] = on ? bits[s >> 6] | some : bits[s >> 6] & ~some;
      s = end;
    }
  }

  /** The cooks of before if they are free; else who can do least else, next to other work. */
  private int[] choose(int j, int t, SplittableRandom random) {
    int to = t + layout.handsOn[j];
    int free = 0;
    for (int c : layout.able[j]) {
      if (isFree(c, t, to)) {
        pick[free] = c;
        worth[free++] = worth(j, c, t, to, random);
      }
    }
    int wanted = layout.hands[j];
    int[] people = new int[wanted];
    for (int k = 0; k < wanted; k++) {
      int best = k;
      for (int i = k + 1; i < free; i++) {
        if (worth[i] < worth[best]) {
          best = i;
        }
      }
      people[k] = pick[best];
      pick[best] = pick[k];
      worth[best] = worth[k];
    }
    Arrays.sort(people);
    return people;
  }

  private long worth(int j, int c, int t, int to, SplittableRandom random) {
    boolean snug = t == 0 || to >= layout.slots || !isFree(c, t - 1, t) || !isFree(c, to, to + 1);
    long over = overShift(c, layout.handsOn[j]) - overShift(c, 0);
    return (layout.isCookBefore(j, c) ? 0 : layout.cooksBefore[j].length > 0 ? 60 : 0)
        + 4L * layout.skills[c]
        + (snug ? 0 : 3)
        + 10 * over
        + random.nextInt(4);
  }

  /** A cook's slots above the share of a shift that is planned, with some more. */
  private long overShift(int c, int more) {
    int percent = layout.day.prices().shiftPercent();
    return Math.max(0, ceilDiv(100L * (works[c] + more) - (long) percent * layout.mayWork[c]));
  }

  static long ceilDiv(long hundredths) {
    return -Math.floorDiv(-hundredths, 100L);
  }

  /** What all cooks work above the share of their shifts that is planned. */
  long overShifts() {
    long sum = 0;
    for (int c = 0; c < works.length; c++) {
      sum += overShift(c, 0);
    }
    return sum;
  }
}
