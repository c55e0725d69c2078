package halfgram.desk;

import halfgram.db.Tx;
import halfgram.pass.AtPass;
import halfgram.pass.Called;
import halfgram.pass.EntryStore;
import halfgram.pass.Trays;
import halfgram.prep.Begun;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.Make;
import halfgram.prep.ServiceRun;
import halfgram.prep.TaskState;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a plan that follows another keeps as it stands.
 *
 * <p>Rules. Work that has begun stands. So does, though nobody has begun it, what was to be made
 * for a course whose time is over, as long as nobody has called it, plates of it are to go and the
 * service is not over: it is late, not gone. Otherwise what is past its time is needed no more.
 */
final class Standing {
  private Standing() {}

  /** A course's time in a service, by the service's id. */
  private record Due(String run, Instant at) {}

  static List<Begun> of(Tx tx, House house, InForce inForce, Instant asOf) {
    List<Begun> standing = new ArrayList<>(OpenedBaths.of(tx, house, inForce, asOf));
    Set<Due> late = late(tx, house, inForce, asOf);
    if (late.isEmpty()) {
      return standing;
    }
    Set<String> begun = begun(inForce);
    for (Make make : inForce.sheet().makes()) {
      boolean wanted =
          make.served().stream()
              .anyMatch(need -> late.contains(new Due(need.user(), need.lastUse())));
      if (wanted && !begun.contains(make.id())) {
        standing.add(BegunJson.of(inForce.sheet(), make.id(), untouched()));
      }
    }
    return standing;
  }

  private static Set<Due> late(Tx tx, House house, InForce inForce, Instant asOf) {
    KitchenBook book = house.book();
    Set<Due> late = new HashSet<>();
    for (ServiceRun run : Services.runs(book, inForce.plan().day())) {
      if (run.window().start().isAfter(asOf) || run.isOver(asOf)) {
        continue;
      }
      Called called = Called.of(new EntryStore().list(tx, house.id(), run.date()));
      Trays none = new Trays(book.formulary(), List.of(), asOf);
      AtPass at = AtPass.of(book, run, called, none, Map.of());
      for (Fire fire : at.due(asOf).keySet()) {
        late.add(new Due(run.id(), fire.at()));
      }
    }
    return late;
  }

  /** Ids of makes that somebody has begun, or that are done or lost. */
  private static Set<String> begun(InForce inForce) {
    Map<String, Boolean> begun = new HashMap<>();
    inForce
        .sheet()
        .tasks()
        .forEach(
            task ->
                begun.merge(
                    task.make().id(),
                    inForce.progress(task).state() != TaskState.TO_DO,
                    Boolean::logicalOr));
    Set<String> ids = new HashSet<>();
    inForce.sheet().makes().forEach(make -> ids.add(make.id()));
    ids.removeIf(id -> !begun.getOrDefault(id, true));
    return ids;
  }

  private static BegunJson.Steps untouched() {
    return new BegunJson.Steps(
        new TreeSet<>(), new TreeSet<>(), false, true, Collections.emptySortedMap());
  }
}
