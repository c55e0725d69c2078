package halfgram.book.table;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** The services of the events, one row a dish: of a course, or of the whole service. */
final class EventServices implements BookTable {
  /** A service's dishes that are of no course. */
  private static final JsonNode NONE = MissingNode.getInstance();

  private static final Column CODE = Column.word("code");
  private static final List<Column> SERVICE =
      List.of(
          Column.word("service", "code"),
          Column.text("name", "name", "en"),
          Column.word("start"),
          Column.word("end"),
          Column.curve());
  private static final List<Column> COURSE =
      List.of(
          Column.word("course", "code"),
          Column.text("course-name", "name", "en"),
          Column.word("at"));
  private static final List<Column> DISH =
      List.of(
          Column.word("dish"),
          Column.number("share", "share"),
          Column.number("per-cover", "perCover"));

  @Override
  public String name() {
    return "event-services";
  }

  @Override
  public List<String> header() {
    List<String> header = new ArrayList<>(List.of("event"));
    List.of(SERVICE, COURSE, DISH)
        .forEach(columns -> columns.forEach(column -> header.add(column.name())));
    return header;
  }

  @Override
  public List<List<String>> rows(ObjectNode book) {
    List<List<String>> rows = new ArrayList<>();
    for (JsonNode event : book.path("events")) {
      for (JsonNode service : event.path("services")) {
        List<String> start = new ArrayList<>(List.of(CODE.show(event)));
        SERVICE.forEach(column -> start.add(column.show(service)));
        for (JsonNode course : service.path("courses")) {
          course.path("dishes").forEach(dish -> rows.add(row(start, course, dish)));
        }
        service.path("dishes").forEach(dish -> rows.add(row(start, NONE, dish)));
      }
    }
    return rows;
  }

  private static List<String> row(List<String> start, JsonNode course, JsonNode dish) {
    List<String> row = new ArrayList<>(start);
    COURSE.forEach(column -> row.add(column.show(course)));
    DISH.forEach(column -> row.add(column.show(dish)));
    return row;
  }

  @Override
  public Placed put(ObjectNode book, List<Row> rows) {
    Placed placed = new Placed();
    Set<List<String>> seen = new HashSet<>();
    for (Row row : rows) {
      int event = index(book.path("events"), "code", row.cell("event"));
      if (event < 0) {
        placed.misread(row, "event", Message.of("table.no-event"));
      } else if (seen.add(
          List.of(row.cell("event"), row.cell("service"), row.cell("course"), row.cell("dish")))) {
        At at = new At((ObjectNode) book.path("events").path(event), "$.events[" + event + "]");
        put(at, row, placed);
      } else {
        placed.misread(row, "dish", Message.of("table.twice"));
      }
    }
    return placed;
  }

  /** An object of the book and its path. */
  private record At(ObjectNode node, String path) {
    /** The item of a list whose key is this, made when it is not there. */
    At in(String list, String key, String value) {
      ArrayNode items = node.withArray(list);
      int there = index(items, key, value);
      int at = there < 0 ? items.size() : there;
      ObjectNode item = there < 0 ? items.addObject() : (ObjectNode) items.path(at);
      return new At(item, path + "." + list + "[" + at + "]");
    }
  }

  private static void put(At event, Row row, Placed placed) {
    At service = event.in("services", "code", row.cell("service"));
    put(service, SERVICE, row, placed);
    At of = service;
    if (!row.cell("course").isEmpty()) {
      of = service.in("courses", "code", row.cell("course"));
      put(of, COURSE, row, placed);
    }
    if (!row.cell("dish").isEmpty()) {
      put(of.in("dishes", "dish", row.cell("dish")), DISH, row, placed);
    }
  }

  private static void put(At item, List<Column> columns, Row row, Placed placed) {
    placed.row(item.path(), row, columns.get(0).name());
    for (Column column : columns) {
      placed.put(item.path() + "." + column.key(), row, column.name());
      if (!column.put(item.node(), row.cell(column.name()))) {
        placed.misread(row, column.name(), Message.of(column.accepted()));
      }
    }
  }

  private static int index(JsonNode items, String key, String value) {
    for (int i = 0; i < items.size(); i++) {
      if (items.path(i).path(key).asText().equals(value)) {
        return i;
      }
    }
    return -1;
  }
}
