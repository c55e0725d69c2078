package halfgram.prep.schedule.project;

import java.util.SplittableRandom;

/**
 * The search for projects without maximum lags. Lists by latest finish, with more or less noise,
 * are bred with each other; each is scheduled serially and then justified to the right and to the
 * left until that gains nothing. When nothing has been gained for long, it begins anew.
 *
 * <p>Sources: R. Kolisch, Serial and parallel resource-constrained project scheduling methods
 * revisited, European Journal of Operational Research 90 (1996); V. Valls, F. Ballestín, S.
 * Quintanilla, Justification and RCPSP: a technique that pays, European Journal of Operational
 * Research 165 (2005), and their hybrid genetic algorithm, ibid. 185 (2008).
 */
final class PrecedenceSearch implements Search {
  private static final int MEMBERS = 80;
  private static final int STALL = 4000;

  private final int size;
  private final int[] durations;
  private final Direction forward;
  private final Direction backward;
  private final int[] forwardBase;
  private final int[] backwardBase;
  private final Timetable timetable;
  private final ByTime byTime;
  private final SplittableRandom random;
  private final Population population;

  /** The least time from an activity's completion to the end of all. */
  private final int[] tails;

  private final int longestTail;
  private final int[] starts;
  private final int[] candidate;
  private final int[] mirrored;
  private final int[] times;
  private final int[] list;
  private boolean wasNew;
  private int sinceBetter;
  private int makespan = Integer.MAX_VALUE;
  private int[] best = {};

  PrecedenceSearch(Project project, long seed) {
    forward = Direction.forward(project).orElseThrow();
    backward = Direction.backward(project).orElseThrow();
    size = project.size();
    durations = new int[size];
    for (int i = 0; i < size; i++) {
      durations[i] = project.duration(i);
    }
    forwardBase = forward.base();
    backwardBase = backward.base();
    timetable = new Timetable(project, project.horizon());
    byTime = new ByTime(size);
    random = new SplittableRandom(seed);
    population = new Population(MEMBERS, size, random);
    tails = backward.floors();
    int longest = 1;
    for (int tail : tails) {
      longest = Math.max(longest, tail);
    }
    longestTail = longest;
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
      if (population.mutate(list)) {
        forward.repair(list);
      }
    } else {
      sample();
    }
    int span = justified(decode(forward, starts));
    sinceBetter++;
    if (span < makespan) {
      makespan = span;
      best = starts.clone();
      sinceBetter = 0;
    }
    byTime.sort(forwardBase, starts, list);
    forward.repairIfNeeded(list);
    wasNew = population.keep(list, span, starts);
    if (sinceBetter > STALL) {
      sinceBetter = 0;
      population.clear();
    }
  }

  /** A list by latest finish with noise; the first of all without. */
  private void sample() {
    int noise = 1;
    if (makespan < Integer.MAX_VALUE) {
      noise +=
          random.nextInt(1 + (random.nextInt(8) == 0 ? 2 * longestTail : longestTail * 6 / 10));
    }
    for (int i = 0; i < size; i++) {
      times[i] = random.nextInt(noise) - tails[i];
    }
    byTime.sort(forwardBase, times, list);
    forward.repair(list);
  }

  /** Right and left until that gains nothing; the starts are of the last one that lost nothing. */
  private int justified(int first) {
    int span = first;
    while (true) {
      byCompletion(starts, backwardBase);
      backward.repairIfNeeded(list);
      decode(backward, mirrored);
      byCompletion(mirrored, forwardBase);
      forward.repairIfNeeded(list);
      int after = decode(forward, candidate);
      if (after <= span) {
        System.arraycopy(candidate, 0, starts, 0, size);
      }
      if (after >= span) {
        return span;
      }
      span = after;
    }
  }

  private void byCompletion(int[] from, int[] base) {
    for (int i = 0; i < size; i++) {
      times[i] = -from[i] - durations[i];
    }
    byTime.sort(base, times, list);
  }

  /** Serial schedule generation: each activity of the list as early as it can be. */
  private int decode(Direction direction, int[] into) {
    timetable.clear();
    int span = 0;
    for (int i : list) {
      int start = timetable.earliest(i, direction.floor(i, into));
      timetable.take(i, start);
      into[i] = start;
      span = Math.max(span, start + durations[i]);
    }
    return span;
  }
}
