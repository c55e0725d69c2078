package halfgram.api;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.table.BookTable;
import halfgram.book.table.CsvText;
import halfgram.book.table.Misread;
import halfgram.desk.Desk;
import halfgram.desk.ExportBook;
import halfgram.desk.ExportTable;
import halfgram.desk.House;
import halfgram.desk.ImportBook;
import halfgram.desk.ImportTable;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The whole book and its tables, out and in. Every problem is told, and then nothing changes. */
public final class BookApi implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/api/v1";

  private final Desk desk;
  private final ExportBook export = new ExportBook();
  private final ExportTable exportTable;
  private final ImportBook importBook;
  private final ImportTable importTable;

  public BookApi(Desk desk) {
    this.desk = desk;
    this.exportTable = new ExportTable(desk);
    this.importBook = new ImportBook(desk);
    this.importTable = new ImportTable(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE + "/book", this::book);
    routes.post(PLACE + "/book", this::bring);
    routes.get(PLACE + "/tables/{table}", this::table);
    routes.post(PLACE + "/tables/{table}", this::bringTable);
  }

  private void book(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    visit.json(200, desk.read(tx -> export.text(tx, house)));
  }

  private void bring(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    byte[] bytes = context.bodyAsBytes();
    Json.object(
        visit,
        new String(bytes, StandardCharsets.UTF_8),
        body -> {
          ImportBook.Outcome outcome = importBook.importBook(house, bytes, visit.who());
          answer(
              visit,
              outcome.rows(),
              problems(outcome.problems(), outcome.unreadable()),
              outcome.told());
        });
  }

  private void table(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String name = visit.part("table");
    byte[] file = exportTable.find(house, name).orElseThrow(() -> Halt.notFound(name));
    visit.bytes(200, "text/csv; charset=utf-8", file);
  }

  private void bringTable(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String name = visit.part("table");
    BookTable table = BookTable.find(name).orElseThrow(() -> Halt.notFound(name));
    CsvText.Outcome read = CsvText.read(context.bodyAsBytes(), table.header());
    ImportTable.Outcome outcome = importTable.importTable(house, table, read, visit.who());
    answer(
        visit,
        outcome.rows(),
        problems(outcome.problems(), visit.words()),
        problems(outcome.told(), visit.words()));
  }

  // ---- behind the handlers ----

  private static List<Problem> problems(List<Problem> found, Optional<Message> unreadable) {
    List<Problem> problems = new ArrayList<>(found);
    unreadable.ifPresent(why -> problems.add(new Problem("$", "", why)));
    return problems;
  }

  private static List<Problem> problems(List<Misread> misreads, Messages words) {
    return misreads.stream()
        .map(one -> new Problem(words.say(one.at()), one.value(), one.message()))
        .toList();
  }

  private static void answer(Visit visit, int rows, List<Problem> problems, List<Problem> told) {
    if (problems.isEmpty()) {
      ObjectNode node = JsonNodeFactory.instance.objectNode();
      node.put("rows", rows);
      Call.tell(node, told, visit.words());
      visit.json(200, node.toString());
    } else {
      Call.refuse(visit, problems);
    }
  }
}
