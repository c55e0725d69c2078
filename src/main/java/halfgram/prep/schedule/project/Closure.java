package halfgram.prep.schedule.project;

import java.util.Arrays;

/**
 * How long after one activity starts another one has to: the longest path between every two, or
 * {@link #NONE} where there is no path. Only for networks without a positive cycle.
 */
final class Closure {
  /** No path; far from any sum of lengths. */
  static final int NONE = Integer.MIN_VALUE / 2;

  private final int size;
  private final int[] longest;

  private Closure(int size, int[] longest) {
    this.size = size;
    this.longest = longest;
  }

  static Closure of(Network network) {
    int n = network.nodes();
    int[] d = new int[n * n];
    Arrays.fill(d, NONE);
    for (int i = 0; i < n; i++) {
      d[i * n + i] = 0;
    }
    for (int a = 0; a < network.arcs(); a++) {
      int at = network.from(a) * n + network.to(a);
      d[at] = Math.max(d[at], network.length(a));
    }
    Closure closure = new Closure(n, d);
    for (int k = 0; k < n; k++) {
      closure.through(k);
    }
    return closure;
  }

  /** Every path that can gain by a way through node k (one round of Floyd and Warshall). */
  private void through(int k) {
    for (int i = 0; i < size; i++) {
      int first = longest[i * size + k];
      if (first == NONE || i == k) {
        continue;
      }
      for (int j = 0; j < size; j++) {
        int second = longest[k * size + j];
        if (second != NONE && first + second > longest[i * size + j]) {
          longest[i * size + j] = first + second;
        }
      }
    }
  }

  Closure copy() {
    return new Closure(size, longest.clone());
  }

  int size() {
    return size;
  }

  int get(int from, int to) {
    return longest[from * size + to];
  }

  /** Whether an arc would close a positive cycle. */
  boolean breaks(int from, int to, int length) {
    int back = longest[to * size + from];
    return back != NONE && back + length > 0;
  }

  /** Adds an arc that closes no positive cycle. */
  void add(int from, int to, int length) {
    if (longest[from * size + to] >= length) {
      return;
    }
    int[] after = Arrays.copyOfRange(longest, to * size, (to + 1) * size);
    for (int i = 0; i < size; i++) {
      int before = longest[i * size + from];
      if (before == NONE || before + length <= longest[i * size + to]) {
        continue;
      }
      int row = i * size;
      int reach = before + length;
      for (int j = 0; j < size; j++) {
        if (after[j] != NONE && reach + after[j] > longest[row + j]) {
          longest[row + j] = reach + after[j];
        }
      }
    }
  }
}
