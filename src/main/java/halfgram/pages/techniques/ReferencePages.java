package halfgram.pages.techniques;

import halfgram.book.Reference;
import halfgram.desk.Desk;
import halfgram.desk.House;
import halfgram.desk.OwnRows;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.pages.Rooms;
import halfgram.technique.Tables;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The reference rows, and a kitchen's own word in the place of any. */
public final class ReferencePages implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/reference/{table}";

  private final Desk desk;
  private final OwnRows own;

  public ReferencePages(Desk desk, OwnRows own) {
    this.desk = desk;
    this.own = own;
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get("/k/{kitchen}/reference", this::all);
    routes.get(PLACE, this::table);
    routes.get(PLACE + "/{row}", this::row);
    routes.post(PLACE + "/{row}", this::save);
    routes.post(PLACE + "/{row}/back", this::back);
  }

  /** The tables are listed beside the techniques. */
  private void all(Context context) {
    Visit.of(context).seeOther("techniques");
  }

  private void table(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String table = table(visit);
    String name = visit.words().say(Message.of("reference." + table));
    TableView view =
        TableView.of(
            table, name, house.book().tables(), visit.query("find").strip(), visit.words());
    visit.page("reference", name, view);
  }

  private void row(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    show(visit, 200, house, Map.of(), List.of());
  }

  private void show(
      Visit visit, int status, House house, Map<String, String> typed, List<Problem> problems) {
    String table = table(visit);
    String code = visit.part("row");
    Tables.Row row = house.book().tables().find(table, code).orElseThrow(() -> Halt.notFound(code));
    Tables.Row shipped =
        Reference.load().tables().find(table, code).orElseThrow(() -> Halt.notFound(code));
    String name = visit.words().say(Message.of("reference." + table));
    RowView view =
        RowView.of(
            table,
            name,
            row,
            shipped,
            TableView.inOrder(house.book().tables(), table),
            typed,
            problems,
            visit.words());
    visit.page(status, "reference-row", name, view);
  }

  private static String table(Visit visit) {
    String table = visit.part("table");
    if (!Reference.TABLES.contains(table)) {
      throw Halt.notFound(table);
    }
    return table;
  }

  private void save(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String table = table(visit);
    String code = visit.part("row");
    Tables tables = house.book().tables();
    if (tables.find(table, code).isEmpty()) {
      throw Halt.notFound(code);
    }
    Map<String, String> typed = new TreeMap<>();
    tables.columns(table).forEach(f -> typed.put(f, visit.field("of-" + f).strip()));
    String standing = visit.field("standing");
    String source = visit.field("source").strip();
    List<Problem> problems =
        own.put(
            house,
            new OwnRows.Wanted(
                table,
                code,
                typed,
                Standing.find(standing).orElse(Standing.MEASURED_HERE).word(),
                source),
            visit.who());
    if (!problems.isEmpty()) {
      typed.put("source", source);
      typed.put("standing", standing);
      show(visit, 422, house, typed, problems);
      return;
    }
    visit.seeOther("reference/" + table + "/" + Visit.encoded(code));
  }

  private void back(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String table = table(visit);
    String code = visit.part("row");
    own.remove(house, table, code, visit.who());
    visit.seeOther("reference/" + table + "/" + Visit.encoded(code));
  }
}
