package halfgram.desk;

import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import halfgram.station.Person;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What speaks against a tick, so that whoever enters it is asked before it is taken.
 *
 * <p>Rules. Who is on a task is taken off it by nobody else without being told so: neither by a
 * start nor by saying that it is done, or partly. How much there is so far only grows; less than
 * was said before may be true, since some was spilt, but more often it is what came on top.
 */
public final class TickDoubts {
  private static final Set<Tick.Kind> TAKES_OFF =
      EnumSet.of(Tick.Kind.START, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  private static final Set<Tick.Kind> COUNTS = EnumSet.of(Tick.Kind.PART_DONE, Tick.Kind.DONE);

  private TickDoubts() {}

  /**
   * Everything that speaks against a tick.
   *
   * @param progress what the task has come to before it
   */
  public static List<Message> of(House house, TaskProgress progress, Ticking.Entry tick) {
    List<Message> doubts = new ArrayList<>();
    progress
        .onIt()
        .filter(on -> TAKES_OFF.contains(tick.kind()) && !on.cook().equals(tick.cook()))
        .map(on -> Message.of("tick.asks.on-it", name(house, on.cook()), time(house, on.since())))
        .ifPresent(doubts::add);
    less(progress, tick.kind(), tick.amount()).ifPresent(doubts::add);
    return doubts;
  }

  /** That there was more before. */
  static Optional<Message> less(TaskProgress progress, Tick.Kind kind, Optional<Amount> amount) {
    boolean counts = COUNTS.contains(kind);
    return progress
        .amount()
        .filter(before -> counts && progress.dones().isEmpty())
        .filter(
            before ->
                amount
                    .filter(now -> now.dimension() == before.dimension())
                    .filter(now -> now.compareTo(before) < 0)
                    .isPresent())
        .map(before -> Message.of("tick.asks.less", before));
  }

  /** By the kitchen's clock. */
  private static LocalTime time(House house, Instant at) {
    return at.atZone(house.book().kitchen().clock().zone()).toLocalTime();
  }

  private static String name(House house, String code) {
    return house.book().people().stream()
        .filter(person -> person.code().equals(code))
        .findFirst()
        .map(Person::name)
        .orElse(code);
  }
}
