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

/** What happens on a live day of at least 150 tasks, from request to last byte. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 5)
@Measurement(iterations = 3, time = 5)
public class LiveDayBench {
  private static final int LEAST_TASKS = 150;
  private static final String ROOT = "/k/TARN/api/v1/";
  private static final String OF_DEVICE =
      ",'device':'00000000-0000-4000-8000-000000000001','sequence':";

  private Site site;
  private Client client;
  private long sequence = 1;
  private int slips;

  @Setup
  public void open() {
    site = Site.empty();
    site.importBook(FullDay.book());
    site.setClock(Site.at("16:00"));
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

  /** A push and other covers, looked at: two plans, side by side. */
  @Benchmark
  public int slipLookedAt() {
    return posted("slip/harvest-dinner?look=yes", "{'minutes':15,'covers':" + otherCovers() + "}");
  }

  /** The same done, and the plan with it put in force. */
  @Benchmark
  public int slipDone() {
    return posted("slip/harvest-dinner?accept=yes", "{'covers':" + otherCovers() + "}");
  }

  /** Other covers and another minute each time, so that nothing worked out before will do. */
  private int otherCovers() {
    slips++;
    site.setClock(Site.at("16:%02d".formatted(slips % 60)));
    return 60 + slips % 61;
  }

  @Benchmark
  public int plateSent() {
    return posted(
        "services/harvest-dinner/entries",
        "{'kind':'sent','course':'first','dish':'trout-plate','number':1,'who':'marit'"
            + OF_DEVICE
            + sequence++
            + "}");
  }

  @Benchmark
  public int atThePass() {
    return got("services/harvest-dinner");
  }

  @Benchmark
  public int baths() {
    return got("baths");
  }

  @Benchmark
  public int tubMoved() {
    String place = "shelf " + sequence++;
    return posted("stock/t-1204-trout-2/move", "{'place':'" + place + "'}");
  }

  private int posted(String rest, String body) {
    return checked(client.json("POST", ROOT + rest, body.replace('\'', '"')));
  }

  private int got(String rest) {
    return checked(client.get(ROOT + rest));
  }

  private static int checked(Client.Answer answer) {
    if (answer.status() > 201) {
      throw new IllegalStateException(answer.status() + " " + answer.body());
    }
    return answer.body().length();
  }
}
