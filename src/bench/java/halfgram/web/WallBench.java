package halfgram.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
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
 * Twenty kitchens of five tablets on one server: how fast a tick is answered at a hundred a second,
 * over JSON and as the region of the page, and how many are when nobody waits, beside a bare
 * handler that does one insert and waits for the same checkpoint, block by block in turns. The
 * tablets work through the demo's Saturday: start, every line weighed, a problem and its end, put
 * down; every answer is looked at.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class WallBench {
  private static final int KITCHENS = Integer.getInteger("kitchens", 20);
  private static final int EACH = 5;
  private static final int A_SECOND = 100;
  private static final int SECONDS = 10;
  private static final int TURNS = Integer.getInteger("turns", 6);
  private static final int BLOCK = 4;

  private KitchensAtWork tablets;
  private BareServer bare;
  private ExecutorService threads;

  /** One request of one tablet. */
  private interface Work {
    void run(KitchensAtWork.Tablet tablet) throws IOException;
  }

  @Setup
  public void open() throws Exception {
    tablets = new KitchensAtWork(KITCHENS, EACH);
    bare = new BareServer();
    threads = Executors.newFixedThreadPool(tablets.all.size());
    for (int i = 0; i < 3; i++) {
      block(KitchensAtWork.Tablet::tickByCall);
      block(KitchensAtWork.Tablet::tickByPage);
      block(bare::insert);
    }
  }

  @TearDown
  public void close() throws IOException {
    threads.shutdown();
    bare.close();
    tablets.close();
  }

  /** A hundred ticks a second, spread evenly over the tablets and over time. */
  @Benchmark
  public void answersAtAHundredASecond() throws Exception {
    say("JSON", atAHundred(KitchensAtWork.Tablet::tickByCall));
    say("page region", atAHundred(KitchensAtWork.Tablet::tickByPage));
    say("bare", atAHundred(bare::insert));
  }

  /** As many as are answered, in turns. */
  @Benchmark
  public void rates() throws Exception {
    List<Double> calls = new ArrayList<>();
    List<Double> pages = new ArrayList<>();
    for (int turn = 0; turn < TURNS; turn++) {
      double plain = block(bare::insert);
      calls.add(100 * plain / block(KitchensAtWork.Tablet::tickByCall));
      double again = block(bare::insert);
      pages.add(100 * again / block(KitchensAtWork.Tablet::tickByPage));
      double ticks = tablets.all.size() * BLOCK;
      System.out.printf(
          Locale.ROOT,
          "bare %.0f a second; JSON at %.0f %%, page region at %.0f %% of it%n",
          ticks / plain,
          calls.get(turn),
          pages.get(turn));
    }
    Collections.sort(calls);
    Collections.sort(pages);
    System.out.printf(
        Locale.ROOT,
        "median: JSON %.0f %%, page region %.0f %%%n",
        calls.get(TURNS / 2),
        pages.get(TURNS / 2));
  }

  private static void say(String what, List<Double> sorted) {
    System.out.printf(
        Locale.ROOT,
        "%s at %d a second: median %.1f ms, p99 %.1f ms, worst %.1f ms%n",
        what,
        A_SECOND,
        sorted.get(sorted.size() / 2),
        sorted.get(sorted.size() * 99 / 100),
        sorted.get(sorted.size() - 1));
  }

  /** Times from when each was due, so that one that waited for another counts its wait too. */
  private List<Double> atAHundred(Work work) throws Exception {
    ConcurrentLinkedQueue<Double> times = new ConcurrentLinkedQueue<>();
    long start = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(200);
    long apart = TimeUnit.SECONDS.toNanos(1) / A_SECOND;
    int tablet = 0;
    List<Callable<Boolean>> all = new ArrayList<>();
    for (KitchensAtWork.Tablet one : tablets.all) {
      int first = tablet++;
      all.add(
          () -> {
            for (int i = first; i < A_SECOND * SECONDS; i += tablets.all.size()) {
              long due = start + i * apart;
              for (long left = due - System.nanoTime(); left > 0; left = due - System.nanoTime()) {
                LockSupport.parkNanos(left);
              }
              work.run(one);
              times.add((System.nanoTime() - due) / 1e6);
            }
            return true;
          });
    }
    run(all);
    return times.stream().sorted().toList();
  }

  /** Every tablet a few times, as fast as it goes; in seconds. */
  private double block(Work work) throws Exception {
    CountDownLatch ready = new CountDownLatch(1);
    List<Callable<Boolean>> all = new ArrayList<>();
    for (KitchensAtWork.Tablet one : tablets.all) {
      all.add(
          () -> {
            ready.await();
            for (int i = 0; i < BLOCK; i++) {
              work.run(one);
            }
            return true;
          });
    }
    List<Future<Boolean>> begun = new ArrayList<>();
    all.forEach(one -> begun.add(threads.submit(one)));
    long start = System.nanoTime();
    ready.countDown();
    for (Future<Boolean> one : begun) {
      one.get();
    }
    return (System.nanoTime() - start) / 1e9;
  }

  private void run(List<Callable<Boolean>> all) throws Exception {
    for (Future<Boolean> one : threads.invokeAll(all)) {
      one.get();
    }
  }

  /** Without JMH, to look at it by a profiler. */
  public static void main(String[] args) throws Exception {
    WallBench bench = new WallBench();
    bench.open();
    if (args.length > 0) {
      bench.answersAtAHundredASecond();
    }
    bench.rates();
    bench.close();
    System.exit(0);
  }
}
