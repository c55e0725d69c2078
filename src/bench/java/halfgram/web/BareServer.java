package halfgram.web;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.db.Database;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * What the rest is measured against: a handler that reads a tick, inserts a row and waits for the
 * disk.
 */
final class BareServer implements AutoCloseable {
  private final Database database;
  private final Javalin javalin;
  private final AtomicInteger sequence = new AtomicInteger();
  private final ConcurrentHashMap<KitchensAtWork.Tablet, Wire> wires = new ConcurrentHashMap<>();

  BareServer() throws IOException {
    String folder = Files.createTempDirectory("halfgram-bare").toString();
    database =
        Database.open(
            "jdbc:h2:file:" + folder + "/bare;DB_CLOSE_ON_EXIT=FALSE;QUERY_CACHE_SIZE=64",
            Optional.empty(),
            Optional.empty());
    database.write(
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
  }

  int port() {
    return javalin.port();
  }

  private void insert(Context context) {
    JsonNode tick = BookStore.parse(context.body());
    UUID id = UUID.randomUUID();
    database.write(
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

  /** Sends one, on a connection of the tablet's own. */
  void insert(KitchensAtWork.Tablet tablet) throws IOException {
    Wire wire = wires.get(tablet);
    if (wire == null) {
      wire = new Wire(port());
      wires.put(tablet, wire);
    }
    String body =
        ("{\"task\":\"yoghurt-base/harvest-dinner/1/shear\",\"kind\":\"weighed\",\"note\":\"\","
                + "\"device\":\"00000000-0000-4000-8000-000000000001\",\"sequence\":%d}")
            .formatted(sequence.incrementAndGet());
    Wire.Answer answer = wire.post("/bare", "application/json", "", body);
    if (answer.status() != 201 || !answer.body().contains("\"tick\"")) {
      throw new IllegalStateException(answer.toString());
    }
  }

  @Override
  public void close() throws IOException {

    for (Wire wire : wires.values()) {
      wire.close();
    }
    javalin.stop();
    database.close();
  }
}
