package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * What a station has to be told about a day until somebody there has seen it: covers, diets and
 * times of services that have changed, its own tasks that have, and whether the plan in force has
 * them.
 */
public final class Changes {
  private static final int LOOKED_BACK = 24;
  private static final String PLAN = "plan";

  /** Every station at once, as a wall may show them. */
  public static final String EVERYWHERE = "all";

  /** Whether the weights of the plan in force have a change in them. */
  public enum Weights {
    WITHOUT,
    /** It was seen, and then taken back before any plan had it. */
    AGAIN,
    WITH
  }

  /**
   * One change.
   *
   * @param number of the change, by which it is seen
   */
  public record Told(long number, Instant at, Weights weights, Summary summary) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();

  public Changes(Desk desk) {
    this.desk = desk;
  }

  /** What a station has not seen, newest first. */
  public List<Told> list(House house, InForce inForce, String station) {
    return desk.remembered(
        house,
        new ToldAt(inForce.plan().id(), station),
        Memory.AfterTick.same(),
        tx -> list(tx, house, inForce, station));
  }

  /** What a station is told beside a plan, by name. */
  private record ToldAt(UUID plan, String station) {}

  private List<Told> list(Tx tx, House house, InForce inForce, String station) {
    List<Told> told = new ArrayList<>();
    List<Change> plans =
        kitchens.listBefore(tx, house.id(), Long.MAX_VALUE, Set.of(PLAN), LOOKED_BACK);
    ahead(tx, house, inForce)
        .or(() -> again(tx, house, inForce, station, plans))
        .ifPresent(told::add);
    String subject = inForce.plan().day() + "/";
    for (Change change : plans) {
      Summary summary = Summary.read(change.detail());
      if (change.subject().startsWith(subject) && concerns(summary, station)) {
        told.add(new Told(change.number(), change.at(), Weights.WITH, summary));
      }
    }
    long before = told.stream().mapToLong(Told::number).min().orElse(0) - 1;
    Set<Long> seen = kitchens.seen(tx, house.id(), station, before);
    return told.stream().filter(one -> !seen.contains(one.number())).toList();
  }

  /** Whether there is anything in it for a station; a name that is none asks for all of them. */
  private static boolean concerns(Summary summary, String station) {
    boolean services =
        !summary.covers().isEmpty() || !summary.moved().isEmpty() || !summary.diets().isEmpty();
    return services
        || (station.equals(EVERYWHERE)
            ? !summary.tasks().isEmpty()
            : summary.tasks(station).map(here -> !here.isEmpty()).orElse(true));
  }

  /** That what a station saw ahead of the plan in force holds no longer. */
  private Optional<Told> again(
      Tx tx, House house, InForce inForce, String station, List<Change> plans) {
    Set<Long> ahead = kitchens.seen(tx, house.id(), station, inForce.plan().facts());
    plans.forEach(plan -> ahead.remove(plan.number()));
    return ahead.isEmpty() || !come(house, inForce, Instant.EPOCH).isEmpty()
        ? Optional.empty()
        : Optional.of(
            new Told(
                house.stand().facts(), lastFact(tx, house, inForce), Weights.AGAIN, Summary.NONE));
  }

  /** Covers, diets and times that are not those of the plan. */
  private Optional<Told> ahead(Tx tx, House house, InForce inForce) {
    if (house.stand().facts() <= inForce.plan().facts()) {
      return Optional.empty();
    }
    List<Summary.Covers> covers = new ArrayList<>();
    List<Summary.Moved> moved = new ArrayList<>();
    for (ServiceRun run : inForce.sheet().services()) {
      Optional<Slips.Found> found = Slips.find(house, run.id());
      OptionalInt now = covers(run, found);
      if (now.isPresent() && now.getAsInt() != run.covers().orElse(0)) {
        covers.add(new Summary.Covers(run.name(), run.covers().orElse(0), now.getAsInt()));
      }
      found
          .map(of -> window(house, of))
          .filter(window -> !window.equals(run.window()))
          .ifPresent(window -> moved.add(new Summary.Moved(run.name(), run.window(), window)));
    }
    covers.addAll(come(house, inForce, desk.now()));
    List<Summary.Diet> diets =
        DietNews.between(inForce.book(), house.book(), inForce.sheet().services().stream());
    if (covers.isEmpty() && moved.isEmpty() && diets.isEmpty()) {
      return Optional.empty();
    }
    Summary summary =
        new Summary(covers, moved, diets, Summary.Tasks.NONE, new TreeMap<>(), new TreeSet<>());
    return Optional.of(
        new Told(house.stand().facts(), lastFact(tx, house, inForce), Weights.WITHOUT, summary));
  }

  /** When something was changed last since the plan in force. */
  private Instant lastFact(Tx tx, House house, InForce inForce) {
    List<Change> since =
        kitchens.listSince(tx, house.id(), inForce.plan().facts(), Set.of()).stream()
            .filter(change -> !change.kind().equals(PLAN))
            .toList();
    return since.isEmpty() ? desk.now() : since.get(since.size() - 1).at();
  }

  /**
   * Services of the day that the plan does not know and that a moment is not past; their covers.
   */
  private static List<Summary.Covers> come(House house, InForce inForce, Instant moment) {
    Set<String> known =
        inForce.sheet().allServices().stream().map(ServiceRun::id).collect(Collectors.toSet());
    return Services.runs(house.book(), inForce.plan().day()).stream()
        .filter(run -> !known.contains(run.id()) && !run.isOver(moment))
        .filter(run -> run.covers().orElse(0) > 0)
        .map(run -> new Summary.Covers(run.name(), 0, run.covers().getAsInt()))
        .toList();
  }

  /** Covers as the book has them now: none any more of an event's service that is gone. */
  private static OptionalInt covers(ServiceRun run, Optional<Slips.Found> found) {
    return found
        .map(Slips.Found::covers)
        .orElse(run.event().isEmpty() ? OptionalInt.empty() : OptionalInt.of(0));
  }

  private static Window window(House house, Slips.Found found) {
    BusinessDay clock = house.book().kitchen().clock();
    Instant start = clock.at(found.date(), found.start());
    Instant end = clock.at(found.date(), found.end());
    return new Window(start, end.isBefore(start) ? start : end);
  }

  /** Notes that a station has seen changes; a repeat is harmless. */
  public void see(House house, Collection<Long> numbers, String station, String who) {
    desk.write(
        house,
        tx -> {
          KitchenStore.Stand stand = kitchens.lock(tx, house.id());
          numbers.forEach(number -> kitchens.see(tx, house.id(), number, station, who, desk.now()));
          return kitchens.next(tx, stand);
        });
  }
}
