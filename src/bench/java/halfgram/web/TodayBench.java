package halfgram.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Client;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
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
    site.importBook(book());
    client = site.client();
    int tasks = site.wiring().plans().open(site.house(), Site.DAY, "bench").sheet().tasks().size();
    if (tasks < LEAST_TASKS) {
      throw new IllegalStateException("only " + tasks + " tasks");
    }
  }

  /** The demo with more events on its Saturday, each of its own hour. */
  private static byte[] book() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ArrayNode events = book.withArray("events");
    int there = events.size();
    for (int i = 0; i < there; i++) {
      for (String hour : new String[] {"11", "15"}) {
        ObjectNode more = events.get(i).deepCopy();
        more.put("code", more.path("code").asText() + "-" + hour);
        more.put("date", Site.DAY.toString());
        events.add(
            BookStore.parse(
                more.toString().replaceAll("\"(13|18|19|20|21|22|14|15):(\\d\\d)\"", "\"$1:$2\"")));
      }
    }
    return book.toString().getBytes(StandardCharsets.UTF_8);
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
