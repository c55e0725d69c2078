package halfgram.desk;

import java.lang.System.Logger.Level;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;

/**
 * The first crew plan of a plan, looked for behind the pages that show the day: where it is not
 * found soon, as on a server that has just begun, they get a rough one, which nothing keeps.
 *
 * <p>Rule. Who is about to answer with a rough one says so first and then looks once more whether
 * the other is there; who has kept the other asks afterwards whether a rough one was shown. So one
 * of the two always knows of the other, and every page that shows a rough one is told.
 */
final class FirstCrew {
  private static final System.Logger LOG = System.getLogger(FirstCrew.class.getName());
  private static final int KEPT = 16;

  /** What a page waits: a server that has run for a while needs no more for a day. */
  private static final long PATIENCE_MILLIS = 400;

  private final Executor later;
  private final Map<UUID, CompletableFuture<Void>> running = new ConcurrentHashMap<>();
  private final Set<UUID> shown = ConcurrentHashMap.newKeySet();
  private final LastFew<UUID, CrewInForce> rough = new LastFew<>(KEPT);

  /** Whether this server has found one, and so may find the next soon. */
  private volatile boolean warm;

  /**
   * @param later runs the search; at once where nobody is to see a rough plan
   */
  FirstCrew(Executor later) {
    this.later = later;
  }

  /** Begins a search, unless it runs; waits a little for its end until a rough one is there. */
  void look(UUID plan, Runnable search) {
    CompletableFuture<Void> mine = new CompletableFuture<>();
    CompletableFuture<Void> before = running.putIfAbsent(plan, mine);
    if (before == null) {
      later.execute(() -> run(plan, search, mine));
    }
    if (warm && rough.find(plan).isEmpty()) {
      await(before == null ? mine : before);
    }
  }

  private static void await(CompletableFuture<Void> end) {
    try {
      end.get(PATIENCE_MILLIS, TimeUnit.MILLISECONDS);
    } catch (TimeoutException | ExecutionException e) {
      // Shown roughly, then.
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void run(UUID plan, Runnable search, CompletableFuture<Void> end) {
    try {
      search.run();
    } catch (RuntimeException e) {
      // The next page that is looked at begins anew.
      LOG.log(Level.WARNING, "the day was not laid out", e);
    } finally {
      warm = true;
      running.remove(plan);
      end.complete(null);
    }
  }

  /** A rough one, the same for everybody; it counts as shown from now on. */
  CrewInForce rough(UUID plan, Supplier<CrewInForce> work) {
    CrewInForce made = rough.get(plan, any -> work.get());
    shown.add(plan);
    return made;
  }

  /** Whether somebody was shown a rough one, asked once. */
  boolean wasShown(UUID plan) {
    return shown.remove(plan);
  }
}
