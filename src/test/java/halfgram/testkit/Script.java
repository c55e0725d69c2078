package halfgram.testkit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import java.net.http.HttpRequest;

/**
 * A script that calls the JSON API of the demo kitchen: it has no cookie, gets none, and holds
 * every answer against the OpenAPI document; so it does with what it sent, when that was taken.
 */
public final class Script {
  private static final String ROOT = "/k/" + Site.KITCHEN + "/api/v1/";

  /** An answer with its body as a tree. */
  public record Answer(int status, JsonNode body, Client.Answer plain) {

    /** Paths of all problems, in order. */
    public java.util.List<String> problems() {
      return body.path("problems").findValuesAsText("path");
    }

    public String kind() {
      return body.path("kind").asText();
    }
  }

  private final Client client;
  private final ApiDocument document;

  Script(Client client) {
    this.client = client;
    this.document = ApiDocument.of(client);
  }

  public ApiDocument document() {
    return document;
  }

  /** A tree that a test may change. */
  public static ObjectNode object(String json) {
    return (ObjectNode) BookStore.parse(json.replace('\'', '"'));
  }

  public Answer get(String rest) {
    return checked("GET", rest, client.get(ROOT + rest));
  }

  public Answer delete(String rest) {
    return checked("DELETE", rest, client.send(client.request(ROOT + rest).DELETE()));
  }

  public Answer post(String rest, String body) {
    return sent("POST", rest, body.replace('\'', '"'));
  }

  public Answer put(String rest, String body) {
    return sent("PUT", rest, body.replace('\'', '"'));
  }

  /** A body as it is, of any tree. */
  public Answer sent(String method, String rest, String body) {
    Answer answer = checked(method, rest, client.json(method, ROOT + rest, body));
    if (answer.status() < 300) {
      assertThat(document.errorsOfCall(method, ROOT + rest, BookStore.parse(body)))
          .as("%s %s was taken, so the document allows it", method, rest)
          .isEmpty();
    }
    return answer;
  }

  public Answer postCsv(String rest, String body) {
    HttpRequest.Builder request =
        client
            .request(ROOT + rest)
            .header("Content-Type", "text/csv")
            .POST(HttpRequest.BodyPublishers.ofString(body));
    return checked("POST", rest, client.send(request));
  }

  /** A file that is no JSON. */
  public String text(String rest) {
    return client.get(ROOT + rest).body();
  }

  private Answer checked(String method, String rest, Client.Answer plain) {
    assertThat(plain.header("set-cookie")).as("cookies for a script").isEmpty();
    assertThat(plain.header("content-type")).startsWith("application/json");
    JsonNode body = BookStore.parse(plain.body());
    assertThat(document.errorsOfAnswer(method, ROOT + rest, plain.status(), body))
        .as("what the document says of %s %s, answered %s", method, rest, plain.body())
        .isEmpty();
    return new Answer(plain.status(), body, plain);
  }
}
