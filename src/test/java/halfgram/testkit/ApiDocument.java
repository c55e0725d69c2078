package halfgram.testkit;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.Error;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import halfgram.book.BookStore;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/** The OpenAPI document, to hold calls and answers against what it says of them. */
public final class ApiDocument {
  /** Read once in this process: every site has the same. */
  private static final Map<String, ApiDocument> KNOWN = new ConcurrentHashMap<>();

  private final JsonNode root;
  private final Map<String, Pattern> addresses = new LinkedHashMap<>();
  private final Map<String, Schema> schemas = new ConcurrentHashMap<>();

  private ApiDocument(JsonNode root) {
    this.root = root;
    for (Map.Entry<String, JsonNode> path : root.path("paths").properties()) {
      String places = path.getKey().replaceAll("\\{[a-z]+}", "[^/]+");
      addresses.put(path.getKey(), Pattern.compile(places));
    }
  }

  /** The document that a site answers with. */
  public static ApiDocument of(Client client) {
    return KNOWN.computeIfAbsent(
        "/api/openapi.json", at -> new ApiDocument(BookStore.parse(client.get(at).body())));
  }

  public JsonNode root() {
    return root;
  }

  /** What an address is called there; the first that fits, without its query. */
  public String path(String address) {
    String bare = address.replaceAll("\\?.*", "");
    for (Map.Entry<String, Pattern> path : addresses.entrySet()) {
      if (path.getValue().matcher(bare).matches()) {
        return path.getKey();
      }
    }
    throw new AssertionError("the document has no " + bare);
  }

  /** What it says against the body of a call. */
  public List<Error> errorsOfCall(String method, String address, JsonNode body) {
    JsonNode operation = operation(method, address);
    return errors(operation.at("/requestBody/content/application~1json/schema"), body);
  }

  /** What it says against an answer; it must know its status. */
  public List<Error> errorsOfAnswer(String method, String address, int status, JsonNode body) {
    JsonNode responses = operation(method, address).path("responses");
    JsonNode response = followed(responses.path(String.valueOf(status)));
    if (response.isMissingNode()) {
      throw new AssertionError("the document does not know " + status + " of " + address);
    }
    return errors(response.at("/content/application~1json/schema"), body);
  }

  private JsonNode operation(String method, String address) {
    return root.path("paths").path(path(address)).path(method.toLowerCase(Locale.ROOT));
  }

  private JsonNode followed(JsonNode node) {
    return node.has("$ref") ? root.at(node.path("$ref").asText().substring(1)) : node;
  }

  private List<Error> errors(JsonNode schema, JsonNode body) {
    if (schema.isMissingNode()) {
      throw new AssertionError("the document has no schema for " + body);
    }
    return schemas.computeIfAbsent(schema.toString(), any -> schema(schema)).validate(body);
  }

  /** With all schemas beside it, so that its links lead somewhere. */
  private Schema schema(JsonNode schema) {
    ObjectNode whole = JsonNodeFactory.instance.objectNode();
    whole.putArray("allOf").add(schema);
    whole.set("$defs", root.at("/components/schemas"));
    return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
        .getSchema(whole.toString().replace("\"#/components/schemas/", "\"#/$defs/"));
  }
}
