package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.table.CsvText;
import halfgram.desk.Audit;
import halfgram.desk.Desk;
import halfgram.desk.FieldChange;
import halfgram.desk.House;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.kitchen.KitchenStore.Origin;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Who changed what, when and from where; as JSON a part at a time, as a file all of it. */
public final class AuditApi implements Server.Part {
  private static final List<String> HEADER =
      List.of(
          "number", "at", "who", "account", "via", "address", "kind", "subject", "field", "before",
          "after");

  private final Desk desk;
  private final Audit audit;

  public AuditApi(Desk desk, Audit audit) {
    this.desk = desk;
    this.audit = audit;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/api/v1/audit", this::audit);
    routes.get("/k/{kitchen}/api/v1/audit.csv", this::file);
  }

  private void audit(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Audit.Part part = audit.list(house, asked(visit), after(visit), Query.limit(visit));
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    ArrayNode changes = answer.putArray("changes");
    part.rows().forEach(row -> row(changes.addObject(), row, Answers.zone(house)));
    part.next().ifPresent(next -> answer.put("next", next));
    visit.json(200, answer.toString());
  }

  /** One line for every field of every change; a last line says so when there is more. */
  private void file(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    Audit.Part part = audit.list(house, asked(visit), after(visit), Audit.MOST_IN_FILE);
    List<List<String>> lines = new ArrayList<>();
    part.rows().forEach(row -> lines(lines, row, Answers.zone(house)));
    part.next()
        .ifPresent(next -> lines.add(line(visit.words().say("api.audit-more", next), List.of())));
    visit.bytes(200, "text/csv; charset=utf-8", CsvText.write(HEADER, lines));
  }

  // ---- behind the handlers ----

  private static long after(Visit visit) {
    return Query.findNumber(visit, "after").orElse(Long.MAX_VALUE);
  }

  private static Audit.Asked asked(Visit visit) {
    String kind = visit.query("kind");
    if (!kind.isEmpty() && !Audit.KINDS.contains(kind)) {
      throw Halt.unreadable("kind=" + String.join("|", Audit.KINDS));
    }
    return new Audit.Asked(
        Optional.of(kind).filter(one -> !one.isEmpty()),
        visit.query("who").strip(),
        visit.query("subject").strip(),
        Query.findDate(visit, "from"),
        Query.findDate(visit, "to"));
  }

  private static void row(ObjectNode node, Audit.Row row, ZoneId zone) {
    Change change = row.change();
    node.put("number", change.number());
    node.put("at", Answers.moment(change.at(), zone));
    node.put("who", change.who());
    change
        .origin()
        .ifPresent(
            from -> {
              node.put("account", from.account());
              node.put("via", from.via());
              node.put("address", from.address());
            });
    node.put("kind", change.kind());
    node.put("subject", change.subject());
    ArrayNode fields = node.putArray("fields");
    for (FieldChange field : row.fields()) {
      ObjectNode one = fields.addObject();
      one.put("path", field.path());
      one.put("before", field.before());
      one.put("after", field.after());
    }
    node.put("whole", row.whole());
  }

  private static void lines(List<List<String>> lines, Audit.Row row, ZoneId zone) {
    Change change = row.change();
    List<String> start =
        List.of(
            Answers.moment(change.at(), zone),
            change.who(),
            change.origin().map(Origin::account).orElse(""),
            change.origin().map(Origin::via).orElse(""),
            change.origin().map(Origin::address).orElse(""),
            change.kind(),
            change.subject());
    String number = String.valueOf(change.number());
    if (row.fields().isEmpty()) {
      lines.add(line(number, start));
    }
    for (FieldChange field : row.fields()) {
      List<String> line = new ArrayList<>(start);
      line.addAll(List.of(field.path(), field.before(), field.after()));
      lines.add(line(number, line));
    }
  }

  /** As many cells as the header has. */
  private static List<String> line(String first, List<String> rest) {
    List<String> line = new ArrayList<>(List.of(first));
    line.addAll(rest);
    while (line.size() < HEADER.size()) {
      line.add("");
    }
    return line;
  }
}
