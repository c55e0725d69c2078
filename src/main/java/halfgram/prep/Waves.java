package halfgram.prep;

import halfgram.event.Curve;
import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * When what a service uses must be ready.
 *
 * <p>Rules. What holds from the line check to its last use is ready by the line check. What holds
 * only from its first use to its last is ready when first used. What holds shorter than that is
 * made in waves: the fewest equal spans it holds for, each ready at its start and sized by the
 * pick-up curve; pieces are rounded up so that after every wave enough have been made.
 *
 * <p>Example: 90 min of even service, hold 40 min, 100 pieces: three waves of 34, 33 and 33.
 * Source: line check 45 min before service is common practice.
 */
final class Waves {
  private Waves() {}

  static List<Need> needs(ServiceRun run, ServiceRun.Use use, Duration lineCheck) {
    Instant last = use.window().end();
    Instant first = use.window().start().isAfter(run.from()) ? use.window().start() : run.from();
    boolean past = run.isBegun() && !last.isAfter(run.from());
    Amount taken = use.takenBefore(first);
    Amount amount = use.amount().minus(taken);
    if (past || !amount.isPositive()) {
      return List.of();
    }
    Instant check = run.isBegun() ? first : run.window().start().minus(lineCheck);
    if (holds(use, check, last)) {
      return List.of(need(run, use, amount, check, last));
    }
    if (holds(use, first, last)) {
      return List.of(need(run, use, amount, first, last));
    }
    return waves(run, use, taken, boundaries(first, last, sure(use)));
  }

  /** Whether what is ready at one moment keeps to another. */
  private static boolean holds(ServiceRun.Use use, Instant ready, Instant last) {
    return Duration.between(ready, last).compareTo(sure(use)) <= 0;
  }

  /** How long it keeps; days to their own end, of more than one from a step that may lie before. */
  private static Duration sure(ServiceRun.Use use) {
    Output.Hold hold = use.version().outputs().get(use.output()).hold();
    if (hold.days().isEmpty()) {
      return hold.max();
    }
    boolean mayBeginBefore = hold.from().isPresent() && hold.days().getAsInt() > 1;
    return mayBeginBefore ? hold.max() : hold.max().plus(SAME_DAY);
  }

  /** What is counted in days keeps at least this much of its first: a service is over by then. */
  private static final Duration SAME_DAY = Duration.ofHours(6);

  private static List<Instant> boundaries(Instant first, Instant last, Duration hold) {
    long span = Duration.between(first, last).toSeconds();
    long most = Math.max(60, hold.toSeconds());
    for (long count = (span + most - 1) / most; ; count++) {
      List<Instant> at = new ArrayList<>();
      for (long i = 0; i < count; i++) {
        at.add(first.plusSeconds(span * i / count).truncatedTo(ChronoUnit.MINUTES));
      }
      at.set(0, first);
      at.add(last);
      if (longest(at) <= most) {
        return at;
      }
    }
  }

  private static long longest(List<Instant> at) {
    long longest = 0;
    for (int i = 1; i < at.size(); i++) {
      longest = Math.max(longest, Duration.between(at.get(i - 1), at.get(i)).toSeconds());
    }
    return longest;
  }

  private static List<Need> waves(
      ServiceRun run, ServiceRun.Use use, Amount taken, List<Instant> at) {
    List<Need> needs = new ArrayList<>();
    Amount made = taken;
    for (int i = 0; i + 1 < at.size(); i++) {
      Ratio share = Curve.takenBefore(use.pickUps(), use.window(), at.get(i + 1));
      Amount until = use.amount().times(share);
      if (until.dimension() == Dimension.COUNT) {
        until = until.rounded(Rounding.UP_TO_WHOLE);
      }
      Amount wave = until.minus(made);
      if (wave.isPositive()) {
        needs.add(need(run, use, wave, at.get(i), at.get(i + 1)));
        made = made.plus(wave);
      }
    }
    return needs;
  }

  private static Need need(
      ServiceRun run, ServiceRun.Use use, Amount amount, Instant readyBy, Instant lastUse) {
    return new Need(
        run.id(), run.id(), run.event(), use.output(), amount, readyBy, lastUse, lastUse, lastUse);
  }
}
