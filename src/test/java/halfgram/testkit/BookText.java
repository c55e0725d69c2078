package halfgram.testkit;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.Reference;
import halfgram.prep.KitchenBook;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Books as text. Test text may leave out quotes around keys, use single quotes and trailing commas;
 * what it says goes through the real reader, so a test book is always a valid one.
 */
public final class BookText {
  private static final JsonMapper LENIENT =
      JsonMapper.builder()
          .enable(JsonReadFeature.ALLOW_UNQUOTED_FIELD_NAMES)
          .enable(JsonReadFeature.ALLOW_SINGLE_QUOTES)
          .enable(JsonReadFeature.ALLOW_TRAILING_COMMA)
          .enable(JsonReadFeature.ALLOW_JAVA_COMMENTS)
          .build();
  private static final Reference REFERENCE = Reference.load();

  private BookText() {}

  public static ObjectNode object() {
    return LENIENT.createObjectNode();
  }

  public static ObjectNode parse(String text) {
    try {
      return (ObjectNode) LENIENT.readTree(text);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The book that a text says; a problem with it is a fault of the test. */
  public static KitchenBook read(ObjectNode json) {
    BookReader.Outcome outcome =
        new BookReader(REFERENCE).read(json.toString().getBytes(StandardCharsets.UTF_8));
    return outcome
        .book()
        .orElseThrow(
            () ->
                new AssertionError(
                    "no valid book: "
                        + outcome.unreadable()
                        + outcome.problems()
                        + "\n"
                        + json.toPrettyString()));
  }

  /**
   * Lays one text over another: objects key by key, lists of things with a code by code, other
   * lists and values as a whole.
   */
  public static void merge(ObjectNode onto, ObjectNode fragment) {
    for (Map.Entry<String, JsonNode> entry : fragment.properties()) {
      JsonNode old = onto.get(entry.getKey());
      if (old instanceof ObjectNode below && entry.getValue() instanceof ObjectNode above) {
        merge(below, above);
      } else if (old instanceof ArrayNode below
          && entry.getValue() instanceof ArrayNode above
          && hasCodes(above)) {
        mergeByCode(below, above);
      } else {
        onto.set(entry.getKey(), entry.getValue());
      }
    }
  }

  private static boolean hasCodes(ArrayNode list) {
    for (JsonNode item : list) {
      if (!item.has("code")) {
        return false;
      }
    }
    return true;
  }

  private static void mergeByCode(ArrayNode onto, ArrayNode list) {
    for (JsonNode item : list) {
      int at = 0;
      while (at < onto.size() && !onto.get(at).get("code").equals(item.get("code"))) {
        at++;
      }
      if (at < onto.size()) {
        onto.set(at, item);
      } else {
        onto.add(item);
      }
    }
  }

  /** The same book with everything that has no order of its own in another order. */
  public static ObjectNode shuffled(ObjectNode book, Random random) {
    ObjectNode other = book.deepCopy();
    for (Map.Entry<String, JsonNode> entry : other.properties()) {
      if (entry.getValue() instanceof ArrayNode list) {
        shuffle(list, random);
      }
    }
    for (JsonNode formula : other.withArray("formulas")) {
      shuffle((ArrayNode) formula.get("versions"), random);
    }
    return other;
  }

  private static void shuffle(ArrayNode list, Random random) {
    List<JsonNode> items = new ArrayList<>();
    list.forEach(items::add);
    Collections.shuffle(items, random);
    list.removeAll();
    list.addAll(items);
  }
}
