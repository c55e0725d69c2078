package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * An event as typed: its body in the book's own shape, each field under the pointer at which the book
 * has it ({@code /services/0/courses/1/at}). What the page has no field for stays as it is.
 */
final class EventForm {
  private static final Pattern POINTER = Pattern.compile("(/[A-Za-z]+|/\\d{1,3})+");
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,9}(\\.\\d{1,6})?");

  /** Fields that the book has as numbers. */
  private static final Set<String> NUMBERS =
      Set.of("expected", "final", "buffer", "count", "spare", "share", "perCover");

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private EventForm() {}

  /** The body with every field of the form put in. */
  static ObjectNode typed(ObjectNode base, Map<String, List<String>> form) {
    ObjectNode body = base.deepCopy();
    spread(body);
    form.forEach(
        (name, values) -> {
          if (POINTER.matcher(name).matches()) {
            set(body, name, values);
          }
        });
    fold(body, base);
    return body;
  }

  /** A body whose name has a place for each language. */
  static void spread(ObjectNode body) {
    JsonNode name = body.path("name");
    if (name.isTextual()) {
      body.putObject("name").put("en", name.asText());
    }
  }

  /** A name that is English alone goes back to being a plain text, where it was one. */
  private static void fold(ObjectNode body, ObjectNode base) {
    JsonNode name = body.path("name");
    boolean plain = base.path("name").isTextual() || base.path("name").isMissingNode();
    if (plain && name.size() == 1 && name.has("en")) {
      body.set("name", name.get("en"));
    }
    if (name.isObject() && name.isEmpty()) {
      body.put("name", "");
    }
  }

  private static void set(ObjectNode body, String pointer, List<String> values) {
    int cut = pointer.lastIndexOf('/');
    String key = pointer.substring(cut + 1);
    JsonNode parent = parent(body, pointer.substring(0, cut));
    if (!(parent instanceof ObjectNode object)) {
      return;
    }
    if (key.equals("diets") && !pointer.equals("/diets")) {
      ArrayNode diets = NODES.arrayNode();
      values.stream().filter(value -> !value.isBlank()).forEach(diets::add);
      object.set(key, diets);
      return;
    }
    String value = values.get(0).strip();
    JsonNode before = object.path(key);
    if (value.isEmpty()) {
      if (!before.isNull()) {
        object.remove(key);
      }
    } else if (NUMBERS.contains(key) && NUMBER.matcher(value).matches()) {
      JsonNode number = NODES.numberNode(new BigDecimal(value));
      boolean same = before.isNumber() && before.decimalValue().compareTo(new BigDecimal(value)) == 0;
      object.set(key, same ? before : number);
    } else {
      object.put(key, value);
    }
  }

  /** The object a field stands in, made where it was left out. */
  private static JsonNode parent(ObjectNode body, String pointer) {
    JsonNode at = body;
    for (String part : pointer.split("/", -1)) {
      if (part.isEmpty()) {
        continue;
      }
      if (at instanceof ArrayNode list) {
        at = list.path(Integer.parseInt(part));
      } else if (at instanceof ObjectNode object) {
        at = object.has(part) ? object.get(part) : object.putObject(part);
      } else {
        return at;
      }
    }
    return at;
  }

  /** One more row in a list: {@code /services/0/courses}. */
  static void add(ObjectNode body, String pointer) {
    if (POINTER.matcher(pointer).matches()) {
      int cut = pointer.lastIndexOf('/');
      if (parent(body, pointer.substring(0, cut)) instanceof ObjectNode object) {
        object.withArray(pointer.substring(cut + 1)).add(row(pointer));
      }
    }
  }

  private static ObjectNode row(String pointer) {
    ObjectNode row = NODES.objectNode();
    if (pointer.endsWith("/courses")) {
      row.putArray("dishes").add(NODES.objectNode().put("share", 100));
    } else if (pointer.endsWith("/dishes")) {
      row.put("share", 100);
    } else if (pointer.equals("/services")) {
      row.putArray("courses");
    }
    return row;
  }

  /** A row taken out of its list. */
  static void drop(ObjectNode body, String pointer) {
    if (POINTER.matcher(pointer).matches() && body.at(pointer).isObject()) {
      int cut = pointer.lastIndexOf('/');
      if (body.at(pointer.substring(0, cut)) instanceof ArrayNode list) {
        list.remove(Integer.parseInt(pointer.substring(cut + 1)));
      }
    }
  }
}
