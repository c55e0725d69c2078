package halfgram.cli;

import halfgram.book.BookReader;
import halfgram.book.Reference;
import halfgram.input.Problem;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;

/** Reads a book for a command and says every problem with it, one a line: file, path, value. */
final class Books {

  /** A book, or the status to end with. */
  record Opened(Optional<KitchenBook> book, int status) {}

  private Books() {}

  static Opened open(Cli cli, String file) {
    return open(cli, file, new BookReader(Reference.load())::read);
  }

  /** As a book that is to be brought in. */
  static Opened check(Cli cli, String file) {
    return open(cli, file, new BookReader(Reference.load())::check);
  }

  private static Opened open(Cli cli, String file, Function<Path, BookReader.Outcome> reading) {
    Path path;
    try {
      path = Path.of(file);
    } catch (InvalidPathException e) {
      cli.error(file + ": " + cli.messages().say("unreadable.no-file"));
      return new Opened(Optional.empty(), Exit.UNUSABLE);
    }
    BookReader.Outcome outcome = reading.apply(path);
    if (outcome.unreadable().isPresent()) {
      cli.error(file + ": " + cli.messages().say(outcome.unreadable().get()));
      return new Opened(Optional.empty(), Exit.UNUSABLE);
    }
    for (Problem problem : outcome.problems()) {
      cli.error(said(cli.messages(), file, problem));
    }
    return new Opened(outcome.book(), outcome.book().isPresent() ? Exit.DONE : Exit.NO);
  }

  /** One problem of a file: file, path, value. */
  static String said(Messages messages, String file, Problem problem) {
    String value = problem.value().isEmpty() ? "" : " \"" + problem.value() + "\"";
    return file + ": " + problem.path() + value + ": " + messages.say(problem.message());
  }
}
