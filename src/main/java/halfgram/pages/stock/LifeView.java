package halfgram.pages.stock;

import halfgram.desk.Stock;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * What became of a tub.
 *
 * @param empty whether nothing is left in it
 * @param moves newest first
 * @param back what can be taken back; empty for nothing
 */
record LifeView(
    TubRow tub, boolean empty, List<Move> moves, String back, String label, String list) {

  /**
   * One thing that happened.
   *
   * @param amount what it added or took; empty when it moved nothing
   * @param left what was left after it
   */
  record Move(String when, String what, String amount, String left, String who, String why) {}

  static LifeView of(Shelf shelf, Stock.Life life, Optional<Fault> fault) {
    Lot lot = life.tub().lot();
    return new LifeView(
        TubRow.of(shelf, life.tub(), fault),
        !lot.left().isPositive(),
        moves(shelf, life),
        life.last().filter(Stock::canBeTakenBack).map(last -> back(shelf, last)).orElse(""),
        shelf.address("label?tub=" + Visit.encoded(lot.code())),
        shelf.address("stock#tub-" + Visit.encoded(lot.code())));
  }

  private static String back(Shelf shelf, Movement last) {
    return last.kind() == Movement.Kind.BINNED
        ? shelf.words().say("stock.back-bin")
        : shelf.words().say("stock.back-count");
  }

  private static List<Move> moves(Shelf shelf, Stock.Life life) {
    Tub tub = life.tub();
    Amount left = Amount.zero(tub.lot().left().dimension());
    List<Move> moves = new ArrayList<>();
    for (Movement movement : life.movements()) {
      left = movement.kind().moves() ? left.plus(movement.amount()) : left;
      moves.add(
          new Move(
              shelf.words().moment(movement.at()),
              kind(shelf, movement),
              movement.kind().moves() ? signed(shelf, movement.amount()) : "",
              shelf.names().amount(left),
              shelf.person(movement.who()),
              movement.reason().orElse("")));
    }
    Collections.reverse(moves);
    return moves;
  }

  private static String kind(Shelf shelf, Movement movement) {
    return switch (movement.kind()) {
      case MADE -> shelf.words().say("stock.made");
      case BROUGHT -> shelf.words().say("stock.brought");
      case USED -> shelf.words().say("stock.used");
      case ASSUMED -> shelf.words().say("stock.assumed-used");
      case COUNTED ->
          shelf
              .words()
              .say(
                  "stock.counted",
                  shelf.names().amount(movement.stated().orElse(movement.amount())));
      case BINNED -> shelf.words().say("stock.binned");
      case RESERVED ->
          shelf
              .words()
              .say(
                  movement.amount().isPositive() ? "stock.reserved" : "stock.freed",
                  shelf.names().amount(size(movement.amount())),
                  shelf.event(movement.event().orElse("")));
      case UNDONE -> shelf.words().say("stock.undone");
    };
  }

  private static Amount size(Amount amount) {
    return amount.isPositive() ? amount : amount.times(-1);
  }

  /** "+ 250 g", "− 40 g", "0". */
  private static String signed(Shelf shelf, Amount amount) {
    if (amount.isZero()) {
      return "0";
    }
    return amount.isPositive()
        ? "+ " + shelf.names().amount(amount)
        : "− " + shelf.names().amount(amount.times(-1));
  }
}
