package halfgram.prep.schedule.project;

import java.util.Arrays;

/**
 * What is free of every resource in every slot of time. The resources of a slot stand side by side
 * in as few longs as they fit into, each with a guard bit above it that a subtraction clears when
 * there is too little, so that one subtraction compares all of them.
 */
final class Timetable {
  private final int words;
  private final int[] durations;

  /** Demands by activity and word. */
  private final long[] needs;

  private final boolean[] needy;
  private final long[] guards;
  private final long[] empty;
  private final long[] free;

  /** Slots from here on are untouched. */
  private int touched;

  /** A timetable for activities that are all over at {@code horizon}. */
  Timetable(Project project, int horizon) {
    int n = project.size();
    int most = 1;
    for (int r = 0; r < project.resources(); r++) {
      most = Math.max(most, project.capacity(r));
    }
    int bits = Integer.SIZE - Integer.numberOfLeadingZeros(most) + 1;
    int perWord = Long.SIZE / bits;
    words = Math.max(1, (project.resources() + perWord - 1) / perWord);
    durations = new int[n];
    needs = new long[n * words];
    needy = new boolean[n];
    guards = new long[words];
    empty = new long[words];
    for (int r = 0; r < project.resources(); r++) {
      int shift = r % perWord * bits;
      guards[r / perWord] |= 1L << (shift + bits - 1);
      empty[r / perWord] |= 1L << (shift + bits - 1) | (long) project.capacity(r) << shift;
      for (int i = 0; i < n; i++) {
        needs[i * words + r / perWord] |= (long) Math.min(project.demand(i, r), most) << shift;
        needy[i] |= project.demand(i, r) > 0;
      }
    }
    for (int i = 0; i < n; i++) {
      durations[i] = project.duration(i);
      needy[i] &= durations[i] > 0;
    }
    free = new long[(horizon + 1) * words];
    touched = horizon + 1;
    clear();
  }

  void clear() {
    if (words == 1) {
      Arrays.fill(free, 0, touched, empty[0]);
    } else {
      for (int k = 0; k < touched * words; k++) {
        free[k] = empty[k % words];
      }
    }
    touched = 0;
  }

  /**
   * The earliest start from {@code from} on; there is one as long as the horizon is not reached.
   */
  int earliest(int activity, int from) {
    return earliest(activity, from, free.length / words - 1 - durations[activity]);
  }

  /** The earliest start from {@code from} to {@code last}, or -1. */
  int earliest(int activity, int from, int last) {
    if (!needy[activity]) {
      return from <= last ? from : -1;
    }
    int duration = durations[activity];
    int start = from;
    int good = from - 1;
    while (start <= last) {
      int end = start + duration - 1;
      int slot = end;
      while (slot > good && fits(activity, slot)) {
        slot--;
      }
      if (slot <= good) {
        return start;
      }
      good = end;
      start = slot + 1;
    }
    return -1;
  }

  /** The latest start from {@code from} back to {@code least}, or -1. */
  int latest(int activity, int from, int least) {
    if (!needy[activity]) {
      return from >= least ? from : -1;
    }
    int duration = durations[activity];
    int start = from;
    int good = from + duration;
    while (start >= least) {
      int slot = start;
      while (slot < good && fits(activity, slot)) {
        slot++;
      }
      if (slot >= good) {
        return start;
      }
      good = start;
      start = slot - duration;
    }
    return -1;
  }

  private boolean fits(int activity, int slot) {
    if (words == 1) {
      return ((free[slot] - needs[activity]) & guards[0]) == guards[0];
    }
    for (int w = 0; w < words; w++) {
      if (((free[slot * words + w] - needs[activity * words + w]) & guards[w]) != guards[w]) {
        return false;
      }
    }
    return true;
  }

  /** Takes what an activity needs from its start on. */
  void take(int activity, int start) {
    change(activity, start, -1);
  }

  /** Gives it back. */
  void give(int activity, int start) {
    change(activity, start, 1);
  }

  private void change(int activity, int start, int sign) {
    if (!needy[activity]) {
      return;
    }
    int end = start + durations[activity];
    touched = Math.max(touched, end);
    for (int w = 0; w < words; w++) {
      long change = sign * needs[activity * words + w];
      for (int k = start * words + w; k < end * words; k += words) {
        free[k] += change;
      }
    }
  }
}
