package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.measure.Message;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Things;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What other entries than ticks ask of a task: a drop into a bath, a go at a gate. The first of
 * them starts it, when nobody has.
 */
final class Starting {
  private final Desk desk;
  private final TaskFinder finder;
  private final SaidTimes times;
  private final Kit kit;
  private final KitchenStore kitchens = new KitchenStore();
  private final TickStore ticks = new TickStore();
  private final GateLock gates = new GateLock();

  Starting(Desk desk, TaskFinder finder, SaidTimes times, Kit kit) {
    this.desk = desk;
    this.finder = finder;
    this.times = times;
    this.kit = kit;
  }

  /**
   * Starts a task that nobody is on, when something else that a cook entered says so. The entry has
   * an id, so that it can be taken back with what it came from.
   */
  void start(Tx tx, House house, FoundTask found, Ticking.Entry entry) {
    List<Tick> history = ticks.listOfTask(tx, house.id(), entry.task());
    TaskState state = TaskProgress.fold(history).state();
    if (state == TaskState.TO_DO || state == TaskState.PART_DONE) {
      add(tx, house, found, entry);
    }
  }

  /** Takes such a start back, when nothing has been ticked since. */
  void takeStartBack(Tx tx, House house, FoundTask found, Ticking.Entry undo) {
    List<Tick> history = ticks.listOfTask(tx, house.id(), undo.task());
    if (TaskProgress.fold(history).last().map(Tick::id).equals(undo.undoes())) {
      add(tx, house, found, undo);
    }
  }

  private void add(Tx tx, House house, FoundTask found, Ticking.Entry entry) {
    long change = kitchens.take(tx, house.id()).change() + 1;
    Tick tick = entry.tick(found.task(), desk.now());
    ticks.add(tx, house.id(), times.entered(found, entry, tick, change));
  }

  /**
   * Why a task cannot be started by a drop: its batch waits for a go, what it takes has waited past
   * its limit, or its kit carries something. The bath it goes into is judged by its own rules,
   * whichever was planned.
   */
  Optional<Message> held(Tx tx, House house, FoundTask found, Ticking.Entry start) {
    return gates
        .refuses(tx, house, found.task(), Tick.Kind.START)
        .or(() -> overdue(tx, house, found, start))
        .or(
            () ->
                kit.findMix(
                    tx,
                    house,
                    kitchens.change(tx, house.id()),
                    found,
                    desk.now(),
                    thing -> !Things.isBath(thing)));
  }

  /** Why a task cannot begin any more with what has waited for it. */
  Optional<Message> overdue(Tx tx, House house, FoundTask found, Ticking.Entry start) {
    Tick begun = start.tick(found.task(), desk.now());
    return new History(tx, house, Optional.empty()).overdue(found, begun);
  }

  /** What a task has come to. */
  TaskProgress progress(Tx tx, House house, String task) {
    return TaskProgress.fold(ticks.listOfTask(tx, house.id(), task));
  }

  /** Whether another task of its make has failed. */
  boolean isLost(Tx tx, House house, FoundTask found) {
    return new History(tx, house, Optional.empty()).isLost(found);
  }

  Optional<FoundTask> find(Tx tx, House house, LocalDate day, String task) {
    return finder.find(tx, house, day, task);
  }
}
