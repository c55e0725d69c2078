package halfgram.book;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The demo kitchen book with something changed. A place in it is written as keys and positions, or
 * codes instead of positions: {@code formulas/dill-oil/versions/0/steps/drip/yield}.
 */
public final class DemoBook {
  public static final Path FILE = Path.of("db", "demo", "tarnholm.json");

  /** Single quotes do in tests, where doubles would need escapes. */
  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(JsonReadFeature.ALLOW_SINGLE_QUOTES).build();

  private final ObjectNode json;

  private DemoBook(ObjectNode json) {
    this.json = json;
  }

  public static DemoBook fresh() {
    try {
      return new DemoBook((ObjectNode) MAPPER.readTree(Files.readAllBytes(FILE)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Puts a value, written as JSON, at a place; a place that ends in + is the end of a list. */
  public DemoBook set(String place, String value) {
    JsonNode parent = at(parentOf(place));
    String last = place.substring(place.lastIndexOf('/') + 1);
    JsonNode parsed = parse(value);
    if (parent instanceof ObjectNode object) {
      object.set(last, parsed);
    } else if (last.equals("+")) {
      ((ArrayNode) parent).add(parsed);
    } else {
      ((ArrayNode) parent).set(position(parent, last), parsed);
    }
    return this;
  }

  public DemoBook remove(String place) {
    JsonNode parent = at(parentOf(place));
    String last = place.substring(place.lastIndexOf('/') + 1);
    if (parent instanceof ObjectNode object) {
      object.remove(last);
    } else {
      ((ArrayNode) parent).remove(position(parent, last));
    }
    return this;
  }

  public ObjectNode json() {
    return json;
  }

  public byte[] bytes() {
    return json.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** A place as problems name it: {@code $.formulas[2].versions[0]}. */
  public String path(String place) {
    StringBuilder path = new StringBuilder("$");
    JsonNode node = json;
    for (String part : place.split("/", -1)) {
      if (node.isArray()) {
        int position = position(node, part);
        path.append('[').append(position).append(']');
        node = node.path(position);
      } else {
        path.append('.').append(part);
        node = node.path(part);
      }
    }
    return path.toString();
  }

  private JsonNode at(String place) {
    JsonNode node = json;
    for (String part : place.isEmpty() ? new String[0] : place.split("/", -1)) {
      node = node.isArray() ? node.path(position(node, part)) : node.path(part);
    }
    if (node.isMissingNode()) {
      throw new IllegalArgumentException("the demo book has no " + place);
    }
    return node;
  }

  private static int position(JsonNode list, String part) {
    if (part.matches("\\d+")) {
      return Integer.parseInt(part);
    }
    for (int i = 0; i < list.size(); i++) {
      if (list.get(i).path("code").asText().equals(part)) {
        return i;
      }
    }
    throw new IllegalArgumentException("no " + part + " in the list");
  }

  private static String parentOf(String place) {
    int slash = place.lastIndexOf('/');
    return slash < 0 ? "" : place.substring(0, slash);
  }

  private static JsonNode parse(String value) {
    try {
      return MAPPER.readTree(value);
    } catch (JsonProcessingException e) {
      throw new IllegalArgumentException(value, e);
    }
  }
}
