package halfgram.pages.lanes;

import halfgram.measure.Window;
import java.time.Instant;
import java.util.List;

/**
 * What is drawn on a lane: hands from..off, standing off..end.
 *
 * @param href where it leads
 * @param kind class: to-do, late, on-it, problem, done, wash, plating
 * @param name written when there is room
 * @param brief written when there is not
 * @param told for whoever cannot see it
 * @param away when whoever does it is not there
 */
record Strip(
    String href,
    String kind,
    String name,
    String brief,
    String told,
    Instant from,
    Instant off,
    Instant end,
    List<Window> away) {

  /** The same, drawn at another time. */
  Strip at(Instant begins, Instant handsOff, Instant ends) {
    return new Strip(href, kind, name, brief, told, begins, handsOff, ends, away);
  }

  /** The same, done by somebody who is not there all the while. */
  Strip without(List<Window> gaps) {
    return new Strip(href, kind, name, brief, told, from, off, end, gaps);
  }
}
