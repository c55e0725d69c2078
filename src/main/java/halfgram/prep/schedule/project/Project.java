package halfgram.prep.schedule.project;

import java.util.Arrays;
import java.util.List;

/**
 * Activities that take time and units of renewable resources, with arcs "start of j at least d
 * after start of i"; a negative d is a maximum lag (j may start at most -d before i, so i at most
 * -d after j). Activity 0 starts at 0, every other one no earlier. Whole units of time throughout.
 *
 * <p>A schedule is an array of starts, by activity. Its makespan is the latest start plus duration.
 *
 * <p>Source of the model: K. Neumann, C. Schwindt, J. Zimmermann, Project Scheduling with Time
 * Windows and Scarce Resources (2003), chapter 1.
 */
public final class Project {
  /** Most activities of a project. */
  public static final int MOST_ACTIVITIES = 1_200;

  /** Most resources of a project. */
  public static final int MOST_RESOURCES = 32;

  /** The largest number anywhere in a project, by absolute value. */
  public static final int MOST = 100_000;

  /** The longest time all of it may take one after another, see {@link #horizon}. */
  public static final int MOST_HORIZON = 1_000_000;

  /** The label of the rule that nothing starts before activity 0. */
  public static final int START = -1;

  /** {@code to} starts at least {@code length} after {@code from} starts. */
  public record Arc(int from, int to, int length) {}

  private final int firstNumber;
  private final int[] durations;
  private final int[][] demands;
  private final int[] capacities;
  private final List<Arc> arcs;

  /**
   * A project.
   *
   * @param firstNumber what activity 0 is called in its text; the others count on from there
   * @param durations by activity, not negative
   * @param demands units by activity and resource, not negative
   * @param capacities units by resource, not negative
   * @throws IllegalArgumentException when the shapes disagree or a number is beyond its limit;
   *     readers refuse such texts before
   */
  public Project(
      int firstNumber, int[] durations, int[][] demands, int[] capacities, List<Arc> arcs) {
    this.firstNumber = firstNumber;
    this.durations = durations.clone();
    this.demands = Arrays.stream(demands).map(int[]::clone).toArray(int[][]::new);
    this.capacities = capacities.clone();
    this.arcs = List.copyOf(arcs);
    check();
  }

  private void check() {
    int n = durations.length;
    boolean good = n >= 1 && n <= MOST_ACTIVITIES && demands.length == n;
    good = good && Arrays.stream(durations).allMatch(d -> d >= 0 && d <= MOST);
    good = good && Arrays.stream(capacities).allMatch(c -> c >= 0 && c <= MOST);
    for (int[] row : demands) {
      good =
          good
              && row.length == capacities.length
              && Arrays.stream(row).allMatch(d -> d >= 0 && d <= MOST);
    }
    for (Arc arc : arcs) {
      good = good && arc.from() >= 0 && arc.from() < n && arc.to() >= 0 && arc.to() < n;
      good = good && Math.abs(arc.length()) <= MOST;
    }
    if (!good || horizon(durations, arcs) > MOST_HORIZON) {
      throw new IllegalArgumentException("no project: " + n + " activities, " + arcs.size());
    }
  }

  /**
   * The time by which everything is over when it is scheduled one after another, from the start or
   * from the end: durations, or lags where they are longer.
   */
  static long horizon(int[] durations, List<Arc> arcs) {
    long[] onwards = Arrays.stream(durations).asLongStream().toArray();
    long[] back = onwards.clone();
    for (Arc arc : arcs) {
      int i = arc.from();
      int j = arc.to();
      onwards[i] = Math.max(onwards[i], arc.length());
      back[j] = Math.max(back[j], (long) arc.length() - durations[i] + durations[j]);
    }
    return Math.max(Arrays.stream(onwards).sum(), Arrays.stream(back).sum());
  }

  /** How many activities, those that mark start and end among them. */
  public int size() {
    return durations.length;
  }

  public int duration(int activity) {
    return durations[activity];
  }

  public int resources() {
    return capacities.length;
  }

  public int capacity(int resource) {
    return capacities[resource];
  }

  public int demand(int activity, int resource) {
    return demands[activity][resource];
  }

  public List<Arc> arcs() {
    return arcs;
  }

  /** What an activity is called in its text. */
  public int number(int activity) {
    return firstNumber + activity;
  }

  int horizon() {
    return (int) horizon(durations, arcs);
  }

  /** The latest start plus duration. */
  public int makespan(int[] starts) {
    int end = 0;
    for (int i = 0; i < durations.length; i++) {
      end = Math.max(end, starts[i] + durations[i]);
    }
    return end;
  }

  /**
   * The arcs as a network, labelled by their place in {@link #arcs}, and that nothing starts before
   * activity 0, labelled {@link #START}.
   */
  public Network network() {
    return within(Network.of(size())).build();
  }

  /** Puts the arcs of {@link #network} into another. */
  Network.Builder within(Network.Builder network) {
    for (int a = 0; a < arcs.size(); a++) {
      network.arc(arcs.get(a).from(), arcs.get(a).to(), arcs.get(a).length(), a);
    }
    for (int i = 1; i < size(); i++) {
      network.arc(0, i, 0, START);
    }
    return network;
  }
}
