package halfgram.db;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.testkit.Chance;
import halfgram.testkit.Postgres;
import halfgram.testkit.ServerProcess;
import halfgram.testkit.Site;
import halfgram.web.Access;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What was acknowledged is on disk: tablets send ticks, the server's process is killed, the tablets
 * send everything again, and nothing that was acknowledged is lost, nothing is there twice.
 */
class KillTest {
  private static final int TABLETS = 4;
  private static final Duration LONGEST = Duration.ofSeconds(60);

  @TempDir Path folder;

  @Test
  void threeKillsOnH2LoseNothing() throws Exception {
    kill(3, List.of("-", "-", "-"));
  }

  @Test
  void oneKillOnPostgresLosesNothing() throws Exception {
    Postgres.Jdbc jdbc = Postgres.create();
    kill(1, List.of(jdbc.url(), jdbc.user(), jdbc.password()));
  }

  @Test
  @Tag("long")
  void fiftyKillsOnH2LoseNothing() throws Exception {
    kill(50, List.of("-", "-", "-"));
  }

  @Test
  @Tag("long")
  void tenKillsOnPostgresLoseNothing() throws Exception {
    Postgres.Jdbc jdbc = Postgres.create();
    kill(10, List.of(jdbc.url(), jdbc.user(), jdbc.password()));
  }

  /** Odd rounds are killed from outside at a random moment, even ones between commit and disk. */
  private void kill(int rounds, List<String> database) throws Exception {
    Chance chance = new Chance(System.nanoTime());
    Tablets tablets = new Tablets();
    for (int round = 1; round <= rounds; round++) {
      int moment = chance.from(10, 70);
      boolean inside = round % 2 == 0;
      try (Child child = new Child(folder, database, inside ? moment : 0)) {
        tablets.sendUntil(child, inside ? Integer.MAX_VALUE : moment);
      }
    }
    try (Child child = new Child(folder, database, 0)) {
      tablets.sendAgain(child);
      tablets.check(child);
    }
  }

  /** Tablets that number their ticks and remember which were acknowledged. */
  private static final class Tablets {
    private final List<UUID> devices = new ArrayList<>();
    private final Map<String, String> sent = new ConcurrentHashMap<>();
    private final Map<String, JsonNode> acknowledged = new ConcurrentHashMap<>();
    private final AtomicInteger sequence = new AtomicInteger();

    private Tablets() {
      for (int i = 0; i < TABLETS; i++) {
        devices.add(UUID.randomUUID());
      }
    }

    /** Sends from all tablets at once until so many are acknowledged, or the server is dead. */
    private void sendUntil(Child child, int enough) throws Exception {
      AtomicInteger done = new AtomicInteger();
      JsonNode today = child.get("today");
      String task = today.path("tasks").path(0).path("id").asText();
      String day = today.path("day").asText();
      ExecutorService all = Executors.newFixedThreadPool(TABLETS);
      List<Future<?>> running = new ArrayList<>();
      for (UUID device : devices) {
        running.add(
            all.submit(
                () -> {
                  while (child.isAlive() && done.get() < enough) {
                    int number = sequence.incrementAndGet();
                    String key = device + "/" + number;
                    sent.put(key, tick(task, day, device, number));
                    child.post(sent.get(key)).ifPresent(answer -> acknowledged.put(key, answer));
                    if (done.incrementAndGet() == enough) {
                      child.kill();
                    }
                  }
                  return null;
                }));
      }
      all.shutdown();
      for (Future<?> one : running) {
        one.get(60, TimeUnit.SECONDS);
      }
      child.awaitDeath();
    }

    /** Sends everything again, as a tablet does that heard no answer. */
    private void sendAgain(Child child) {
      sent.forEach(
          (key, tick) -> {
            JsonNode again = child.post(tick).orElseThrow();
            JsonNode before = acknowledged.put(key, again);
            if (before != null) {
              assertThat(again.path("tick")).as(key).isEqualTo(before.path("tick"));
              assertThat(again.path("change")).as(key).isEqualTo(before.path("change"));
            }
          });
    }

    /** Each is there once: as many numbers and ids as ticks. */
    private void check(Child child) {
      assertThat(acknowledged).hasSameSizeAs(sent);
      assertThat(acknowledged.values().stream().map(one -> one.path("change").asLong()))
          .doesNotHaveDuplicates();
      sendAgain(child);
      long highest =
          acknowledged.values().stream().mapToLong(a -> a.path("change").asLong()).max().orElse(0);
      assertThat(child.change()).as("nothing came beside them").isEqualTo(highest);
    }

    private static String tick(String task, String day, UUID device, int number) {
      return "{\"task\":\""
          + task
          + "\",\"kind\":\"problem\",\"note\":\"n"
          + number
          + "\",\"cook\":\"ines\",\"device\":\""
          + device
          + "\",\"sequence\":"
          + number
          + ",\"day\":\""
          + day
          + "\"}";
    }
  }

  /** The server in its own process. */
  private static final class Child implements AutoCloseable {
    private final ServerProcess process;
    private final HttpClient http = HttpClient.newHttpClient();
    private final String address;

    private Child(Path folder, List<String> database, int dieAt) {
      process = ServerProcess.start(folder, database, dieAt);
      address = process.address() + "/k/TARN/api/v1/";
    }

    private boolean isAlive() {
      return process.isAlive();
    }

    private void kill() {
      process.kill();
    }

    private void awaitDeath() throws InterruptedException {
      process.awaitDeath();
    }

    private long change() {
      try {
        return get("today").path("change").asLong();
      } catch (IOException | InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }

    private JsonNode get(String path) throws IOException, InterruptedException {
      HttpRequest request =
          HttpRequest.newBuilder(URI.create(address + path))
              .header(Access.SECRET, Site.SECRET)
              .build();
      return BookStore.parse(http.send(request, HttpResponse.BodyHandlers.ofString()).body());
    }

    /** The answer, or none when the server died before it. */
    private java.util.Optional<JsonNode> post(String tick) {
      HttpRequest request =
          HttpRequest.newBuilder(URI.create(address + "ticks"))
              .header(Access.SECRET, Site.SECRET)
              .timeout(LONGEST)
              .header("Content-Type", "application/json")
              .POST(HttpRequest.BodyPublishers.ofString(tick))
              .build();
      try {
        HttpResponse<String> answer = http.send(request, HttpResponse.BodyHandlers.ofString());
        assertThat(answer.statusCode()).as(answer.body()).isIn(200, 201);
        return java.util.Optional.of(BookStore.parse(answer.body()));
      } catch (IOException e) {
        return java.util.Optional.empty();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        return java.util.Optional.empty();
      }
    }

    @Override
    public void close() {
      process.close();
    }
  }
}
