package halfgram.cli;

import halfgram.book.Moments;
import halfgram.desk.InForce;
import halfgram.measure.Because;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
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
    Arguments arguments = new Arguments(args, Source.with("--as-of"), Set.of());
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
    Optional<LocalDate> from = date;
    int length = days.orElse(1);
    Optional<LocalDateTime> moment = asOf;
    List<String> call = new ArrayList<>(List.of("why"));
    call.addAll(args);
    return Source.run(
        cli,
        arguments,
        call,
        found -> {
          PlanRequest request =
              PlanCommand.request(found.book(), from.orElseThrow(), length, moment);
          return say(derive(found, request), parts.group(4), found.book());
        });
  }

  /** The plan again with every number's note: the one in force, if it is the one asked for. */
  private static Because.Recording derive(Source.Found found, PlanRequest request) {
    Because.Recording recording = Because.recording();
    Optional<InForce> inForce =
        found
            .stored()
            .filter(stored -> request.days() == 1)
            .flatMap(stored -> stored.findInForce(request.from()))
            .filter(plan -> plan.plan().asOf().equals(request.asOf()));
    if (inForce.isPresent()) {
      Source.Stored stored = found.stored().orElseThrow();
      stored
          .wiring()
          .desk()
          .read(
              tx ->
                  stored
                      .wiring()
                      .plans()
                      .recompute(tx, stored.house(), inForce.get().plan(), recording));
    } else {
      Planning.plan(found.book(), request, recording);
    }
    return recording;
  }

  private int say(Because.Recording recording, String path, KitchenBook book) {
    Optional<Because.Note> note = recording.find(path);
    if (note.isEmpty()) {
      cli.error(cli.messages().say("usage.no-id", path, recording.findNearest(path).orElse("-")));
      return Exit.NO;
    }
    cli.out().print(new WhyText(recording, cli.messages().at(book.kitchen())).write(note.get()));
    return Exit.DONE;
  }
}
