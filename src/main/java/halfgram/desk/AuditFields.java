package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.db.Tx;
import halfgram.formula.FormulaStore;
import halfgram.kitchen.KitchenStore.Change;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/** Reads out of the detail of a change what it was before and what it is since. */
final class AuditFields {
  private static final String BEFORE = "before";
  private static final String AFTER = "after";

  /** Said by the two states, so not said again. */
  private static final Set<String> TOLD = Set.of(BEFORE, AFTER, "added", "covers");

  /** Kinds whose entry says both states; before the log kept both, it kept the first only. */
  private static final Set<String> OF_TWO_STATES = Set.of("event", "delivery");

  private static final JsonNode NONE = JsonNodeFactory.instance.objectNode();

  private final Tx tx;
  private final UUID kitchen;
  private final FormulaStore formulas = new FormulaStore();

  AuditFields(Tx tx, UUID kitchen) {
    this.tx = tx;
    this.kitchen = kitchen;
  }

  Audit.Row row(Change change) {
    ObjectNode detail = (ObjectNode) BookStore.parse(change.detail());
    List<FieldChange> fields = new ArrayList<>();
    boolean whole = true;
    switch (change.kind()) {
      case "par" ->
          fields.add(
              new FieldChange("amount", detail.path("from").asText(), detail.path("to").asText()));
      case "import" -> whole = brought(detail, fields);
      case "formula" -> formula(change.subject(), detail, fields);
      default -> whole = stated(change.kind(), detail, fields);
    }
    return new Audit.Row(change, List.copyOf(fields), whole);
  }

  private void formula(String code, JsonNode detail, List<FieldChange> fields) {
    fields.addAll(FieldChange.between(object(detail, BEFORE), object(detail, AFTER)));
    int version = detail.path("version").asInt();
    fields.addAll(FieldChange.between(version(code, version - 1), version(code, version)));
  }

  private JsonNode version(String code, int version) {
    return formulas.findVersion(tx, kitchen, code, version).map(BookStore::parse).orElse(NONE);
  }

  /** The items of an import; false when the log was too small for all of them, or kept none. */
  private static boolean brought(JsonNode detail, List<FieldChange> fields) {
    boolean whole = detail.has("added") && !detail.has("more");
    for (JsonNode item : detail.path("items")) {
      String code = item.path("code").asText();
      String place = item.path("kind").asText() + (code.isEmpty() ? "" : "[" + code + "]");
      whole &= !item.has("cut");
      for (JsonNode one : item.path("fields")) {
        String path = one.path("path").asText();
        FieldChange field =
            new FieldChange(path, one.path(BEFORE).asText(), one.path(AFTER).asText());
        fields.add(field.within(place));
      }
      if (item.path("fields").isEmpty()) {
        fields.add(new FieldChange(place, "", "…"));
      }
    }
    return whole;
  }

  private static boolean stated(String kind, ObjectNode detail, List<FieldChange> fields) {
    boolean removed = detail.has("removed");
    boolean both = detail.has(BEFORE) || detail.has(AFTER);
    ObjectNode rest = detail.deepCopy();
    if (both) {
      rest.remove(TOLD);
      rest.remove("removed");
    }
    fields.addAll(FieldChange.between(NONE, rest));
    fields.addAll(FieldChange.between(object(detail, BEFORE), object(detail, AFTER)));
    boolean half = detail.has(BEFORE) && !detail.has(AFTER) && !removed;
    return !(half && OF_TWO_STATES.contains(kind));
  }

  private static JsonNode object(JsonNode detail, String key) {
    return detail.path(key).isObject() ? detail.path(key) : NONE;
  }
}
