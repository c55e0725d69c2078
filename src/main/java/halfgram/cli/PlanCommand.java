package halfgram.cli;

import halfgram.book.Moments;
import halfgram.measure.Because;
import halfgram.measure.BusinessDay;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** {@code plan}: the prep sheet of some days, as text to pin up or as JSON. */
final class PlanCommand {
  private static final int MOST_DAYS = 31;

  private final Cli cli;

  PlanCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Set.of("--date", "--days", "--book", "--as-of"), Set.of("--json"));
    arguments.noMoreWords(0);
    arguments.get("--date", "accept.date");
    Optional<LocalDate> date = arguments.find("--date", Moments::date, "accept.date");
    Optional<Integer> days = arguments.find("--days", PlanCommand::days, "accept.days");
    Optional<LocalDateTime> asOf = arguments.find("--as-of", Moments::moment, "accept.moment");
    String file = arguments.get("--book", "accept.book");
    if (!arguments.problems().isEmpty()) {
      return cli.usage(arguments.problems());
    }
    Books.Opened opened = Books.open(cli, file);
    if (opened.book().isEmpty()) {
      return opened.status();
    }
    KitchenBook book = opened.book().get();
    PlanRequest request = request(book, date.orElseThrow(), days.orElse(1), asOf);
    PrepSheet sheet = Planning.plan(book, request, Because.NOT_ASKED);
    if (arguments.has("--json")) {
      cli.out().println(new SheetJson(book, sheet, cli.messages()).write());
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
