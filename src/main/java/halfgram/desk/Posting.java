package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.AllergenTrace;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.prep.KitchenBook;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What a movement brings with it, and both kept in the ledger.
 *
 * <p>Rules. What an event takes of what it keeps is kept no longer. What anybody else takes out is
 * first what nobody keeps; when it is more, the rest was kept for an event, and the ledger says how
 * much of whose. What is lost gets its cost with it.
 */
final class Posting {
  private final LotStore lots = new LotStore();

  /**
   * A movement with what it brings with it, in the order they are kept.
   *
   * @param before the tub as it was
   * @param own the event that takes of what it keeps; empty for anybody else
   */
  static List<Movement> rows(House house, Tub before, Movement movement, Optional<String> own) {
    Lot lot = before.lot();
    Amount taken = movement.amount().times(-1).rounded(Rounding.TO_MICROGRAM);
    boolean lost = movement.kind().loses() && taken.isPositive();
    List<Movement> rows = new ArrayList<>();
    rows.add(lost ? movement.losing(Losses.of(house.book(), lot, taken)) : movement);
    rows.addAll(released(lot, taken, movement, own));
    return rows;
  }

  /** What is kept no longer once an amount is out of a tub. */
  static List<Movement> released(Lot lot, Amount taken, Movement cause, Optional<String> own) {
    List<Movement> rows = new ArrayList<>();
    if (!taken.isPositive()) {
      return rows;
    }
    Lot after = lot.less(taken, own);
    for (Reservation kept : lot.reserved()) {
      Amount gone = kept.amount().minus(after.keptFor(Optional.of(kept.event()))).times(-1);
      if (!gone.isZero()) {
        boolean mine = own.equals(Optional.of(kept.event()));
        Optional<String> why = mine ? Optional.empty() : Optional.of(cause.kind().name());
        Movement.Kind kind = mine ? Movement.Kind.RESERVED : Movement.Kind.DIPPED;
        rows.add(cause.keeping(kind, kept.event(), gone, why));
      }
    }
    return rows;
  }

  /** Keeps a movement with what it brings with it. */
  void post(Tx tx, House house, Tub before, Movement movement, Optional<String> own, long change) {
    keep(tx, house.id(), rows(house, before, movement, own), change);
  }

  /** Keeps rows as they are. */
  void keep(Tx tx, UUID kitchen, List<Movement> rows, long change) {
    rows.forEach(row -> lots.move(tx, kitchen, row, change));
  }

  /**
   * Puts a tub into the ledger: its row, what filled it, and how it stands.
   *
   * @param book by which it is known what it carries
   * @param tub how it stands: its dates, frozen or thawed, what it keeps
   * @param filled the movement that filled it
   */
  void open(Tx tx, UUID kitchen, KitchenBook book, Tub tub, Movement filled, long change) {
    AllergenTrace trace = new AllergenTrace(book.formulary(), book::ingredient);
    Lot lot = tub.lot().knowing(tub.lot().carried(book.formulary(), trace));
    lots.add(tx, kitchen, new Tub(tub.id(), lot, tub.task(), change, tub.assumed()));
    lots.move(tx, kitchen, filled, change);
    turned(lot, filled).ifPresent(turn -> lots.move(tx, kitchen, turn, change));
    for (Reservation kept : lot.reserved()) {
      Movement row =
          filled.keeping(Movement.Kind.RESERVED, kept.event(), kept.amount(), Optional.empty());
      lots.move(tx, kitchen, row, change);
    }
  }

  /** That it stands frozen, or has been. */
  private static Optional<Movement> turned(Lot lot, Movement filled) {
    Amount none = Amount.zero(lot.left().dimension());
    Optional<Movement> frozen =
        lot.frozen()
            .map(
                ice ->
                    Movement.of(filled.lot(), Movement.Kind.FROZEN, none, filled.who(), ice.since())
                        .turning(
                            new Movement.Turn(
                                Optional.empty(), Optional.of(lot.useBy()), ice.days())));
    return frozen.or(
        () ->
            lot.thawed()
                .map(
                    at ->
                        Movement.of(filled.lot(), Movement.Kind.THAWED, none, filled.who(), at)
                            .turning(
                                new Movement.Turn(
                                    Optional.empty(),
                                    Optional.of(lot.useBy()),
                                    java.util.OptionalInt.empty()))));
  }
}
