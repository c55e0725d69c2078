package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/** A workday as arrays: what the engine reads in its inner loops. Nothing in it changes. */
final class Layout {
  /** Later than anything. */
  static final int NEVER = Integer.MAX_VALUE / 4;

  final Workday day;
  final int slots;
  final int size;
  final int[] length;
  final int[] handsOn;
  final int[] hands;
  final int[] earliest;
  final int[][] able;
  final Job.Use[][] uses;
  final Job.Keep[][] keeps;
  final int[] leaves;
  final int[] due;
  final int[] fresh;
  final int[] slack;
  final long[] weight;
  final int[] before;
  final int[][] cooksBefore;
  final int[][] unitsBefore;
  final int[] fixed;
  final Between[][] in;
  final Between[][] out;

  /** The job that takes out what stands; -1: none. And for how many of its slots it stands yet. */
  final int[] until;

  final int[] holds;

  /** The job whose machines a job empties; -1: none. */
  final int[] frees;

  /** First slots by lags alone, from the earliest starts; and last ends by lags, from the dues. */
  final int[] head;

  final int[] target;

  /** Free slots of each cook as bits. */
  final long[][] here;

  final int[] crew;
  final int[] mayWork;

  /** Half hours of the rushes, and hundredths of slots of the share that is planned, negative. */
  final int[] bucketFrom;

  final int[] bucketTo;
  final long[] bucketLoad;
  private final int[] bucketAt;
  final int[] skills;
  final int[] wash;

  /** Slots of each wash with hands on it, 0 where nobody's are needed; and whose they can be. */
  final int[] scrub;

  final int[][] washers;

  /** Whether anything is washed by hand. */
  final boolean washesByHand;

  private final boolean[][] cleans;

  /** Whether longest times that yield do. */
  final boolean yielding;

  Layout(Workday day, boolean yielding) {
    this.day = day;
    this.yielding = yielding;
    slots = day.slots();
    size = day.jobs().size();
    length = new int[size];
    handsOn = new int[size];
    hands = new int[size];
    earliest = new int[size];
    able = new int[size][];
    uses = new Job.Use[size][];
    leaves = new int[size];
    due = new int[size];
    fresh = new int[size];
    slack = new int[size];
    weight = new long[size];
    before = new int[size];
    cooksBefore = new int[size][];
    unitsBefore = new int[size][];
    fixed = new int[size];
    for (int j = 0; j < size; j++) {
      read(j, day.jobs().get(j));
    }
    keeps = keeps(day);
    in = ends(day.lags(), false);
    out = ends(day.lags(), true);
    until = new int[size];
    holds = new int[size];
    frees = new int[size];
    Arrays.fill(until, -1);
    Arrays.fill(frees, -1);
    for (Between lag : day.lags()) {
      if (lag.isHeld()) {
        until[lag.from()] = lag.to();
        holds[lag.from()] = lag.holds();
        frees[lag.to()] = lag.from();
      }
    }
    head = heads();
    target = targets();
    int cooks = day.cooks().size();
    here = new long[cooks][(slots >> 6) + 1];
    crew = new int[slots];
    mayWork = new int[cooks];
    skills = new int[cooks];
    for (int c = 0; c < cooks; c++) {
      shift(c, day.cooks().get(c));
    }
    List<int[]> buckets = new ArrayList<>();
    for (Cook.Span rush : day.rushes()) {
      for (int t = rush.from(); t < rush.to(); t += BUCKET) {
        buckets.add(new int[] {t, Math.min(rush.to(), t + BUCKET)});
      }
    }
    buckets.sort(Comparator.comparingInt(one -> one[0]));
    bucketFrom = buckets.stream().mapToInt(one -> one[0]).toArray();
    bucketTo = buckets.stream().mapToInt(one -> one[1]).toArray();
    bucketAt = new int[slots];
    for (int t = 0; t < slots; t++) {
      int b = t == 0 ? 0 : bucketAt[t - 1];
      while (b < bucketTo.length && bucketTo[b] <= t) {
        b++;
      }
      bucketAt[t] = b;
    }
    bucketLoad = new long[buckets.size()];
    for (int b = 0; b < bucketLoad.length; b++) {
      for (int t = Math.max(0, bucketFrom[b]); t < Math.min(slots, bucketTo[b]); t++) {
        bucketLoad[b] -= (long) day.prices().rushPercent() * crew[t];
      }
    }
    int kinds = day.cleans().size();
    cleans = new boolean[kinds][kinds];
    for (int a = 0; a < kinds; a++) {
      for (int b = 0; b < kinds; b++) {
        cleans[a][b] = day.cleans().get(a).get(b);
      }
    }
    wash = day.machines().stream().mapToInt(Machine::wash).toArray();
    scrub = day.machines().stream().mapToInt(m -> m.washers().isEmpty() ? 0 : m.scrub()).toArray();
    washers =
        day.machines().stream()
            .map(m -> m.washers().stream().mapToInt(Integer::intValue).sorted().toArray())
            .toArray(int[][]::new);
    washesByHand = Arrays.stream(scrub).anyMatch(some -> some > 0);
  }

  /** Slots that are levelled together. */
  private static final int BUCKET = 6;

  private void read(int j, Job job) {
    length[j] = job.length();
    handsOn[j] = job.handsOn();
    hands[j] = job.hands();
    earliest[j] = job.earliest();
    able[j] = job.able().stream().mapToInt(Integer::intValue).sorted().toArray();
    uses[j] = job.uses().toArray(Job.Use[]::new);
    leaves[j] = job.leaves();
    due[j] = job.due().map(Job.Due::slot).orElse(NEVER);
    fresh[j] = job.due().map(of -> of.fresh().orElse(NEVER)).orElse(NEVER);
    slack[j] = job.due().map(Job.Due::slack).orElse(0);
    weight[j] = job.due().map(Job.Due::weight).orElse(0);
    before[j] = job.previous().map(Job.Spot::start).orElse(-1);
    cooksBefore[j] = job.previous().map(Layout::cooks).orElse(new int[0]);
    unitsBefore[j] =
        job.previous()
            .map(spot -> spot.units().stream().mapToInt(Integer::intValue).toArray())
            .orElse(new int[0]);
    fixed[j] = job.fixed().map(Job.Spot::start).orElse(-1);
    if (fixed[j] >= 0) {
      cooksBefore[j] = job.fixed().map(Layout::cooks).orElseThrow();
    }
  }

  /** The space that each takes, where it could ever be too little for all of them. */
  private static Job.Keep[][] keeps(Workday day) {
    long[] most = new long[day.spaces().size()];
    for (int s = 0; s < most.length; s++) {
      most[s] = day.spaces().get(s).taken().stream().mapToInt(i -> i).max().orElse(0);
    }
    for (Job job : day.jobs()) {
      job.keeps().forEach(keep -> most[keep.space()] += keep.amount());
    }
    return day.jobs().stream()
        .map(
            job ->
                job.keeps().stream()
                    .filter(keep -> most[keep.space()] > day.spaces().get(keep.space()).room())
                    .toArray(Job.Keep[]::new))
        .toArray(Job.Keep[][]::new);
  }

  private static int[] cooks(Job.Spot spot) {
    return spot.cooks().stream().mapToInt(Integer::intValue).sorted().toArray();
  }

  private Between[][] ends(List<Between> lags, boolean from) {
    List<List<Between>> ends = new ArrayList<>();
    for (int j = 0; j < size; j++) {
      ends.add(new ArrayList<>());
    }
    lags.forEach(lag -> ends.get(from ? lag.from() : lag.to()).add(lag));
    return ends.stream().map(one -> one.toArray(Between[]::new)).toArray(Between[][]::new);
  }

  private int[] heads() {
    int[] first = new int[size];
    for (int j = 0; j < size; j++) {
      first[j] = fixed[j] >= 0 ? fixed[j] : earliest[j];
    }
    boolean moved = true;
    for (int round = 0; moved && round <= size; round++) {
      moved = false;
      for (Between lag : day.lags()) {
        int to = lag.to();
        int least = first[lag.from()] + length[lag.from()] + lag.min();
        if (fixed[to] < 0 && least > first[to]) {
          first[to] = least;
          moved = true;
        }
        if (isHard(lag)) {
          int from = lag.from();
          least = first[to] - lag.max().getAsInt() - length[from];
          if (fixed[from] < 0 && least > first[from]) {
            first[from] = least;
            moved = true;
          }
        }
      }
    }
    return first;
  }

  private int[] targets() {
    int[] last = new int[size];
    for (int j = 0; j < size; j++) {
      last[j] =
          fixed[j] >= 0
              ? fixed[j] + length[j]
              : Math.min(due[j] == NEVER ? slots : due[j] - slack[j], slots);
    }
    boolean moved = true;
    for (int round = 0; moved && round <= size; round++) {
      moved = false;
      for (Between lag : day.lags()) {
        int most = last[lag.to()] - length[lag.to()] - lag.min();
        if (fixed[lag.from()] < 0 && most < last[lag.from()]) {
          last[lag.from()] = most;
          moved = true;
        }
      }
    }
    return last;
  }

  private void shift(int c, Cook cook) {
    skills[c] = cook.skills();
    for (Cook.Span span : cook.here()) {
      for (int t = Math.max(0, span.from()); t < Math.min(slots, span.to()); t++) {
        if ((here[c][t >> 6] & (1L << t)) == 0) {
          here[c][t >> 6] |= 1L << t;
          crew[t]++;
          mayWork[c]++;
        }
      }
    }
  }

  /** Whether a lag has a longest time that holds. */
  boolean isHard(Between lag) {
    return lag.max().isPresent() && !(yielding && lag.yields());
  }

  /** The first half hour of a rush that does not end before a slot. */
  int bucketAt(int slot) {
    return slot < 0 ? 0 : slot < slots ? bucketAt[slot] : bucketFrom.length;
  }

  boolean isFixed(int j) {
    return fixed[j] >= 0;
  }

  /** First slot of the part of a job that needs a machine, counted from its start. */
  int from(int j, Job.Use use) {
    return use.during() == Job.During.ALONE ? handsOn[j] : 0;
  }

  /** The slot after the part of a job that needs a machine, counted from its start. */
  int to(int j, Job.Use use) {
    return use.during() == Job.During.HANDS ? handsOn[j] : length[j];
  }

  /** Slots a machine stands between two jobs. */
  int wash(int machine, int earlier, int later) {
    return cleans[leaves[earlier]][leaves[later]] ? wash[machine] : 0;
  }

  /**
   * The slot by which hands have to be off a wash.
   *
   * @param from when the machine is needed
   * @param start when the job that needs it begins
   */
  int scrubbed(int machine, int from, int start) {
    return Math.min(from - (wash[machine] - scrub[machine]), start);
  }

  boolean isCookBefore(int j, int cook) {
    return isAmong(cook, cooksBefore[j]);
  }

  /** Whether somebody is one of a few. */
  static boolean isAmong(int cook, int[] few) {
    for (int one : few) {
      if (one == cook) {
        return true;
      }
    }
    return false;
  }
}
