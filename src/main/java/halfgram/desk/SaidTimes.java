package halfgram.desk;

import halfgram.db.Tx;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.prep.Awaited;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.prep.Waiting;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Whether the time that somebody says can be the one at which it was done.
 *
 * <p>Rules. It is not still to come, and not before the day of the plan began. What ends something
 * is not before the last that is known of the task. That it began before what it waits for was done
 * and had rested speaks against it, and whoever enters it is told; but paper may know better, so it
 * is taken when they say that it was so. So does long work that took less than a quarter of its
 * time, and less than there was said to be before. Undoing is of now.
 */
final class SaidTimes {
  private static final Set<Tick.Kind> ENDS =
      EnumSet.of(Tick.Kind.PART_DONE, Tick.Kind.DONE, Tick.Kind.FAILED);

  /** Of shorter work a share says little. */
  private static final Duration LONG = Duration.ofHours(2);

  /** So many times shorter than planned is asked about. */
  private static final int FAR = 4;

  private final Desk desk;
  private final Plans plans;

  SaidTimes(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** A tick as it is kept, with when and by whom it was entered, if that was later. */
  TickStore.Entered entered(FoundTask found, Ticking.Entry entry, Tick tick, long change) {
    Optional<TickStore.Later> later =
        entry.said().map(said -> new TickStore.Later(desk.now(), said.by()));
    return new TickStore.Entered(tick, found.plan().id(), entry.origin(), change, later);
  }

  /** What a tick that says its time comes to when it is not simply taken. */
  Optional<Ticking.Outcome> judge(Tx tx, House house, FoundTask found, Tick tick, Said said) {
    InForce inForce = plans.inForce(tx, house, found.plan());
    TaskProgress progress = inForce.progress(found.task());
    Optional<Message> because = refuses(house, found, tick.kind(), tick.at(), progress);
    if (because.isPresent()) {
      return Optional.of(new Ticking.Refused(because.get()));
    }
    List<Message> asks = new ArrayList<>();
    if (!said.sure()) {
      asks.addAll(asks(house, inForce, found.task(), tick));
      tooShort(found.task(), tick, progress).ifPresent(asks::add);
      TickDoubts.less(progress, tick.kind(), tick.amount()).ifPresent(asks::add);
    }
    return asks.isEmpty() ? Optional.empty() : Optional.of(new Ticking.Asks(asks));
  }

  private Optional<Message> refuses(
      House house, FoundTask found, Tick.Kind kind, Instant at, TaskProgress progress) {
    if (kind == Tick.Kind.UNDO) {
      return Optional.of(Message.of("tick.refused.time-undo"));
    }
    Optional<Message> outside = outside(desk, house, found, at);
    return outside.isPresent() ? outside : beforeLast(kind, at, progress);
  }

  /** Why no time of that day that has been; empty when it is one. */
  static Optional<Message> outside(Desk desk, House house, FoundTask found, Instant at) {
    BusinessDay clock = house.book().kitchen().clock();
    Instant begin = clock.start(found.plan().day());
    Instant now = desk.now();
    if (at.isAfter(now)) {
      return Optional.of(Message.of("tick.refused.time-ahead", now));
    }
    return at.isBefore(begin)
        ? Optional.of(Message.of("tick.refused.time-before-day", begin))
        : Optional.empty();
  }

  private static Optional<Message> beforeLast(Tick.Kind kind, Instant at, TaskProgress progress) {
    return progress
        .last()
        .map(Tick::at)
        .filter(last -> ENDS.contains(kind) && at.isBefore(last))
        .map(last -> Message.of("tick.refused.time-before-start", last));
  }

  /** What speaks against a time; empty when nothing does. */
  private static List<Message> asks(House house, InForce inForce, Task task, Tick tick) {
    if (!Ticking.USES.contains(tick.kind())) {
      return List.of();
    }
    // By the deliveries of now: what came is not in the plan.
    List<Awaited> awaited = Awaited.of(house.book(), inForce.sheet());
    return Waiting.of(task, inForce.byId(), inForce.progress(), awaited, tick.at()).stream()
        .map(
            wait ->
                wait.<Message>fold(
                    of -> Message.of("tick.asks.not-done", name(of.task())),
                    until -> Message.of("tick.asks.not-before", name(until.task()), until.moment()),
                    delivery ->
                        Message.of("tick.asks.delivery", delivery.awaited().delivery().supplier())))
        .toList();
  }

  /** That long work was done in no time: an hour was misread more often than a roast was quick. */
  private static Optional<Message> tooShort(Task task, Tick tick, TaskProgress progress) {
    Duration planned = task.handsOn().plus(task.unattended());
    return progress
        .begun()
        .filter(begun -> tick.kind() == Tick.Kind.DONE && planned.compareTo(LONG) >= 0)
        .map(begun -> Duration.between(begun, tick.at()))
        .filter(took -> took.multipliedBy(FAR).compareTo(planned) < 0)
        .map(took -> Message.of("tick.asks.short", took, planned));
  }

  /** What a task is called where something is asked about it. */
  static Message name(Task of) {
    return switch (of.kind()) {
      case STEP -> Message.of("tick.asks.task", of.version().name(), of.step().code());
      case TEST_PIECE -> named(of, "sheet.test-piece-name");
      case FRESH_BATH -> named(of, "sheet.fresh-bath-name");
      case THAW -> named(of, "sheet.thaw-name");
    };
  }

  private static Message named(Task of, String what) {
    return Message.of("tick.asks.task", of.version().name(), Message.of(what));
  }
}
