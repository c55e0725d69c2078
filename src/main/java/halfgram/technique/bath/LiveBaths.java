package halfgram.technique.bath;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.UUID;

/**
 * The baths of one formula on one day as they really are, folded from what cooks entered.
 *
 * <p>Rules. An undone entry counts as if it had never been. A bath wears by the pieces that went
 * into it, with the numbers of {@link SphereBath}. Burst pieces are reckoned by the share that the
 * plan allows for until more have been counted, for the calcium they leave and for the pieces that
 * are still to drop: counting late or never makes no bath last longer. A measured level takes the
 * place of the reckoned one. The pieces of a run that burst beyond what was allowed for are dropped
 * again on top.
 *
 * <p>Example: a run of 150 of which 8 % are allowed to burst. After a drop of 15 with 5 burst, 3.8
 * are beyond the 1.2 allowed: 3.8 / 0.92 makes 5 more, so 140 are still to drop, not 135.
 */
public final class LiveBaths {

  /**
   * A run of pieces.
   *
   * @param planned pieces that the plan drops, those that may burst included
   * @param begins the baths it begins with by the plan
   * @param tested when somebody began with its test piece
   */
  public record Run(
      String id,
      SphereBath bath,
      SortedSet<String> allergens,
      long planned,
      List<String> begins,
      Optional<Instant> tested) {}

  /** Whether pieces were lifted when they should have been. */
  public enum Timing {
    SHORT,
    RIGHT,
    LONG;

    /** So far from the set time is still right, as a share of it; common practice. */
    private static final double NEAR = 0.1;

    /** The key of its word in the message files. */
    public String key() {
      return "timing." + name().toLowerCase(java.util.Locale.ROOT);
    }

    static Timing of(Duration took, Duration set) {
      double share = took.toMillis() / (double) set.toMillis();
      return share < 1 - NEAR ? SHORT : share > 1 + NEAR ? LONG : RIGHT;
    }
  }

  /**
   * The end of a drop.
   *
   * @param skin mm, estimated by the root of the time
   */
  public record Lift(UUID id, Instant at, String cook, Duration took, Timing timing, double skin) {}

  /**
   * One round of pieces.
   *
   * @param number among the drops of its run, from 1
   */
  public record Drop(
      UUID id,
      String label,
      String run,
      int number,
      long pieces,
      long burst,
      String cook,
      Instant at,
      Duration set,
      Optional<Lift> lift) {
    /** When to lift it. */
    public Instant due() {
      return at.plus(set);
    }

    public boolean isIn() {
      return lift.isEmpty();
    }
  }

  /** A level by the ruler, and what it comes to in this pan. */
  public record Level(double millimetres, double litres, Instant at, String cook) {}

  /**
   * One bath that has been in use.
   *
   * @param from since when, the test piece included
   * @param carries allergens that went through it
   * @param runs that used it, in order
   * @param level the last one measured
   * @param millimetres where it stands now: reckoned from the last measured level, or from full
   * @param opened the change that put it in another's place
   * @param ended the change that emptied it
   */
  public record Bath(
      String label,
      Instant from,
      long pieces,
      long burst,
      double lostMl,
      double calciumMg,
      SortedSet<String> carries,
      List<String> runs,
      Optional<Level> level,
      double millimetres,
      Optional<BathEntry> opened,
      Optional<BathEntry> ended) {}

  /**
   * How far a run has come.
   *
   * @param good pieces that were lifted whole: one that is still in can burst
   * @param toDrop pieces still to drop so that the planned good ones come out
   * @param topUp how many of these are more than planned
   */
  public record Count(long drops, long dropped, long burst, long good, long toDrop, long topUp) {}

  /** How many more drops a bath takes, and why no more; without a rule it outlasts the run. */
  public record Ahead(long drops, Optional<Renewal> rule) {}

  private final Map<String, Run> runs = new LinkedHashMap<>();
  private final LiveFold fold;

  private LiveBaths(Collection<Run> of, List<BathEntry> entries) {
    of.forEach(run -> runs.put(run.id(), run));
    this.fold = new LiveFold(runs, entries);
  }

  /**
   * Folds entries.
   *
   * @param runs of the day and of the entries
   * @param entries in the order the server had them
   */
  public static LiveBaths of(Collection<Run> runs, List<BathEntry> entries) {
    return new LiveBaths(runs, entries);
  }

  public Optional<Run> findRun(String id) {
    return Optional.ofNullable(runs.get(id));
  }

  public List<Run> runs() {
    return List.copyOf(runs.values());
  }

  /** Whether an entry counts: it was made here and not taken back. */
  public boolean counts(UUID id) {
    return fold.live().stream().anyMatch(entry -> entry.id().equals(id));
  }

  /** The entries that count, in order. */
  public List<BathEntry> entries() {
    return List.copyOf(fold.live());
  }

  /** The baths that have been in use, in the order they came into it. */
  public List<Bath> baths() {
    return fold.pans().stream().map(LiveFold.Pan::bath).toList();
  }

  public Optional<Bath> findBath(String label) {
    return fold.findPan(label).map(LiveFold.Pan::bath);
  }

  public List<Drop> drops() {
    return fold.drops();
  }

  public List<Drop> dropsOf(String run) {
    return drops().stream().filter(drop -> drop.run().equals(run)).toList();
  }

  public List<Drop> dropsInto(String label) {
    return drops().stream().filter(drop -> drop.label().equals(label)).toList();
  }

  public Optional<Drop> findDrop(UUID id) {
    return drops().stream().filter(drop -> drop.id().equals(id)).findFirst();
  }

  /** Of the drops that are in a bath, the one due first. */
  public Optional<Drop> findIn(String label) {
    return dropsInto(label).stream()
        .filter(Drop::isIn)
        .min(java.util.Comparator.comparing(Drop::due));
  }

  public Count count(Run run) {
    List<Drop> own = dropsOf(run.id());
    long dropped = own.stream().mapToLong(Drop::pieces).sum();
    long burst = own.stream().mapToLong(Drop::burst).sum();
    long good =
        own.stream()
            .filter(drop -> !drop.isIn())
            .mapToLong(drop -> drop.pieces() - drop.burst())
            .sum();
    double allowed = run.bath().facts().breakage();
    double beyond = Math.max(0, burst - allowed * dropped);
    long topUp = (long) StrictMath.ceil(beyond / (1 - allowed) - NOTHING);
    long toDrop = Math.max(0, run.planned() - dropped + topUp);
    return new Count(own.size(), dropped, burst, good, toDrop, Math.min(topUp, toDrop));
  }

  /** Less than this of a piece is rounding. */
  private static final double NOTHING = 1e-9;

  /** Why a bath may not, or should not, take these pieces now. */
  public Optional<Renewal> trips(String label, Run run, long pieces, Instant at) {
    return fold.findPan(label)
        .flatMap(pan -> pan.wear.trips(run.bath(), run.allergens(), pieces, at));
  }

  /** How many more drops of a run a bath takes from now on; none when the run needs none. */
  public Ahead ahead(String label, Run run, Instant at) {
    Wear wear = fold.findPan(label).map(pan -> pan.wear.copy()).orElseGet(() -> new Wear(at));
    long most = run.bath().drops(count(run).toDrop());
    return ahead(wear, run, at, most);
  }

  private static Ahead ahead(Wear wear, Run run, Instant at, long most) {
    for (long drop = 0; drop < most; drop++) {
      Instant then = at.plus(run.bath().interval().multipliedBy(drop));
      Optional<Renewal> trips = wear.trips(run.bath(), run.allergens(), run.bath().perDrop(), then);
      if (trips.isPresent()) {
        return new Ahead(drop, trips);
      }
      wear.take(run.bath(), run.allergens(), run.bath().perDrop(), then);
    }
    return new Ahead(most, Optional.empty());
  }

  /** The baths a run goes into now: those it began with or was given, or what took their place. */
  public List<String> baths(Run run) {
    Set<String> labels = new LinkedHashSet<>();
    run.begins().forEach(label -> labels.add(inPlaceOf(label)));
    dropsOf(run.id()).forEach(drop -> labels.add(inPlaceOf(drop.label())));
    return new ArrayList<>(labels);
  }

  /** The bath that stands where this one stood. */
  public String inPlaceOf(String label) {
    String now = label;
    Set<String> seen = new LinkedHashSet<>();
    while (seen.add(now)) {
      now = findBath(now).flatMap(Bath::ended).flatMap(BathEntry::fresh).orElse(now);
    }
    return now;
  }

  /** The label for a bath that takes the place of one, or stands beside the others. */
  public String freshLabel(String old, BathDay.Answer answer) {
    Optional<String> planned =
        answer.changes().stream()
            .filter(change -> change.old().equals(old))
            .map(BathDay.Change::fresh)
            .filter(label -> findBath(label).isEmpty())
            .findFirst();
    Set<String> used = new LinkedHashSet<>();
    answer.uses().forEach(use -> used.add(use.label()));
    int index = 0;
    while (used.contains(BathDay.label(index)) || findBath(BathDay.label(index)).isPresent()) {
      index++;
    }
    return planned.orElse(BathDay.label(index));
  }

  /**
   * The drops of a run still to come, by bath: in turn to those it goes into, and to a fresh one
   * from where one of them would be changed.
   */
  public Map<String, Long> coming(Run run, BathDay.Answer answer, Instant at) {
    Map<String, Long> coming = new LinkedHashMap<>();
    List<String> slots = baths(run);
    Map<String, Long> takes = new LinkedHashMap<>();
    slots.forEach(label -> takes.put(label, ahead(label, run, at).drops()));
    long drops = run.bath().drops(count(run).toDrop());
    long lasts = Math.max(1, run.bath().lasts() / run.bath().perDrop());
    for (long drop = 0; drop < drops; drop++) {
      int slot = (int) (drop % slots.size());
      String label = slots.get(slot);
      if (takes.getOrDefault(label, lasts) <= coming.getOrDefault(label, 0L)) {
        String fresh = freshLabel(label, answer);
        boolean known = coming.containsKey(fresh) || slots.contains(fresh);
        label = known ? label : fresh;
        slots.set(slot, label);
        takes.put(label, lasts);
      }
      coming.merge(label, 1L, Long::sum);
    }
    return coming;
  }
}
