package halfgram.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * A hundred tablets of one kitchen look at their walls while one of them ticks twice a second: the
 * time from the press until each of the others has its fresh region, in percentiles over all of
 * them. Each has its event stream and asks again at a signal, as {@code live.js} does.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class FanOutBench {
  private static final int TABLETS = 100;
  private static final int WARM = 30;
  private static final int TICKS = 60;
  private static final long APART_MILLIS = 500;

  private KitchensAtWork tablets;
  private ExecutorService threads;
  private final List<Wire> streams = new ArrayList<>();
  private final AtomicReference<Round> round = new AtomicReference<>();

  /** One tick on its way to all. */
  private record Round(long pressed, CountDownLatch seen, ConcurrentLinkedQueue<Double> times) {}

  @Setup
  public void open() throws IOException, InterruptedException {
    tablets = new KitchensAtWork(1, TABLETS);
    threads = Executors.newCachedThreadPool();
    CountDownLatch ready = new CountDownLatch(TABLETS);
    for (KitchensAtWork.Tablet tablet : tablets.all) {
      Wire stream = tablet.stream();
      streams.add(stream);
      var unused = threads.submit(() -> listen(tablet, stream, ready));
    }
    ready.await();
    ticks(WARM);
  }

  private Void listen(KitchensAtWork.Tablet tablet, Wire stream, CountDownLatch ready)
      throws IOException {
    long first = number(stream);
    ready.countDown();
    for (long last = first; ; ) {
      long number = number(stream);
      if (number > last) {
        last = number;
        tablet.look();
        Round now = round.get();
        if (now != null) {
          now.times().add((System.nanoTime() - now.pressed()) / 1e6);
          now.seen().countDown();
        }
      }
    }
  }

  private static long number(Wire stream) throws IOException {
    for (String line = stream.line(); ; line = stream.line()) {
      if (line.startsWith("data: ")) {
        return Long.parseLong(line.substring("data: ".length()));
      }
    }
  }

  private List<Double> ticks(int many) throws IOException, InterruptedException {
    List<Double> all = new ArrayList<>();
    List<KitchensAtWork.Tablet> working =
        tablets.all.stream().filter(KitchensAtWork.Tablet::isAtWork).toList();
    for (int i = 0; i < many; i++) {
      Round one =
          new Round(System.nanoTime(), new CountDownLatch(TABLETS), new ConcurrentLinkedQueue<>());
      round.set(one);
      working.get(i % working.size()).tickByPage();
      if (!one.seen().await(20, TimeUnit.SECONDS)) {
        throw new IllegalStateException(one.seen().getCount() + " tablets saw nothing");
      }
      all.addAll(one.times());
      long left = APART_MILLIS - (System.nanoTime() - one.pressed()) / 1_000_000;
      TimeUnit.MILLISECONDS.sleep(Math.max(0, left));
    }
    return all.stream().sorted().toList();
  }

  @Benchmark
  public int seen() throws IOException, InterruptedException {
    List<Double> sorted = ticks(TICKS);
    System.out.printf(
        Locale.ROOT,
        "a tick seen on %d tablets: median %.0f ms, p99 %.0f ms, worst %.0f ms%n",
        TABLETS,
        sorted.get(sorted.size() / 2),
        sorted.get(sorted.size() * 99 / 100),
        sorted.get(sorted.size() - 1));
    return sorted.size();
  }

  @TearDown
  public void close() throws IOException {
    for (Wire stream : streams) {
      stream.close();
    }
    threads.shutdownNow();
    tablets.close();
  }

  /** Without JMH, to look at it by a profiler. */
  public static void main(String[] args) throws Exception {
    FanOutBench bench = new FanOutBench();
    bench.open();
    bench.seen();
    System.exit(0);
  }
}
