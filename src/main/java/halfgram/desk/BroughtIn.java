package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What a book that was brought in added and changed, as the log keeps it: every item with what it
 * was and what it is, field by field. What is more than a line of the log should hold is named
 * only, and what is more than that is counted.
 */
final class BroughtIn {
  private static final int MOST_ITEMS = 1000;
  private static final int MOST_TEXT = 48 * 1024;

  private record Item(String kind, String code, boolean added, List<FieldChange> fields) {}

  private final List<Item> items = new ArrayList<>();

  /** Compares a stored book with the same after the import; tubs are told one by one. */
  void compare(ObjectNode stored, ObjectNode merged) {
    for (Map.Entry<String, JsonNode> entry : merged.properties()) {
      String kind = entry.getKey();
      JsonNode before = stored.path(kind);
      if (!kind.equals("tubs") && !before.equals(entry.getValue())) {
        if (entry.getValue() instanceof ArrayNode list && !kind.startsWith("x-")) {
          items(kind, before, list);
        } else {
          item(kind, "", before, entry.getValue());
        }
      }
    }
  }

  private void items(String kind, JsonNode before, ArrayNode after) {
    Map<String, JsonNode> old = new LinkedHashMap<>();
    before.forEach(one -> old.put(ImportBook.key(one, kind), one));
    for (JsonNode one : after) {
      String code = ImportBook.key(one, kind);
      JsonNode was = old.getOrDefault(code, JsonNodeFactory.instance.missingNode());
      if (!was.equals(one)) {
        boolean formula = kind.equals("formulas");
        item(kind, code, formula ? latest(was) : was, formula ? latest(one) : one);
      }
    }
  }

  private void item(String kind, String code, JsonNode before, JsonNode after) {
    List<FieldChange> fields = FieldChange.between(before, after);
    if (!fields.isEmpty()) {
      items.add(new Item(kind, code, before.isMissingNode(), fields));
    }
  }

  /** A tub that is there is counted; what is new has nothing before. */
  void tub(String code, String before, String after) {
    if (!before.equals(after)) {
      FieldChange left = new FieldChange("left", before, after);
      items.add(new Item("tubs", code, before.isEmpty(), List.of(left)));
    }
  }

  /** A formula with its last version in place of all: those before stay as they are for good. */
  private static JsonNode latest(JsonNode formula) {
    if (formula.isMissingNode()) {
      return formula;
    }
    ObjectNode shown = formula.deepCopy();
    JsonNode last = JsonNodeFactory.instance.objectNode();
    for (JsonNode version : formula.path("versions")) {
      if (version.path("version").asInt() > last.path("version").asInt()) {
        last = version;
      }
    }
    shown.remove("versions");
    shown.set("version", last);
    return shown;
  }

  /** For the log: what changed first, since of that nothing else keeps what it was. */
  ObjectNode detail() {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    long added = items.stream().filter(Item::added).count();
    detail.put("added", added);
    detail.put("changed", items.size() - added);
    if (items.isEmpty()) {
      return detail;
    }
    ArrayNode list = detail.putArray("items");
    int text = 0;
    for (boolean isNew : new boolean[] {false, true}) {
      for (Item item : items) {
        if (item.added() == isNew && list.size() < MOST_ITEMS) {
          ObjectNode written = list.addObject().put("kind", item.kind()).put("code", item.code());
          text += write(written, item, MOST_TEXT - text);
        }
      }
    }
    if (items.size() > MOST_ITEMS) {
      detail.put("more", items.size() - MOST_ITEMS);
    }
    return detail;
  }

  /** Writes as many fields as there is room for; answers how much room they took. */
  private static int write(ObjectNode node, Item item, int room) {
    node.put("added", item.added());
    int used = 0;
    ArrayNode fields = node.putArray("fields");
    for (FieldChange field : item.fields()) {
      used += field.path().length() + field.before().length() + field.after().length() + 40;
      if (used > room) {
        node.put("cut", true);
        return room;
      }
      ObjectNode one = fields.addObject();
      one.put("path", field.path());
      one.put("before", field.before());
      one.put("after", field.after());
    }
    return used;
  }
}
