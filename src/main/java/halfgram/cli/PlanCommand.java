package halfgram.cli;

import halfgram.book.Moments;
import halfgram.desk.CrewPlans;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.measure.Because;
import halfgram.measure.BusinessDay;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Crewing;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Outlook;
import halfgram.prep.schedule.Budget;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * {@code plan}: the prep sheet of some days, as text to pin up or as JSON. From the database it is
 * the plan in force of the day, if the day has one; else it is computed from the book and the tubs
 * as they are; a day ahead of the database as its pages show it. With {@code --crew} it says who
 * does what when, and why it does not fit on the people and machines there are.
 */
final class PlanCommand {
  private static final int MOST_DAYS = 31;
  private static final long SEED = 1;

  private final Cli cli;

  PlanCommand(Cli cli) {
    this.cli = cli;
  }

  int run(List<String> args) {
    Arguments arguments =
        new Arguments(args, Source.with("--date", "--days", "--as-of"), Set.of("--json", "--crew"));
    arguments.noMoreWords(0);
    arguments.get("--date", "accept.date");
    Optional<LocalDate> date = arguments.find("--date", Moments::date, "accept.date");
    Optional<Integer> days = arguments.find("--days", PlanCommand::days, "accept.days");
    Optional<LocalDateTime> asOf = arguments.find("--as-of", Moments::moment, "accept.moment");
    if (arguments.has("--crew") && days.orElse(1) != 1) {
      arguments.problem("usage.crew-day");
    }
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
          Shown shown =
              inForce
                  .map(one -> Shown.of(one.book(), one.sheet()))
                  .or(
                      () ->
                          asOf.isEmpty()
                              ? found
                                  .stored()
                                  .flatMap(of -> ahead(of, date.orElseThrow(), days.orElse(1)))
                              : Optional.empty())
                  .orElseGet(() -> computed(found.book(), date.orElseThrow(), days, asOf));
          if (!arguments.has("--crew")) {
            return write(shown, arguments.has("--json"));
          }
          Crewed crewed =
              inForce
                  .map(one -> inForce(found.stored().orElseThrow(), one))
                  .orElseGet(() -> placed(shown));
          return write(shown, crewed, arguments.has("--json"));
        });
  }

  /**
   * What is written: a plan in force, or one of the moment.
   *
   * @param from when its people begin
   */
  private record Shown(KitchenBook book, PrepSheet sheet, Instant from) {
    static Shown of(KitchenBook book, PrepSheet sheet) {
      return new Shown(book, sheet, sheet.request().asOf());
    }
  }

  /** It with its people and machines. */
  private record Crewed(Outlook outlook, DayFacts facts) {}

  private static Shown computed(
      KitchenBook book, LocalDate date, Optional<Integer> days, Optional<LocalDateTime> asOf) {
    PlanRequest request = request(book, date, days.orElse(1), asOf);
    return Shown.of(book, Planning.plan(book, request, Because.NOT_ASKED));
  }

  /** A day that has not begun, when what comes before it is done on the days before. */
  private static Optional<Shown> ahead(Source.Stored stored, LocalDate day, int days) {
    House house = stored.house();
    if (!day.isAfter(house.day(stored.wiring().desk().now()))) {
      return Optional.empty();
    }
    Plans.Proposal ahead = stored.wiring().plans().preview(house, day, days);
    Instant from = ahead.book().kitchen().clock().start(day);
    return Optional.of(new Shown(ahead.book(), ahead.sheet(), from));
  }

  /** The crew plan in force, worked out and kept where it is the day's first. */
  private Crewed inForce(Source.Stored stored, InForce inForce) {
    CrewPlans plans = stored.wiring().crewPlans();
    return plans
        .findOrMake(stored.house(), inForce, Holding.WHO)
        .map(
            crew -> {
              DayFacts facts = plans.facts(stored.house(), inForce, crew);
              return new Crewed(
                  Outlook.of(inForce.book(), inForce.sheet(), facts, crew.plan()), facts);
            })
        .orElseGet(() -> placed(Shown.of(inForce.book(), inForce.sheet())));
  }

  /** Nothing but the hour it begins is known; no clock, so that it is the same every time. */
  private Crewed placed(Shown shown) {
    DayFacts facts = DayFacts.at(shown.from());
    Budget budget = Budget.of(Crewing.MOST_ROUNDS, SEED).twice();
    CrewPlan plan = Crewing.plan(shown.book(), shown.sheet(), facts, budget, cli.placing());
    return new Crewed(Outlook.of(shown.book(), shown.sheet(), facts, plan), facts);
  }

  private int write(Shown shown, boolean json) {
    if (json) {
      cli.out().println(new SheetJson(shown.book(), shown.sheet(), cli.messages()).writeIndented());
    } else {
      cli.out().print(new SheetText(shown.book(), shown.sheet(), cli.messages()).write());
    }
    return shown.sheet().fits() ? Exit.DONE : Exit.NO;
  }

  private int write(Shown shown, Crewed crewed, boolean json) {
    if (json) {
      cli.out()
          .println(
              new SheetJson(shown.book(), shown.sheet(), cli.messages())
                  .writeIndented(crewed.outlook(), crewed.facts()));
    } else {
      CrewText crew = new CrewText(crewed.outlook(), crewed.facts(), cli.messages());
      cli.out()
          .print(
              new SheetText(shown.book(), shown.sheet(), Optional.of(crew), cli.messages())
                  .write());
    }
    return crewed.outlook().fits() ? Exit.DONE : Exit.NO;
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
