package halfgram.technique.bath;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;

/**
 * The baths of one kind through a day: which drop goes into which, when each is renewed and why,
 * how many have to be mixed, spares included.
 *
 * <p>Rules. Runs begin in the order of their start. A run's drops go to its baths in turn; a bath
 * that stands free and is still good serves the next run, one in use by another run does not.
 * Before each drop every {@link Renewal} is asked whether the bath would fail by the end of it; the
 * first that would, wins.
 *
 * <p>Example: a bath that lasts 150 pieces and a run of 14 drops of 15: the bath is changed after
 * drop 10, so two baths and the spare have to be mixed.
 */
public final class BathDay {

  /**
   * A run of pieces.
   *
   * @param start when its first bath is in use: the test piece goes in
   * @param firstDrop when the drops begin
   * @param allergens of the pieces
   */
  public record Run(
      String id,
      SphereBath bath,
      long pieces,
      Instant start,
      Instant firstDrop,
      SortedSet<String> allergens) {}

  /** A bath as used by some runs: from its first piece in to its last out. */
  public record Use(
      String label,
      Instant from,
      Instant to,
      List<String> runs,
      long pieces,
      double lostMl,
      double calciumMg) {}

  /**
   * A fresh bath in the middle of the day.
   *
   * @param afterDrop drops of this run done before; 0 when the run starts with the fresh one
   */
  public record Change(
      String run,
      long afterDrop,
      long pieces,
      Instant at,
      String old,
      String fresh,
      Renewal rule) {}

  /** The day's answer; uses in the order they begin. */
  public record Answer(List<Use> uses, List<Change> changes, int spares) {

    /** The baths a run begins with, worn ones that it renews at once included. */
    public List<String> begin(String run, int turns) {
      List<Change> own = changes.stream().filter(one -> one.run().equals(run)).toList();
      Set<String> fresh = new LinkedHashSet<>();
      own.forEach(change -> fresh.add(change.fresh()));
      Set<String> first = new LinkedHashSet<>();
      own.stream()
          .filter(change -> change.afterDrop() < turns && !fresh.contains(change.old()))
          .forEach(change -> first.add(change.old()));
      uses.stream()
          .filter(use -> use.runs().contains(run) && !fresh.contains(use.label()))
          .forEach(use -> first.add(use.label()));
      List<String> taken = new ArrayList<>(first);
      return taken.isEmpty()
          ? new ArrayList<>(List.of(uses.get(0).label()))
          : new ArrayList<>(taken.subList(0, Math.min(turns, taken.size())));
    }
  }

  private final List<Vessel> all = new ArrayList<>();
  private final List<Change> changes = new ArrayList<>();

  private BathDay() {}

  public static Answer of(List<Run> runs) {
    BathDay day = new BathDay();
    int spares = 0;
    for (Run run : runs.stream().sorted(BY_START).toList()) {
      day.drop(run);
      spares = Math.max(spares, run.bath().spares());
    }
    return new Answer(day.all.stream().map(Vessel::use).toList(), day.changes, spares);
  }

  private static final Comparator<Run> BY_START =
      Comparator.comparing(Run::start).thenComparing(Run::id);

  private void drop(Run run) {
    SphereBath bath = run.bath();
    int turns = (int) bath.values().number("baths");
    List<Vessel> taken = new ArrayList<>();
    long left = run.pieces();
    Duration settingUp = bath.settingUp();
    for (long drop = 0; left > 0; drop++) {
      long pieces = Math.min(left, bath.perDrop());
      Instant at = run.firstDrop().plus(bath.interval().multipliedBy(drop)).plus(settingUp);
      int slot = (int) (drop % turns);
      if (taken.size() <= slot) {
        taken.add(first(run, drop, run.pieces() - left, pieces, at, taken));
      }
      Vessel vessel = taken.get(slot);
      Optional<Renewal> trips = vessel.trips(run, pieces, at);
      if (trips.isPresent()) {
        vessel = renew(run, drop, run.pieces() - left, at, vessel, trips.get());
        taken.set(slot, vessel);
        at = at.plus(bath.settingUp());
        settingUp = settingUp.plus(bath.settingUp());
      }
      vessel.take(run, pieces, at, drop == 0 ? run.start() : at);
      left -= pieces;
    }
  }

  /** A bath to begin with: one that stands free and would not trip, else a fresh one. */
  private Vessel first(Run run, long drop, long done, long pieces, Instant at, List<Vessel> taken) {
    Instant from = drop == 0 ? run.start() : at;
    List<Vessel> free =
        all.stream()
            .filter(vessel -> !vessel.retired && !taken.contains(vessel))
            .filter(vessel -> !vessel.to.isAfter(run.start()))
            .toList();
    for (Vessel vessel : free) {
      if (vessel.trips(run, pieces, at).isEmpty()) {
        return vessel;
      }
    }
    if (free.isEmpty()) {
      return open(from);
    }
    Vessel worn = free.get(0);
    return renew(run, drop, done, from, worn, worn.trips(run, pieces, at).orElseThrow());
  }

  private Vessel renew(Run run, long drop, long done, Instant at, Vessel worn, Renewal rule) {
    Vessel fresh = open(at);
    // Another run may still use a bath that only carries what these pieces must not.
    worn.retired = rule != Renewal.CONTACT;
    changes.add(new Change(run.id(), drop, done, at, worn.label, fresh.label, rule));
    return fresh;
  }

  private Vessel open(Instant at) {
    Vessel vessel = new Vessel(label(all.size()), at);
    all.add(vessel);
    return vessel;
  }

  /** A to Z, then A2 and on. */
  public static String label(int index) {
    String letter = String.valueOf((char) ('A' + index % 26));
    return index < 26 ? letter : letter + (index / 26 + 1);
  }

  /** One bath while it is in use. */
  private static final class Vessel {
    private final String label;
    private final Instant from;
    private Instant to;
    private boolean retired;
    private final Wear wear;
    private final Set<String> runs = new LinkedHashSet<>();

    private Vessel(String label, Instant from) {
      this.label = label;
      this.from = from;
      this.to = from;
      this.wear = new Wear(from);
    }

    private Optional<Renewal> trips(Run run, long more, Instant at) {
      return wear.trips(run.bath(), run.allergens(), more, at);
    }

    private void take(Run run, long more, Instant at, Instant since) {
      runs.add(run.id());
      wear.take(run.bath(), run.allergens(), more, since);
      to = at.plus(run.bath().cycle());
    }

    private Use use() {
      return new Use(
          label, from, to, List.copyOf(runs), wear.pieces(), wear.lostMl(), wear.calciumMg());
    }
  }
}
