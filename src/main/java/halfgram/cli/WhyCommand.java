package halfgram.cli;

import halfgram.book.Moments;
import halfgram.measure.Because;
import halfgram.prep.KitchenBook;
import halfgram.prep.Planning;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** {@code why ID}: how one number of a plan came to be, down to what was entered. */
final class WhyCommand {
  private static final Pattern ID =
      Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)\\+(\\d{1,2})(?:@([0-9T:-]+))?/(.+)");

  private final Cli cli;

  WhyCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments = new Arguments(args, Set.of("--book", "--as-of"), Set.of());
    String id = arguments.word("ID");
    Matcher parts = ID.matcher(id);
    Optional<LocalDate> date = Optional.empty();
    Optional<Integer> days = Optional.empty();
    if (parts.matches()) {
      date = Moments.date(parts.group(1));
      days = PlanCommand.days(parts.group(2));
    }
    if (!id.isEmpty() && (date.isEmpty() || days.isEmpty())) {
      arguments.problem("usage.id", id);
    }
    Optional<LocalDateTime> asOf = arguments.find("--as-of", Moments::moment, "accept.moment");
    if (parts.matches() && parts.group(3) != null) {
      asOf = Moments.moment(parts.group(3));
      if (asOf.isEmpty()) {
        arguments.problem("usage.id", id);
      }
    }
    String file = arguments.get("--book", "accept.book");
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Books.Opened opened = Books.open(cli, file);
    if (opened.book().isEmpty()) {
      return opened.status();
    }
    KitchenBook book = opened.book().get();
    Because.Recording recording = Because.recording();
    Planning.plan(
        book, PlanCommand.request(book, date.orElseThrow(), days.orElseThrow(), asOf), recording);
    return say(recording, parts.group(4), book);
  }

  private int say(Because.Recording recording, String path, KitchenBook book) {
    Optional<Because.Note> note = recording.find(path);
    if (note.isEmpty()) {
      cli.error(cli.messages().say("usage.no-id", path, recording.findNearest(path).orElse("-")));
      return Exit.NO;
    }
    cli.out()
        .print(
            new WhyText(recording, cli.messages().at(book.kitchen().clock().zone()))
                .write(note.get()));
    return Exit.DONE;
  }
}
