package halfgram.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.web.Access;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A server that holds the data folder's database: it leaves its port and a secret there, readable
 * by the folder's owner only, so that commands can go through it.
 *
 * @param address of the server on this machine
 */
record Running(String address, String secret) {
  private static final String FILE = "server.json";
  static final String SECRET = Access.SECRET;
  private static final Duration LONGEST = Duration.ofMinutes(5);

  /** What a command said when it ran there. */
  record Answer(int status, String out, String err, Map<String, byte[]> files) {}

  /** Leaves the note; it goes when the server ends. */
  static void leave(Path data, Running running) throws IOException {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("address", running.address());
    node.put("secret", running.secret());
    Path file = data.resolve(FILE);
    Files.deleteIfExists(file);
    if (data.getFileSystem().supportedFileAttributeViews().contains("posix")) {
      Files.createFile(
          file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
    }
    Files.writeString(file, node.toString());
  }

  static void remove(Path data) throws IOException {
    Files.deleteIfExists(data.resolve(FILE));
  }

  /** The server of a data folder, if one answers; a note that a killed one left is passed over. */
  static Optional<Running> find(Path data) {
    try {
      Path file = data.resolve(FILE);
      if (!Files.isReadable(file)) {
        return Optional.empty();
      }
      JsonNode node = BookStore.parse(Files.readString(file));
      Running running = new Running(node.path("address").asText(), node.path("secret").asText());
      HttpRequest request =
          HttpRequest.newBuilder(URI.create(running.address() + "/command"))
              .timeout(Duration.ofSeconds(5))
              .header(SECRET, running.secret())
              .build();
      int status = client().send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
      return status == 200 ? Optional.of(running) : Optional.empty();
    } catch (IOException | RuntimeException e) {
      return Optional.empty();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return Optional.empty();
    }
  }

  /** Runs a command there. */
  Answer run(List<String> args, Map<String, byte[]> files) throws IOException {
    ObjectNode call = JsonNodeFactory.instance.objectNode();
    args.forEach(call.putArray("args")::add);
    ObjectNode sent = call.putObject("files");
    files.forEach((name, bytes) -> sent.put(name, Base64.getEncoder().encodeToString(bytes)));
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(address + "/command"))
            .timeout(LONGEST)
            .header(SECRET, secret)
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(call.toString()))
            .build();
    try {
      HttpResponse<String> answer =
          client().send(request, HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
      if (answer.statusCode() != 200) {
        throw new IOException(address + " answers " + answer.statusCode());
      }
      JsonNode node = BookStore.parse(answer.body());
      Map<String, byte[]> written = new java.util.LinkedHashMap<>();
      for (Map.Entry<String, JsonNode> file : node.path("files").properties()) {
        written.put(file.getKey(), Base64.getDecoder().decode(file.getValue().asText()));
      }
      return new Answer(
          node.path("status").asInt(),
          node.path("out").asText(),
          node.path("err").asText(),
          written);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  private static HttpClient client() {
    return HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(2)).build();
  }
}
