package halfgram.cli;

import halfgram.book.Moments;
import halfgram.desk.InForce;
import halfgram.measure.Because;
import halfgram.measure.BusinessDay;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * {@code plan}: the prep sheet of some days, as text to pin up or as JSON. From the database it is
 * the plan in force of the day, if the day has one; else it is computed from the book and the tubs
 * as they are.
 */
final class PlanCommand {
  private static final int MOST_DAYS = 31;

  private final Cli cli;

  PlanCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Source.with("--date", "--days", "--as-of"), Set.of("--json"));
    arguments.noMoreWords(0);
    arguments.get("--date", "accept.date");
    Optional<LocalDate> date = arguments.find("--date", Moments::date, "accept.date");
    Optional<Integer> days = arguments.find("--days", PlanCommand::days, "accept.days");
    Optional<LocalDateTime> asOf = arguments.find("--as-of", Moments::moment, "accept.moment");
    List<String> call = new ArrayList<>(List.of("plan"));
    call.addAll(args);
    return Source.run(
        cli,
        arguments,
        call,
        found -> {
          Optional<InForce> inForce =
              days.orElse(1) == 1 && asOf.isEmpty()
                  ? found.stored().flatMap(stored -> stored.findInForce(date.orElseThrow()))
                  : Optional.empty();
          if (inForce.isPresent()) {
            return write(inForce.get().book(), inForce.get().sheet(), arguments.has("--json"));
          }
          PlanRequest request = request(found.book(), date.orElseThrow(), days.orElse(1), asOf);
          PrepSheet sheet = Planning.plan(found.book(), request, Because.NOT_ASKED);
          return write(found.book(), sheet, arguments.has("--json"));
        });
  }

  private int write(KitchenBook book, PrepSheet sheet, boolean json) {
    if (json) {
      cli.out().println(new SheetJson(book, sheet, cli.messages()).writeIndented());
    } else {
      cli.out().print(new SheetText(book, sheet, cli.messages()).write());
    }
    return sheet.fits() ? Exit.DONE : Exit.NO;
  }

  /** The request; without a moment the plan is made for the start of its first business day. */
  static PlanRequest request(
      KitchenBook book, LocalDate date, int days, Optional<LocalDateTime> asOf) {
    BusinessDay clock = book.kitchen().clock();
    return new PlanRequest(
        date,
        days,
        asOf.map(moment -> moment.atZone(clock.zone()).toInstant()).orElse(clock.start(date)));
  }

  static Optional<Integer> days(String text) {
    return text.matches("[1-9]\\d?") && Integer.parseInt(text) <= MOST_DAYS
        ? Optional.of(Integer.parseInt(text))
        : Optional.empty();
  }
}
