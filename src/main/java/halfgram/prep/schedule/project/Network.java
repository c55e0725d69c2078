package halfgram.prep.schedule.project;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;

/**
 * A temporal network: nodes are moments, an arc says "{@code to} at least {@code length} after
 * {@code from}". A negative length is a most: "{@code from} at most -length after {@code to}". Each
 * arc carries a label, a number by which its maker finds where the rule came from.
 *
 * <p>Example: 0 to 1 at least 5, 1 to 0 at least -3 (0 no more than 3 before 1) is a cycle of
 * length 2: the rules are short by 2.
 *
 * <p>Source: R. Dechter, I. Meiri, J. Pearl, Temporal constraint networks, Artificial Intelligence
 * 49 (1991); a cycle among predecessors is found as by R. Tarjan, Shortest paths (1981).
 */
public final class Network {
  /** The arc that no arc is. */
  private static final int NONE = -1;

  private final int nodes;
  private final int[] from;
  private final int[] to;
  private final int[] length;
  private final int[] label;

  /**
   * Arcs by where they begin: those of node i are {@code out[head[i]]} to {@code out[head[i+1]-1]}.
   */
  private final int[] head;

  private final int[] out;

  /** Times that keep every arc, or the arcs that allow none. */
  public sealed interface Outcome permits Times, Cycle {
    <T> T fold(Function<Times, T> times, Function<Cycle, T> cycle);
  }

  /** The earliest times, and for each the arc that makes it no earlier. */
  public static final class Times implements Outcome {
    private final Network network;
    private final int[] times;
    private final int[] because;

    private Times(Network network, int[] times, int[] because) {
      this.network = network;
      this.times = times;
      this.because = because;
    }

    public int at(int node) {
      return times[node];
    }

    /** All times, by node. */
    public int[] all() {
      return times.clone();
    }

    /** The arcs that add up to a node's time, from the node that stands on its floor to it. */
    public List<Integer> chain(int node) {
      List<Integer> chain = new ArrayList<>();
      for (int v = node; because[v] != NONE; v = network.from(because[v])) {
        chain.add(because[v]);
      }
      Collections.reverse(chain);
      return List.copyOf(chain);
    }

    @Override
    public <T> T fold(Function<Times, T> found, Function<Cycle, T> cycle) {
      return found.apply(this);
    }
  }

  /**
   * Arcs that come back to where they begin and ask for more time than none.
   *
   * @param arcs each begins where the one before it ends, the first where the last ends; the first
   *     begins at the smallest node of the cycle
   * @param shortBy the sum of their lengths, at least 1
   */
  public record Cycle(List<Integer> arcs, int shortBy) implements Outcome {
    public Cycle {
      arcs = List.copyOf(arcs);
    }

    @Override
    public <T> T fold(Function<Times, T> times, Function<Cycle, T> found) {
      return found.apply(this);
    }
  }

  /** Arcs, put together one by one. */
  public static final class Builder {
    private final int nodes;
    private final List<int[]> arcs = new ArrayList<>();

    private Builder(int nodes) {
      this.nodes = nodes;
    }

    /** {@code to} at least {@code length} after {@code from}. */
    public Builder arc(int from, int to, int length, int label) {
      if (from < 0 || from >= nodes || to < 0 || to >= nodes) {
        throw new IllegalArgumentException("no node: " + from + ", " + to + " of " + nodes);
      }
      arcs.add(new int[] {from, to, length, label});
      return this;
    }

    /**
     * The network.
     *
     * @throws IllegalArgumentException when its lengths may add up to more than an int holds
     */
    public Network build() {
      return new Network(nodes, arcs);
    }
  }

  private Network(int nodes, List<int[]> arcs) {
    this.nodes = nodes;
    int count = arcs.size();
    from = new int[count];
    to = new int[count];
    length = new int[count];
    label = new int[count];
    head = new int[nodes + 1];
    out = new int[count];
    long most = 1;
    for (int a = 0; a < count; a++) {
      from[a] = arcs.get(a)[0];
      to[a] = arcs.get(a)[1];
      length[a] = arcs.get(a)[2];
      label[a] = arcs.get(a)[3];
      most = Math.max(most, Math.abs((long) length[a]));
      head[from[a] + 1]++;
    }
    if (most * (nodes + 1L) > Integer.MAX_VALUE / 4) {
      throw new IllegalArgumentException("lengths up to " + most + " for " + nodes + " nodes");
    }
    for (int i = 0; i < nodes; i++) {
      head[i + 1] += head[i];
    }
    int[] next = Arrays.copyOf(head, nodes);
    for (int a = 0; a < count; a++) {
      out[next[from[a]]++] = a;
    }
  }

  /** A network of so many nodes, without arcs yet. */
  public static Builder of(int nodes) {
    return new Builder(nodes);
  }

  public int nodes() {
    return nodes;
  }

  public int arcs() {
    return from.length;
  }

  public int from(int arc) {
    return from[arc];
  }

  public int to(int arc) {
    return to[arc];
  }

  public int length(int arc) {
    return length[arc];
  }

  public int label(int arc) {
    return label[arc];
  }

  /** The earliest times when no node may be before 0. */
  public Outcome earliest() {
    return earliest(new int[nodes]);
  }

  /**
   * The earliest times: longest paths from the floors. The same network gives the same answer.
   *
   * @param floors the time before which a node may not be, by node
   */
  public Outcome earliest(int[] floors) {
    int[] times = floors.clone();
    int[] because = new int[nodes];
    Arrays.fill(because, NONE);
    boolean[] changed = new boolean[nodes];
    Arrays.fill(changed, true);
    boolean any = true;
    while (any) {
      boolean[] next = new boolean[nodes];
      any = false;
      for (int i = 0; i < nodes; i++) {
        if (!changed[i]) {
          continue;
        }
        for (int k = head[i]; k < head[i + 1]; k++) {
          int arc = out[k];
          if (times[i] + length[arc] > times[to[arc]]) {
            times[to[arc]] = times[i] + length[arc];
            because[to[arc]] = arc;
            next[to[arc]] = true;
            any = true;
          }
        }
      }
      int on = any ? onCycle(because) : NONE;
      if (on != NONE) {
        return cycle(because, on);
      }
      changed = next;
    }
    return new Times(this, times, because);
  }

  /** A node that is its own predecessor by way of others. */
  private int onCycle(int[] because) {
    int[] seen = new int[nodes];
    for (int start = 0; start < nodes; start++) {
      int v = start;
      while (seen[v] == 0 && because[v] != NONE) {
        seen[v] = start + 1;
        v = from[because[v]];
      }
      if (seen[v] == start + 1) {
        return v;
      }
      seen[v] = seen[v] == 0 ? start + 1 : seen[v];
    }
    return NONE;
  }

  private Cycle cycle(int[] because, int on) {
    int first = on;
    for (int v = from[because[on]]; v != on; v = from[because[v]]) {
      first = Math.min(first, v);
    }
    List<Integer> arcs = new ArrayList<>();
    int sum = 0;
    int v = first;
    do {
      arcs.add(because[v]);
      sum += length[because[v]];
      v = from[because[v]];
    } while (v != first);
    Collections.reverse(arcs);
    return new Cycle(arcs, sum);
  }
}
