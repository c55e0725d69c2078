package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Lag;
import halfgram.formula.Step;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The latest times of one make's steps, by lags alone.
 *
 * <p>Rules. The last step ends early enough for the output to rest. A step ends its shortest lag
 * before each step that follows it; a step starts at most its longest lag after what it follows.
 * Hands-on work lies within opening hours; what stands unattended does not care. All of these only
 * ever pull a step earlier, so repeating them until nothing moves gives the latest times there are.
 * Where nothing settles, because opening hours never allow a longest lag, the lag gives way and
 * {@link Misfits} tells.
 *
 * @param steps in the order of the formula
 * @param ready when all outputs asked for may be used
 */
public record Timeline(List<Span> steps, Instant ready) {

  /** A step: hands on from start to handsOff, then unattended to end. */
  public record Span(Instant start, Instant handsOff, Instant end) {}

  /** How long a step takes. */
  public record Length(Duration handsOn, Duration unattended) {
    Duration whole() {
      return handsOn.plus(unattended);
    }
  }

  /**
   * The latest times with which the last step ends by a deadline.
   *
   * @param lengths of the steps
   * @param deadline when the output, rested, is still in time
   * @param rest the longest of the outputs asked for
   */
  public static Timeline latest(
      FormulaVersion version,
      List<Length> lengths,
      Instant deadline,
      Duration rest,
      OpenHours hours) {
    List<Step> steps = version.steps();
    Instant[] start = new Instant[steps.size()];
    Instant[] cap = new Instant[steps.size()];
    Arrays.fill(cap, Instant.MAX);
    place(steps, lengths, deadline, hours, start, cap);
    for (int pass = 0; cap(steps, lengths, start, cap); pass++) {
      if (pass > PASSES * steps.size()) {
        Arrays.fill(cap, Instant.MAX);
        place(steps, lengths, deadline, hours, start, cap);
        break;
      }
      place(steps, lengths, deadline, hours, start, cap);
    }
    List<Span> spans = new ArrayList<>(steps.size());
    for (int k = 0; k < steps.size(); k++) {
      Instant handsOff = start[k].plus(lengths.get(k).handsOn());
      spans.add(new Span(start[k], handsOff, handsOff.plus(lengths.get(k).unattended())));
    }
    return new Timeline(spans, spans.get(spans.size() - 1).end().plus(rest));
  }

  /** More rounds than a chain of longest lags takes to settle over closed hours. */
  private static final int PASSES = 4;

  /** The latest starts under these caps. */
  private static void place(
      List<Step> steps,
      List<Length> lengths,
      Instant deadline,
      OpenHours hours,
      Instant[] start,
      Instant[] cap) {
    for (int k = steps.size() - 1; k >= 0; k--) {
      Instant end = k == steps.size() - 1 ? deadline : latestEnd(steps, k, start);
      Length length = lengths.get(k);
      Instant latest = end.minus(length.whole());
      latest = cap[k].isBefore(latest) ? cap[k] : latest;
      if (!length.handsOn().isZero()) {
        latest = hours.latestStart(latest, length.handsOn());
      }
      start[k] = latest;
    }
  }

  /** The latest end of a step that something follows. */
  private static Instant latestEnd(List<Step> steps, int k, Instant[] start) {
    Instant end = start[steps.size() - 1];
    for (int j = k + 1; j < steps.size(); j++) {
      for (Lag lag : steps.get(j).after()) {
        if (lag.step().equals(steps.get(k).code())) {
          Instant before = start[j].minus(lag.min());
          end = before.isBefore(end) ? before : end;
        }
      }
    }
    return end;
  }

  /** Caps what follows a step by its longest lag; true when a cap now lies before a start. */
  private static boolean cap(
      List<Step> steps, List<Length> lengths, Instant[] start, Instant[] cap) {
    boolean tighter = false;
    for (int j = 1; j < steps.size(); j++) {
      for (Lag lag : steps.get(j).after()) {
        if (lag.max().isEmpty()) {
          continue;
        }
        for (int k = 0; k < j; k++) {
          if (lag.step().equals(steps.get(k).code())) {
            Instant latest = start[k].plus(lengths.get(k).whole()).plus(lag.max().get());
            if (latest.isBefore(start[j]) && latest.isBefore(cap[j])) {
              cap[j] = latest;
              tighter = true;
            }
          }
        }
      }
    }
    return tighter;
  }

  public Instant start() {
    return steps.stream().map(Span::start).min(Instant::compareTo).orElse(ready);
  }
}
