package halfgram.prep.schedule.project;

import java.util.Arrays;

/** Activities in the order of their times; alike ones in an order that is given. */
final class ByTime {
  private final long[] keys;
  private int[] buckets = new int[64];

  ByTime(int size) {
    keys = new long[size];
  }

  /**
   * Sorts.
   *
   * @param base every activity once; the order among those with the same time
   * @param times by activity
   * @param into gets the activities, the smallest time first
   */
  void sort(int[] base, int[] times, int[] into) {
    int least = Integer.MAX_VALUE;
    int most = Integer.MIN_VALUE;
    for (int time : times) {
      least = Math.min(least, time);
      most = Math.max(most, time);
    }
    long range = (long) most - least + 1;
    if (range > 16L * times.length + 64) {
      sortLong(base, times, into);
      return;
    }
    if (buckets.length <= range) {
      buckets = new int[(int) range * 2];
    }
    Arrays.fill(buckets, 0, (int) range + 1, 0);
    for (int time : times) {
      buckets[time - least + 1]++;
    }
    for (int t = 1; t < range; t++) {
      buckets[t] += buckets[t - 1];
    }
    for (int i : base) {
      into[buckets[times[i] - least]++] = i;
    }
  }

  /** Times far apart: by time, then place in the base, in one long each. */
  private void sortLong(int[] base, int[] times, int[] into) {
    for (int k = 0; k < base.length; k++) {
      keys[k] = (long) times[base[k]] << 32 | k;
    }
    Arrays.sort(keys);
    for (int k = 0; k < base.length; k++) {
      into[k] = base[(int) keys[k]];
    }
  }
}
