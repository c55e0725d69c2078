package halfgram.desk;

import halfgram.db.Tx;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.prep.timer.Holds;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What was ticked on tasks so far, from what is known of the day as it stands, and from the
 * database for the rest.
 */
final class History {
  private static final Set<Tick.Kind> GOES_ON =
      EnumSet.of(Tick.Kind.START, Tick.Kind.PART_DONE, Tick.Kind.DONE, Tick.Kind.TIMED);

  private final Tx tx;
  private final House house;
  private final Optional<KnownDay> known;
  private final TickStore ticks = new TickStore();

  /**
   * @param known the day as it stands in this transaction; empty when nobody knows
   */
  History(Tx tx, House house, Optional<KnownDay> known) {
    this.tx = tx;
    this.house = house;
    this.known = known;
  }

  /** Ticks of one task, in the order they were entered. */
  List<Tick> of(String task) {
    return known
        .flatMap(day -> day.findTicks(task))
        .orElseGet(() -> ticks.listOfTask(tx, house.id(), task));
  }

  /** What one task has come to. */
  TaskProgress progress(String task) {
    return known
        .flatMap(day -> day.findProgress(task))
        .orElseGet(() -> TaskProgress.fold(of(task)));
  }

  /** Ticks of several tasks, each in order; those without any are left out. */
  Map<String, List<Tick>> of(Collection<String> tasks) {
    Map<String, List<Tick>> all = new LinkedHashMap<>();
    List<String> unknown = new ArrayList<>();
    for (String task : tasks) {
      known
          .flatMap(day -> day.findTicks(task))
          .ifPresentOrElse(
              said -> {
                if (!said.isEmpty()) {
                  all.put(task, said);
                }
              },
              () -> unknown.add(task));
    }
    if (!unknown.isEmpty()) {
      all.putAll(ticks.listOfTasks(tx, house.id(), unknown));
    }
    return all;
  }

  /** That nobody can go on with it any more, since its make is lost. */
  Optional<Message> lost(FoundTask found, Tick.Kind kind) {
    return GOES_ON.contains(kind) && isLost(found)
        ? Optional.of(Message.of("tick.refused.make-failed"))
        : Optional.empty();
  }

  /** Whether another task of its make has failed. */
  boolean isLost(FoundTask found) {
    return of(found.otherIds()).values().stream()
        .filter(all -> all.stream().anyMatch(tick -> tick.kind() == Tick.Kind.FAILED))
        .anyMatch(all -> TaskProgress.fold(all).state() == TaskState.FAILED);
  }

  /** Why a task cannot begin any more with what has waited for it. */
  Optional<Message> overdue(FoundTask found, Tick tick) {
    Task task = found.task();
    TaskProgress of = progress(task.id());
    return Holds.asks(task, of, tick)
        ? Holds.refused(task, of, tick, found.before(), of(Holds.waited(task)))
        : Optional.empty();
  }

  /** Why it cannot be taken back that something was done which has waited past a safety limit. */
  Optional<Message> hidden(FoundTask found, Tick undo) {
    if (undo.kind() != Tick.Kind.UNDO) {
      return Optional.empty();
    }
    List<Tick> after = new ArrayList<>(of(undo.task()));
    after.add(undo);
    return found.after().stream()
        .filter(task -> progress(task.id()).beneath() == TaskState.TO_DO)
        .flatMap(task -> task.links().stream())
        .filter(link -> link.task().equals(undo.task()))
        .flatMap(
            link ->
                Holds.hidden(
                    link, found.task(), progress(undo.task()), TaskProgress.fold(after), undo.at())
                    .stream())
        .findFirst();
  }
}
