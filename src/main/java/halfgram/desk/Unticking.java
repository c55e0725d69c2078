package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.measure.Message;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Takes a tick back: whether that can be, and what moves. */
final class Unticking {
  private final TickStore ticks = new TickStore();
  private final LotStore lots = new LotStore();
  private final Pulling pulling;

  Unticking(Pulling pulling) {
    this.pulling = pulling;
  }

  /** Why a tick cannot be taken back: the batch failed twice, or something later rests on a tub. */
  Optional<Message> refuses(Tx tx, House house, FoundTask found, Tick undo) {
    List<String> tasks = new ArrayList<>(found.otherIds());
    tasks.add(undo.task());
    List<Tick> ofMake = ticks.listAsEntered(tx, house.id(), tasks);
    if (FailedBatches.isFailedTwice(ofMake, undo.undoes().orElseThrow())) {
      return Optional.of(Message.of("tick.refused.failed-twice"));
    }
    for (Movement movement : lots.listOfTick(tx, house.id(), undo.undoes().orElseThrow())) {
      if (movement.kind() == Movement.Kind.THAWED) {
        Optional<Message> out =
            pulling
                .rests(tx, house, movement, undo.at())
                .or(
                    () ->
                        isSaidElse(ofMake, undo)
                            ? Optional.of(Message.of("tick.refused.rests"))
                            : Optional.empty());
        if (out.isPresent()) {
          return out;
        }
        continue;
      }
      List<Movement> all = lots.listOf(tx, house.id(), movement.lot());
      boolean rests =
          switch (movement.kind()) {
            case MADE ->
                TakingBack.last(all).filter(of -> of.change() == movement.change()).isEmpty();
            case USED, BINNED -> TakingBack.isCombinedSince(all, movement.change());
            default -> false;
          };
      if (rests) {
        String code = lots.findById(tx, house.id(), movement.lot()).lot().code();
        boolean made = movement.kind() == Movement.Kind.MADE;
        return Optional.of(
            made
                ? Message.of("tick.refused.tub-used", code)
                : Message.of("tick.refused.tub-combined", code));
      }
    }
    return Optional.empty();
  }

  /** Whether a task was begun, or done, by more than the tick that is taken back. */
  private static boolean isSaidElse(List<Tick> ofMake, Tick undo) {
    List<Tick> own = new ArrayList<>(ofMake);
    own.removeIf(tick -> !tick.task().equals(undo.task()));
    own.add(undo);
    return TaskProgress.fold(own).beneath() != TaskState.TO_DO;
  }

  /** Takes back what a tick moved. */
  void move(Tx tx, House house, Tick undo, long change) {
    Map<UUID, List<Movement>> byTub = new LinkedHashMap<>();
    for (Movement one : lots.listOfTick(tx, house.id(), undo.undoes().orElseThrow())) {
      byTub.computeIfAbsent(one.lot(), lot -> new ArrayList<>()).add(one);
    }
    byTub
        .values()
        .forEach(
            rows ->
                TakingBack.undone(rows, undo.cook(), undo.at(), Optional.of(undo.id()))
                    .forEach(row -> lots.move(tx, house.id(), row, change)));
  }
}
