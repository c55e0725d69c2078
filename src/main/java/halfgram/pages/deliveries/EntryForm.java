package halfgram.pages.deliveries;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.pages.TypedNumber;
import halfgram.pages.TypedTime;
import halfgram.web.Visit;
import java.util.UUID;

/**
 * Something that is entered of a delivery, as typed.
 *
 * @param id of the form: the same one sent again is the same entry
 */
record EntryForm(
    String id,
    String kind,
    String expected,
    String day,
    String ingredient,
    String came,
    String reason,
    String reading,
    String undoes) {
  static final EntryForm NONE = new EntryForm("", "", "", "", "", "", "", "", "");

  static EntryForm arrived(String id) {
    return new EntryForm(
        id.isEmpty() ? UUID.randomUUID().toString() : id, "arrived", "", "", "", "", "", "", "");
  }

  static EntryForm sent(Visit visit) {
    String id = visit.field("id");
    return new EntryForm(
        id.isEmpty() ? UUID.randomUUID().toString() : id,
        visit.field("kind"),
        TypedTime.of(visit.field("expected")),
        visit.field("day").strip(),
        visit.field("ingredient").strip(),
        visit.field("came").strip(),
        visit.field("reason").strip(),
        visit.field("reading").strip(),
        visit.field("undoes"));
  }

  /** As the book writes an entry, without who and when. */
  ObjectNode body() {
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    body.put("entry", id);
    body.put("kind", kind);
    put(body, "expected", expected);
    put(body, "day", day);
    put(body, "ingredient", ingredient);
    put(body, "came", TypedNumber.pointed(came));
    put(body, "reason", reason);
    put(body, "reading", TypedNumber.pointed(reading));
    put(body, "undoes", undoes);
    return body;
  }

  private static void put(ObjectNode body, String key, String value) {
    if (!value.isEmpty()) {
      body.put(key, value);
    }
  }
}
