package halfgram.pages.today;

import halfgram.desk.Passing;
import halfgram.desk.Plans;
import halfgram.desk.Services;
import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.measure.Window;
import halfgram.menu.Dish;
import halfgram.pages.Effect;
import halfgram.prep.Difference;
import halfgram.prep.Paths;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.web.Visit;
import halfgram.words.ConsequenceWords;
import halfgram.words.Messages;
import halfgram.words.PlatingWords;
import halfgram.words.SheetWords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * What a proposed sheet would change in the one in force.
 *
 * @param asked whether somebody asked for it, rather than that facts have changed
 * @param empty whether it would change nothing
 * @param number of the plan in force that it was compared with
 * @param facts number of the last fact it takes into account
 * @param covers what changes for services: "Terrace reception: 26 → 32 covers, 142 → 178 plates"
 * @param around what changes around the tasks: "Who is in when"
 * @param made the largest changes of what is made
 * @param more how many more components change, in words
 * @param tasks how many tasks come, go and change, in words
 * @param origin what of it comes of the time that has passed; empty where nothing does
 * @param standing whether anything that is being made would change
 * @param uncalled courses that are past their time: a plan from now on has no work for them
 */
record Change(
    String head,
    boolean asked,
    boolean empty,
    int number,
    long facts,
    List<DayView.Link> covers,
    List<String> around,
    List<DayView.Link> made,
    String more,
    String tasks,
    String origin,
    String standing,
    List<Uncalled> uncalled,
    List<Verdict.Trouble> misfits,
    List<Part> parts) {
  private static final int MOST_MADE = 4;

  /** A course that is due and that nobody has called, and where it is served later. */
  record Uncalled(String said, String slip) {}

  /** A list of everything of one sort that changes. */
  record Part(String title, List<DayView.Link> lines) {}

  static Change of(
      Shown shown,
      Plans.Proposal proposal,
      Passing passing,
      int number,
      boolean asked,
      List<Services.Uncalled> uncalled) {
    return new Writer(shown, proposal, number).write(passing, asked, uncalled);
  }

  /** Puts one difference into words; what the proposal has by the proposal's names. */
  private static final class Writer {
    private final Shown shown;
    private final Plans.Proposal proposal;
    private final Difference difference;
    private final Messages words;
    private final SheetWords names;
    private final int number;

    private Writer(Shown shown, Plans.Proposal proposal, int number) {
      this.shown = shown;
      this.proposal = proposal;
      this.number = number;
      this.difference = proposal.difference();
      this.words = shown.words();
      this.names = new SheetWords(proposal.book(), proposal.sheet(), words);
    }

    private Change write(Passing passing, boolean asked, List<Services.Uncalled> uncalled) {
      List<DayView.Link> made = difference.made().stream().map(this::made).toList();
      int more = made.size() - MOST_MADE;
      return new Change(
          words.say(asked ? "today.again-head" : "today.changed"),
          asked,
          difference.isEmpty(),
          number,
          proposal.facts(),
          difference.services().stream().map(this::service).toList(),
          around(),
          more > 0 ? made.subList(0, MOST_MADE) : made,
          more > 0 ? words.say("today.more-made", more) : "",
          words.say(
              "today.tasks-change",
              difference.added().size(),
              difference.withdrawn().size(),
              difference.changed().size(),
              difference.unchanged()),
          origin(passing),
          standing(),
          uncalled.stream().map(this::uncalled).toList(),
          difference.misfits().stream()
              .map(
                  misfit ->
                      new Verdict.Trouble(
                          words.say(misfit.what()),
                          why(misfit.path()),
                          Verdict.chain(shown, misfit.chain())))
              .toList(),
          parts(made));
    }

    /** What of it was entered, so that an hour that has passed is not taken for it. */
    private String origin(Passing passing) {
      if (passing.byTime().isEmpty()) {
        return "";
      }
      Difference entered = passing.byEntries();
      return entered.isEmpty()
          ? words.say("today.by-time")
          : words.say(
              "today.by-entries",
              entered.added().size(),
              entered.withdrawn().size(),
              entered.changed().size());
    }

    /** What tasks do not say themselves: of the day, and of services that want no work any more. */
    private List<String> around() {
      Instant asOf = proposal.sheet().request().asOf();
      List<String> around = new ArrayList<>(Effect.around(difference.around(), words));
      shown.sheet().services().stream()
          .filter(run -> run.isOver(asOf))
          .filter(run -> proposal.sheet().services().stream().noneMatch(of -> isSame(of, run)))
          .map(run -> words.say("today.service-over", shown.text(run.name())))
          .forEach(around::add);
      return around;
    }

    private static boolean isSame(ServiceRun one, ServiceRun other) {
      return one.id().equals(other.id());
    }

    private Uncalled uncalled(Services.Uncalled one) {
      return new Uncalled(
          words.say(
              "today.uncalled",
              PlatingWords.fire(words, one.fire()),
              one.run().name(),
              shown.time(one.fire().at()),
              one.toGo()),
          "slip/" + Visit.encoded(one.run().id()));
    }

    private List<String> topUps() {
      return new ConsequenceWords(proposal.book(), proposal.sheet(), words).grown(difference);
    }

    private String standing() {
      if (difference.touched().isEmpty() && !difference.grown().isEmpty()) {
        return "";
      }
      if (difference.touched().isEmpty()) {
        return words.say("today.nothing-made-changes");
      }
      List<String> titles =
          difference.touched().stream()
              .map(id -> Optional.ofNullable(shown.byId().get(id)))
              .flatMap(Optional::stream)
              .map(shown.names()::title)
              .toList();
      return words.say("today.made-changes", titles);
    }

    /** Where the why of a number of the proposal is said. */
    private String why(String path) {
      return shown.whyProposed(number, path);
    }

    private List<Part> parts(List<DayView.Link> made) {
      List<Part> parts = new ArrayList<>();
      List<DayView.Link> plates = new ArrayList<>();
      difference.services().forEach(of -> of.plates().forEach(p -> plates.add(plates(of, p))));
      part(parts, "today.part-plates", plates);
      part(parts, "today.part-made", made);
      part(parts, "today.part-weighed", difference.weighed().stream().map(this::weighed).toList());
      part(
          parts,
          "today.part-top-up",
          topUps().stream().map(said -> new DayView.Link(said, "")).toList());
      part(parts, "today.part-added", difference.added().stream().map(this::added).toList());
      part(
          parts,
          "today.part-withdrawn",
          difference.withdrawn().stream().map(this::withdrawn).toList());
      part(parts, "today.part-changed", difference.changed().stream().map(this::changed).toList());
      part(parts, "today.part-held", difference.held().stream().map(this::held).toList());
      return parts;
    }

    private void part(List<Part> parts, String key, List<DayView.Link> lines) {
      if (!lines.isEmpty()) {
        parts.add(new Part(words.say(key), lines));
      }
    }

    private DayView.Link service(Difference.Service service) {
      String name = shown.text(either(service).name());
      if (service.to().isEmpty()) {
        return new DayView.Link(words.say("today.service-gone", name), "");
      }
      String covers = numbers(covers(service.from()), covers(service.to()), "today.covers-change");
      String plates = numbers(plates(service.from()), plates(service.to()), "today.plates-change");
      String times = times(service);
      String said =
          String.join(
              ", ", Stream.of(times, covers, plates).filter(one -> !one.isEmpty()).toList());
      String line =
          said.isEmpty()
              ? words.say("today.plates-other", name)
              : words.say(service.from().isEmpty() ? "today.service-new" : "today.of", name, said);
      ServiceRun to = service.to().get();
      return new DayView.Link(line, covers.isEmpty() ? "" : why(Paths.covers(to, "prepared")));
    }

    /** "18:30 → 18:45". */
    private String times(Difference.Service service) {
      Optional<Window> from = service.from().map(ServiceRun::window);
      Optional<Window> to = service.to().map(ServiceRun::window);
      if (from.isEmpty() || from.equals(to)) {
        return "";
      }
      Window was = from.get();
      Window is = to.orElseThrow();
      return was.start().equals(is.start())
          ? words.say("today.end-change", shown.time(was.end()), shown.time(is.end()))
          : words.say("today.time-change", shown.time(was.start()), shown.time(is.start()));
    }

    private static ServiceRun either(Difference.Service service) {
      return service.to().or(service::from).orElseThrow();
    }

    private String numbers(int from, int to, String key) {
      return from == to ? "" : words.say(key, from, to);
    }

    private static int covers(Optional<ServiceRun> run) {
      return run.map(ServiceRun::covers).orElse(OptionalInt.empty()).orElse(0);
    }

    private static int plates(Optional<ServiceRun> run) {
      return run.map(of -> ServiceRun.Plates.count(of.plates())).orElse(0);
    }

    private DayView.Link plates(Difference.Service service, Difference.Plates plates) {
      String dish =
          Optional.ofNullable(proposal.book().dishes().get(plates.dish()))
              .map(Dish::name)
              .map(shown::text)
              .orElse(plates.dish());
      String diets = plates.diets().isEmpty() ? "" : ServiceBox.names(shown, plates.diets()) + ": ";
      String line =
          words.say(
              "today.plates-of",
              shown.text(either(service).name()),
              diets + dish,
              plates.from(),
              plates.to());
      return new DayView.Link(line, service.findPath(plates).map(this::why).orElse(""));
    }

    private DayView.Link made(Difference.Made made) {
      ComponentRef ref =
          new ComponentRef(made.formula(), Optional.of(made.output()), OptionalInt.empty());
      return new DayView.Link(
          words.say("today.of", names.componentName(ref), step(names, made.from(), made.to())),
          why(Paths.made(made.formula(), made.output())));
    }

    /** "Dill oil, grapeseed oil: 980 g → 1000 g (+20 g)". */
    private DayView.Link weighed(Difference.Weighed weighed) {
      return new DayView.Link(
          words.say(
              "today.weighed",
              names.componentName(ComponentRef.of(weighed.formula())),
              names.itemName(weighed.item()),
              step(names, weighed.from(), weighed.to())),
          why(Paths.taken(weighed.formula(), weighed.item().code())));
    }

    /** "4692 g → 4968 g (+276 g)". */
    private String step(SheetWords said, Amount from, Amount to) {
      boolean more = to.compareTo(from) >= 0;
      Amount by = more ? to.minus(from) : from.minus(to);
      return words.say(
          more ? "today.more" : "today.less", said.amount(from), said.amount(to), said.amount(by));
    }

    private DayView.Link added(Task task) {
      return new DayView.Link(
          words.say("today.at", shown.time(task.start()), names.title(task)), whyStart(task));
    }

    private DayView.Link withdrawn(Task task) {
      return new DayView.Link(
          words.say("today.at", shown.time(task.start()), shown.names().title(task)),
          shown.why(Paths.task(task.id(), "start")));
    }

    private String whyStart(Task task) {
      return why(Paths.task(task.id(), "start"));
    }

    /** "Trout, fillet: not before 15:40 (was 14:10)". */
    private DayView.Link held(Difference.Held held) {
      String none = words.say("today.held-none");
      String from = held.from().map(shown::time).orElse(none);
      String to = held.to().map(shown::time).orElse(none);
      return new DayView.Link(
          words.say("today.held", names.title(held.task()), to, from),
          proposal.sheet().awaited(held.task()).stream()
              .filter(awaited -> awaited.from().equals(held.to()))
              .map(awaited -> why(Paths.notBefore(awaited)))
              .findFirst()
              .orElse(""));
    }

    private DayView.Link changed(Difference.Changed change) {
      List<String> what = new ArrayList<>();
      Duration moved = change.moved();
      if (!moved.isZero()) {
        what.add(
            words.say(
                moved.isNegative() ? "today.earlier" : "today.later",
                shown.time(change.from().start()),
                shown.time(change.to().start()),
                moved.abs()));
      }
      for (Difference.Made made : change.made()) {
        what.add(step(names, made.from(), made.to()));
      }
      int was = change.from().version().number();
      int is = change.to().version().number();
      if (was != is) {
        what.add(words.say("today.other-version", was, is));
      }
      if (what.isEmpty()) {
        what.add(
            words.say(
                "today.takes",
                change.from().handsOn().plus(change.from().unattended()),
                change.to().handsOn().plus(change.to().unattended())));
      }
      return new DayView.Link(
          words.say("today.of", names.title(change.to()), String.join("; ", what)),
          whyStart(change.to()));
    }
  }
}
