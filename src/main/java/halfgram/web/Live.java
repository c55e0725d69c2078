package halfgram.web;

import io.javalin.http.sse.SseClient;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;

/**
 * Bare change signals to every open page of a kitchen: only the number of the last change, never
 * data. Signals of one moment become one; a slow reader misses numbers, never the last. Who may not
 * look any more is told so, and their stream ends.
 */
public final class Live implements AutoCloseable {
  private static final long MERGE_MILLIS = 50;
  private static final long HEARTBEAT_SECONDS = 15;
  private static final long WATCH_MILLIS = 100;
  private static final long ASK_MILLIS = 1000;
  private static final System.Logger LOG = System.getLogger(Live.class.getName());

  private final Map<String, List<Reader>> readers = new ConcurrentHashMap<>();
  private final ScheduledExecutorService sender =
      Executors.newScheduledThreadPool(
          3,
          task -> {
            Thread thread = new Thread(task, "halfgram-live");
            thread.setDaemon(true);
            return thread;
          });

  /**
   * Begins the heartbeat: a reader that went away is noticed only when something is written, and a
   * reader notices by it that the stream still lives.
   */
  public Live() {
    var unused =
        sender.scheduleAtFixedRate(
            this::beat, HEARTBEAT_SECONDS, HEARTBEAT_SECONDS, TimeUnit.SECONDS);
  }

  private void beat() {
    sweep();
    readers.values().forEach(all -> all.forEach(reader -> send(reader, true)));
  }

  /**
   * Looks every now and then whether another server has changed a kitchen that somebody here looks
   * at, or sent somebody away. A look that fails is made again.
   *
   * @param stands the number of the last change by kitchen
   */
  public void watch(Supplier<Map<String, Long>> stands) {
    var unused =
        sender.scheduleWithFixedDelay(
            () -> look(stands), WATCH_MILLIS, WATCH_MILLIS, TimeUnit.MILLISECONDS);
    var unusedAsks =
        sender.scheduleWithFixedDelay(this::sweep, ASK_MILLIS, ASK_MILLIS, TimeUnit.MILLISECONDS);
  }

  private void look(Supplier<Map<String, Long>> stands) {
    if (count() == 0) {
      return;
    }
    try {
      stands.get().forEach(this::changed);
    } catch (RuntimeException e) {
      warn("cannot see what other servers change", e);
    }
  }

  /** Not of what ends because everything does. */
  private void warn(String what, RuntimeException e) {
    if (!sender.isShutdown()) {
      LOG.log(System.Logger.Level.WARNING, what, e);
    }
  }

  /** Says that a kitchen has changed; called when the change is on disk. */
  public void changed(String kitchen, long number) {
    for (Reader reader : readers.getOrDefault(kitchen, List.of())) {
      reader.wanted.accumulateAndGet(number, Math::max);
      if (number > reader.sent.get() && reader.waiting.compareAndSet(false, true)) {
        var unused =
            sender.schedule(() -> send(reader, false), MERGE_MILLIS, TimeUnit.MILLISECONDS);
      }
    }
  }

  /** Says that somebody was sent away, or is something else now: who is it? */
  public void check() {
    if (count() > 0) {
      sender.execute(this::sweep);
    }
  }

  private void sweep() {
    readers.values().forEach(all -> all.forEach(this::ask));
  }

  /** Ends the stream of somebody who may not look any more; a look that fails is made again. */
  private void ask(Reader reader) {
    boolean may;
    try {
      may = reader.may.getAsBoolean();
    } catch (RuntimeException e) {
      warn("cannot see who may still look", e);
      return;
    }
    if (!may && reader.over.compareAndSet(false, true)) {
      synchronized (reader) {
        reader.client.sendEvent("gone", reader.sent.get());
        reader.client.close();
      }
    }
  }

  /**
   * Keeps a page informed until it goes, or until whoever looks at it may not any more.
   *
   * @param may whether they still may, as they could when they came
   */
  void add(String kitchen, SseClient client, long number, BooleanSupplier may) {
    Reader reader = new Reader(client, number, may);
    List<Reader> all = readers.computeIfAbsent(kitchen, code -> new CopyOnWriteArrayList<>());
    client.keepAlive();
    client.onClose(() -> all.remove(reader));
    synchronized (reader) {
      // Told of what happens from now on, but of nothing before it knows where it begins.
      all.add(reader);
      client.sendEvent("change", number);
    }
    // Whoever was sent away while they came was not among those who were asked.
    ask(reader);
    if (sender.isShutdown()) {
      // It came while the server stops, which waits for the end of all streams.
      client.close();
    }
  }

  int count() {
    return readers.values().stream().mapToInt(List::size).sum();
  }

  private void send(Reader reader, boolean heartbeat) {
    reader.waiting.set(false);
    synchronized (reader) {
      if (reader.over.get()) {
        return;
      }
      long number = reader.wanted.get();
      boolean same = heartbeat && number == reader.sent.get();
      reader.sent.set(number);
      reader.client.sendEvent(same ? "here" : "change", number);
    }
  }

  @Override
  public void close() {
    sender.shutdownNow();
    readers.values().forEach(all -> all.forEach(reader -> reader.client.close()));
    readers.clear();
  }

  /** One open stream. */
  private static final class Reader {
    private final SseClient client;
    private final BooleanSupplier may;
    private final AtomicBoolean waiting = new AtomicBoolean();
    private final AtomicBoolean over = new AtomicBoolean();
    private final AtomicLong wanted;
    private final AtomicLong sent;

    private Reader(SseClient client, long number, BooleanSupplier may) {
      this.client = client;
      this.may = may;
      this.wanted = new AtomicLong(number);
      this.sent = new AtomicLong(number);
    }
  }
}
