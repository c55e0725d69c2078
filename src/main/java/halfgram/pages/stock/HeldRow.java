package halfgram.pages.stock;

import halfgram.desk.HeldBack;
import halfgram.words.Messages;

/**
 * A part held back to taste, of which nobody has said what became.
 *
 * @param date of the plan it belongs to
 * @param number of its form: what became of one part is said once
 */
record HeldRow(String said, String task, String line, String date, long number) {

  static HeldRow of(Shelf shelf, HeldBack part) {
    Messages words = shelf.words();
    String line = part.line().path();
    return new HeldRow(
        words.say(
            "gate.held",
            words.amount(part.amount()),
            words.text(part.line().name()),
            words.text(part.task().version().name())),
        part.task().id(),
        line,
        part.day().toString(),
        shelf.now().toEpochMilli() * 1000 + Math.floorMod(line.hashCode(), 1000));
  }
}
