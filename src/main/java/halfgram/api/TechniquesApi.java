package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.Reference;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.OwnRows;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.pages.Rooms;
import halfgram.technique.Calculation;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Techniques worked out for whoever asks, and the reference rows they look things up in. */
public final class TechniquesApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1/techniques";
  private static final String ROWS = "/k/{kitchen}/api/v1/reference/{table}";

  private final Desk desk;
  private final OwnRows own;

  public TechniquesApi(Desk desk, OwnRows own) {
    this.desk = desk;
    this.own = own;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::list);
    routes.post(PLACE + "/{technique}", this::work);
    routes.get(ROWS, this::rows);
    routes.put(ROWS + "/{row}", this::put);
    routes.delete(ROWS + "/{row}", this::remove);
  }

  private void list(Context context) {
    Visit visit = Visit.of(context);
    Tables tables = Rooms.house(desk, visit).book().tables();
    visit.json(200, new TechniqueJson(visit.words(), tables).list(Techniques.list()).toString());
  }

  private void work(Context context) {
    Visit visit = Visit.of(context);
    Tables tables = Rooms.house(desk, visit).book().tables();
    Technique technique =
        Techniques.find(visit.part("technique"))
            .orElseThrow(() -> Halt.notFound(visit.part("technique")));
    JsonNode body = Json.body(context.body());
    Optional<Map<String, String>> typed = TechniqueInputs.of(body.path("inputs"));
    if (typed.isEmpty()) {
      Message wanted = Message.of("problem.accepted", Message.of("accept.object"));
      Call.refuse(visit, List.of(new Problem("$.inputs", "", wanted)));
      return;
    }
    Calculation worked = Calculation.of(technique, tables, typed.get());
    if (!worked.problems().isEmpty()) {
      Call.refuse(visit, placed("$.inputs.", worked.problems()));
      return;
    }
    visit.json(200, new TechniqueJson(visit.words(), tables).worked(worked).toString());
  }

  /** Problems by the name of an input or a column, as places in the body. */
  private static List<Problem> placed(String place, List<Problem> problems) {
    return problems.stream()
        .map(one -> new Problem(place + one.path(), one.value(), one.message()))
        .toList();
  }

  private void rows(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String table = table(visit);
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("table", table);
    ArrayNode rows = root.putArray("rows");
    house.book().tables().table(table).values().forEach(row -> rows.add(row(row)));
    visit.json(200, root.toString());
  }

  private static String table(Visit visit) {
    String table = visit.part("table");
    if (!Reference.TABLES.contains(table)) {
      throw Halt.notFound(table);
    }
    return table;
  }

  private static ObjectNode row(Tables.Row row) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("row", row.code());
    ObjectNode fields = node.putObject("fields");
    row.fields().forEach(fields::put);
    node.put("standing", row.standing().word());
    node.put("source", row.source());
    node.put("own", row.own());
    return node;
  }

  private void put(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String table = table(visit);
    String row = known(visit, house, table);
    JsonNode body = Json.body(context.body());
    Map<String, String> fields = TechniqueInputs.of(body.path("fields")).orElse(Map.of());
    List<Problem> problems =
        own.put(
            house,
            new OwnRows.Wanted(
                table,
                row,
                fields,
                body.path("standing").asText(Standing.MEASURED_HERE.word()),
                body.path("source").asText("")),
            visit.who());
    if (!problems.isEmpty()) {
      Call.refuse(visit, placed("$.", problems));
      return;
    }
    visit.json(200, row(desk.again(house).book().tables().row(table, row)).toString());
  }

  private static String known(Visit visit, House house, String table) {
    String row = visit.part("row");
    if (house.book().tables().find(table, row).isEmpty()) {
      throw Halt.notFound(row);
    }
    return row;
  }

  private void remove(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String table = table(visit);
    String row = known(visit, house, table);
    if (!own.remove(house, table, row, visit.who())) {
      throw Halt.notFound(row);
    }
    visit.json(200, row(desk.again(house).book().tables().row(table, row)).toString());
  }
}
