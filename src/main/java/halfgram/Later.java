package halfgram;

import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/**
 * What pages do not wait for: one thing after the other, behind the page that was asked for. The
 * first thing of all lets that page go first, since on a server that has just started both together
 * take far longer.
 */
final class Later implements Executor {
  private static final long HEAD_START = TimeUnit.SECONDS.toNanos(2);

  private final ScheduledExecutorService thread =
      Executors.newSingleThreadScheduledExecutor(
          task -> {
            Thread made = new Thread(task, "halfgram-later");
            made.setDaemon(true);
            return made;
          });

  private long begin;
  private boolean isAsked;

  @Override
  public synchronized void execute(Runnable task) {
    long now = System.nanoTime();
    if (!isAsked) {
      isAsked = true;
      begin = now + HEAD_START;
    }
    // Whoever gives a task says what went wrong in it.
    var unused = thread.schedule(task, Math.max(0, begin - now), TimeUnit.NANOSECONDS);
  }
}
