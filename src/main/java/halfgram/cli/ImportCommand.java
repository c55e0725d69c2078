package halfgram.cli;

import halfgram.Wiring;
import halfgram.book.table.BookTable;
import halfgram.book.table.CsvText;
import halfgram.book.table.Misread;
import halfgram.desk.House;
import halfgram.desk.ImportBook;
import halfgram.desk.ImportTable;
import halfgram.input.Problem;
import halfgram.words.Messages;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * {@code import FILE…}: books into the database, or one table into one kitchen. Tells every problem
 * and changes nothing unless there is none.
 */
final class ImportCommand {
  private final Cli cli;

  ImportCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments = new Arguments(args, Set.of("--data", "--kitchen", "--table"), Set.of());
    List<String> files = arguments.words("FILE");
    Optional<BookTable> table =
        arguments.find("--table", BookTable::find, "accept.table", ImportCommand.tables());
    if (arguments.has("--table")) {
      arguments.noMoreWords(1);
    } else if (arguments.has("--kitchen")) {
      arguments.problem("usage.kitchen-of-book");
    }
    Holding holding = new Holding(cli, arguments, "import", args);
    return table.isPresent()
        ? holding.run(files, wiring -> importTable(wiring, holding, table.get(), files.get(0)))
        : holding.run(files, wiring -> importBooks(wiring, files));
  }

  private static String tables() {
    return String.join(", ", BookTable.all().stream().map(BookTable::name).toList());
  }

  private int importBooks(Wiring wiring, List<String> files) {
    List<byte[]> books = new ArrayList<>();
    for (String file : files) {
      read(file).ifPresent(books::add);
    }
    if (books.size() < files.size()) {
      return Exit.UNUSABLE;
    }
    List<ImportBook.Outcome> outcomes = wiring.importBook().importBooks(books, Holding.WHO);
    int status = Exit.DONE;
    for (int i = 0; i < files.size(); i++) {
      status = Math.max(status, say(files.get(i), outcomes.get(i)));
    }
    return status;
  }

  private int say(String file, ImportBook.Outcome outcome) {
    outcome.unreadable().ifPresent(why -> cli.error(file + ": " + cli.messages().say(why)));
    for (Problem problem : outcome.problems()) {
      cli.error(Books.said(cli.messages(), file, problem));
    }
    outcome.told().forEach(one -> cli.out().println(Books.said(cli.messages(), file, one)));
    outcome
        .kitchen()
        .ifPresent(
            code ->
                cli.out().println(cli.messages().say("import.done", file, code, outcome.rows())));
    if (outcome.unreadable().isPresent()) {
      return Exit.UNUSABLE;
    }
    return outcome.problems().isEmpty() ? Exit.DONE : Exit.NO;
  }

  private int importTable(Wiring wiring, Holding holding, BookTable table, String file) {
    Optional<House> house = holding.house(wiring);
    Optional<byte[]> bytes = read(file);
    if (house.isEmpty() || bytes.isEmpty()) {
      return Exit.UNUSABLE;
    }
    CsvText.Outcome rows = CsvText.read(bytes.get(), table.header());
    ImportTable.Outcome outcome =
        wiring.importTable().importTable(house.get(), table, rows, Holding.WHO);
    if (!outcome.problems().isEmpty()) {
      outcome.problems().forEach(one -> cli.error(said(file, one)));
      return Exit.NO;
    }
    outcome.told().forEach(one -> cli.out().println(said(file, one)));
    cli.out().println(cli.messages().say("import.done", file, house.get().code(), outcome.rows()));
    return Exit.DONE;
  }

  private String said(String file, Misread one) {
    Messages words = cli.messages();
    String value = one.value().isEmpty() ? "" : " \"" + one.value() + "\"";
    return file + ": " + words.say(one.at()) + value + ": " + words.say(one.message());
  }

  private Optional<byte[]> read(String file) {
    try {
      return Optional.of(cli.files().read(file));
    } catch (IOException e) {
      cli.error(file + ": " + DataFolder.reason(cli.messages(), e));
      return Optional.empty();
    }
  }
}
