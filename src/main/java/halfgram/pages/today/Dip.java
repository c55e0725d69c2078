package halfgram.pages.today;

import halfgram.desk.Dipped;
import halfgram.event.Event;
import halfgram.lot.Lot;
import halfgram.web.Visit;

/**
 * What somebody took of what is kept for an event.
 *
 * @param href the tub, where it is said how
 */
record Dip(String said, String href) {

  static Dip of(Shown shown, Dipped.Dip dip) {
    Lot lot = dip.tub().lot();
    String event =
        shown.book().events().stream()
            .filter(one -> one.code().equals(dip.event()))
            .map(Event::name)
            .map(shown.words()::text)
            .findFirst()
            .orElse(dip.event());
    return new Dip(
        shown
            .words()
            .say(
                "today.dip",
                shown.names().amount(dip.amount()),
                event,
                shown.names().componentName(lot.component()),
                lot.code(),
                shown.person(dip.movement().who()),
                shown.words().moment(dip.movement().at())),
        shown.address("stock/" + Visit.encoded(lot.code())));
  }
}
