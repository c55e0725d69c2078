package halfgram.pages.deliveries;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.pages.Code;
import halfgram.pages.TypedNumber;
import halfgram.pages.TypedTime;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.List;

/**
 * A delivery as typed.
 *
 * @param code empty for a new one
 * @param seen number of the edit that was seen; empty for a new one
 */
record DeliveryForm(
    String code,
    String seen,
    String supplier,
    String date,
    String expected,
    String checkIn,
    List<Row> rows) {
  private static final int BLANK = 3;
  private static final int MOST = 60;

  /** A line as typed; one with neither ingredient nor amount is no line. */
  record Row(String ingredient, String amount, boolean inHouse) {
    static final Row NONE = new Row("", "", false);

    private boolean isBlank() {
      return ingredient.isEmpty() && amount.isEmpty();
    }
  }

  static DeliveryForm blank(String date) {
    return new DeliveryForm("", "", "", date, "", "", List.of()).withRoom();
  }

  /** One that is there, as the book writes it. */
  static DeliveryForm of(JsonNode body, long change) {
    List<Row> rows = new ArrayList<>();
    for (JsonNode line : body.path("lines")) {
      rows.add(
          new Row(
              line.path("ingredient").asText(),
              line.path("amount").asText(),
              line.path("inHouse").asBoolean()));
    }
    JsonNode checkIn = body.path("checkIn");
    return new DeliveryForm(
            body.path("code").asText(),
            String.valueOf(change),
            body.path("supplier").asText(),
            body.path("date").asText(),
            body.path("expected").asText(),
            checkIn.isTextual() ? checkIn.asText() : "",
            rows)
        .withRoom();
  }

  static DeliveryForm sent(Visit visit, String code) {
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < MOST && !visit.fields("ingredient-" + i).isEmpty(); i++) {
      rows.add(
          new Row(
              visit.field("ingredient-" + i).strip(),
              visit.field("amount-" + i).strip(),
              !visit.field("in-house-" + i).isEmpty()));
    }
    return new DeliveryForm(
        code,
        visit.field("seen"),
        visit.field("supplier").strip(),
        visit.field("date").strip(),
        TypedTime.of(visit.field("expected")),
        visit.field("checkIn").strip(),
        rows);
  }

  /** The same with a few more rows to fill. */
  DeliveryForm withRoom() {
    List<Row> more = new ArrayList<>(rows);
    for (int i = 0; i < BLANK; i++) {
      more.add(Row.NONE);
    }
    return new DeliveryForm(code, seen, supplier, date, expected, checkIn, more);
  }

  DeliveryForm seeing(long change) {
    return new DeliveryForm(code, String.valueOf(change), supplier, date, expected, checkIn, rows);
  }

  /** The rows that are lines, by their places among the rows. */
  List<Integer> lines() {
    List<Integer> lines = new ArrayList<>();
    for (int i = 0; i < rows.size(); i++) {
      if (!rows.get(i).isBlank()) {
        lines.add(i);
      }
    }
    return lines;
  }

  /** As the book writes it; keys of somebody's own stay. */
  ObjectNode body(JsonNode before) {
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    String own = code.isEmpty() ? Code.of(supplier + " " + date, "delivery") : code;
    body.put("code", own);
    put(body, "supplier", supplier);
    put(body, "date", date);
    put(body, "expected", expected);
    put(body, "checkIn", checkIn);
    ArrayNode list = body.putArray("lines");
    for (int i : lines()) {
      ObjectNode line = list.addObject();
      put(line, "ingredient", rows.get(i).ingredient());
      put(line, "amount", TypedNumber.pointed(rows.get(i).amount()));
      if (rows.get(i).inHouse()) {
        line.put("inHouse", true);
      }
    }
    before.properties().stream()
        .filter(one -> one.getKey().startsWith("x-"))
        .forEach(one -> body.set(one.getKey(), one.getValue()));
    return body;
  }

  private static void put(ObjectNode body, String key, String value) {
    if (!value.isEmpty()) {
      body.put(key, value);
    }
  }
}
