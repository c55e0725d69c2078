package halfgram.testkit;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;

/** Somebody who listens to the change signals of the demo kitchen, as an open page does. */
public final class Listener implements AutoCloseable {
  private final BufferedReader stream;

  private Listener(BufferedReader stream) {
    this.stream = stream;
  }

  /** Listens with a cookie: "session" or "tablet". */
  public static Listener open(Site site, String cookie, String token) {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(site.address() + "/k/" + Site.KITCHEN + "/live"))
            .header("Accept", "text/event-stream")
            .header("Cookie", cookie + "=" + token)
            .build();
    try {
      HttpResponse<InputStream> answer =
          HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofInputStream());
      if (answer.statusCode() != 200) {
        throw new AssertionError("the stream did not open: " + answer.statusCode());
      }
      return new Listener(
          new BufferedReader(new InputStreamReader(answer.body(), StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Waits for the number of the next change. */
  public long next() {
    String event = "";
    for (String line = read(); !line.equals(END); line = read()) {
      if (line.startsWith("event:")) {
        event = line.substring(6).strip();
      } else if (line.startsWith("data:") && event.equals("change")) {
        return Long.parseLong(line.substring(5).strip());
      }
    }
    throw new AssertionError("the stream ended");
  }

  /** Waits for the end of the stream; answers the last event that was told. */
  public String last() {
    String last = "";
    for (String line = read(); !line.equals(END); line = read()) {
      last = line.startsWith("event:") ? line.substring(6).strip() : last;
    }
    return last;
  }

  private static final String END = "(end)";

  private String read() {
    try {
      String line = stream.readLine();
      return line == null ? END : line;
    } catch (IOException e) {
      return END;
    }
  }

  @Override
  public void close() {
    try {
      stream.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
