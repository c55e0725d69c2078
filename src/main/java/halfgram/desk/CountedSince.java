package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.LedgerStore;
import halfgram.lot.Tub;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;

/**
 * Tubs that were counted after something took of them that is only entered now.
 *
 * <p>Rule. What went in before a count is in the count: it is taken of what the tub held before,
 * and not again of what was counted.
 */
final class CountedSince {
  private final Map<UUID, Tub> before = new LinkedHashMap<>();

  private CountedSince(List<LedgerStore.Entry> counts) {
    for (LedgerStore.Entry count : counts) {
      Tub known = before.getOrDefault(count.tub().id(), count.tub());
      var lot = known.lot().less(count.movement().amount(), Optional.empty());
      before.put(known.id(), new Tub(known.id(), lot, known.task(), known.change(), true));
    }
  }

  /**
   * Counts since something was done.
   *
   * @param said when; empty for what is entered as it is done
   */
  static CountedSince of(Tx tx, House house, Optional<Said> said) {
    return new CountedSince(
        said.map(of -> new LedgerStore().listCounted(tx, house.id(), of.at())).orElse(List.of()));
  }

  /**
   * Tubs as they were before they were counted, first expired first.
   *
   * @param now as they are
   * @param which tubs could be among them, had they not been counted as empty
   */
  List<Tub> before(List<Tub> now, Predicate<Tub> which) {
    if (before.isEmpty()) {
      return now;
    }
    List<Tub> tubs = new ArrayList<>();
    now.stream().filter(tub -> !isCounted(tub)).forEach(tubs::add);
    before.values().stream()
        .filter(tub -> tub.lot().left().isPositive() && which.test(tub))
        .forEach(tubs::add);
    tubs.sort(Comparator.comparing(tub -> tub.lot().useBy()));
    return tubs;
  }

  boolean isCounted(Tub tub) {
    return before.containsKey(tub.id());
  }
}
