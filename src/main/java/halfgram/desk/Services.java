package halfgram.desk;

import halfgram.book.Moments;
import halfgram.db.Tx;
import halfgram.event.Event;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Message;
import halfgram.pass.AtPass;
import halfgram.pass.Called;
import halfgram.pass.Coming;
import halfgram.pass.Component;
import halfgram.pass.Drop;
import halfgram.pass.EntryStore;
import halfgram.pass.Outage;
import halfgram.pass.PlatingNow;
import halfgram.pass.SwapOffer;
import halfgram.pass.Trays;
import halfgram.pass.Wave;
import halfgram.prep.Demand;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.Served;
import halfgram.prep.ServiceRun;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The services of a day as the pass sees them.
 *
 * <p>Rules. Covers and dishes are those of the book as it is now; what is on its way is that of the
 * plan in force. Out of the tubs is taken what services that are over have used ({@link Closing}),
 * and what plates sent since the last count of a component took.
 */
public final class Services {

  /**
   * A day at the pass.
   *
   * @param inForce the plan in force
   * @param drops the next drop of each run, the first due first
   */
  public record Board(
      House house,
      InForce inForce,
      Called called,
      List<AtPass> services,
      Map<String, List<Wave>> waves,
      Trays trays,
      List<Drop> drops,
      Instant now) {

    public Optional<AtPass> find(String service) {
      return services.stream().filter(one -> one.run().id().equals(service)).findFirst();
    }

    /** What may stand in for what in a service. */
    public List<SwapOffer> swaps(AtPass at) {
      return SwapOffer.list(house.book(), at, trays);
    }

    /** How far the plating of a service is. */
    public List<PlatingNow> plating(ServiceRun run) {
      return PlatingNow.list(house.book(), run, called, now);
    }

    /** The next drop for a service, while it can still wait for one. */
    public Optional<Drop> drop(ServiceRun run) {
      return drops.stream()
          .filter(one -> !run.isOver(now))
          .filter(
              one ->
                  Served.of(inForce.sheet(), one.task().make()).stream()
                      .anyMatch(served -> served.run().id().equals(run.id())))
          .findFirst();
    }

    /** Courses that are due and not called, with plates to go. */
    public List<Uncalled> uncalled() {
      return services.stream()
          .filter(at -> !at.run().isOver(now))
          .flatMap(
              at ->
                  at.due(now).entrySet().stream()
                      .map(one -> new Uncalled(at.run(), one.getKey(), one.getValue())))
          .toList();
    }

    /** The other day that has a service which this day does not have. */
    public Optional<LocalDate> otherDay(String service) {
      return elsewhere(house.book(), service).filter(other -> !other.equals(day()));
    }

    /** What to say of a service that this day does not have, and where it is. */
    public Message missing(String service) {
      return otherDay(service)
          .map(other -> Message.of("pass.elsewhere", service, other.toString()))
          .orElseGet(() -> notHere(service));
    }

    private Message notHere(String service) {
      String there = services.stream().map(one -> one.run().id()).collect(Collectors.joining(", "));
      return there.isEmpty()
          ? Message.of("pass.none-here", service, day().toString())
          : Message.of("pass.not-here", service, day().toString(), there);
    }

    public LocalDate day() {
      return inForce.plan().day();
    }
  }

  /**
   * A course that is due and that nobody has called.
   *
   * @param toGo plates that were not sent
   */
  public record Uncalled(ServiceRun run, Fire fire, int toGo) {}

  private final Desk desk;
  private final Plans plans;
  private final Bathing bathing;
  private final EntryStore entries = new EntryStore();
  private final Closing closing = new Closing();
  private final TickStore ticks = new TickStore();

  public Services(Desk desk, Plans plans, Bathing bathing) {
    this.desk = desk;
    this.plans = plans;
    this.bathing = bathing;
  }

  /** The services of a day by the book, those that are over too. */
  static List<ServiceRun> runs(KitchenBook book, LocalDate day) {
    Instant start = book.kitchen().clock().start(day);
    return new Demand(book, Because.NOT_ASKED).services(day, day, start);
  }

  /** The ids of a day's services by the book, those that are over too. */
  public static Set<String> onDay(KitchenBook book, LocalDate day) {
    return runs(book, day).stream().map(ServiceRun::id).collect(Collectors.toSet());
  }

  /** The day that has a service of this id. */
  private static Optional<LocalDate> elsewhere(KitchenBook book, String service) {
    return run(book, service).map(ServiceRun::date);
  }

  /** A service by its id, on whichever day the book has it. */
  static Optional<ServiceRun> run(KitchenBook book, String service) {
    Stream<LocalDate> events =
        book.events().stream()
            .filter(event -> service.equals(event.code()) || service.startsWith(event.code() + "."))
            .map(Event::date);
    Stream<LocalDate> regular =
        Moments.date(service.substring(service.lastIndexOf('.') + 1)).stream();
    return Stream.concat(events, regular)
        .flatMap(day -> runs(book, day).stream())
        .filter(run -> run.id().equals(service))
        .findFirst();
  }

  /** What to say of a day that has no plan. */
  public static Message noDay(LocalDate day) {
    return Message.of("pass.no-day", day.toString());
  }

  /** What there is none of today. */
  public List<Outage> outages(House house) {
    LocalDate day = house.day(desk.now());
    return desk.read(tx -> Called.of(entries.list(tx, house.id(), day)).outages());
  }

  /**
   * What is called between stations about now.
   *
   * @param plating what is plated for it
   */
  public record Near(ServiceRun run, AtPass.FireNow fire, List<PlatingNow> plating) {}

  /**
   * What every wall says of the services.
   *
   * @param outages what there is none of today
   * @param near what is called about now, in order
   * @param next the next thing to call in a service that runs
   * @param lacking services that are over, of which it was not entered what was called or sent
   */
  public record OnWalls(
      List<Outage> outages, List<Near> near, Optional<Near> next, List<ServiceRun> lacking) {}

  /** That, with what is fired from so long ago to so far ahead. */
  public OnWalls onWalls(House house, Duration back, Duration ahead) {
    Instant now = desk.now();
    LocalDate day = house.day(now);
    Called called =
        desk.remembered(
            house,
            new CalledOn(day),
            Memory.AfterTick.same(),
            tx -> Called.of(entries.list(tx, house.id(), day)));
    List<Near> near = new ArrayList<>();
    List<Near> open = new ArrayList<>();
    List<ServiceRun> lacking = new ArrayList<>();
    List<ServiceRun> all =
        desk.remembered(
            house, new RunsOn(day), Memory.AfterTick.same(), tx -> runs(house.book(), day));
    for (ServiceRun run : all) {
      boolean runs = !run.window().start().isAfter(now) && !run.isOver(now);
      List<Fire> about = new ArrayList<>();
      List<Fire> fires = Fire.list(house.book(), run);
      if (run.isOver(now) && lacks(run, fires, called)) {
        lacking.add(run);
      }
      for (Fire fire : fires) {
        if (!fire.at().isBefore(now.minus(back)) && !fire.at().isAfter(now.plus(ahead))) {
          about.add(fire);
        }
        AtPass.FireNow said = AtPass.FireNow.of(run, fire, called);
        if (runs && fire.at().isAfter(now) && said.called().isEmpty()) {
          open.add(new Near(run, said, List.of()));
        }
      }
      List<PlatingNow> plating =
          about.isEmpty() ? List.of() : PlatingNow.list(house.book(), run, called, now);
      for (Fire fire : about) {
        List<PlatingNow> of =
            plating.stream().filter(one -> one.line().fire().equals(fire)).toList();
        near.add(new Near(run, AtPass.FireNow.of(run, fire, called), of));
      }
    }
    Comparator<Near> order = Comparator.comparing(one -> one.fire().fire().at());
    near.sort(order);
    return new OnWalls(called.outages(), near, open.stream().min(order), lacking);
  }

  private static boolean lacks(ServiceRun run, List<Fire> fires, Called called) {
    return fires.stream().anyMatch(fire -> called.fired(run.id(), fire.code()).isEmpty())
        || (!run.plates().isEmpty() && called.sent(run.id()).isEmpty());
  }

  /** The services of a day, by name. */
  private record RunsOn(LocalDate day) {}

  /** What was called on a day, by name. */
  private record CalledOn(LocalDate day) {}

  /** Whether a day has a plan, so that its services can be looked at. */
  public boolean hasDay(House house, LocalDate day) {
    return desk.read(tx -> plans.inForce(tx, house, day).isPresent());
  }

  /** Today at the pass. */
  public Board open(House house, String who) {
    return find(house, house.day(desk.now()), who).orElseThrow();
  }

  /** As above on a day; of another than today what was entered, without tubs. */
  public Optional<Board> find(House house, LocalDate day, String who) {
    return plans.findOrOpen(house, day, who).map(inForce -> board(house, inForce));
  }

  /** Courses of the day in force that are due and not called, with plates to go. */
  public List<Uncalled> uncalled(House house, InForce inForce) {
    return board(house, inForce).uncalled();
  }

  private Board board(House house, InForce inForce) {
    Instant now = desk.now();
    House again = desk.again(house);
    BathBoard baths = bathing.board(again, inForce);
    return desk.read(tx -> board(tx, again, inForce, baths, now));
  }

  private Board board(Tx tx, House house, InForce inForce, BathBoard baths, Instant now) {
    LocalDate day = inForce.plan().day();
    KitchenBook book = house.book();
    Called called = Called.of(entries.list(tx, house.id(), day));
    List<ServiceRun> runs = runs(book, day);
    // The tubs as they stand now, as far as anybody can tell without counting.
    boolean today = house.day(now).equals(day);
    Emptied emptied =
        today
            ? closing.atPass(tx, house, List.of(inForce.sheet()), now)
            : new Emptied(List.of(), List.of(), now);
    Trays trays = new Trays(book.formulary(), emptied.left(), now);
    Map<String, Instant> started = started(tx, house, inForce);
    List<AtPass> services =
        runs.stream().map(run -> at(book, run, called, trays, emptied, inForce)).toList();
    Map<String, List<Wave>> waves = new HashMap<>();
    runs.forEach(run -> waves.put(run.id(), Wave.list(inForce.sheet(), run, started)));
    List<Drop> drops =
        Drop.list(
            inForce.sheet(),
            inForce.progress(),
            baths.basins().stream().map(BathBoard.Basin::live).toList());
    return new Board(house, inForce, called, services, waves, trays, drops, now);
  }

  private AtPass at(
      KitchenBook book,
      ServiceRun run,
      Called called,
      Trays trays,
      Emptied emptied,
      InForce inForce) {
    Map<Component, Amount> coming =
        Coming.of(inForce.book().formulary(), inForce.sheet(), inForce.progress(), run, desk.now());
    // Plates that went before their food stood in tubs took it out of what was on its way.
    for (Emptied.Missing missing : emptied.missing()) {
      if (missing.service().equals(run.id())) {
        coming.computeIfPresent(
            missing.component(), (of, amount) -> amount.minus(amount.atMost(missing.amount())));
      }
    }
    return AtPass.of(book, run, called, trays, coming);
  }

  /** When each task of the sheet was first entered, by an entry that counts. */
  private Map<String, Instant> started(Tx tx, House house, InForce inForce) {
    Map<String, Instant> started = new HashMap<>();
    ticks
        .listOfTasks(tx, house.id(), inForce.byId().keySet())
        .forEach(
            (task, all) -> {
              Set<UUID> undone = new HashSet<>();
              all.forEach(tick -> tick.undoes().ifPresent(undone::add));
              all.stream()
                  .filter(tick -> tick.kind() != Tick.Kind.UNDO && !undone.contains(tick.id()))
                  .findFirst()
                  .ifPresent(tick -> started.put(task, tick.at()));
            });
    return started;
  }
}
