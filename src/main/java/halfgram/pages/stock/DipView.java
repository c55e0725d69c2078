package halfgram.pages.stock;

import halfgram.desk.Dipped;
import halfgram.web.Visit;
import java.util.List;

/**
 * What somebody took of what is kept for an event.
 *
 * @param said how much of whose is gone, and how
 * @param href the tub
 * @param number of the change, by which it is seen
 */
record DipView(String said, String href, String number) {

  static List<DipView> of(Shelf shelf, List<Dipped.Dip> dips) {
    return dips.stream().map(dip -> of(shelf, dip)).toList();
  }

  private static DipView of(Shelf shelf, Dipped.Dip dip) {
    String code = dip.tub().lot().code();
    return new DipView(
        shelf
            .words()
            .say(
                "stock.dip",
                shelf.names().amount(dip.amount()),
                shelf.event(dip.event()),
                shelf.names().componentName(dip.tub().lot().component()),
                code,
                MoveWords.cause(shelf.words(), dip.movement()),
                shelf.person(dip.movement().who()),
                shelf.words().moment(dip.movement().at())),
        shelf.address("stock/" + Visit.encoded(code)),
        String.valueOf(dip.change()));
  }
}
