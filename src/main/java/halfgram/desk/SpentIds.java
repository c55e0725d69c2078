package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TickStore;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Keeps new makes from having the id of one that somebody has begun before.
 *
 * <p>A make is named by its component, its service and a number, and ticks by that name say what
 * has become of it. One that is over and eaten is handed to no plan any more; were its name given
 * again, what is to be made anew would count as done. So a sheet in which that happened is computed
 * again without those names, which the plan keeps.
 */
final class SpentIds {
  private final Tx tx;
  private final UUID kitchen;
  private final Optional<InForce> before;

  /**
   * @param before the plan in force until then, whose ticks are known
   */
  SpentIds(Tx tx, UUID kitchen, Optional<InForce> before) {
    this.tx = tx;
    this.kitchen = kitchen;
    this.before = before;
  }

  /**
   * The sheet of a basis, or of one that spares names that are spent.
   *
   * @param with the book with the basis's lots
   */
  PrepSheet sheet(Basis basis, KitchenBook with) {
    Basis sparing = basis;
    while (true) {
      PrepSheet sheet = sparing.sheet(with);
      Set<String> spent = find(sheet);
      if (spent.isEmpty()) {
        return sheet;
      }
      sparing = sparing.sparing(spent);
    }
  }

  /** Ids of makes of a sheet that are new to it, though somebody has begun them. */
  private Set<String> find(PrepSheet sheet) {
    Set<String> standing =
        sheet.begun().stream().map(Begun::make).map(make -> make.id()).collect(Collectors.toSet());
    Set<String> spent = new TreeSet<>();
    List<String> unknown = new ArrayList<>();
    for (Task task : sheet.tasks()) {
      if (task.kind() != Task.Kind.THAW && !standing.contains(task.make().id())) {
        Optional<TaskProgress> known = before.flatMap(plan -> known(plan, task.id()));
        if (known.isEmpty()) {
          unknown.add(task.id());
        } else if (BegunWork.isBegun(task, known.get())) {
          spent.add(task.make().id());
        }
      }
    }
    Map<String, TaskProgress> read = read(unknown);
    sheet.tasks().stream()
        .filter(task -> BegunWork.isBegun(task, read.getOrDefault(task.id(), TaskProgress.NONE)))
        .forEach(task -> spent.add(task.make().id()));
    return spent;
  }

  private static Optional<TaskProgress> known(InForce plan, String task) {
    return Optional.ofNullable(plan.progress().get(task))
        .or(() -> plan.findTask(task).map(plan::progress));
  }

  private Map<String, TaskProgress> read(List<String> tasks) {
    return tasks.isEmpty()
        ? Map.of()
        : new TickStore()
            .listOfTasks(tx, kitchen, tasks).entrySet().stream()
                .collect(
                    Collectors.toMap(Map.Entry::getKey, of -> TaskProgress.fold(of.getValue())));
  }
}
