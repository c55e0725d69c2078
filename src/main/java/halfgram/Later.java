package halfgram;

import java.util.concurrent.Executor;
import java.util.concurrent.Executors;

/** What pages do not wait for: one thing after the other, behind the page that was asked for. */
final class Later {
  private Later() {}

  static Executor make() {
    return Executors.newSingleThreadExecutor(
        task -> {
          Thread thread = new Thread(task, "halfgram-later");
          thread.setDaemon(true);
          return thread;
        });
  }
}
