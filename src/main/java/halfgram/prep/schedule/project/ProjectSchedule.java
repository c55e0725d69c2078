package halfgram.prep.schedule.project;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.function.Supplier;

/**
 * A short schedule of a project, or why there is none. Anytime: it stops at the budget, when the
 * guard says so, or when no shorter schedule can exist.
 *
 * <p>Two threads search from two seeds. The shorter schedule counts; among equally short ones that
 * which took fewer iterations, then that of the lower seed. So the answer depends on project, seed
 * and iterations alone, unless the guard stopped it.
 */
public final class ProjectSchedule {
  private static final int THREADS = 2;

  /** A makespan that none is. */
  private static final int NONE = -1;

  /** Iterations without a shorter schedule before it is tried to prove that there is none. */
  private static final int PATIENCE = 200;

  /** Most activities for which that is tried: it takes time by the cube of them. */
  private static final int MOST_PROVED = 400;

  /**
   * How long to search.
   *
   * @param seed of the first thread; the second has the next
   * @param iterations most lists that each thread tries, at least 1
   * @param goesOn asked after each of them by both threads; false stops
   */
  public record Budget(long seed, long iterations, BooleanSupplier goesOn) {}

  /** What came out. */
  public sealed interface Outcome permits Found, Impossible, Open {
    <T> T fold(
        Function<Found, T> found, Function<Impossible, T> impossible, Function<Open, T> open);
  }

  /** A schedule. */
  public static final class Found implements Outcome {
    private final int[] starts;
    private final int makespan;
    private final int bound;
    private final long iterations;

    private Found(int[] starts, int makespan, int bound, long iterations) {
      this.starts = starts.clone();
      this.makespan = makespan;
      this.bound = bound;
      this.iterations = iterations;
    }

    /** Starts by activity. */
    public int[] starts() {
      return starts.clone();
    }

    public int makespan() {
      return makespan;
    }

    /** What no makespan can be less than, as far as that is known. */
    public int bound() {
      return bound;
    }

    /** Whether no schedule is shorter. */
    public boolean isOptimal() {
      return bound == makespan;
    }

    /** Lists tried by the threads together. */
    public long iterations() {
      return iterations;
    }

    @Override
    public <T> T fold(
        Function<Found, T> found, Function<Impossible, T> impossible, Function<Open, T> open) {
      return found.apply(this);
    }
  }

  /** There is no schedule. */
  public record Impossible(Refusal why) implements Outcome {
    @Override
    public <T> T fold(
        Function<Found, T> found, Function<Impossible, T> impossible, Function<Open, T> open) {
      return impossible.apply(this);
    }
  }

  /** None was found in the budget, and it is not known that there is none. */
  public record Open(long iterations) implements Outcome {
    @Override
    public <T> T fold(
        Function<Found, T> found, Function<Impossible, T> impossible, Function<Open, T> open) {
      return open.apply(this);
    }
  }

  /** Is told of every shorter schedule as it is found, by both threads, one call at a time. */
  public interface Listener {
    void shorter(int makespan, int[] starts);
  }

  private ProjectSchedule() {}

  public static Outcome of(Project project, Budget budget) {
    return of(project, budget, (makespan, starts) -> {});
  }

  /** Searches; see the class. An interrupt stops the search like its guard. */
  public static Outcome of(Project project, Budget budget, Listener listener) {
    Optional<Refusal> tooMuch = ForcedOrders.tooMuch(project);
    if (tooMuch.isPresent()) {
      return new Impossible(tooMuch.get());
    }
    Optional<Direction> forward = Direction.forward(project);
    if (forward.isPresent()) {
      int least = Bounds.least(project, forward.get().floors());
      return new Race(project, budget, listener, least)
          .run(seed -> new PrecedenceSearch(project, seed));
    }
    ForcedOrders forced = ForcedOrders.of(project);
    if (forced.refusal().isPresent()) {
      return new Impossible(forced.refusal().get());
    }
    int[] floors = new int[project.size()];
    for (int i = 0; i < floors.length; i++) {
      floors[i] = forced.closure().get(0, i);
    }
    return new Race(project, budget, listener, Bounds.least(project, floors))
        .run(seed -> new LagSearch(project, forced.closure(), seed));
  }

  /** The threads of one search. */
  private static final class Race {
    private final Project project;
    private final Budget budget;
    private final Listener listener;
    private final int least;

    /** Iterations after which some thread knew that there is nothing shorter. */
    private final AtomicLong proved = new AtomicLong(Long.MAX_VALUE);

    private int told = Integer.MAX_VALUE;

    Race(Project project, Budget budget, Listener listener, int least) {
      this.project = project;
      this.budget = budget;
      this.listener = listener;
      this.least = least;
    }

    Outcome run(LongFunction<Search> start) {
      Runner[] runners = new Runner[THREADS];
      Thread[] threads = new Thread[THREADS];
      for (int t = 0; t < THREADS; t++) {
        long seed = budget.seed() + t;
        Runner runner = new Runner(this, () -> start.apply(seed));
        runners[t] = runner;
        threads[t] = new Thread(runner, "schedule-" + t);
        threads[t].setDaemon(true);
        threads[t].start();
      }
      boolean interrupted = false;
      for (Thread thread : threads) {
        while (thread.isAlive()) {
          try {
            thread.join();
          } catch (InterruptedException e) {
            interrupted = true;
            proved.set(0);
          }
        }
      }
      if (interrupted) {
        Thread.currentThread().interrupt();
      }
      return outcome(runners);
    }

    private Outcome outcome(Runner[] runners) {
      Runner best = runners[0];
      long iterations = 0;
      boolean isOptimal = false;
      for (Runner runner : runners) {
        runner.fault.ifPresent(
            fault -> {
              throw fault;
            });
        iterations += runner.iterations;
        isOptimal |= runner.isOptimal;
        boolean shorter = runner.makespan < best.makespan;
        boolean sooner = runner.makespan == best.makespan && runner.foundAt < best.foundAt;
        best = shorter || sooner ? runner : best;
      }
      if (best.starts.length == 0) {
        return new Open(iterations);
      }
      int bound = isOptimal ? best.makespan : Math.min(best.makespan, least);
      return new Found(best.starts, best.makespan, bound, iterations);
    }

    private synchronized void tell(int makespan, int[] starts) {
      if (makespan < told) {
        told = makespan;
        listener.shorter(makespan, starts);
      }
    }
  }

  /** One thread of a search. */
  private static final class Runner implements Runnable {
    private final Race race;
    private final Supplier<Search> start;
    private long iterations;
    private long foundAt;
    private int makespan = Integer.MAX_VALUE;
    private int[] starts = {};
    private boolean isOptimal;
    private Optional<RuntimeException> fault = Optional.empty();

    Runner(Race race, Supplier<Search> start) {
      this.race = race;
      this.start = start;
    }

    @Override
    public void run() {
      try {
        search(start.get());
      } catch (RuntimeException e) {
        fault = Optional.of(e);
        race.proved.set(0);
      }
    }

    private void search(Search search) {
      int untested = NONE;
      while (iterations < race.budget.iterations() && iterations < race.proved.get()) {
        search.step();
        iterations++;
        if (search.makespan() < makespan) {
          makespan = search.makespan();
          starts = search.starts();
          foundAt = iterations;
          untested = makespan;
          race.tell(makespan, starts);
        }
        isOptimal = makespan == race.least;
        if (!isOptimal && untested == makespan && iterations - foundAt >= PATIENCE) {
          untested = NONE;
          isOptimal =
              race.project.size() <= MOST_PROVED && Bounds.excludes(race.project, makespan - 1);
        }
        if (isOptimal) {
          race.proved.accumulateAndGet(iterations, Math::min);
          return;
        }
        if (!race.budget.goesOn().getAsBoolean()) {
          return;
        }
      }
    }
  }
}
