package halfgram.prep;

import halfgram.formula.Lag;
import halfgram.formula.Step;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Function;

/**
 * How a make begun goes: when its steps really were or will be, and what follows for what it gives.
 *
 * <p>Rules. A step done was when it was done. One that somebody is on goes on from then for as long
 * as planned, and is over now at the earliest; one that was left part done is taken up now, for
 * what is left of its time. A step not started is where the plan has it, or later, when what it
 * waits for is over later or its hour has passed. Example: sheared from 10:00 instead of 13:14 and
 * resting two hours, a base of 34 minutes is ready at 12:34.
 *
 * @param useBys the end of the hold of each output, by its own clock
 * @param anew what is made for a user, made anew for him alone, by user; what is weighed into the
 *     batch besides changes nothing about it
 */
public record Pace(Timeline timeline, List<Instant> useBys, Map<String, Anew> anew) {
  public Pace {
    useBys = List.copyOf(useBys);
    anew = Map.copyOf(anew);
  }

  /**
   * Something made anew.
   *
   * @param ready when it could be at the earliest
   * @param hands how long hands are on it
   */
  public record Anew(Instant ready, Duration hands) {
    static final Anew AT_ONCE = new Anew(Instant.MIN, Duration.ZERO);
  }

  /** As its plan has it. */
  static Pace asPlanned(Make make) {
    return new Pace(make.timeline(), make.useBys(), Map.of());
  }

  /** When its last step is over. */
  Instant end() {
    return timeline.steps().get(timeline.steps().size() - 1).end();
  }

  /** The moment from which an output, rested, may be used. */
  public Instant ready(Make make, int output) {
    return end().plus(make.version().outputs().get(output).rest().min());
  }

  /**
   * The moment from which an output may be used, as a make goes at a moment, begun or not.
   *
   * @param tasks of the make
   */
  public static Instant ready(
      Make make, int output, List<Task> tasks, Function<Task, TaskProgress> progress, Instant now) {
    Timeline goes = timeline(make, Set.of(), real(tasks, progress, now), now);
    return new Pace(goes, List.of(), Map.of()).ready(make, output);
  }

  /** The steps of a make begun as they go at a moment. */
  static Timeline timeline(Begun of, Instant now) {
    return timeline(of.make(), of.started(), of.real(), now);
  }

  private static Timeline timeline(
      Make make, Set<String> started, SortedMap<String, Timeline.Span> really, Instant now) {
    Timeline planned = make.timeline();
    List<Step> steps = make.version().steps();
    List<Timeline.Span> spans = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      Timeline.Span plan = planned.steps().get(i);
      Timeline.Span real = really.get(steps.get(i).code());
      if (real != null) {
        spans.add(real);
      } else if (started.contains(steps.get(i).code())) {
        spans.add(plan);
      } else {
        Instant start = later(plan.start(), now);
        for (Lag lag : steps.get(i).after()) {
          int before = make.version().stepIndex(lag.step());
          start = later(start, spans.get(before).end().plus(lag.min()));
        }
        spans.add(moved(plan, start));
      }
    }
    Instant end = spans.get(spans.size() - 1).end();
    Instant plannedEnd = planned.steps().get(steps.size() - 1).end();
    return new Timeline(spans, end.plus(Duration.between(plannedEnd, planned.ready())));
  }

  /**
   * When the steps of a make that somebody has begun were, or will be, by code.
   *
   * @param tasks of the make
   */
  public static SortedMap<String, Timeline.Span> real(
      List<Task> tasks, Function<Task, TaskProgress> progress, Instant now) {
    SortedMap<String, Timeline.Span> real = new TreeMap<>();
    for (Task task : tasks) {
      Optional<Timeline.Span> span =
          task.kind() == Task.Kind.STEP ? span(task, progress.apply(task), now) : Optional.empty();
      span.ifPresent(of -> real.put(task.step().code(), withTest(tasks, task, of)));
    }
    for (Task task : tasks) {
      boolean alone = task.kind() == Task.Kind.TEST_PIECE && !real.containsKey(task.step().code());
      Optional<Timeline.Span> span =
          alone ? span(task, progress.apply(task), now) : Optional.empty();
      span.ifPresent(
          test ->
              tasks.stream()
                  .filter(run -> isRunOf(run, task))
                  .forEach(run -> real.put(task.step().code(), both(test, run, now))));
    }
    return real;
  }

  private static boolean isRunOf(Task run, Task test) {
    return run.kind() == Task.Kind.STEP && run.step().code().equals(test.step().code());
  }

  /** A run through a bath counts from its test piece, which is as long as planned before it. */
  private static Timeline.Span withTest(List<Task> tasks, Task run, Timeline.Span span) {
    Duration test =
        tasks.stream()
            .filter(of -> of.kind() == Task.Kind.TEST_PIECE && isRunOf(run, of))
            .map(of -> Duration.between(of.start(), run.start()))
            .findFirst()
            .orElse(Duration.ZERO);
    return new Timeline.Span(span.start().minus(test), span.handsOff(), span.end());
  }

  /** When a task somebody has begun was, or will be; empty when nobody has. */
  private static Optional<Timeline.Span> span(Task task, TaskProgress of, Instant now) {
    Duration hands = Duration.between(task.start(), task.handsOff());
    Duration whole = Duration.between(task.start(), task.end());
    if (of.doneAt().isPresent()) {
      Instant end = of.doneAt().get();
      Instant start = of.begun().filter(end::isAfter).orElse(end.minus(whole));
      return Optional.of(new Timeline.Span(start, earlier(start.plus(hands), end), end));
    }
    if (of.onIt().isPresent()) {
      Instant since = of.onIt().get().worked();
      Instant end = later(since.plus(whole), now);
      Instant start = of.begun().orElse(since);
      return Optional.of(new Timeline.Span(start, earlier(since.plus(hands), end), end));
    }
    return of.begun()
        .map(
            start -> {
              Instant left = of.last().map(Tick::at).orElse(now);
              Duration worked = Duration.between(start, left);
              Duration rest = worked.compareTo(hands) < 0 ? hands.minus(worked) : Duration.ZERO;
              Instant off = now.plus(rest);
              return new Timeline.Span(start, off, off.plus(whole.minus(hands)));
            });
  }

  /** A test piece and its run as one: the run begins when the piece is right. */
  private static Timeline.Span both(Timeline.Span test, Task run, Instant now) {
    Timeline.Span after =
        moved(new Timeline.Span(run.start(), run.handsOff(), run.end()), later(test.end(), now));
    return new Timeline.Span(test.start(), after.handsOff(), after.end());
  }

  private static Timeline.Span moved(Timeline.Span span, Instant start) {
    Duration by = Duration.between(span.start(), start);
    return new Timeline.Span(start, span.handsOff().plus(by), span.end().plus(by));
  }

  private static Instant later(Instant one, Instant other) {
    return other.isAfter(one) ? other : one;
  }

  private static Instant earlier(Instant one, Instant other) {
    return other.isBefore(one) ? other : one;
  }
}
