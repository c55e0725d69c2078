package halfgram.pages.book;

import halfgram.book.table.BookTable;
import halfgram.book.table.CsvText;
import halfgram.desk.Desk;
import halfgram.desk.ExportTable;
import halfgram.desk.House;
import halfgram.desk.ImportBook;
import halfgram.desk.ImportTable;
import halfgram.pages.Rooms;
import halfgram.web.Halt;
import halfgram.web.Server;
import halfgram.web.Visit;
import halfgram.words.Messages;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.UploadedFile;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The book and its tables as files: taken out, and brought in with every problem told at once and
 * nothing changed unless there is none.
 */
public final class FilePages implements Server.Part {
  private static final String PLACE = "/k/{kitchen}/book/file";

  /** What is brought in when it is no table. */
  private static final String BOOK = "book";

  private final Desk desk;
  private final ImportBook books;
  private final ImportTable tables;

  public FilePages(Desk desk) {
    this.desk = desk;
    this.books = new ImportBook(desk);
    this.tables = new ImportTable(desk);
  }

  @Override
  public void routes(RoutesConfig routes) {
    routes.get(PLACE, this::page);
    routes.post(PLACE, this::bring);
  }

  /**
   * The page.
   *
   * @param taken tables that can be taken out
   * @param brought what can be brought in: the book, or a table
   * @param what was brought in last
   * @param done what became of it; empty when nothing was brought in
   * @param problems why nothing was; all of them
   * @param told what was and is more often a slip than meant
   */
  record View(
      List<String> taken,
      List<String> brought,
      String what,
      String done,
      List<String> problems,
      List<String> told) {}

  /** What became of a file. */
  private record Came(int rows, List<String> problems, List<String> told) {}

  private void page(Context context) {
    Visit visit = Visit.of(context);
    Rooms.house(desk, visit);
    show(visit, 200, BOOK, Optional.empty());
  }

  private void bring(Context context) {
    Visit visit = Visit.of(context);
    House house = Rooms.house(desk, visit);
    String what = visit.field("what");
    Optional<BookTable> table = BookTable.find(what);
    if (table.isEmpty() && !what.equals(BOOK)) {
      throw Halt.unreadable("what");
    }
    byte[] bytes = bytes(context.uploadedFile("file"));
    Came came =
        bytes.length == 0
            ? new Came(0, List.of(visit.words().say("book.file-none")), List.of())
            : table.isPresent()
                ? table(visit, house, table.get(), bytes)
                : book(visit, house, bytes);
    show(visit, came.problems().isEmpty() ? 200 : 422, what, Optional.of(came));
  }

  private static byte[] bytes(@Nullable UploadedFile file) {
    if (file == null) {
      return new byte[0];
    }
    try (InputStream stream = file.content()) {
      return stream.readAllBytes();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Came book(Visit visit, House house, byte[] bytes) {
    byte[] own = visit.field("other").isEmpty() ? bytes : books.asOf(house, bytes);
    ImportBook.Outcome outcome = books.importBook(house, own, visit.who());
    Messages words = visit.words();
    Stream<String> unreadable = outcome.unreadable().stream().map(words::say);
    Stream<String> problems =
        outcome.problems().stream()
            .map(one -> said(words, one.path(), one.value(), words.say(one.message())));
    return new Came(
        outcome.rows(),
        Stream.concat(unreadable, problems).toList(),
        outcome.told().stream()
            .map(one -> said(words, one.path(), one.value(), words.say(one.message())))
            .toList());
  }

  private Came table(Visit visit, House house, BookTable table, byte[] bytes) {
    CsvText.Outcome read = CsvText.read(bytes, table.header());
    ImportTable.Outcome outcome = tables.importTable(house, table, read, visit.who());
    Messages words = visit.words();
    return new Came(
        outcome.rows(),
        outcome.problems().stream()
            .map(one -> said(words, words.say(one.at()), one.value(), words.say(one.message())))
            .toList(),
        outcome.told().stream()
            .map(one -> said(words, words.say(one.at()), one.value(), words.say(one.message())))
            .toList());
  }

  /** "$.people[0].stations[0] "moon": there is no such station", as the command says it. */
  private static String said(Messages words, String where, String value, String why) {
    return value.isEmpty()
        ? words.say("book.file-problem", where, why)
        : words.say("book.file-problem-of", where, value, why);
  }

  private static void show(Visit visit, int status, String what, Optional<Came> came) {
    Messages words = visit.words();
    View view =
        new View(
            ExportTable.names(),
            Stream.concat(Stream.of(BOOK), BookTable.all().stream().map(BookTable::name)).toList(),
            what,
            came.filter(one -> one.problems().isEmpty())
                .map(one -> words.say("book.file-done", one.rows()))
                .orElse(""),
            came.map(Came::problems).orElse(List.of()),
            came.map(Came::told).orElse(List.of()));
    visit.page(status, "book/file", words.say("book.file"), view);
  }
}
