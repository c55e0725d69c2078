package halfgram.desk;

import halfgram.db.Tx;
import halfgram.event.Event;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What a station has to be told about a day until somebody there has seen it: covers that have
 * changed, and whether the plan in force has them.
 */
public final class Changes {
  private static final int LOOKED_BACK = 24;
  private static final String PLAN = "plan";

  /** Whether the weights of the plan in force have a change in them. */
  public enum Weights {
    WITHOUT,
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
    return desk.read(tx -> list(tx, house, inForce, station));
  }

  private List<Told> list(Tx tx, House house, InForce inForce, String station) {
    List<Told> told = new ArrayList<>();
    ahead(tx, house, inForce).ifPresent(told::add);
    String subject = inForce.plan().day() + "/";
    for (Change change :
        kitchens.listBefore(tx, house.id(), Long.MAX_VALUE, Set.of(PLAN), LOOKED_BACK)) {
      Summary summary = Summary.read(change.detail());
      if (change.subject().startsWith(subject) && !summary.isEmpty()) {
        told.add(new Told(change.number(), change.at(), Weights.WITH, summary));
      }
    }
    long before = told.stream().mapToLong(Told::number).min().orElse(0) - 1;
    Set<Long> seen = kitchens.seen(tx, house.id(), station, before);
    return told.stream().filter(one -> !seen.contains(one.number())).toList();
  }

  /** Covers that are not those of the plan. */
  private Optional<Told> ahead(Tx tx, House house, InForce inForce) {
    if (house.stand().facts() <= inForce.plan().facts()) {
      return Optional.empty();
    }
    List<Summary.Covers> covers = new ArrayList<>();
    for (ServiceRun run : inForce.sheet().services()) {
      OptionalInt now = covers(house, run);
      if (now.isPresent() && now.getAsInt() != run.covers().orElse(0)) {
        covers.add(new Summary.Covers(run.name(), run.covers().orElse(0), now.getAsInt()));
      }
    }
    if (covers.isEmpty()) {
      return Optional.empty();
    }
    List<Change> since =
        kitchens.listSince(tx, house.id(), inForce.plan().facts(), Set.of()).stream()
            .filter(change -> !change.kind().equals(PLAN))
            .toList();
    Instant at = since.isEmpty() ? desk.now() : since.get(since.size() - 1).at();
    Summary summary = new Summary(covers, 0, 0, 0);
    return Optional.of(new Told(house.stand().facts(), at, Weights.WITHOUT, summary));
  }

  /** Covers of an event's service as the book has them now; none for a regular service. */
  private static OptionalInt covers(House house, ServiceRun run) {
    return run.event().isEmpty()
        ? OptionalInt.empty()
        : OptionalInt.of(
            house.book().events().stream()
                .filter(event -> event.code().equals(run.event().get()))
                .map(Event::covers)
                .mapToInt(covers -> covers.counted())
                .findFirst()
                .orElse(0));
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
