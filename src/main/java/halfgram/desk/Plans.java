package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Tub;
import halfgram.measure.Because;
import halfgram.measure.BusinessDay;
import halfgram.prep.Begun;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.PlanStore;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.BiFunction;

/**
 * The plan in force, what would change it, and putting another in force.
 *
 * <p>Rules. The first plan of a day is in force as soon as somebody opens the day: there is nothing
 * it would change. Every later one waits to be accepted. Work that has begun stands, also over
 * midnight: what yesterday's plan left unfinished is carried into today's.
 */
public final class Plans {
  /** Of how this program computes; a plan keeps it beside its result. */
  static final String ENGINE = "halfgram 1";

  private static final int KEPT = 32;

  /** Begun work older than this many days is nobody's any more. */
  private static final int DAYS_BACK = 7;

  /**
   * A sheet that is not in force.
   *
   * @param facts number of the last fact it takes into account
   * @param difference against the sheet in force
   */
  public record Proposal(
      KitchenBook book, PrepSheet sheet, List<Begun> begun, long facts, Difference difference) {}

  /** Whether a proposal was put in force; stale when the facts have moved on meanwhile. */
  public enum Accepting {
    IN_FORCE,
    STALE
  }

  private record DayOf(LocalDate day) {}

  private static final Memory.AfterTick<Optional<KnownDay>> DAY_AFTER =
      (day, ticked) -> Optional.of(day.map(of -> of.after(ticked.entered().tick())));

  /** A proposal of this minute, as long as nothing has changed. */
  private record Proposed(long change, Instant asOf, Proposal proposal) {
    private boolean holds(House house, Instant now) {
      return house.stand().change() == change && asOf.equals(now);
    }
  }

  private final Desk desk;
  private final BiFunction<KitchenBook, PrepSheet, String> result;
  private final KitchenStore kitchens = new KitchenStore();
  private final PlanStore plans = new PlanStore();
  private final TickStore ticks = new TickStore();
  private final LotStore lots = new LotStore();
  private final Closing closing = new Closing();
  private final LastFew<UUID, PlanStore.Accepted> heads = new LastFew<>(KEPT);
  private final Again again;
  private final LastFew<UUID, Proposed> proposed = new LastFew<>(KEPT);

  /**
   * @param result writes a sheet as the JSON that a plan keeps
   */
  public Plans(Desk desk, BiFunction<KitchenBook, PrepSheet, String> result) {
    this.desk = desk;
    this.result = result;
    this.again = new Again(desk, result);
  }

  /** The plan in force on a day; put in force now when the day has none yet. */
  public InForce open(House house, LocalDate day, String who) {
    Optional<InForce> there = find(house, day);
    if (there.isPresent()) {
      return there.get();
    }
    desk.write(house, tx -> begin(tx, house, day, who));
    return find(house, day).orElseThrow();
  }

  /** As {@link #open} today; no other day is begun by looking at it. */
  public Optional<InForce> findOrOpen(House house, LocalDate day, String who) {
    return day.equals(house.day(desk.now()))
        ? Optional.of(open(house, day, who))
        : find(house, day);
  }

  /** The plan in force on a day, if the day has one. */
  public Optional<InForce> find(House house, LocalDate day) {
    return find(house, day, desk.read(tx -> kitchens.change(tx, house.id())))
        .map(KnownDay::inForce);
  }

  private Optional<KnownDay> find(House house, LocalDate day, long change) {
    return desk.memory()
        .get(
            house.id(),
            change,
            new DayOf(day),
            DAY_AFTER,
            () -> desk.read(house, tx -> read(tx, house, day)));
  }

  /** Reads a day unless it is known, so that ticks are judged by what is known. */
  void know(House house, LocalDate day) {
    find(house, day, house.stand().change());
  }

  /** A day as it stands at a change, when that is known. */
  Optional<KnownDay> known(House house, LocalDate day, long change) {
    return desk.memory()
        .find(house.id(), change, new DayOf(day), DAY_AFTER)
        .flatMap(known -> known);
  }

  private Optional<KnownDay> read(Tx tx, House house, LocalDate day) {
    return inForce(tx, house, day)
        .map(plan -> made(tx, house, plan))
        .map(made -> KnownDay.of(made, listTicks(tx, house, made)));
  }

  /** A computation that is at hand. */
  Optional<Computation> findComputed(UUID plan) {
    return again.find(plan);
  }

  /** The head of the plan in force on a day: once written it never changes. */
  Optional<PlanStore.Accepted> inForce(Tx tx, House house, LocalDate day) {
    return plans
        .findInForce(tx, house.id(), day)
        .map(id -> heads.get(id, unknown -> plans.find(tx, house.id(), unknown).orElseThrow()));
  }

  /**
   * A sheet of days that nobody has put in force, from the book and the tubs as they are. Of days
   * ahead it holds their own work: what comes before it is done on its days, from today on, or from
   * the day on which the longest work for them begins.
   */
  public Proposal preview(House house, LocalDate from, int days) {
    return preview(house, from, days, Because.NOT_ASKED);
  }

  Proposal preview(House house, LocalDate from, int days, Because because) {
    BusinessDay clock = house.book().kitchen().clock();
    LocalDate today = house.day(desk.now());
    boolean ahead = today.isBefore(from);
    LocalDate lead = from.minusDays(Planning.lookAhead(house.book()));
    LocalDate first = !ahead ? from : lead.isBefore(today) ? today : lead;
    PlanRequest request = new PlanRequest(from, days, clock.start(first));
    return desk.read(
        tx -> {
          KitchenBook book = book(tx, house);
          PrepSheet all = Planning.plan(book, request, because);
          PrepSheet sheet = ahead ? all.withoutTasksBefore(clock.start(from)) : all;
          return new Proposal(
              book, sheet, List.of(), house.stand().facts(), Difference.of(sheet, sheet));
        });
  }

  /** What the plan would be from now on, when facts have changed since it was made. */
  public Optional<Proposal> findProposal(House house, InForce inForce) {
    if (house.stand().facts() <= inForce.plan().facts()) {
      return Optional.empty();
    }
    return Optional.of(propose(house, inForce)).filter(one -> !one.difference().isEmpty());
  }

  /** What the plan would be from now on; worked out once in a minute in which nothing changes. */
  public Proposal propose(House house, InForce inForce) {
    Instant asOf = moment(house, inForce.plan().day());
    Optional<Proposed> known =
        proposed.find(inForce.plan().id()).filter(one -> one.holds(house, asOf));
    if (known.isPresent()) {
      return known.get().proposal();
    }
    Proposal proposal = propose(house, inForce, house.book());
    proposed.put(inForce.plan().id(), new Proposed(house.stand().change(), asOf, proposal));
    return proposal;
  }

  /** What the plan would be from now on, by another book: what if. */
  public Proposal propose(House house, InForce inForce, KitchenBook other) {
    House then = house.with(other);
    Instant asOf = moment(then, inForce.plan().day());
    return desk.read(
        tx -> {
          List<PrepSheet> sheets = EarlierSheets.of(tx, then, this, inForce);
          List<Tub> tubs = closing.after(tx, then, sheets, asOf);
          return Proposing.of(tx, then, inForce, InHand.of(tx, then, inForce, tubs, asOf), asOf);
        });
  }

  /** Now, or the start of a day that has not begun. */
  private Instant moment(House house, LocalDate day) {
    Instant start = house.book().kitchen().clock().start(day);
    Instant now = desk.now().truncatedTo(ChronoUnit.MINUTES);
    return now.isBefore(start) ? start : now;
  }

  /**
   * What whoever accepts has looked at.
   *
   * @param number of the plan that was in force then
   * @param facts number of the last fact the proposal took into account
   */
  public record Seen(int number, long facts) {}

  /**
   * Puts in force what the plan would be from now on. Accepting the same twice does it once.
   *
   * @param facts number of the last fact that whoever accepts has seen
   */
  public Accepting accept(House house, LocalDate day, long facts, String who) {
    return accept(house, day, new Seen(find(house, day).orElseThrow().plan().number(), facts), who);
  }

  /** As above, unless the plan that was looked at is no longer in force. */
  public Accepting accept(House house, LocalDate day, Seen seen, String who) {
    return desk.write(
        house,
        tx -> {
          KitchenStore.Stand stand = kitchens.lock(tx, house.id());
          PlanStore.Accepted latest = inForce(tx, house, day).orElseThrow();
          if (latest.number() == seen.number() + 1 && latest.facts() == seen.facts()) {
            return Accepting.IN_FORCE;
          }
          if (stand.facts() != seen.facts() || latest.number() != seen.number()) {
            return Accepting.STALE;
          }
          House now = desk.open(tx, stand);
          InForce inForce = inForce(tx, now, latest);
          Instant asOf = moment(now, day);
          List<PrepSheet> sheets = EarlierSheets.of(tx, now, this, inForce);
          List<Tub> tubs = closing.close(tx, now, sheets, asOf, desk.now());
          InHand inHand = InHand.of(tx, now, inForce, tubs, asOf);
          Proposal proposal = Proposing.of(tx, now, inForce, inHand, asOf);
          String snapshot = ExportBook.withTubs(now, inHand.tubs()).toString();
          again.parse(snapshot);
          int number = inForce.plan().number() + 1;
          save(tx, now, new Unsaved(number, snapshot, proposal), Optional.of(inForce), who);
          return Accepting.IN_FORCE;
        });
  }

  private record Unsaved(int number, String snapshot, Proposal proposal) {}

  /** The first plan of a day, with what the days before left unfinished. */
  private long begin(Tx tx, House house, LocalDate day, String who) {
    KitchenStore.Stand stand = kitchens.lock(tx, house.id());
    if (inForce(tx, house, day).isPresent()) {
      return stand.change();
    }
    House now = desk.open(tx, stand);
    Optional<InForce> before =
        plans
            .findBefore(tx, house.id(), day, day.minusDays(DAYS_BACK))
            .map(plan -> inForce(tx, now, plan));
    Instant start = now.book().kitchen().clock().start(day);
    before.ifPresent(
        earlier ->
            closing.close(tx, now, EarlierSheets.of(tx, now, this, earlier), start, desk.now()));
    List<Tub> tubs = lots.list(tx, now.id());
    InHand inHand =
        before
            .map(earlier -> InHand.less(tubs, BegunWork.of(earlier, start), earlier))
            .orElseGet(() -> new InHand(tubs, List.of()));
    String snapshot = ExportBook.withTubs(now, inHand.tubs()).toString();
    KitchenBook book = again.parse(snapshot);
    PlanRequest request = new PlanRequest(day, 1, start);
    Basis basis = new Basis(book, book.lots(), request, inHand.begun());
    PrepSheet sheet = new SpentIds(tx, now.id(), before).sheet(basis, book);
    Proposal proposal =
        new Proposal(book, sheet, inHand.begun(), stand.facts(), Difference.of(sheet, sheet));
    return save(tx, now, new Unsaved(1, snapshot, proposal), before, who);
  }

  private long save(Tx tx, House house, Unsaved unsaved, Optional<InForce> before, String who) {
    Proposal proposal = unsaved.proposal();
    LocalDate day = proposal.sheet().request().from();
    Instant at = desk.now();
    KitchenBook was = before.map(InForce::book).orElse(proposal.book());
    String summary = Summary.write(proposal.difference(), was, proposal.book());
    String subject = day + "/" + unsaved.number();
    long change = kitchens.change(tx, house.id(), News.note("plan", subject, summary, who), at);
    UUID snapshot = plans.keep(tx, house.id(), Hash.of(unsaved.snapshot()), unsaved.snapshot());
    String json = result.apply(proposal.book(), proposal.sheet());
    PlanStore.Accepted plan =
        new PlanStore.Accepted(
            UUID.randomUUID(),
            day,
            unsaved.number(),
            before.map(InForce::plan).map(PlanStore.Accepted::id),
            snapshot,
            proposal.sheet().request().asOf(),
            BegunJson.write(proposal.begun(), proposal.sheet().request().spent()),
            ENGINE,
            summary,
            proposal.facts(),
            who,
            at,
            change);
    plans.add(tx, house.id(), plan, new PlanStore.Result(json, Hash.of(json)));
    if (proposal.begun().isEmpty()) {
      // The first page of a day need not compute again what was computed just now.
      again.keep(plan.id(), new Computation(proposal.book(), proposal.sheet()));
    }
    return change;
  }

  /** A plan of the store, computed again from what it was computed from. */
  public Computation recompute(Tx tx, House house, PlanStore.Accepted plan, Because because) {
    return again.of(tx, house, plan, because);
  }

  /** A book and the sheet computed from it. */
  public record Computation(KitchenBook book, PrepSheet sheet) {}

  /** As {@link #recompute}, kept from the last time when it can be. */
  Computation computed(Tx tx, House house, PlanStore.Accepted plan) {
    return again.of(tx, house, plan);
  }

  /** A plan with its progress as it is now. */
  InForce inForce(Tx tx, House house, PlanStore.Accepted plan) {
    InForce made = made(tx, house, plan);
    return KnownDay.of(made, listTicks(tx, house, made)).inForce();
  }

  /** A plan of which nobody has begun anything. */
  private InForce made(Tx tx, House house, PlanStore.Accepted plan) {
    Computation made = computed(tx, house, plan);
    return new InForce(plan, made.book(), made.sheet(), Map.of());
  }

  private Map<String, List<Tick>> listTicks(Tx tx, House house, InForce of) {
    Set<String> ids = new LinkedHashSet<>();
    of.sheet().tasks().forEach(task -> ids.add(task.id()));
    of.sheet().begun().forEach(one -> one.tasks().forEach(task -> ids.add(task.id())));
    return ticks.listOfTasks(tx, house.id(), ids);
  }

  private KitchenBook book(Tx tx, House house) {
    return house.book().withLots(of(lots.list(tx, house.id())));
  }

  private static List<Lot> of(List<Tub> tubs) {
    return tubs.stream().map(Tub::lot).toList();
  }
}
