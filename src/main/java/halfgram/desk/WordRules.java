package halfgram.desk;

import halfgram.db.Tx;
import halfgram.measure.Message;
import halfgram.prep.Tick;
import halfgram.prep.timer.Timer;
import halfgram.prep.timer.Timers;
import java.time.Duration;
import java.util.Optional;

/**
 * What may be said about a task beside moving it.
 *
 * <p>Rules. A note says something. A timer runs for a minute at least and a day at most; what
 * stands by itself needs no minutes, the plan has them. One that rings may be put off until what
 * follows from it and no longer; that it was heard may be said at any time. Only somebody marked as
 * a chef signs for what is past its best.
 */
final class WordRules {
  private static final int LONGEST = 24 * 60;

  private final Plans plans;

  WordRules(Plans plans) {
    this.plans = plans;
  }

  /** Why a word about a task is not taken; empty for what is none, and for one that is. */
  Optional<Message> refuses(Tx tx, House house, FoundTask found, Tick tick) {
    return switch (tick.kind()) {
      case NOTE -> tick.note().isPresent() ? fine() : no("tick.refused.no-note");
      case TIMED -> timed(tick);
      case LATER -> later(tx, house, found, tick);
      case TASTED -> GateRules.chef(house, tick.cook());
      default -> fine();
    };
  }

  private static Optional<Message> fine() {
    return Optional.empty();
  }

  private static Optional<Message> no(String key, Object... args) {
    return Optional.of(Message.of(key, args));
  }

  private static Optional<Message> timed(Tick tick) {
    boolean stands = tick.line().filter(Timers.STANDS::equals).isPresent();
    boolean given = tick.minutes().filter(of -> of >= 1 && of <= LONGEST).isPresent();
    return given || (stands && tick.minutes().isEmpty())
        ? fine()
        : no("tick.refused.minutes", LONGEST);
  }

  private Optional<Message> later(Tx tx, House house, FoundTask found, Tick tick) {
    InForce inForce = plans.inForce(tx, house, found.plan());
    Optional<Timer> timer =
        Timers.list(inForce.sheet().tasks(), inForce.progress()).stream()
            .filter(one -> one.task().id().equals(tick.task()))
            .filter(one -> tick.line().filter(one.name()::equals).isPresent())
            .filter(one -> one.isRinging(tick.at()))
            .findFirst();
    if (timer.isEmpty()) {
      return no("tick.refused.not-ringing");
    }
    int minutes = tick.minutes().orElse(0);
    boolean late = tick.at().plus(Duration.ofMinutes(minutes)).isAfter(timer.get().latest());
    return minutes < 1 || late ? no("tick.refused.later", timer.get().latest()) : fine();
  }
}
