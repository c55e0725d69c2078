package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Made-up kitchen days: how long a first whole plan takes, how far from the best plan found a
 * second and two are, what an overrun of twenty minutes changes, and how the first plan grows to
 * two thousand jobs of a week. Every plan is checked before it is counted.
 *
 * <p>Run it as a program; an argument is the seconds that the best plan is looked for (60).
 */
public final class WorkdayBench {
  private static final int SEEDS = 4;
  private static final int ENDLESS = 50_000_000;

  private WorkdayBench() {}

  public static void main(String[] args) {
    double longest = args.length > 0 ? Double.parseDouble(args[0]) : 60;
    for (int i = 0; i < 20; i++) {
      place(MadeUpDay.ofSize(150, 90 + i), Budget.of(200, 1));
    }
    for (int jobs : List.of(40, 150, 400)) {
      size(jobs, longest);
    }
    for (int jobs : List.of(250, 500, 1000, 2000)) {
      week(jobs);
    }
  }

  private static Rota place(Workday day, Budget budget) {
    Rota rota = Scheduler.place(day, budget);
    List<String> wrong = Checker.wrong(day, rota);
    if (!wrong.isEmpty()) {
      throw new IllegalStateException(wrong.toString());
    }
    return rota;
  }

  private static Rota within(Workday day, double seconds, int iterations) {
    long end = System.nanoTime() + (long) (seconds * 1e9);
    return place(day, Budget.of(iterations, 1).twice().until(() -> System.nanoTime() > end));
  }

  private static void size(int jobs, double longest) {
    List<Double> first = new ArrayList<>();
    double one = 0;
    double two = 0;
    List<Integer> changed = new ArrayList<>();
    int whole = 0;
    for (long seed = 1; seed <= SEEDS; seed++) {
      Workday day = MadeUpDay.ofSize(jobs, seed);
      long start = System.nanoTime();
      Rota rota = place(day, Budget.of(0, 1));
      first.add((System.nanoTime() - start) / 1e6);
      whole += rota.isComplete() ? 1 : 0;
      int rate = rate(day);
      Rota second = within(day, 1, rate);
      Rota third = within(day, 2, 2 * rate);
      Rota best = within(day, longest, (int) Math.min(ENDLESS, longest * rate));
      double least =
          Math.min(best.bill().total(), Math.min(second.bill().total(), third.bill().total()));
      if (jobs == 40) {
        least = Math.min(least, MadeUpDay.LEAST_OF_FORTY.get((int) seed - 1));
      }
      one += second.bill().total() / least / SEEDS;
      two += third.bill().total() / least / SEEDS;
      changed.add(overrun(day, third));
    }
    first.sort(null);
    changed.sort(null);
    System.out.printf(
        Locale.ROOT,
        "%d jobs: first plan %.1f ms (median), whole %d of %d; 1 s %.2f and 2 s %.2f times the"
            + " best found; changed by an overrun %s%n",
        jobs,
        first.get(first.size() / 2),
        whole,
        SEEDS,
        one,
        two,
        changed);
  }

  /** Iterations that a second allows here. */
  private static int rate(Workday day) {
    long start = System.nanoTime();
    Scheduler.place(day, Budget.of(1000, 2).twice());
    double seconds = (System.nanoTime() - start) / 1e9;
    return (int) Math.max(500, 1000 / seconds);
  }

  /** Somebody takes twenty minutes longer about noon: how many are elsewhere or with another. */
  private static int overrun(Workday day, Rota before) {
    int now = MadeUpDay.NOON;
    List<Job> jobs = new ArrayList<>();
    boolean longer = false;
    for (int j = 0; j < day.jobs().size(); j++) {
      Job job = day.jobs().get(j);
      Optional<Rota.Place> place = before.places().get(j);
      if (place.isEmpty()) {
        jobs.add(job);
        continue;
      }
      Job.Spot spot = new Job.Spot(place.get().start(), place.get().cooks(), place.get().units());
      boolean running = spot.start() < now && spot.start() + job.handsOn() >= now - 1;
      boolean overruns = !longer && running && job.handsOn() > 0 && job.alone() == 0;
      longer |= overruns;
      Job known = overruns ? longer(job) : job;
      jobs.add(spot.start() < now ? known.fixedAt(spot) : known.after(spot));
    }
    Workday later = day.with(jobs, day.lags(), day.machines());
    Rota after = within(later, 1, rate(later));
    int changed = 0;
    for (int j = 0; j < jobs.size(); j++) {
      Optional<Rota.Place> was = before.places().get(j);
      Optional<Rota.Place> is = after.places().get(j);
      boolean same =
          was.isPresent() == is.isPresent()
              && (was.isEmpty()
                  || (Math.abs(was.get().start() - is.get().start()) <= 3
                      && was.get().cooks().equals(is.get().cooks())));
      changed += same ? 0 : 1;
    }
    return changed;
  }

  private static Job longer(Job job) {
    return new Job(
        job.id(),
        job.earliest(),
        job.hands(),
        job.handsOn() + 4,
        job.alone(),
        job.able(),
        job.uses(),
        job.keeps(),
        job.leaves(),
        job.due(),
        job.previous(),
        job.fixed());
  }

  /** Seven days one after the other. */
  private static void week(int jobs) {
    Workday week = MadeUpDay.week(jobs, 1);
    place(week, Budget.of(0, 1));
    List<Double> times = new ArrayList<>();
    for (int i = 0; i < 5; i++) {
      long start = System.nanoTime();
      Rota rota = Scheduler.place(week, Budget.of(0, 1 + i));
      times.add((System.nanoTime() - start) / 1e6);
      if (i == 0) {
        System.out.printf("%d jobs of a week, whole: %b", week.jobs().size(), rota.isComplete());
      }
    }
    times.sort(null);
    System.out.printf(Locale.ROOT, "; first plan %.1f ms%n", times.get(2));
  }
}
