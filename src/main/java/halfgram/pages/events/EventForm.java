package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.pages.Code;
import halfgram.pages.TypedNumber;
import halfgram.pages.TypedTime;
import java.math.BigDecimal;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * An event as typed: its body in the book's own shape, each field under the pointer at which the
 * book has it ({@code /services/0/courses/1/at}). What the page has no field for stays as it is.
 */
final class EventForm {
  private static final Pattern POINTER = Pattern.compile("(/[A-Za-z]+|/\\d{1,3})+");
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,9}(\\.\\d{1,6})?");

  /** Fields that the book has as numbers. */
  private static final Set<String> NUMBERS =
      Set.of("expected", "final", "buffer", "count", "spare", "share", "perCover");

  private static final List<String> LISTS = List.of("courses", "curve", "dishes");

  /** Of a code, with room for a number behind it. */
  private static final Set<String> TIMES = Set.of("start", "end", "at");

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private EventForm() {}

  /** The body with every field of the form put in; rows the form does not know are not made. */
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
    if (pointer.equals("/draft") && value.equals("yes")) {
      object.put(key, true);
    } else if (pointer.equals("/draft") && value.isEmpty() && before.isBoolean()) {
      keepUnticked(object, key);
    } else if (value.isEmpty()) {
      if (!before.isNull()) {
        object.remove(key);
      }
    } else if (TIMES.contains(key)) {
      object.put(key, TypedTime.of(value));
    } else if (NUMBERS.contains(key) && NUMBER.matcher(TypedNumber.pointed(value)).matches()) {
      JsonNode number = NODES.numberNode(new BigDecimal(TypedNumber.pointed(value)));
      boolean same =
          before.isNumber() && before.decimalValue().compareTo(number.decimalValue()) == 0;
      object.set(key, same ? before : number);
    } else {
      object.put(key, value);
    }
  }

  /** What is not ticked goes; where it was written that it is not, that stays. */
  private static void keepUnticked(ObjectNode object, String key) {
    if (object.path(key).asBoolean()) {
      object.remove(key);
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
        at = list.path(part.matches("\\d+") ? Integer.parseInt(part) : -1);
      } else if (at instanceof ObjectNode object) {
        at = object.has(part) ? object.get(part) : object.putObject(part);
      } else {
        return at;
      }
    }
    return at;
  }

  /** A pointer as sent; the empty one when it is none. */
  static String pointer(String sent) {
    return POINTER.matcher(sent).matches() ? sent : "";
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

  /**
   * A copy as the book writes it: everything has a code, from its name, else from what it is; and a
   * service has no list with nothing in it.
   */
  static ObjectNode coded(ObjectNode body) {
    ObjectNode coded = body.deepCopy();
    if (!coded.hasNonNull("code")) {
      coded.put("code", Code.of(english(coded.path("name")), "event"));
    }
    codes(coded.path("services"), "service");
    for (JsonNode service : coded.path("services")) {
      codes(service.path("courses"), "course");
      if (service instanceof ObjectNode object) {
        object.remove(
            LISTS.stream()
                .filter(list -> object.path(list).isArray() && object.path(list).isEmpty())
                .toList());
      }
    }
    return coded;
  }

  private static void codes(JsonNode list, String kind) {
    Set<String> taken = new HashSet<>();
    list.forEach(row -> taken.add(row.path("code").asText()));
    for (JsonNode row : list) {
      if (row instanceof ObjectNode object && !row.hasNonNull("code")) {
        String wanted = Code.of(english(row.path("name")), kind);
        String code = wanted;
        for (int i = 2; !taken.add(code); i++) {
          code = wanted + "-" + i;
        }
        object.put("code", code);
      }
    }
  }

  private static String english(JsonNode name) {
    return name.isTextual() ? name.asText() : name.path("en").asText();
  }
}
