package halfgram.web;

import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.util.concurrent.TimeUnit;
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

/** Today and a station's wall on a day of at least 120 tasks, from request to last byte. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 5)
@Measurement(iterations = 4, time = 5)
public class TodayBench {
  private static final int LEAST_TASKS = 120;

  private Site site;
  private Client client;

  @Setup
  public void open() {
    site = Site.empty();
    site.importBook(FullDay.book());
    client = site.client();
    int tasks = site.wiring().plans().open(site.house(), Site.DAY, "bench").sheet().tasks().size();
    if (tasks < LEAST_TASKS) {
      throw new IllegalStateException("only " + tasks + " tasks");
    }
  }

  @TearDown
  public void close() {
    site.close();
  }

  @Benchmark
  public int today() {
    return checked(client.get("/k/TARN/"), "Harvest dinner");
  }

  @Benchmark
  public int wall() {
    return checked(client.get("/k/TARN/wall/cold"), "Cold");
  }

  private static int checked(Client.Answer answer, String expected) {
    if (answer.status() != 200 || !answer.body().contains(expected)) {
      throw new IllegalStateException(answer.status() + " " + answer.text());
    }
    return answer.body().length();
  }
}
