package halfgram.pages.wall;

import halfgram.desk.Printed;
import halfgram.prep.Task;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What a printed code says that leads nowhere any more, and what to do.
 *
 * @param entry where what was done can still be entered, within the kitchen; empty where it cannot
 */
record GoneView(String title, List<String> said, String entry) {

  /** No plan of its day has it. */
  static GoneView unknown(Messages words, String code, Optional<LocalDate> day) {
    return new GoneView(
        words.say("paper.gone"),
        List.of(
            day.map(of -> words.say("paper.gone-day", code, of))
                .orElseGet(() -> words.say("paper.gone-code", code)),
            words.say("paper.gone-type")),
        "");
  }

  /** A later plan of its day has taken it out. */
  static GoneView withdrawn(Messages words, Printed.Found found, LocalDate today) {
    return new GoneView(
        name(words, found.task()),
        List.of(words.say("paper.withdrawn", found.day()), words.say("paper.withdrawn-how")),
        entry(found, today));
  }

  /** Its day is over, or has not begun. */
  static GoneView ofAnotherDay(Messages words, Printed.Found found, LocalDate today) {
    boolean over = found.day().isBefore(today);
    return new GoneView(
        name(words, found.task()),
        List.of(
            words.say(over ? "paper.old" : "paper.ahead", found.day()),
            words.say(over ? "paper.old-how" : "paper.ahead-how")),
        over ? entry(found, today) : "");
  }

  static GoneView noTub(Messages words, String tub) {
    return new GoneView(
        words.say("paper.gone"),
        List.of(words.say("paper.gone-tub", tub), words.say("paper.gone-tub-how")),
        "");
  }

  private static String name(Messages words, Task task) {
    return words.text(task.version().name()) + ", " + words.text(task.step().name());
  }

  private static String entry(Printed.Found found, LocalDate today) {
    String station = "paper/entry?station=" + Visit.encoded(found.task().station());
    return found.day().equals(today) ? station : station + "&date=" + found.day();
  }
}
