package halfgram.book;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParseException;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;

/**
 * Parses JSON into a tree: no key twice in one object, nothing after the end, numbers as exact
 * decimals. Straight on the parser, because setting up a whole object mapper takes longer than
 * reading the book.
 */
final class JsonTree {
  private static final JsonFactory FACTORY =
      JsonFactory.builder().enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION).build();
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  /** Where the parser speaks of its own classes and settings. */
  private static final String INNER_NAMES = ", from `[^`]*`| as `java[^`]*`";

  private JsonTree() {}

  static JsonNode parse(byte[] bytes) throws IOException {
    try (JsonParser parser = FACTORY.createParser(bytes)) {
      try {
        return whole(parser);
      } catch (StreamConstraintsException | NumberFormatException e) {
        String why = String.valueOf(e.getMessage()).replaceAll(INNER_NAMES, "");
        throw new JsonParseException(parser, "too deep or too large: " + why);
      }
    }
  }

  private static JsonNode whole(JsonParser parser) throws IOException {
    JsonToken first = parser.nextToken();
    if (first == null) {
      throw new JsonParseException(parser, "nothing in it");
    }
    JsonNode root = value(parser, first);
    if (parser.nextToken() != null) {
      throw new JsonParseException(parser, "more than one value");
    }
    return root;
  }

  private static JsonNode value(JsonParser parser, JsonToken token) throws IOException {
    return switch (token) {
      case START_OBJECT -> object(parser);
      case START_ARRAY -> array(parser);
      case VALUE_STRING -> NODES.textNode(parser.getText());
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> NODES.numberNode(parser.getDecimalValue());
      case VALUE_TRUE -> NODES.booleanNode(true);
      case VALUE_FALSE -> NODES.booleanNode(false);
      case VALUE_NULL -> NODES.nullNode();
      default -> throw new JsonParseException(parser, "unexpected " + token);
    };
  }

  private static ObjectNode object(JsonParser parser) throws IOException {
    ObjectNode object = NODES.objectNode();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String key = parser.currentName();
      object.set(key, value(parser, parser.nextToken()));
    }
    return object;
  }

  private static ArrayNode array(JsonParser parser) throws IOException {
    ArrayNode array = NODES.arrayNode();
    for (JsonToken token = parser.nextToken();
        token != JsonToken.END_ARRAY;
        token = parser.nextToken()) {
      array.add(value(parser, token));
    }
    return array;
  }
}
