package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.PrepSheet;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What would follow the plan in force. */
final class Proposing {
  private Proposing() {}

  /**
   * From a moment on.
   *
   * @param house by whose book, which need not be the one in force
   */
  static Plans.Proposal of(Tx tx, House house, InForce inForce, InHand inHand, Instant asOf) {
    KitchenBook empty = house.book();
    // A book of before knows no tub of a formula or version that was saved since.
    List<Lot> lots =
        inHand.tubs().stream()
            .map(Tub::lot)
            .filter(lot -> empty.formulary().find(lot.component()).isPresent())
            .toList();
    KitchenBook book = empty.withLots(lots);
    PlanRequest request = new PlanRequest(inForce.plan().day(), 1, asOf);
    Basis basis = new Basis(empty, book.lots(), request, inHand.begun());
    PrepSheet sheet = new SpentIds(tx, house.id(), Optional.of(inForce)).sheet(basis, book);
    Difference difference = Difference.of(inForce.book(), inForce.sheet(), empty, sheet);
    return new Plans.Proposal(book, sheet, inHand.begun(), house.stand().facts(), difference);
  }
}
