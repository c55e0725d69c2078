package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SplittableRandom;

/**
 * A seeded kitchen day for measuring and for laws: invented, in the shapes of the trade. From 07:00
 * to 23:00 in slots of five minutes; dishes of one to three components, some shared by two dishes;
 * what is cooked is chilled at once, dough rests and must not rest too long, what is made keeps for
 * some hours; dishes are due at 12:30 or 19:00; machines of the wet sort are washed between what
 * does not go together.
 */
public final class MadeUpDay {
  static final int SLOTS = 192;
  static final int NOON = 66;
  static final int EVENING = 144;

  /**
   * Least costs known of the days of 40 tasks by seed, from 1: the third is proved by a general
   * solver ({@code Optimum}), the others are the best of that one and of our own long searches.
   */
  static final List<Long> LEAST_OF_FORTY = List.of(63L, 41L, 17L, 29L);

  private static final int SKILLS = 5;
  private static final int[][] SHIFTS = {{0, 102}, {24, 138}, {60, 192}};

  private final SplittableRandom random;
  private final int cooks;
  private final int kinds;
  private final List<Raw> raws = new ArrayList<>();
  private final List<Between> lags = new ArrayList<>();
  private final List<boolean[]> skills = new ArrayList<>();
  private final List<Cook> crew = new ArrayList<>();
  private final List<Machine> machines = new ArrayList<>();

  private record Raw(
      double handsOn, double alone, int skill, int machine, int leaves, Optional<Job.Due> due) {}

  private MadeUpDay(long seed, int cooks, int kinds) {
    this.random = new SplittableRandom(seed);
    this.cooks = cooks;
    this.kinds = kinds;
  }

  /**
   * A day.
   *
   * @param load share of the cooks' time before the evening service that hands-on work takes
   */
  public static Workday of(long seed, int tasks, int cooks, int kinds, double load) {
    return new MadeUpDay(seed, cooks, kinds).day(tasks, load);
  }

  /** As measured: 40 tasks with three cooks, 150 with six, 400 with ten. */
  public static Workday ofSize(int tasks, long seed) {
    return tasks <= 40
        ? of(seed, tasks, 3, 5, 0.55)
        : tasks <= 150 ? of(seed, tasks, 6, 6, 0.62) : of(seed, tasks, 10, 6, 0.66);
  }

  /** Seven days, each with a seventh of the tasks, with the same people and machines. */
  public static Workday week(int tasks, long seed) {
    List<Workday> days = new ArrayList<>();
    for (int d = 0; d < 7; d++) {
      days.add(of(seed, tasks / 7, 10, 6, 0.5));
    }
    List<Job> jobs = new ArrayList<>();
    List<Between> lags = new ArrayList<>();
    List<Cook> crew = new ArrayList<>();
    List<Cook.Span> rushes = new ArrayList<>();
    for (int d = 0; d < 7; d++) {
      int first = jobs.size();
      int from = d * SLOTS;
      for (Job job : days.get(d).jobs()) {
        jobs.add(later(job, d, from));
      }
      for (Between lag : days.get(d).lags()) {
        lags.add(
            new Between(
                first + lag.from(),
                first + lag.to(),
                lag.min(),
                lag.max(),
                lag.yields(),
                lag.dear()));
      }
      days.get(d).rushes().forEach(r -> rushes.add(new Cook.Span(r.from() + from, r.to() + from)));
    }
    for (Cook cook : days.get(0).cooks()) {
      List<Cook.Span> here = new ArrayList<>();
      for (int d = 0; d < 7; d++) {
        int from = d * SLOTS;
        cook.here().forEach(s -> here.add(new Cook.Span(s.from() + from, s.to() + from)));
      }
      crew.add(new Cook(cook.id(), here, cook.skills()));
    }
    Workday one = days.get(0);
    return new Workday(
        7 * SLOTS,
        jobs,
        lags,
        crew,
        one.machines(),
        List.of(new Space("cold", 4 * tasks, List.of())),
        one.cleans(),
        rushes,
        Prices.USUAL);
  }

  private static Job later(Job job, int day, int from) {
    return new Job(
        day + "/" + job.id(),
        from,
        job.hands(),
        job.handsOn(),
        job.alone(),
        job.able(),
        job.uses(),
        List.of(new Job.Keep(0, 1, from + EVENING)),
        job.leaves(),
        job.due()
            .map(due -> new Job.Due(due.slot() + from, due.weight(), due.fresh(), due.slack())),
        Optional.empty(),
        Optional.empty());
  }

  private Workday day(int tasks, double load) {
    people();
    for (int m = 0; m < kinds; m++) {
      machines.add(new Machine("machine-" + m, 1 + cooks / 4, m % 2 == 0 ? 2 : 0, List.of()));
    }
    List<Integer> shared = new ArrayList<>();
    while (raws.size() < tasks) {
      dish(tasks, shared);
    }
    double before = 0;
    for (Cook cook : crew) {
      for (Cook.Span span : cook.here()) {
        before += Math.max(0, Math.min(span.to(), EVENING) - span.from());
      }
    }
    double work = raws.stream().mapToDouble(Raw::handsOn).sum();
    double scale = load * before / work;
    List<Job> jobs = new ArrayList<>();
    for (int j = 0; j < raws.size(); j++) {
      jobs.add(job(j, raws.get(j), scale));
    }
    List<List<Boolean>> cleans =
        List.of(
            List.of(false, true, false), List.of(true, false, true), List.of(true, true, false));
    return new Workday(
        SLOTS,
        jobs,
        lags,
        crew,
        machines,
        List.of(new Space("cold", 4 * tasks, List.of())),
        cleans,
        List.of(new Cook.Span(NOON - 24, NOON), new Cook.Span(EVENING - 24, EVENING)),
        Prices.USUAL);
  }

  private void people() {
    for (int c = 0; c < cooks; c++) {
      boolean[] can = new boolean[SKILLS];
      int count = 2 + random.nextInt(SKILLS - 1);
      for (int k = 0; k < count; k++) {
        can[random.nextInt(SKILLS)] = true;
      }
      can[c % SKILLS] = true;
      skills.add(can);
    }
    for (int s = 0; s < SKILLS; s++) {
      skills.get(s % cooks)[s] = true;
      skills.get((s + 1) % cooks)[s] = true;
    }
    for (int c = 0; c < cooks; c++) {
      int[] shift = SHIFTS[c % SHIFTS.length];
      int pause = shift[0] + 48;
      List<Cook.Span> here =
          List.of(new Cook.Span(shift[0], pause), new Cook.Span(pause + 6, shift[1]));
      int can = 0;
      for (boolean one : skills.get(c)) {
        can += one ? 1 : 0;
      }
      crew.add(new Cook("cook-" + c, here, can));
    }
  }

  private void dish(int tasks, List<Integer> shared) {
    int due = random.nextInt(5) == 0 ? NOON : EVENING;
    List<Integer> parts = new ArrayList<>();
    int components = 1 + random.nextInt(3);
    for (int k = 0; k < components && raws.size() < tasks - 1; k++) {
      if (due == EVENING && !shared.isEmpty() && random.nextInt(5) == 0) {
        parts.add(shared.get(random.nextInt(shared.size())));
      } else {
        int last = component();
        parts.add(last);
        if (due == EVENING) {
          shared.add(last);
        }
      }
    }
    Job.Due when = new Job.Due(due, 1 + random.nextInt(2), OptionalInt.of(24), 6);
    int finish = add(2 + random.nextInt(4), 0, -1, Optional.of(when));
    parts.stream()
        .distinct()
        .forEach(
            part ->
                lags.add(
                    new Between(
                        part, finish, 0, OptionalInt.of(24 + random.nextInt(60)), true, 1)));
  }

  private int component() {
    switch (random.nextInt(4)) {
      case 0 -> {
        int prep = add(3 + random.nextInt(4), 0, -1, Optional.empty());
        int cook = add(1 + random.nextInt(2), 4 + random.nextInt(8), any(), Optional.empty());
        int chill = add(0, 12 + random.nextInt(6), any(), Optional.empty());
        int portion = add(2 + random.nextInt(4), 0, -1, Optional.empty());
        link(prep, cook, 0, -1, false);
        link(cook, chill, 0, 3, false);
        link(chill, portion, 0, 24, true);
        return portion;
      }
      case 1 -> {
        int mix = add(2 + random.nextInt(3), 0, any(), Optional.empty());
        int shape = add(2 + random.nextInt(4), 0, -1, Optional.empty());
        int bake = add(1, 4 + random.nextInt(6), any(), Optional.empty());
        int rest = 12 + random.nextInt(12);
        link(mix, shape, rest, rest + 12, true);
        link(shape, bake, 0, 6, true);
        return bake;
      }
      case 2 -> {
        int prep = add(3 + random.nextInt(3), 0, -1, Optional.empty());
        int bath = add(0, 8 + random.nextInt(12), any(), Optional.empty());
        int sear = add(2 + random.nextInt(2), 0, any(), Optional.empty());
        link(prep, bath, 0, 12, true);
        link(bath, sear, 0, 6, true);
        return sear;
      }
      default -> {
        int scale = add(1 + random.nextInt(2), 0, -1, Optional.empty());
        int blend = add(1 + random.nextInt(3), 0, any(), Optional.empty());
        int strain = add(1 + random.nextInt(3), 0, -1, Optional.empty());
        link(scale, blend, 6 + random.nextInt(12), -1, false);
        link(blend, strain, 0, 2, true);
        return strain;
      }
    }
  }

  private int any() {
    return random.nextInt(kinds);
  }

  private int add(int handsOn, int alone, int machine, Optional<Job.Due> due) {
    raws.add(new Raw(handsOn, alone, random.nextInt(SKILLS), machine, random.nextInt(3), due));
    return raws.size() - 1;
  }

  private void link(int from, int to, int min, int max, boolean yields) {
    lags.add(
        new Between(from, to, min, max < 0 ? OptionalInt.empty() : OptionalInt.of(max), yields, 0));
  }

  private Job job(int j, Raw raw, double scale) {
    int handsOn =
        raw.handsOn == 0 ? 0 : (int) Math.max(1, Math.min(24, Math.round(raw.handsOn * scale)));
    List<Integer> able = new ArrayList<>();
    for (int c = 0; handsOn > 0 && c < cooks; c++) {
      if (skills.get(c)[raw.skill]) {
        able.add(c);
      }
    }
    List<Job.Use> uses =
        raw.machine < 0 ? List.of() : List.of(new Job.Use(raw.machine, 1, Job.During.WHOLE));
    return new Job(
        "job-" + j,
        0,
        handsOn == 0 ? 0 : 1,
        handsOn,
        (int) raw.alone,
        able,
        uses,
        List.of(new Job.Keep(0, 1, EVENING)),
        raw.leaves,
        raw.due,
        Optional.empty(),
        Optional.empty());
  }
}
