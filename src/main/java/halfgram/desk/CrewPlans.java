package halfgram.desk;

import halfgram.desk.CrewPlanRows.Draft;
import halfgram.desk.CrewPlanRows.How;
import halfgram.kitchen.Kitchen;
import halfgram.kitchen.KitchenStore;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.crew.Adrift;
import halfgram.prep.crew.CrewDifference;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Crewing;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Pinning;
import halfgram.prep.crew.Placed;
import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Placing;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;

/**
 * Who does what when: the crew plan of the plan in force, what it would be from now on, and the
 * chef's hand in it.
 *
 * <p>Rules. A plan gets its first crew plan when somebody looks at it: as near to the last one of
 * the day as can be; a page does not wait for it long ({@link FirstCrew}). A later one waits for
 * the chef's word, or, where the kitchen says so, comes at once as long as it leaves nothing out.
 * Work that has begun is never moved. A tick works nothing out.
 */
public final class CrewPlans {
  private static final int KEPT = 64;

  /** Rounds for a plan after another, and for what is shown meanwhile. */
  private static final int ROUNDS = 2000;

  private static final int ROUGH = 100;
  private static final int MOST_MINUTES = 600;

  /**
   * What the first plan of a day may take, which everybody works by, on a server that has just
   * started (no page waits for it); and what a later look may.
   */
  private static final Duration FIRST = Duration.ofSeconds(5);

  private static final Duration LATER = Duration.ofSeconds(1);
  private static final How ACCEPTED = new How("accepted", "");

  /**
   * What the crew plan would be from now on.
   *
   * @param seen what whoever accepts it has looked at
   * @param difference against the one in force
   */
  public record Proposal(CrewPlan plan, DayFacts facts, Seen seen, CrewDifference difference) {}

  /**
   * What whoever accepts has looked at.
   *
   * @param number of the crew plan that was in force then
   * @param mark of the facts the proposal took into account
   */
  public record Seen(int number, String mark) {}

  /** What became of a pin. */
  public sealed interface Outcome permits Done, Refused {}

  /** It is in force, now or before. */
  public record Done(CrewInForce crew) implements Outcome {}

  /** A rule does not let it. */
  public record Refused(Message because) implements Outcome {}

  /** A proposal of this minute, as long as nothing has changed. */
  private record Proposed(Seen seen, Instant now, Proposal proposal) {}

  private final Desk desk;
  private final Plans plans;
  private final Placing placing;
  private final KitchenStore kitchens = new KitchenStore();
  private final CrewPlanRows rows;
  private final CrewFacts known;
  private final CrewKeeping keeping;
  private final LastFew<UUID, Proposed> proposed = new LastFew<>(KEPT);
  private final Map<UUID, Object> making = new ConcurrentHashMap<>();
  private final FirstCrew first;

  /**
   * @param placing what places a workday
   * @param later runs what pages do not wait for
   */
  public CrewPlans(Desk desk, Plans plans, Placing placing, Executor later) {
    this.desk = desk;
    this.plans = plans;
    this.placing = placing;
    this.rows = new CrewPlanRows(desk);
    this.known = new CrewFacts(desk, rows);
    this.keeping = new CrewKeeping(desk, plans, rows, known);
    this.first = new FirstCrew(later);
  }

  // ---- what is in force ----

  /** The crew plan of a plan; worked out and kept now when it has none yet. */
  public CrewInForce inForce(House house, InForce inForce, String who) {
    Optional<CrewInForce> there = find(house, inForce);
    if (there.isPresent()) {
      return there.get();
    }
    synchronized (making.computeIfAbsent(house.id(), any -> new Object())) {
      return find(house, inForce).orElseGet(() -> begin(house, inForce, who));
    }
  }

  /** As {@link #inForce} for a day that is not over; of one that is, what was kept. */
  public Optional<CrewInForce> findOrMake(House house, InForce inForce, String who) {
    return isOver(house, inForce)
        ? find(house, inForce)
        : Optional.of(inForce(house, inForce, who));
  }

  private boolean isOver(House house, InForce inForce) {
    return inForce.plan().day().isBefore(house.day(desk.now()));
  }

  /** The crew plan of a plan, if it has one. */
  public Optional<CrewInForce> find(House house, InForce inForce) {
    return desk.read(tx -> rows.find(tx, house, inForce.plan().id()));
  }

  /**
   * What a page shows: as {@link #current}, or a rough one of number 0 while the first is looked
   * for. When it is found every page is told.
   */
  public Optional<CrewInForce> shown(House house, InForce inForce, String who) {
    UUID plan = inForce.plan().id();
    if (isOver(house, inForce) || find(house, inForce).isPresent()) {
      return current(house, inForce, who);
    }
    first.look(plan, () -> settle(house, inForce, who));
    if (find(house, inForce).isPresent()) {
      return current(house, inForce, who);
    }
    CrewInForce rough = first.rough(plan, () -> rough(house, inForce, who));
    return find(house, inForce).or(() -> Optional.of(rough));
  }

  private void settle(House house, InForce inForce, String who) {
    inForce(house, inForce, who);
    if (first.wasShown(inForce.plan().id())) {
      desk.write(house, tx -> kitchens.next(tx, kitchens.lock(tx, house.id())), number -> number);
    }
  }

  private CrewInForce rough(House house, InForce inForce, String who) {
    DayFacts facts = known.first(house, inForce);
    Budget few = Budget.of(ROUGH, DayCrew.seed(inForce, facts));
    CrewPlan plan = Crewing.plan(inForce.book(), inForce.sheet(), facts, few, placing);
    String mark = DayCrew.mark(inForce, facts);
    UUID of = inForce.plan().id();
    return new CrewInForce(of, of, 0, desk.now(), who, plan, facts.pins(), facts.more(), mark);
  }

  private CrewInForce begin(House house, InForce inForce, String who) {
    DayFacts facts = known.first(house, inForce);
    int rounds = facts.before().isEmpty() ? Crewing.MOST_ROUNDS : ROUNDS;
    CrewPlan plan = plan(inForce, facts, rounds, FIRST);
    // Nobody has seen the plan without it: no page has to ask again.
    return desk.write(
        house,
        tx -> {
          KitchenStore.Stand stand = kitchens.lock(tx, house.id());
          return rows.find(tx, house, inForce.plan().id())
              .orElseGet(
                  () ->
                      rows.add(tx, house, new Draft(inForce, 1, plan, facts), stand.change(), who));
        },
        made -> 0);
  }

  /** The same facts give the same plan, unless the guard cuts it short. */
  private CrewPlan plan(InForce inForce, DayFacts facts, int rounds, Duration most) {
    long until = System.nanoTime() + most.toNanos();
    Budget budget =
        Budget.of(rounds, DayCrew.seed(inForce, facts))
            .twice()
            .until(() -> System.nanoTime() - until > 0);
    return Crewing.plan(inForce.book(), inForce.sheet(), facts, budget, placing);
  }

  // ---- what would be ----

  /** What of the crew plan in force no longer holds. */
  public List<Adrift> adrift(House house, InForce inForce, CrewInForce now) {
    return Adrift.list(inForce.book(), inForce.sheet(), facts(house, inForce, now), now.plan());
  }

  /** The facts of now, with the crew plan in force before them. */
  public DayFacts facts(House house, InForce inForce, CrewInForce now) {
    return known.of(house, inForce, now);
  }

  /**
   * What the crew plan would be from now on, when the day has moved and another would help; worked
   * out once in a minute in which nothing changes.
   */
  public Optional<Proposal> findProposal(House house, InForce inForce, CrewInForce now) {
    return findProposal(inForce, now, facts(house, inForce, now));
  }

  /** The same for who knows the facts. */
  public Optional<Proposal> findProposal(InForce inForce, CrewInForce now, DayFacts facts) {
    if (now.isRough() || !hasMoved(inForce, now, facts)) {
      return Optional.empty();
    }
    return Optional.of(propose(inForce, now, facts)).filter(one -> !one.difference().isEmpty());
  }

  /** Whether something no longer holds, or what was left out may have a place by now. */
  private static boolean hasMoved(InForce inForce, CrewInForce now, DayFacts facts) {
    boolean waiting = now.plan().leftOut().stream().anyMatch(facts::isToDo);
    return !Adrift.list(inForce.book(), inForce.sheet(), facts, now.plan()).isEmpty()
        || (waiting && !now.mark().equals(DayCrew.mark(inForce, facts)));
  }

  private Proposal propose(InForce inForce, CrewInForce now, DayFacts facts) {
    Seen seen = new Seen(now.number(), DayCrew.mark(inForce, facts));
    Optional<Proposed> known =
        proposed
            .find(now.id())
            .filter(one -> one.seen().equals(seen) && one.now().equals(facts.now()));
    if (known.isPresent()) {
      return known.get().proposal();
    }
    CrewPlan plan = plan(inForce, facts, ROUNDS, LATER);
    CrewDifference difference = CrewDifference.of(inForce.sheet(), facts, now.plan(), plan);
    Proposal proposal = new Proposal(plan, facts, seen, difference);
    proposed.put(now.id(), new Proposed(seen, facts.now(), proposal));
    return proposal;
  }

  /**
   * The crew plan in force, always there for a day that is not over; where the kitchen says so,
   * first what it would be from now on when that leaves nothing out.
   */
  public Optional<CrewInForce> current(House house, InForce inForce, String who) {
    Optional<CrewInForce> current = findOrMake(house, inForce, who);
    if (house.book().kitchen().lanes() == Kitchen.Lanes.ASK || isOver(house, inForce)) {
      return current;
    }
    CrewInForce now = current.orElseThrow();
    Optional<Proposal> proposal =
        findProposal(house, inForce, now)
            .filter(one -> one.difference().leftOut().isEmpty())
            .filter(one -> one.difference().waiting().isEmpty());
    proposal.ifPresent(one -> accept(house, inForce.plan().day(), one.seen(), who));
    return proposal.isEmpty() ? current : find(house, inForce);
  }

  // ---- the chef's word ----

  /**
   * Puts in force what the crew plan would be from now on. Accepting the same twice does it once;
   * stale when the day has moved on since it was looked at.
   */
  public Plans.Accepting accept(House house, LocalDate day, Seen seen, String who) {
    InForce inForce = plans.find(house, day).orElseThrow();
    CrewInForce now = inForce(house, inForce, who);
    if (now.number() == seen.number() + 1 && now.mark().equals(seen.mark())) {
      return Plans.Accepting.IN_FORCE;
    }
    DayFacts facts = facts(house, inForce, now);
    Proposal proposal = propose(inForce, now, facts);
    if (!proposal.seen().equals(seen)) {
      return Plans.Accepting.STALE;
    }
    Draft draft = new Draft(inForce, now.number() + 1, proposal.plan(), facts);
    boolean taken = keeping.put(house, draft, seen, ACCEPTED, who).isPresent();
    return taken ? Plans.Accepting.IN_FORCE : Plans.Accepting.STALE;
  }

  /**
   * A hand move: keeps a task where the chef wants it, and the rest of the day around it.
   *
   * @param wanted without people: by those who have it now
   */
  public Outcome pin(House house, InForce inForce, String id, DayFacts.Pin wanted, String who) {
    CrewInForce now = inForce(house, inForce, who);
    Optional<Task> task = inForce.findTask(id);
    if (task.isEmpty()) {
      return new Refused(Message.of("lanes.refused.no-task", id));
    }
    List<String> people =
        wanted.people().isEmpty()
            ? now.plan().find(id).map(Placed::people).orElse(List.of())
            : wanted.people();
    DayFacts.Pin pin = new DayFacts.Pin(wanted.start(), people);
    if (pin.equals(now.pins().get(id))) {
      return new Done(now);
    }
    DayFacts facts = facts(house, inForce, now);
    Pinning pinning = new Pinning(inForce.book(), inForce.sheet(), facts, now.plan());
    Optional<Message> because = pinning.refuse(task.get(), pin);
    if (because.isPresent()) {
      return new Refused(because.get());
    }
    Map<String, DayFacts.Pin> pins = new HashMap<>(facts.pins());
    pins.put(id, pin);
    return moved(house, inForce, now, new Move(facts, facts.pinned(pins), id, "pinned"), who);
  }

  /** Lets a task go that was pinned; nothing changes where none is. */
  public Outcome unpin(House house, InForce inForce, String id, String who) {
    CrewInForce now = inForce(house, inForce, who);
    if (!now.pins().containsKey(id)) {
      return new Done(now);
    }
    DayFacts facts = facts(house, inForce, now);
    Map<String, DayFacts.Pin> pins = new HashMap<>(facts.pins());
    pins.remove(id);
    return moved(house, inForce, now, new Move(facts, facts.pinned(pins), id, "unpinned"), who);
  }

  /** A hand move: the facts without it and with it. */
  private record Move(DayFacts before, DayFacts facts, String task, String how) {}

  private Outcome moved(House house, InForce inForce, CrewInForce now, Move move, String who) {
    CrewPlan plan = plan(inForce, move.facts(), ROUNDS, LATER);
    if (move.facts().pins().containsKey(move.task()) && plan.find(move.task()).isEmpty()) {
      return new Refused(Message.of("lanes.refused.no-place"));
    }
    Seen seen = new Seen(now.number(), DayCrew.mark(inForce, move.before()));
    Draft draft = new Draft(inForce, now.number() + 1, plan, move.facts());
    return keeping
        .put(house, draft, seen, new How(move.how(), move.task()), who)
        .<Outcome>map(Done::new)
        .orElse(STALE);
  }

  /**
   * A word on how much longer somebody needs who is on a task. It moves nothing by itself: it says
   * what no longer holds.
   *
   * <p>It counts from now, so one that meets another change is said again after it.
   *
   * @param minutes from now on
   */
  public Outcome longer(House house, InForce inForce, String id, int minutes, String who) {
    Outcome outcome = longerOnce(house, inForce, id, minutes, who);
    for (int i = 1; i < TRIES && outcome.equals(STALE); i++) {
      House again = desk.again(house);
      InForce then = plans.find(again, inForce.plan().day()).orElse(inForce);
      outcome = longerOnce(again, then, id, minutes, who);
    }
    return outcome;
  }

  private static final int TRIES = 3;
  private static final Outcome STALE = new Refused(Message.of("lanes.refused.stale"));

  private Outcome longerOnce(House house, InForce inForce, String id, int minutes, String who) {
    CrewInForce now = inForce(house, inForce, who);
    Optional<Task> task = inForce.findTask(id);
    if (task.isEmpty()) {
      return new Refused(Message.of("lanes.refused.no-task", id));
    }
    if (minutes < 1 || minutes > MOST_MINUTES) {
      return new Refused(Message.of("lanes.refused.minutes", MOST_MINUTES));
    }
    DayFacts facts = facts(house, inForce, now);
    Optional<Instant> since = facts.onIt(id).map(TaskProgress.OnIt::since);
    if (since.isEmpty()) {
      return new Refused(Message.of("lanes.refused.not-on-it"));
    }
    Duration planned = Duration.between(task.get().start(), task.get().handsOff());
    Instant ends = facts.now().plus(Duration.ofMinutes(minutes));
    Duration more = Duration.between(since.get().plus(planned), ends);
    Duration rounded = Duration.ofMinutes(Math.max(0, more.toMinutes()));
    if (rounded.equals(facts.more().getOrDefault(id, Duration.ZERO))) {
      return new Done(now);
    }
    Map<String, Duration> all = new HashMap<>(facts.more());
    all.put(id, rounded);
    Draft draft = new Draft(inForce, now.number() + 1, now.plan(), facts.longer(all));
    Seen seen = new Seen(now.number(), DayCrew.mark(inForce, facts));
    return keeping
        .put(house, draft, seen, new How("longer", id), who)
        .<Outcome>map(Done::new)
        .orElse(STALE);
  }
}
