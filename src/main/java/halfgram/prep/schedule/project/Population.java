package halfgram.prep.schedule.project;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Activity lists with the makespans they led to, and children of two of them. No two of its
 * schedules are the same; the worst gives way to what is at least as good.
 *
 * <p>Source of the two-point crossover of lists: S. Hartmann, A competitive genetic algorithm for
 * resource-constrained project scheduling, Naval Research Logistics 45 (1998).
 */
final class Population {
  /** Least share of the activities that a mutation moves; at least one, in the mean. */
  private static final int MOVED_PER_MILLE = 20;

  private static final int REACH = 5;

  private final int size;
  private final int[][] lists;
  private final int[] spans;
  private final long[] marks;
  private final boolean[] taken;
  private final SplittableRandom random;
  private int filled;

  Population(int members, int size, SplittableRandom random) {
    this.size = size;
    this.random = random;
    lists = new int[members][size];
    spans = new int[members];
    marks = new long[members];
    taken = new boolean[size];
  }

  boolean isFull() {
    return filled == lists.length;
  }

  boolean canBreed() {
    return filled >= 2;
  }

  int filled() {
    return filled;
  }

  void clear() {
    filled = 0;
  }

  /** Takes a schedule in, if it is new and good enough; the list is copied. */
  boolean keep(int[] list, int span, int[] starts) {
    long mark = Arrays.hashCode(starts) * 0x9E3779B97F4A7C15L + span;
    for (int k = 0; k < filled; k++) {
      if (marks[k] == mark) {
        return false;
      }
    }
    int at = filled;
    if (isFull()) {
      at = worst();
      if (span > spans[at]) {
        return false;
      }
    } else {
      filled++;
    }
    System.arraycopy(list, 0, lists[at], 0, size);
    spans[at] = span;
    marks[at] = mark;
    return true;
  }

  /** One of the longest, each with the same chance. */
  private int worst() {
    int worst = 0;
    int alike = 0;
    for (int k = 0; k < filled; k++) {
      if (spans[k] > spans[worst]) {
        worst = k;
        alike = 1;
      } else if (spans[k] == spans[worst] && random.nextInt(++alike) == 0) {
        worst = k;
      }
    }
    return worst;
  }

  /** The shorter of two at random. */
  private int pick() {
    int a = random.nextInt(filled);
    int b = random.nextInt(filled);
    return spans[a] <= spans[b] ? a : b;
  }

  /**
   * Puts a child of two into {@code child}: the middle ordered as in the one, the rest as in the
   * other.
   */
  void cross(int[] child) {
    int a = pick();
    int b = pick();
    if (a == b) {
      b = (a + 1 + random.nextInt(filled - 1)) % filled;
    }
    int one = random.nextInt(size);
    int other = random.nextInt(size);
    int from = Math.min(one, other);
    int to = Math.max(one, other);
    int[] mother = lists[a];
    int[] father = lists[b];
    Arrays.fill(taken, false);
    int at = 0;
    for (; at < from; at++) {
      child[at] = mother[at];
      taken[mother[at]] = true;
    }
    for (int k = 0; at < to; k++) {
      if (!taken[father[k]]) {
        taken[father[k]] = true;
        child[at++] = father[k];
      }
    }
    for (int k = from; at < size; k++) {
      if (!taken[mother[k]]) {
        child[at++] = mother[k];
      }
    }
  }

  /** Moves some activities a few places; whether it moved any. */
  boolean mutate(int[] list) {
    int chance = Math.max(MOVED_PER_MILLE, 1000 / size);
    boolean moved = false;
    for (int k = 0; k < size; k++) {
      if (random.nextInt(1000) < chance) {
        int to = k + random.nextInt(2 * REACH + 1) - REACH;
        move(list, k, Math.max(0, Math.min(size - 1, to)));
        moved = true;
      }
    }
    return moved;
  }

  private static void move(int[] list, int from, int to) {
    int moved = list[from];
    if (to > from) {
      System.arraycopy(list, from + 1, list, from, to - from);
    } else {
      System.arraycopy(list, to, list, to + 1, from - to);
    }
    list[to] = moved;
  }
}
