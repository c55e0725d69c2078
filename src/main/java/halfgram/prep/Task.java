package halfgram.prep;

import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.MachineUse;
import halfgram.formula.Reason;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.technique.Addition;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;

/**
 * One thing somebody does: everything a scheduler, a wall or a paper has to know of it.
 *
 * @param id stays the same when the day is planned again: the make and the step
 * @param note what to do beyond the step's own words
 * @param hands people at once
 * @param start latest start by lags alone
 * @param handsOff until when hands are on it
 * @param end when what stands unattended is done too
 * @param fill how it goes through its machine
 * @param links what it waits for
 * @param serves ids of the services and makes it is for
 * @param firstUse when it is first used
 * @param tonight whether it is done this evening for a later day
 * @param late how long before the plan's moment it should have started; zero when in time
 */
public record Task(
    String id,
    Kind kind,
    Make make,
    Step step,
    Optional<Message> note,
    int hands,
    Instant start,
    Instant handsOff,
    Instant end,
    Fills.Fill fill,
    List<MachineUse> machines,
    List<WeighGroup> weigh,
    List<Stored> stored,
    List<String> cautions,
    SortedSet<String> allergens,
    List<Link> links,
    List<String> serves,
    Instant firstUse,
    boolean tonight,
    Duration late) {

  private static final long MOST = 10;
  private static final long MUCH = 3;
  private static final long LITTLE = 5;

  /** What sort of work it is. */
  public enum Kind {
    /** A step of the formula. */
    STEP,
    /** One piece first, and time to put the base right. */
    TEST_PIECE,
    /** A fresh bath in the middle of a run, or at its start. */
    FRESH_BATH,
    /** A tub out of the freezer ({@link Thaw}). */
    THAW
  }

  /**
   * What has to be done before, and the time between.
   *
   * @param task id of the earlier task
   * @param max empty: as long as you like
   */
  public record Link(String task, Duration min, Optional<Duration> max, Reason reason) {}

  /** This task of a make that has grown; its times stand. */
  Task larger(
      Make more, Fills.Fill fills, List<WeighGroup> lines, List<Stored> gives, List<String> users) {
    return new Task(
        id, kind, more, step, note, hands, start, handsOff, end, fills, machines, lines, gives,
        cautions, allergens, links, users, firstUse, tonight, late);
  }

  public FormulaVersion version() {
    return make.version();
  }

  /** What the techniques at its step tell whoever does it. */
  public List<Message> reminders() {
    if (kind != Kind.STEP) {
      return List.of();
    }
    return version().techniques().stream()
        .filter(use -> use.step().equals(step.code()))
        .flatMap(use -> use.additions().stream())
        .filter(Addition.Reminder.class::isInstance)
        .map(addition -> ((Addition.Reminder) addition).said())
        .toList();
  }

  /** What it asks for of a line, to be kept with its weighing: later it may ask for more. */
  public Optional<Amount> findAsked(Optional<String> path) {
    return weigh.stream()
        .flatMap(group -> group.lines().stream())
        .filter(line -> path.filter(line.path()::equals).isPresent())
        .map(line -> Amount.of(line.weighing().target()))
        .findFirst();
  }

  /**
   * Whether so much can have come of it: of what it puts away, not more than ten times what was
   * planned, which is a slip of the hand (common practice).
   */
  public boolean canGive(Amount amount) {
    return stored.stream()
        .limit(1)
        .map(Stored::made)
        .filter(made -> made.dimension() == amount.dimension())
        .allMatch(made -> amount.compareTo(made.times(MOST)) <= 0);
  }

  /**
   * Whether it is far from what was planned of it, so that one asks: more than three times as much,
   * or less than a fifth (common practice).
   */
  public boolean isFarFrom(Amount amount) {
    return stored.stream()
        .limit(1)
        .map(Stored::made)
        .filter(made -> made.dimension() == amount.dimension())
        .anyMatch(
            made ->
                amount.compareTo(made.times(MUCH)) > 0 || amount.times(LITTLE).compareTo(made) < 0);
  }

  public String station() {
    return step.station();
  }

  /** How long it stands alone afterwards. */
  public Duration unattended() {
    return Duration.between(handsOff, end);
  }

  /**
   * Whether it is part of what another task takes: a bath renewed between the drops of a run is set
   * up by the hands of the run, whose time has it in.
   */
  public boolean isInRun() {
    return kind == Kind.FRESH_BATH && !links.isEmpty();
  }

  /** Person-minutes of hands-on work. */
  public Duration handsOn() {
    return Duration.between(start, handsOff).multipliedBy(hands);
  }
}
