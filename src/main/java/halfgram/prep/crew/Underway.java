package halfgram.prep.crew;

import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;

/**
 * A task somebody is on, as far as can be told: since when, until when hands are on it, and when it
 * has stood.
 *
 * <p>Rules. Hands are on it as long as planned, and as much longer as somebody said. Nobody ticks
 * that hands came off, so what stands afterwards stands from then on; work by hand alone goes on
 * until somebody says done, and so does what should have stood long since.
 */
record Underway(Instant since, Instant handsOff, Instant end) {
  /** Of a task, when somebody is on it. */
  static Optional<Underway> of(Task task, DayFacts facts) {
    return facts.onIt(task.id()).map(on -> of(task, on, facts));
  }

  private static Underway of(Task task, TaskProgress.OnIt on, DayFacts facts) {
    Instant soon = facts.now().plus(Slots.SLOT);
    Duration planned = Duration.between(task.start(), task.handsOff());
    Duration more = facts.more().getOrDefault(task.id(), Duration.ZERO);
    Instant handsOff = on.since().plus(planned).plus(more);
    Instant end = handsOff.plus(task.unattended());
    if (end.isAfter(facts.now())) {
      return new Underway(on.since(), handsOff, end);
    }
    return task.unattended().isZero()
        ? new Underway(on.since(), soon, soon)
        : new Underway(on.since(), handsOff, soon);
  }
}
