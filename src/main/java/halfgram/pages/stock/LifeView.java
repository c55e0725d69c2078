package halfgram.pages.stock;

import halfgram.desk.Stock;
import halfgram.lot.Freed;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Message;
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
 * @param number of the change that is taken back
 * @param dips what was taken of what it keeps for events
 * @param forms what can be done to it
 * @param filled the tubs that were filled out of it just now
 * @param labels where theirs are
 * @param madeOf the tubs that went into its batch
 * @param wentInto the tubs that some of it went into
 */
record LifeView(
    TubRow tub,
    boolean empty,
    List<Move> moves,
    String back,
    String number,
    String ask,
    List<DipView> dips,
    List<DeedForm> forms,
    List<String> places,
    String label,
    String list,
    List<StockView.Link> filled,
    String labels,
    List<StockView.Link> madeOf,
    List<StockView.Link> wentInto) {

  /**
   * One thing that happened.
   *
   * @param amount what it added or took; empty when it moved nothing
   * @param left what was left after it
   * @param cost what was lost had cost; may be empty
   * @param tubs where it came from or went to
   */
  record Move(
      String when,
      String what,
      String amount,
      String left,
      String cost,
      String who,
      String why,
      List<StockView.Link> tubs) {}

  /** What the page of a tub shows beside the tub. */
  record Parts(
      Optional<Message> ask, List<DipView> dips, List<DeedForm> forms, List<String> places) {}

  static LifeView of(
      Shelf shelf, Stock.Life life, String currency, Parts parts, Optional<Fault> fault) {
    Lot lot = life.tub().lot();
    Optional<Movement> last = Stock.findLast(life.movements());
    List<String> filled = last.map(life::into).orElse(List.of());
    return new LifeView(
        TubRow.of(shelf, life.tub(), fault),
        !lot.left().isPositive(),
        moves(shelf, life, currency),
        last.map(of -> back(shelf, of)).orElse(""),
        last.map(of -> String.valueOf(of.change())).orElse(""),
        parts.ask().map(shelf.words()::say).orElse(""),
        parts.dips(),
        parts.forms(),
        parts.places(),
        shelf.address("label?tub=" + Visit.encoded(lot.code())),
        shelf.address("stock#tub-" + Visit.encoded(lot.code())),
        filled.stream().map(code -> tub(shelf, code)).toList(),
        shelf.address("label?tub=" + Visit.encoded(String.join(",", filled))),
        named(shelf, life.madeOf()),
        named(shelf, life.wentInto()));
  }

  /** Tubs with what is in them: "Dill oil 1205-3". */
  private static List<StockView.Link> named(Shelf shelf, List<Tub> tubs) {
    return tubs.stream()
        .map(Tub::lot)
        .map(
            lot ->
                new StockView.Link(
                    shelf.names().componentName(lot.component()) + " " + lot.code(),
                    shelf.address("stock/" + Visit.encoded(lot.code()))))
        .toList();
  }

  /** A tub by its code, which may be told with its version behind it: "1205-3 v2". */
  private static StockView.Link tub(Shelf shelf, String told) {
    String code = told.replaceFirst(" .*", "");
    return new StockView.Link(told, shelf.address("stock/" + Visit.encoded(code)));
  }

  /** Where it came from or went to. */
  private static List<String> tubs(Stock.Life life, Movement movement) {
    return isToldByTubs(movement)
        ? movement.reason().map(told -> List.of(told.split(", "))).orElse(life.into(movement))
        : List.of();
  }

  private static boolean isToldByTubs(Movement movement) {
    return movement.kind() == Movement.Kind.SPLIT || movement.kind() == Movement.Kind.COMBINED;
  }

  private static String back(Shelf shelf, Movement last) {
    return switch (last.kind()) {
      case BINNED -> shelf.words().say("stock.back-bin");
      case COUNTED -> shelf.words().say("stock.back-count");
      case SPLIT -> shelf.words().say("stock.back-split");
      case COMBINED -> shelf.words().say("stock.back-combined");
      default -> shelf.words().say("stock.back-last", MoveWords.kind(shelf, last));
    };
  }

  private static List<Move> moves(Shelf shelf, Stock.Life life, String currency) {
    Tub tub = life.tub();
    Amount left = Amount.zero(tub.lot().left().dimension());
    List<Move> moves = new ArrayList<>();
    for (Movement movement : life.movements()) {
      left = movement.kind().moves() ? left.plus(movement.amount()) : left;
      boolean moved = movement.kind().moves() && !movement.amount().isZero();
      boolean counted = movement.kind() == Movement.Kind.COUNTED;
      moves.add(
          new Move(
              shelf.date(movement.at()),
              MoveWords.kind(shelf, movement),
              moved || counted ? signed(shelf, movement.amount()) : "",
              shelf.names().amount(left),
              MoveWords.loss(shelf.words(), movement, currency),
              shelf.person(movement.who()),
              why(shelf, movement),
              tubs(life, movement).stream().map(told -> tub(shelf, told)).toList()));
    }
    Collections.reverse(moves);
    return moves;
  }

  private static String why(Shelf shelf, Movement movement) {
    if (movement.kind() == Movement.Kind.DIPPED && movement.reason().isPresent()) {
      return MoveWords.cause(shelf.words(), movement);
    }
    if (isToldByTubs(movement)) {
      return "";
    }
    if (movement.kind() == Movement.Kind.ASSUMED) {
      return movement.reason().map(shelf::run).orElse("");
    }
    return Freed.find(movement)
        .map(freed -> MoveWords.freed(shelf.words(), freed))
        .orElse(movement.reason().orElse(""));
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
