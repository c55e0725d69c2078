package halfgram.web;

import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
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
 * Two hundred people sign in within a minute while a wall is looked at five times a second: every
 * one of them is answered, and the wall's own times are printed for the storm and without it.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 0)
@Measurement(iterations = 1)
public class SignInStormBench {
  private static final int PEOPLE = 200;
  private static final int STORM_SECONDS = 60;
  private static final int CALM_SECONDS = 20;
  private static final long LOOK_MILLIS = 200;

  private Site site;
  private Client wall;

  @Setup
  public void open() {
    site = Site.demo();
    wall = site.client();
    for (int i = 0; i < 50; i++) {
      look();
    }
  }

  @TearDown
  public void close() {
    site.close();
  }

  @Benchmark
  public int storm() throws InterruptedException {
    List<Double> calm = looks(CALM_SECONDS);
    ScheduledExecutorService people = Executors.newScheduledThreadPool(40);
    AtomicInteger answered = new AtomicInteger();
    AtomicInteger later = new AtomicInteger();
    for (int i = 0; i < PEOPLE; i++) {
      String body = "{\"name\":\"nobody" + i + "\",\"password\":\"a long and wrong one\"}";
      var unused =
          people.schedule(
              () -> {
                int status = site.stranger().json("POST", "/api/session", body).status();
                (status == 401 ? answered : later).incrementAndGet();
              },
              1000L * i * STORM_SECONDS / PEOPLE,
              TimeUnit.MILLISECONDS);
    }
    List<Double> storm = looks(STORM_SECONDS);
    people.shutdown();
    if (!people.awaitTermination(2, TimeUnit.MINUTES)) {
      throw new IllegalStateException("some were never answered");
    }
    if (answered.get() + later.get() != PEOPLE) {
      throw new IllegalStateException(answered + " answered, " + later + " put off");
    }
    System.out.printf(
        "%d answered, %d put off; a wall in ms, median / p95 / worst: calm %s, storm %s%n",
        answered.get(), later.get(), times(calm), times(storm));
    return answered.get();
  }

  private List<Double> looks(int seconds) throws InterruptedException {
    List<Double> times = new ArrayList<>();
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    while (System.nanoTime() < end) {
      long start = System.nanoTime();
      look();
      times.add((System.nanoTime() - start) / 1e6);
      TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
    }
    Collections.sort(times);
    return times;
  }

  private void look() {
    if (wall.get("/k/TARN/wall/cold").status() != 200) {
      throw new IllegalStateException("no wall");
    }
  }

  private static String times(List<Double> sorted) {
    return "%.0f / %.0f / %.0f"
        .formatted(
            sorted.get(sorted.size() / 2),
            sorted.get(sorted.size() * 95 / 100),
            sorted.get(sorted.size() - 1));
  }
}
