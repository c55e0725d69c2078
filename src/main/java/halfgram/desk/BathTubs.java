package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.LedgerStore;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.LiveBaths;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What fills a bath, out of its tub.
 *
 * <p>Rules. A bath has used its tub as soon as its first pieces go in, or a cook says which tub it
 * was filled from: from then on no plan gives that tub to anything else. Without a cook's word it
 * is the tub that the plan meant. When nothing that was entered needs it any more, the tub has it
 * back.
 */
final class BathTubs {
  private final LotStore lots = new LotStore();
  private final LedgerStore ledger = new LedgerStore();
  private final Posting posting = new Posting();

  /** What a bath has used, as far as it stands. */
  List<Movement> listUsed(Tx tx, House house, BathBoard.Basin basin, String label) {
    List<Long> changes =
        basin.entered().stream()
            .filter(one -> fills(one.entry(), label))
            .map(one -> one.change())
            .toList();
    return ledger.listUsed(tx, house.id(), changes);
  }

  /** The tub that a bath has used. */
  Optional<String> findCode(Tx tx, House house, BathBoard.Basin basin, String label) {
    return listUsed(tx, house, basin, label).stream()
        .findFirst()
        .flatMap(used -> lots.find(tx, house.id(), used.lot()))
        .map(tub -> tub.lot().code());
  }

  /** Why a bath was not filled from a tub: it is in another one, and too little of it is left. */
  private Optional<Message> taken(
      Tx tx, House house, InForce inForce, BathBoard.Basin basin, Optional<String> code) {
    Amount whole = basin.output(inForce.book()).fill().orElseThrow();
    return code.flatMap(of -> lots.find(tx, house.id(), of))
        .filter(tub -> tub.lot().left().compareTo(whole) < 0)
        .flatMap(
            tub ->
                basin.live().baths().stream()
                    .map(LiveBaths.Bath::label)
                    .filter(label -> isFrom(tx, house, basin, label, tub.lot().code()))
                    .findFirst()
                    .map(label -> Message.of("bath.refused.tub", tub.lot().code(), label)));
  }

  /** Whether a bath has used a tub, or somebody said so. */
  boolean isFrom(Tx tx, House house, BathBoard.Basin basin, String label, String code) {
    return basin
        .live()
        .findBath(label)
        .flatMap(LiveBaths.Bath::opened)
        .flatMap(BathEntry::tub)
        .or(() -> findCode(tx, house, basin, label))
        .filter(code::equals)
        .isPresent();
  }

  /** Whether an entry puts something into a bath, or says what it was filled from. */
  private static boolean fills(BathEntry entry, String label) {
    return switch (entry.kind()) {
      case DROP -> entry.bath().label().equals(label);
      case CHANGED -> entry.fresh().equals(Optional.of(label));
      case LIFT, BROKE, LEVEL, UNDO -> false;
    };
  }

  /** The bath that an entry fills. */
  private static String label(BathEntry entry) {
    return entry.fresh().orElse(entry.bath().label());
  }

  /** Moves what an entry that was just kept says was used, or needs no longer. */
  void follow(
      Tx tx, House house, InForce inForce, BathBoard.Basin before, BathEntry kept, long change) {
    boolean says = kept.kind() == BathEntry.Kind.CHANGED && kept.tub().isPresent();
    if (kept.kind() == BathEntry.Kind.DROP || says) {
      String label = label(kept);
      if (listUsed(tx, house, before, label).isEmpty()) {
        fill(tx, house, inForce, before, label, kept)
            .forEach((tub, amount) -> use(tx, house, tub, amount, kept, change));
      }
    }
    for (Movement used : freed(tx, house, before, kept)) {
      TakingBack.undone(rows(tx, house, used), kept.cook(), kept.at(), Optional.empty())
          .forEach(row -> lots.move(tx, house.id(), row, change));
    }
  }

  /** Why an entry is not taken, for what is or was in a tub. */
  Optional<Message> refuses(
      Tx tx, House house, InForce inForce, Bathing.Entry entry, BathRules.Found found) {
    BathBoard.Basin basin = found.basin().orElseThrow();
    return entry.kind() == BathEntry.Kind.CHANGED
        ? taken(tx, house, inForce, basin, entry.tub())
        : found.undone().flatMap(of -> refuses(tx, house, basin, of.entry()));
  }

  /** Why something is not taken back: what its bath was filled from has been put with others. */
  private Optional<Message> refuses(Tx tx, House house, BathBoard.Basin before, BathEntry undone) {
    return needless(tx, house, before, undone).stream()
        .filter(
            used ->
                TakingBack.isCombinedSince(lots.listOf(tx, house.id(), used.lot()), used.change()))
        .findFirst()
        .map(
            used ->
                Message.of(
                    "tick.refused.tub-combined",
                    lots.findById(tx, house.id(), used.lot()).lot().code()));
  }

  private List<Movement> rows(Tx tx, House house, Movement used) {
    return lots.listOf(tx, house.id(), used.lot()).stream()
        .filter(row -> row.change() == used.change())
        .toList();
  }

  private List<Movement> freed(Tx tx, House house, BathBoard.Basin before, BathEntry kept) {
    return kept.undoes().stream()
        .flatMap(
            id -> before.live().entries().stream().filter(entry -> entry.id().equals(id)).limit(1))
        .flatMap(undone -> needless(tx, house, before, undone).stream())
        .toList();
  }

  /** What a bath has used and does not need once an entry is taken back. */
  private List<Movement> needless(Tx tx, House house, BathBoard.Basin before, BathEntry undone) {
    String label = label(undone);
    boolean needed =
        !fills(undone, label)
            || before.live().entries().stream()
                .filter(entry -> !entry.id().equals(undone.id()) && fills(entry, label))
                .anyMatch(entry -> entry.kind() == BathEntry.Kind.DROP || entry.tub().isPresent());
    return needed ? List.of() : listUsed(tx, house, before, label);
  }

  private Map<Tub, Amount> fill(
      Tx tx, House house, InForce inForce, BathBoard.Basin before, String label, BathEntry kept) {
    Map<Tub, Amount> fill = new LinkedHashMap<>();
    if (kept.tub().isPresent()) {
      Amount whole = before.output(inForce.book()).fill().orElseThrow();
      lots.find(tx, house.id(), kept.tub().get())
          .filter(tub -> tub.lot().component().formula().equals(before.formula()))
          .ifPresent(tub -> fill.put(tub, whole));
      return fill;
    }
    String user = "bath/" + inForce.plan().day() + "/" + label;
    for (Draw draw : inForce.sheet().draws()) {
      if (draw.need().user().equals(user)
          && draw.lot().component().formula().equals(before.formula())) {
        tubs(tx, house, draw).forEach(tub -> fill.merge(tub, draw.amount(), Amount::plus));
      }
    }
    return fill;
  }

  /** The tub that was drawn from; of one that was still being made, what it has come to. */
  private List<Tub> tubs(Tx tx, House house, Draw draw) {
    Optional<Tub> tub = lots.find(tx, house.id(), draw.lot().code());
    return tub.isPresent()
        ? List.of(tub.get())
        : lots.listOfTasks(tx, house.id(), draw.lot().code() + "/").stream()
            .filter(one -> one.lot().left().isPositive())
            .limit(1)
            .toList();
  }

  private void use(Tx tx, House house, Tub tub, Amount amount, BathEntry kept, long change) {
    Amount used = amount.atMost(tub.lot().left()).rounded(Rounding.TO_MICROGRAM);
    if (used.isPositive()) {
      Movement movement =
          Movement.of(tub.id(), Movement.Kind.USED, used.times(-1), kept.cook(), kept.at());
      posting.post(tx, house, tub, movement, Optional.empty(), change);
    }
  }
}
