package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.event.Event;
import halfgram.input.Problem;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Crewing;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Fit;
import halfgram.prep.crew.Outlook;
import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Rota;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What today, or a day ahead, would be with something else: other covers, a service later, a draft
 * agreed, somebody ill, a machine more or a broken one. Nothing is stored.
 *
 * <p>Rules. Both sides are of this minute: the day as it is in force, and the day as it would be
 * placed by the same rules, with the plan in force as what is disturbed as little as possible. What
 * has begun stands on both sides. Of a day ahead nothing is in force: both sides are planned
 * afresh. Looking is stopped after a while and then says so.
 */
public final class WhatIf {
  /** Days from today on that can be asked about: further than this nothing is planned. */
  public static final int MOST_DAYS = 60;

  private static final int ROUNDS = 2000;

  /** As long as anybody waits for an answer, less what planning itself takes. */
  private static final Duration MOST = Duration.ofMillis(600);

  /** For a day ahead, which is placed once: what is cut short would be said until it changes. */
  private static final Duration MOST_ONCE = Duration.ofSeconds(3);

  /**
   * A service that changes.
   *
   * @param run as a plan calls it
   * @param covers more than now; negative for fewer
   * @param minutes later than now; negative for earlier
   */
  public record Turn(String run, int covers, int minutes) {
    boolean isSomething() {
      return covers != 0 || minutes != 0;
    }
  }

  /**
   * What is asked.
   *
   * @param drafts codes of drafts that would be agreed
   * @param off codes of people who are not there from now on
   * @param more codes of machines of which there is one more
   * @param broken codes of machines of which one does not work from now on
   */
  public record Asked(
      List<Turn> turns, Set<String> drafts, Set<String> off, Set<String> more, Set<String> broken) {
    public Asked {
      drafts = Set.copyOf(drafts);
      turns = turns.stream().filter(Turn::isSomething).toList();
      off = Set.copyOf(off);
      more = Set.copyOf(more);
      broken = Set.copyOf(broken);
    }

    public boolean isSomething() {
      return changesBook() || !off.isEmpty() || !broken.isEmpty();
    }

    private boolean changesBook() {
      return !turns.isEmpty() || !drafts.isEmpty() || !more.isEmpty();
    }
  }

  /**
   * A day with what is known of it.
   *
   * @param crew the crew plan in force; empty for a day as it would be
   */
  public record Day(DayFacts facts, Outlook outlook, Optional<CrewInForce> crew) {}

  /**
   * A day that is asked about, planned once however much is asked.
   *
   * @param inForce its plan in force; empty for a day ahead
   * @param ahead the plan of a day ahead; empty for one in force
   */
  public record About(LocalDate day, Optional<InForce> inForce, Optional<Plans.Proposal> ahead) {
    /** What the day is with nothing else. */
    public PrepSheet sheet() {
      return inForce.map(InForce::sheet).or(() -> ahead.map(Plans.Proposal::sheet)).orElseThrow();
    }
  }

  private static final Asked NOTHING = new Asked(List.of(), Set.of(), Set.of(), Set.of(), Set.of());

  /** What became of asking. */
  public sealed interface Outcome permits Answer, Wrong {}

  /**
   * Both sides.
   *
   * @param difference of the sheets; empty when only people or machines change
   */
  public record Answer(
      Day today, Day then, List<Outlook.Move> moves, Optional<Difference> difference)
      implements Outcome {}

  /** It cannot be asked so. */
  public record Wrong(List<Problem> problems) implements Outcome {}

  private final Desk desk;
  private final Plans plans;
  private final CrewPlans crewPlans;
  private final Slips slips;
  private final AheadCrew days;

  public WhatIf(Desk desk, Plans plans, CrewPlans crewPlans, Slips slips, AheadCrew days) {
    this.desk = desk;
    this.plans = plans;
    this.crewPlans = crewPlans;
    this.slips = slips;
    this.days = days;
  }

  /** A day as it is in force; of one that is over and was never put on people, what was done. */
  public Day day(House house, InForce inForce, String who) {
    return day(house, inForce, crewPlans.current(house, inForce, who));
  }

  /** The same as a page shows it at once. */
  public Day shown(House house, InForce inForce, String who) {
    return day(house, inForce, crewPlans.shown(house, inForce, who));
  }

  private Day day(House house, InForce inForce, Optional<CrewInForce> crew) {
    if (crew.isEmpty()) {
      DayFacts facts = done(inForce);
      return new Day(facts, outlook(inForce, facts, nobody(inForce)), crew);
    }
    DayFacts facts = crewPlans.facts(house, inForce, crew.get());
    return new Day(facts, outlook(inForce, facts, crew.get().plan()), crew);
  }

  private static Outlook outlook(InForce inForce, DayFacts facts, CrewPlan plan) {
    return Outlook.of(inForce.book(), inForce.sheet(), facts, plan);
  }

  private DayFacts done(InForce inForce) {
    return DayFacts.at(desk.now()).progressed(inForce.progress());
  }

  private static CrewPlan nobody(InForce inForce) {
    return new CrewPlan(
        inForce.book().kitchen().clock().start(inForce.plan().day()),
        Map.of(),
        List.of(),
        List.of(),
        List.of(),
        new Rota.Bill(0, 0, 0, 0, 0, 0, 0, 0, 0),
        0,
        0,
        false,
        false,
        false);
  }

  /** A day that nobody has put in force yet. */
  public Day ahead(House house, LocalDate day) {
    return ahead(house, plans.preview(house, day, 1));
  }

  /** Whether it fits, for a page that does not wait; empty while that is looked for. */
  public Optional<Fit> findFit(House house, Plans.Proposal ahead) {
    return days.find(house, ahead, facts -> placed(ahead, facts)).map(one -> one.outlook().fit());
  }

  private Day ahead(House house, Plans.Proposal ahead) {
    return days.get(house, ahead, facts -> placed(ahead, facts));
  }

  private Day placed(Plans.Proposal ahead, DayFacts facts) {
    return place(ahead.book(), ahead.sheet(), facts, Crewing.MOST_ROUNDS, 1, MOST_ONCE);
  }

  /** The drafts that a plan of a day would look at if they were agreed, the next first. */
  public static List<Event> drafts(KitchenBook book, LocalDate day) {
    LocalDate last = day.plusDays(Planning.lookAhead(book));
    return book.drafts().stream()
        .filter(event -> !event.date().isBefore(day) && !event.date().isAfter(last))
        .sorted(Comparator.comparing(Event::date).thenComparing(Event::code))
        .toList();
  }

  /** The last day that can be asked about. */
  public static LocalDate lastDay(LocalDate today) {
    return today.plusDays(MOST_DAYS);
  }

  /**
   * The days that can be asked about and of whose plans a draft would be part; the last is its own,
   * unless that is too far off.
   */
  public static List<LocalDate> days(KitchenBook book, Event draft, LocalDate today) {
    LocalDate first = firstDay(book, draft);
    LocalDate last = lastDay(today);
    return (first.isBefore(today) ? today : first)
        .datesUntil(LocalDate.MAX)
        .takeWhile(day -> !day.isAfter(draft.date()) && !day.isAfter(last))
        .toList();
  }

  /** The day on which the first of a draft's days can be asked about. */
  public static LocalDate askedFrom(KitchenBook book, Event draft) {
    return firstDay(book, draft).minusDays(MOST_DAYS);
  }

  private static LocalDate firstDay(KitchenBook book, Event draft) {
    return draft.date().minusDays(Planning.lookAhead(book));
  }

  /** A day as it would be by a proposal. */
  public Day proposed(InForce inForce, CrewPlans.Proposal proposal) {
    Outlook outlook = outlook(inForce, proposal.facts(), proposal.plan());
    return new Day(proposal.facts(), outlook, Optional.empty());
  }

  private Day place(
      KitchenBook book, PrepSheet sheet, DayFacts facts, int rounds, long seed, Duration most) {
    long end = System.nanoTime() + most.toNanos();
    Budget budget = Budget.of(rounds, seed).twice().until(() -> System.nanoTime() > end);
    CrewPlan crew = days.plan(book, sheet, facts, budget);
    return new Day(facts, Outlook.of(book, sheet, facts, crew), Optional.empty());
  }

  /** Today, or a day ahead, to be asked about; a day ahead is planned for that. */
  public About about(House house, LocalDate day, String who) {
    return plans
        .findOrOpen(house, day, who)
        .map(one -> new About(day, Optional.of(one), Optional.empty()))
        .orElseGet(
            () -> new About(day, Optional.empty(), Optional.of(plans.preview(house, day, 1))));
  }

  /** A day with nothing else. */
  public Day day(House house, About about, String who) {
    return about
        .inForce()
        .map(one -> day(house, one, who))
        .orElseGet(() -> ahead(house, about.ahead().orElseThrow()));
  }

  /** Both sides of a question about a day. */
  public Outcome look(House house, About about, Asked asked, String who) {
    return about.inForce().isPresent()
        ? look(house, about.inForce().get(), asked, who)
        : lookAhead(house, about.day(), about.ahead().orElseThrow(), asked);
  }

  /** All that cannot be asked of a day. */
  public List<Problem> problems(House house, About about, Asked asked) {
    List<Problem> problems = new ArrayList<>();
    KitchenBook book = about.inForce().map(InForce::book).orElseGet(house::book);
    other(house, book, about.sheet(), asked, problems);
    return problems;
  }

  private Outcome look(House house, InForce inForce, Asked asked, String who) {
    List<Problem> problems = new ArrayList<>();
    House other = other(house, inForce.book(), inForce.sheet(), asked, problems);
    if (!problems.isEmpty()) {
      return new Wrong(problems);
    }
    Day today = day(house, inForce, who);
    DayFacts facts = facts(today, asked);
    if (!asked.changesBook()) {
      // Looked for as it will be proposed once it is said.
      long seed = DayCrew.seed(inForce, facts);
      Day then = place(inForce.book(), inForce.sheet(), facts, ROUNDS, seed, MOST);
      return answer(today, then, Optional.empty());
    }
    return then(house, inForce, other, today, facts);
  }

  private Answer then(House house, InForce inForce, House other, Day today, DayFacts facts) {
    Plans.Proposal proposal = plans.propose(house, inForce, other.book());
    Day then = place(proposal.book(), proposal.sheet(), facts, ROUNDS, 1, MOST);
    return answer(today, then, Optional.of(proposal.difference()));
  }

  /** Both sides of a day of which the book was changed otherwise. */
  public Answer look(House house, About about, House other, String who) {
    if (about.inForce().isPresent()) {
      Day today = day(house, about.inForce().get(), who);
      return then(house, about.inForce().get(), other, today, facts(today, NOTHING));
    }
    Plans.Proposal then = plans.preview(other, about.day(), 1);
    return then(house, about.ahead().orElseThrow(), then, NOTHING);
  }

  private Outcome lookAhead(House house, LocalDate day, Plans.Proposal now, Asked asked) {
    List<Problem> problems = new ArrayList<>();
    House other = other(house, now.book(), now.sheet(), asked, problems);
    if (!problems.isEmpty()) {
      return new Wrong(problems);
    }
    return then(house, now, asked.changesBook() ? plans.preview(other, day, 1) : now, asked);
  }

  private Answer then(House house, Plans.Proposal now, Plans.Proposal then, Asked asked) {
    Day before = ahead(house, now);
    return answer(
        before,
        place(then.book(), then.sheet(), facts(before, asked), ROUNDS, 1, MOST),
        Optional.of(Difference.of(now.sheet(), then.sheet())));
  }

  private static Answer answer(Day today, Day then, Optional<Difference> difference) {
    return new Answer(
        today, then, then.outlook().moves(today.outlook().crew().placed()), difference);
  }

  private static DayFacts facts(Day today, Asked asked) {
    LocalDate day = today.outlook().sheet().request().from();
    Instant now = today.facts().now();
    BusinessDay clock = today.outlook().book().kitchen().clock();
    List<DayFacts.Hours> hours = new ArrayList<>(today.facts().hours());
    hours.removeIf(one -> asked.off().contains(one.person()) && one.day().equals(day));
    asked.off().forEach(person -> hours.add(new DayFacts.Hours(person, day, List.of())));
    List<DayFacts.Broken> broken = new ArrayList<>(today.facts().broken());
    Instant until = clock.start(day).plus(DayCrew.BEYOND);
    asked
        .broken()
        .forEach(code -> broken.add(new DayFacts.Broken(code, 1, new Window(now, until))));
    return today.facts().with(hours, broken).after(today.outlook().crew().placed());
  }

  /** The kitchen with other events, services and machines. */
  private House other(
      House house, KitchenBook book, PrepSheet sheet, Asked asked, List<Problem> problems) {
    problems.addAll(WhatIfProblems.list(house, book, sheet, asked));
    boolean known = problems.stream().noneMatch(one -> one.path().equals("$.drafts"));
    House other = known && !asked.drafts().isEmpty() ? house.agreed(asked.drafts()) : house;
    for (int i = 0; i < asked.turns().size(); i++) {
      String place = WhatIfProblems.place(i);
      if (problems.stream().anyMatch(one -> one.path().startsWith(place))) {
        continue;
      }
      Slips.Tried tried = slips.look(other, slip(other, asked.turns().get(i)));
      tried.problems().stream().map(one -> WhatIfProblems.at(place, one)).forEach(problems::add);
      other = tried.house().orElse(other);
    }
    if (asked.more().isEmpty() || !problems.isEmpty()) {
      return other;
    }
    ObjectNode tree = other.tree().deepCopy();
    for (JsonNode machine : tree.path("equipment")) {
      if (asked.more().contains(machine.path("code").asText())) {
        ((ObjectNode) machine).put("units", machine.path("units").asInt(1) + 1);
      }
    }
    BookReader.Outcome read = desk.check(tree);
    problems.addAll(read.problems());
    House base = other;
    return read.book().map(more -> new House(base.stand(), more, tree)).orElse(base);
  }

  private static Slips.Asked slip(House house, Turn turn) {
    OptionalInt covers = Slips.find(house, turn.run()).orElseThrow().covers();
    return new Slips.Asked(
        turn.run(),
        turn.minutes() == 0
            ? Optional.empty()
            : Optional.of(new Push(Optional.empty(), turn.minutes())),
        turn.covers() == 0
            ? OptionalInt.empty()
            : OptionalInt.of(Math.max(0, covers.orElse(0) + turn.covers())));
  }
}
