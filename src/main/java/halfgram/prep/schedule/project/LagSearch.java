package halfgram.prep.schedule.project;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * The search for projects with maximum lags: as {@link PrecedenceSearch}, with serial generation
 * that unschedules. Activities at which attempts ended in vain come earlier in the lists that begin
 * anew.
 *
 * <p>Source: F. Ballestín, A. Barrios, V. Valls, An evolutionary algorithm for the
 * resource-constrained project scheduling problem with minimum and maximum time lags, Journal of
 * Scheduling 14 (2011).
 */
final class LagSearch implements Search {
  private static final int MEMBERS = 50;
  private static final int STALL = 3000;

  private final int size;
  private final int[] durations;
  private final LagGeneration forward;
  private final LagGeneration backward;
  private final ByTime byTime;
  private final SplittableRandom random;
  private final Population population;

  /** The least time from an activity's completion to the end of all. */
  private final int[] tails;

  private final int longestTail;

  /** How often an attempt ended at an activity. */
  private final int[] vain;

  private final int[] base;
  private final int[] starts;
  private final int[] candidate;
  private final int[] mirrored;
  private final int[] times;
  private final int[] list;
  private boolean wasNew;
  private int sinceBetter;
  private int makespan = Integer.MAX_VALUE;
  private int[] best = {};

  LagSearch(Project project, Closure closure, long seed) {
    size = project.size();
    durations = new int[size];
    base = new int[size];
    for (int i = 0; i < size; i++) {
      durations[i] = project.duration(i);
      base[i] = i;
    }
    Timetable timetable = new Timetable(project, project.horizon());
    forward = LagGeneration.forward(project, closure, timetable);
    backward = LagGeneration.backward(project, closure, timetable);
    byTime = new ByTime(size);
    random = new SplittableRandom(seed);
    population = new Population(MEMBERS, size, random);
    tails = backward.floors();
    longestTail = Math.max(1, Arrays.stream(tails).max().orElse(1));
    vain = new int[size];
    starts = new int[size];
    candidate = new int[size];
    mirrored = new int[size];
    times = new int[size];
    list = new int[size];
  }

  @Override
  public int makespan() {
    return makespan;
  }

  @Override
  public int[] starts() {
    return best.clone();
  }

  @Override
  public void step() {
    if (population.isFull() || (population.canBreed() && !wasNew)) {
      population.cross(list);
      population.mutate(list);
    } else {
      sample();
    }
    sinceBetter++;
    int first = forward.decode(list, starts);
    if (first < 0) {
      vain[forward.failed()]++;
    } else {
      int span = justified(first);
      if (span < makespan) {
        makespan = span;
        best = starts.clone();
        sinceBetter = 0;
      }
      byTime.sort(base, starts, list);
      wasNew = population.keep(list, span, starts);
    }
    if (sinceBetter > STALL) {
      sinceBetter = 0;
      population.clear();
      Arrays.fill(vain, 0);
    }
  }

  /** A list by latest finish with noise, what was in vain earlier. */
  private void sample() {
    boolean isFirst = makespan == Integer.MAX_VALUE && sinceBetter == 0;
    int noise = 1;
    if (!isFirst) {
      noise +=
          random.nextInt(1 + (random.nextInt(8) == 0 ? 2 * longestTail : longestTail * 6 / 10));
    }
    int most = Math.max(1, Arrays.stream(vain).max().orElse(1));
    int push = isFirst ? 0 : random.nextInt(1 + longestTail / 2);
    for (int i = 0; i < size; i++) {
      times[i] = random.nextInt(noise) - tails[i] - (int) ((long) push * vain[i] / most);
    }
    byTime.sort(base, times, list);
  }

  /** Right and left while that gains; the starts are of the last left one that came to an end. */
  private int justified(int first) {
    int span = first;
    while (true) {
      byCompletion(starts);
      if (backward.decode(list, mirrored) < 0) {
        return span;
      }
      byCompletion(mirrored);
      int after = forward.decode(list, candidate);
      if (after < 0 || after > span) {
        return span;
      }
      System.arraycopy(candidate, 0, starts, 0, size);
      if (after == span) {
        return span;
      }
      span = after;
    }
  }

  private void byCompletion(int[] from) {
    for (int i = 0; i < size; i++) {
      times[i] = -from[i] - durations[i];
    }
    byTime.sort(base, times, list);
  }
}
