package halfgram.desk;

import halfgram.db.Tx;
import halfgram.prep.Begun;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;

/** Which baths of a day are in use, as its entries have it: the others are still to be opened. */
final class OpenedBaths {
  private OpenedBaths() {}

  /** The begun work of a plan; a run whose drops are entered knows the baths in use. */
  static List<Begun> of(Tx tx, House house, InForce inForce, Instant asOf) {
    List<Begun> begun = BegunWork.of(inForce, asOf);
    if (begun.stream().noneMatch(one -> one.make().version().dropping().isPresent())) {
      return begun;
    }
    List<BathEntry> entries =
        new BathStore()
            .list(tx, house.id(), inForce.plan().day()).stream()
                .map(BathStore.Entered::entry)
                .toList();
    Set<UUID> undone = new HashSet<>();
    entries.forEach(entry -> entry.undoes().ifPresent(undone::add));
    Set<String> labels = new HashSet<>();
    Set<String> runs = new HashSet<>();
    for (BathEntry entry : entries) {
      boolean opens = entry.kind() == BathEntry.Kind.DROP || entry.kind() == BathEntry.Kind.CHANGED;
      if (opens && !undone.contains(entry.id())) {
        labels.add(entry.bath().label());
        entry.fresh().ifPresent(labels::add);
        entry.run().filter(run -> entry.kind() == BathEntry.Kind.DROP).ifPresent(runs::add);
      }
    }
    return begun.stream()
        .map(one -> runs.contains(one.make().id()) ? one.dropping(labels) : one)
        .toList();
  }
}
