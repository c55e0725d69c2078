package halfgram.desk;

import halfgram.prep.Carrying;
import halfgram.prep.PrepSheet;
import halfgram.prep.Things;
import halfgram.prep.Wash;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;

/**
 * What went through the baths, as it was entered at them.
 *
 * <p>Rules. Pieces leave their allergens in the bath they were dropped into, whichever was planned
 * for them. A bath that was emptied and replaced carries nothing of before. An undone entry counts
 * as never made.
 *
 * @param byTask by the task that the drops are part of
 * @param changes each as a wash of the bath that was emptied
 */
record BathUses(Map<String, List<Carrying.Use>> byTask, List<Wash> changes) {

  /**
   * As read from the database.
   *
   * @param plan what a plan computed, by its id
   */
  static BathUses of(
      List<BathStore.Entered> entered, Function<UUID, Optional<Plans.Computation>> plan) {
    Set<UUID> undone = new HashSet<>();
    entered.forEach(one -> one.entry().undoes().ifPresent(undone::add));
    Map<String, List<Carrying.Use>> byTask = new LinkedHashMap<>();
    List<Wash> changes = new ArrayList<>();
    for (BathStore.Entered one : entered) {
      BathEntry entry = one.entry();
      if (undone.contains(entry.id())) {
        continue;
      }
      if (entry.kind() == BathEntry.Kind.DROP) {
        findRun(entry, plan.apply(one.plan()))
            .map(run -> use(entry, run))
            .ifPresent(
                use -> byTask.computeIfAbsent(use.task(), task -> new ArrayList<>()).add(use));
      } else if (entry.kind() == BathEntry.Kind.CHANGED) {
        changes.add(change(entry));
      }
    }
    return new BathUses(byTask, changes);
  }

  private static Optional<PrepSheet.BathRun> findRun(
      BathEntry entry, Optional<Plans.Computation> plan) {
    return plan.stream()
        .flatMap(of -> of.sheet().runs().stream())
        .filter(run -> entry.run().filter(run.make().id()::equals).isPresent())
        .findFirst();
  }

  private static Carrying.Use use(BathEntry entry, PrepSheet.BathRun run) {
    return new Carrying.Use(
        Things.bath(entry.bath()),
        BathBoard.task(run),
        run.make().version().name(),
        run.allergens(),
        entry.at(),
        entry.at());
  }

  private static Wash change(BathEntry entry) {
    return new Wash(
        entry.id(),
        Things.bath(entry.bath()),
        entry.fresh().orElse(""),
        Optional.empty(),
        entry.cook(),
        entry.at(),
        Optional.empty());
  }
}
