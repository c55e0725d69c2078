package halfgram.pages.lanes;

import halfgram.desk.House;
import halfgram.desk.WhatIf;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.crew.Fit;
import halfgram.prep.crew.Outlook;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Whether a day would fit people and machines, beside how it is.
 *
 * @param fits whether it would, in words; then how late, how long, until when
 * @param compared rows that say the same of both sides
 * @param late what would be late, the worst first
 * @param whyNot why the other side does not fit
 * @param told what else is to be said of the looking
 */
public record ThenView(
    String fits,
    String comes,
    boolean heed,
    List<Compared> compared,
    List<String> late,
    List<String> leftOut,
    List<LanesView.Why> whyNot,
    List<String> told) {

  /**
   * The same of both sides.
   *
   * @param heed whether the other side is worse
   */
  public record Compared(String what, String today, String then, boolean heed) {}

  /** For a page that is not of the lanes. */
  public static ThenView of(WhatIf.Answer answer, House house, Instant now, Visit visit) {
    return of(
        Crewed.of(answer.today(), house, now, visit), Crewed.of(answer.then(), house, now, visit));
  }

  static ThenView of(Crewed today, Crewed then) {
    boolean fits = then.outlook().fits();
    return new ThenView(
        then.words().say(fits ? "lanes.fits" : "lanes.fits-not"),
        LanesView.comes(then),
        !fits,
        compared(today, then),
        late(then),
        leftOut(then),
        LanesView.whyNot(then),
        told(then));
  }

  static List<Compared> compared(Crewed today, Crewed then) {
    Messages words = today.words();
    Outlook a = today.outlook();
    Outlook b = then.outlook();
    List<Compared> rows = new ArrayList<>();
    rows.add(
        new Compared(
            words.say("lanes.c-fits"),
            words.say(a.fits() ? "lanes.yes" : "lanes.no"),
            words.say(b.fits() ? "lanes.yes" : "lanes.no"),
            a.fits() && !b.fits()));
    rows.add(
        new Compared(
            words.say("lanes.c-left"),
            many(words, a.leftOut().size(), a.leftOutTime()),
            many(words, b.leftOut().size(), b.leftOutTime()),
            b.leftOutTime().compareTo(a.leftOutTime()) > 0));
    rows.add(
        new Compared(
            words.say("lanes.c-late"),
            many(words, a.late().size(), a.lateTime()),
            many(words, b.late().size(), b.lateTime()),
            b.lateTime().compareTo(a.lateTime()) > 0));
    rows.add(
        new Compared(
            words.say("lanes.c-overrun"),
            many(words, a.overrun().size(), a.overrunTime()),
            many(words, b.overrun().size(), b.overrunTime()),
            b.overrunTime().compareTo(a.overrunTime()) > 0));
    rows.add(
        new Compared(
            words.say("lanes.c-plating"),
            some(words, a.shortPlatings().size()),
            some(words, b.shortPlatings().size()),
            b.shortPlatings().size() > a.shortPlatings().size()));
    rows.add(
        new Compared(
            words.say("lanes.c-finish"),
            a.finish().map(today::time).orElse("\u2013"),
            b.finish().map(then::time).orElse("\u2013"),
            false));
    return rows;
  }

  private static String some(Messages words, int count) {
    return count == 0 ? words.say("lanes.none") : String.valueOf(count);
  }

  private static String many(Messages words, int count, Duration time) {
    return count == 0 ? words.say("lanes.none") : words.say("lanes.many", count, time);
  }

  private static List<String> late(Crewed then) {
    return then.outlook().late().stream().map(one -> late(then, one)).toList();
  }

  private static String late(Crewed then, Fit.Late late) {
    String task = then.title(late.task());
    return then.outlook()
        .service(late.task())
        .map(ServiceRun::name)
        .map(name -> then.words().say("lanes.late-for", task, name, late.by()))
        .orElseGet(() -> then.words().say("lanes.late-one", task, late.by()));
  }

  private static List<String> leftOut(Crewed then) {
    return then.outlook().leftOut().stream()
        .sorted(Comparator.comparing(Task::handsOn).reversed())
        .map(task -> then.words().say("lanes.left-one", then.title(task), task.handsOn()))
        .toList();
  }

  private static List<String> told(Crewed then) {
    return then.crew().cut() ? List.of(then.words().say("lanes.cut")) : List.of();
  }
}
