package halfgram.web;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.db.Database;
import halfgram.db.schema.Tables;
import halfgram.prep.Task;
import halfgram.testkit.Site;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.openjdk.jmh.annotations.AuxCounters;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/**
 * The rate of ticks over JSON beside the rate of a bare handler that does one insert and waits for
 * the same checkpoint, block by block in turns; both answers are checked. Ticks go round all tasks
 * of the day and are forgotten after each iteration, so that none has more of them than a kitchen
 * would enter.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SingleShotTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 5)
@Measurement(iterations = 10)
public class TickBench {
  private static final int BLOCK = 160;

  @Param({"1", "8"})
  private int clients;

  private Site site;
  private String session;
  private Database bare;
  private Javalin javalin;
  private List<String> tasks;
  private ExecutorService threads;
  private final HttpClient http = HttpClient.newHttpClient();
  private final AtomicInteger sequence = new AtomicInteger();
  private final UUID device = UUID.randomUUID();

  /** Rates of one iteration, requests a second, and their share in percent. */
  @AuxCounters(AuxCounters.Type.EVENTS)
  @State(Scope.Thread)
  public static class Rates {
    public double barePerSecond;
    public double ticksPerSecond;
    public double percentOfBare;
  }

  @Setup
  public void open() throws IOException {
    site = Site.demo();
    session = site.session();
    tasks =
        site.wiring().plans().open(site.house(), Site.DAY, "bench").sheet().tasks().stream()
            .map(Task::id)
            .toList();
    String folder = Files.createTempDirectory("halfgram-bare").toString();
    bare =
        Database.open(
            "jdbc:h2:file:" + folder + "/bare;DB_CLOSE_ON_EXIT=FALSE;QUERY_CACHE_SIZE=64",
            Optional.empty(),
            Optional.empty());
    bare.write(
        tx ->
            tx.sql()
                .execute(
                    "create table bare (id uuid primary key, task varchar(300), kind varchar(16),"
                        + " note varchar(500), device uuid, sequence bigint)"));
    javalin =
        Javalin.create(
            config -> {
              config.startup.showJavalinBanner = false;
              config.routes.post("/bare", this::insert);
            });
    javalin.start("127.0.0.1", 0);
    threads = Executors.newFixedThreadPool(clients);
  }

  @Setup(Level.Iteration)
  public void forget() {
    site.wiring().desk().read(tx -> tx.sql().deleteFrom(Tables.TICK).execute());
    bare.write(tx -> tx.sql().execute("delete from bare"));
  }

  private void insert(Context context) {
    JsonNode tick = BookStore.parse(context.body());
    UUID id = UUID.randomUUID();
    bare.write(
        tx ->
            tx.sql()
                .execute(
                    "insert into bare values (?, ?, ?, ?, ?, ?)",
                    id,
                    tick.path("task").asText(),
                    tick.path("kind").asText(),
                    tick.path("note").asText(),
                    UUID.fromString(tick.path("device").asText()),
                    tick.path("sequence").asLong()));
    context.contentType("application/json");
    context.status(201).result("{\"tick\":\"" + id + "\"}");
  }

  @TearDown
  public void close() {
    threads.shutdown();
    javalin.stop();
    bare.close();
    site.close();
  }

  @Benchmark
  public void inTurns(Rates rates) throws Exception {
    String ticks = site.address() + "/k/TARN/api/v1/ticks";
    String inserts = "http://127.0.0.1:" + javalin.port() + "/bare";
    double bareSeconds = 0;
    double tickSeconds = 0;
    for (int turn = 0; turn < 2; turn++) {
      bareSeconds += block(inserts);
      tickSeconds += block(ticks);
    }
    rates.barePerSecond = 2 * BLOCK / bareSeconds;
    rates.ticksPerSecond = 2 * BLOCK / tickSeconds;
    rates.percentOfBare = 100 * bareSeconds / tickSeconds;
  }

  private double block(String address) throws Exception {
    List<Callable<Boolean>> calls = new ArrayList<>();
    for (int client = 0; client < clients; client++) {
      calls.add(
          () -> {
            for (int i = 0; i < BLOCK / clients; i++) {
              send(address);
            }
            return true;
          });
    }
    long start = System.nanoTime();
    for (Future<Boolean> one : threads.invokeAll(calls)) {
      one.get();
    }
    return (System.nanoTime() - start) / 1e9;
  }

  private void send(String address) throws IOException, InterruptedException {
    int number = sequence.incrementAndGet();
    String body =
        "{\"task\":\""
            + tasks.get(number % tasks.size())
            + "\",\"kind\":\"problem\",\"note\":\"the whisk is"
            + " gone\",\"cook\":\"ines\",\"device\":\""
            + device
            + "\",\"sequence\":"
            + number
            + ",\"day\":\""
            + Site.DAY
            + "\"}";
    HttpResponse<String> answer =
        http.send(
            HttpRequest.newBuilder(URI.create(address))
                .header("Content-Type", "application/json")
                .header("Cookie", "session=" + session)
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() != 201 || !answer.body().contains("\"tick\"")) {
      throw new IllegalStateException(answer.statusCode() + " " + answer.body());
    }
  }
}
