package halfgram.prep.schedule;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One piece of work: hands on it first, then it may stand alone.
 *
 * @param id unique in its workday; the order of ids breaks ties
 * @param earliest first slot it may start in
 * @param hands cooks it takes at once; 0 when nobody has to be there
 * @param handsOn slots with hands on it
 * @param alone slots it stands afterwards
 * @param able the cooks that can do it, by index
 * @param uses machines it occupies
 * @param keeps space it takes from its end on
 * @param leaves what it leaves on a machine, by index into the workday's washes
 * @param due when it should have ended
 * @param previous where the plan in force has it
 * @param fixed where it stays: it has begun, or the chef pinned it
 */
public record Job(
    String id,
    int earliest,
    int hands,
    int handsOn,
    int alone,
    List<Integer> able,
    List<Use> uses,
    List<Keep> keeps,
    int leaves,
    Optional<Due> due,
    Optional<Spot> previous,
    Optional<Spot> fixed) {
  public Job {
    able = List.copyOf(able);
    uses = List.copyOf(uses);
    keeps = List.copyOf(keeps);
    if (earliest < 0 || hands < 0 || handsOn < 0 || alone < 0 || handsOn + alone < 1) {
      throw new IllegalArgumentException("a job of no length, or before the first slot: " + id);
    }
    if (hands > 0 && handsOn == 0) {
      throw new IllegalArgumentException("hands, but no time for them: " + id);
    }
  }

  /** This job, with other cooks, machines and spaces by index. */
  Job with(
      List<Integer> cooks,
      List<Use> machines,
      List<Keep> spaces,
      Optional<Spot> was,
      Optional<Spot> stays) {
    return new Job(
        id, earliest, hands, handsOn, alone, cooks, machines, spaces, leaves, due, was, stays);
  }

  /** This job where the plan in force has it. */
  public Job after(Spot was) {
    return new Job(
        id,
        earliest,
        hands,
        handsOn,
        alone,
        able,
        uses,
        keeps,
        leaves,
        due,
        Optional.of(was),
        fixed);
  }

  /** This job where it stays. */
  public Job fixedAt(Spot stays) {
    return new Job(
        id,
        earliest,
        hands,
        handsOn,
        alone,
        able,
        uses,
        keeps,
        leaves,
        due,
        previous,
        Optional.of(stays));
  }

  /** This job, taking other room. */
  public Job keeping(List<Keep> other) {
    return new Job(
        id, earliest, hands, handsOn, alone, able, uses, other, leaves, due, previous, fixed);
  }

  /** Slots from its start to its end. */
  public int length() {
    return handsOn + alone;
  }

  /** Which part of a job needs a machine. */
  public enum During {
    WHOLE,
    HANDS,
    ALONE
  }

  /** Units of a machine, by index, while a part of the job lasts. */
  public record Use(int machine, int units, During during) {}

  /**
   * Space that what it makes takes, from its end until a slot that does not move with it.
   *
   * @param space by index
   */
  public record Keep(int space, int amount, int until) {}

  /**
   * When it should have ended.
   *
   * @param slot the first one that is late
   * @param weight of its lateness, 1 for most work
   * @param fresh slots before it from which on it is fresh enough; empty: as early as you like
   * @param slack slots before it that are better left free
   */
  public record Due(int slot, int weight, OptionalInt fresh, int slack) {}

  /**
   * A start with the cooks that do it and what it occupies.
   *
   * @param cooks none when nobody said who
   * @param units of each of its uses, one after the other; none when nobody said which
   */
  public record Spot(int start, List<Integer> cooks, List<Integer> units) {
    public Spot {
      cooks = List.copyOf(cooks);
      units = List.copyOf(units);
    }

    /** Any units will do. */
    public static Spot of(int start, List<Integer> cooks) {
      return new Spot(start, cooks, List.of());
    }
  }
}
