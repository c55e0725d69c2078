package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.prep.GateEntry;
import halfgram.prep.GateStore;
import halfgram.prep.Make;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What was added to taste, out of the tubs it came from.
 *
 * <p>Rules. What is a formula of its own comes out of its tubs, first expired first, out of what no
 * other event keeps before anything else; a tub that was counted after it went in has it in the
 * count. An ingredient stands in no tub: only its place in the log and the offered version tell of
 * it. More than the tubs have went in all the same, and takes what they have. Taken back is what
 * the entry took, once.
 */
final class TasteTubs {
  private final LotStore lots = new LotStore();
  private final Posting posting = new Posting();

  /** How much of which tub an entry takes; nothing where it adds ingredients alone. */
  Map<Tub, Amount> of(Tx tx, House house, Gating.Entry entry, Make make) {
    Map<Tub, Amount> taken = new LinkedHashMap<>();
    if (entry.kind() != GateEntry.Kind.ADJUST) {
      return taken;
    }
    CountedSince counted = CountedSince.of(tx, house, entry.when());
    Map<String, Amount> sums = new LinkedHashMap<>();
    entry.added().forEach(one -> sums.merge(one.item(), one.amount(), Amount::plus));
    sums.forEach(
        (item, amount) -> {
          if (!house.book().ingredients().containsKey(item)) {
            of(tx, house, item, amount, make)
                .forEach(
                    (tub, much) -> {
                      if (!counted.isCounted(tub)) {
                        taken.put(tub, much);
                      }
                    });
          }
        });
    return taken;
  }

  private Map<Tub, Amount> of(Tx tx, House house, String formula, Amount amount, Make make) {
    FormulaVersion version = house.book().formulary().get(ComponentRef.of(formula));
    Output output = version.outputs().get(0);
    List<Tub> tubs =
        lots.listOfOutput(tx, house.id(), formula, output.code(), true).stream()
            .filter(tub -> tub.lot().left().dimension() == output.unit())
            .filter(tub -> !tub.lot().isFrozen())
            .toList();
    return Taking.of(tubs, output.inUnit(amount), Map.of(), make.event());
  }

  /** Takes it out. */
  void take(Tx tx, House house, Map<Tub, Amount> taken, GateEntry kept, Make make, long change) {
    taken.forEach(
        (tub, much) -> {
          Amount used = much.rounded(Rounding.TO_MICROGRAM);
          if (used.isPositive()) {
            Movement movement =
                Movement.of(tub.id(), Movement.Kind.USED, used.times(-1), kept.cook(), kept.at())
                    .because(kept.note());
            posting.post(tx, house, tub, movement, make.event(), change);
          }
        });
  }

  /** What an entry took, that an undo gives back. */
  List<Movement> taken(Tx tx, House house, GateStore.Entered entered) {
    return lots.listOfChange(tx, house.id(), entered.change());
  }

  /** Why that cannot be given back: it has been put together with others since. */
  Optional<Tub> findCombined(Tx tx, House house, List<Movement> taken) {
    return taken.stream()
        .filter(
            row -> TakingBack.isCombinedSince(lots.listOf(tx, house.id(), row.lot()), row.change()))
        .map(row -> lots.findById(tx, house.id(), row.lot()))
        .findFirst();
  }

  /** Gives it back. */
  void giveBack(Tx tx, House house, List<Movement> taken, GateEntry undo, long change) {
    Map<UUID, List<Movement>> byTub = new LinkedHashMap<>();
    taken.forEach(row -> byTub.computeIfAbsent(row.lot(), lot -> new ArrayList<>()).add(row));
    byTub
        .values()
        .forEach(
            rows ->
                TakingBack.undone(rows, undo.cook(), undo.at(), Optional.empty())
                    .forEach(row -> lots.move(tx, house.id(), row, change)));
  }
}
