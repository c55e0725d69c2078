package halfgram.cli;

import halfgram.prep.KitchenBook;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;

/** {@code check FILE}: whether a book is valid; {@code check --schema}: what a book looks like. */
final class CheckCommand {
  static final String SCHEMA = "/halfgram/book/halfgram-book-1.schema.json";

  private final Cli cli;

  CheckCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments = new Arguments(args, Set.of(), Set.of("--schema"));
    if (arguments.has("--schema")) {
      arguments.noMoreWords(0);
      if (!arguments.problems().isEmpty()) {
        return cli.usage(arguments.problems());
      }
      cli.out().print(schema());
      return Exit.DONE;
    }
    String file = arguments.word("FILE");
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Books.Opened opened = Books.check(cli, file);
    opened.book().ifPresent(this::good);
    return opened.status();
  }

  private void good(KitchenBook book) {
    cli.out()
        .println(
            cli.messages()
                .say(
                    "check.good",
                    book.ingredients().size(),
                    book.formulary().list().size(),
                    book.dishes().size(),
                    book.allEvents().size(),
                    book.lots().size()));
  }

  private static String schema() {
    try (InputStream stream = CheckCommand.class.getResourceAsStream(SCHEMA)) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks " + SCHEMA);
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(SCHEMA, e);
    }
  }
}
