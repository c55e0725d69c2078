package halfgram.pages.lanes;

import halfgram.prep.Task;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Reasons;
import halfgram.words.FitWords;
import halfgram.words.Messages;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the page of the lanes shows.
 *
 * @param proposal none or one
 * @param fits whether everything has a place, in words
 * @param told what else is to be said of the plan: what it had to let go
 * @param leftOutSaid how many tasks have no place, and how long they take
 * @param byMachine which lanes are drawn
 * @param done of a long list what is done, which lies folded
 * @param rows the others, in the order they start
 * @param away who is not there, or which machines are not used; empty when there is none such
 * @param whatIf where other days are tried; empty for a day that is over
 * @param paper where the day is printed; empty for a day ahead, which nobody works by yet
 */
record LanesView(
    String day,
    String date,
    List<Link> days,
    List<ProposalView> proposal,
    String fits,
    String next,
    List<String> told,
    List<Left> leftOut,
    String leftOutSaid,
    List<Why> whyNot,
    List<Link> ways,
    boolean byMachine,
    boolean isEmpty,
    Drawing drawing,
    String away,
    LoadView load,
    List<Row> done,
    List<Row> rows,
    String whatIf,
    String paper) {
  /** So many rows are not folded. */
  private static final int SHORT = 8;

  /** A way somewhere; without an address it is where one is. */
  record Link(String text, String href) {}

  /** A task without a place. */
  record Left(String what, String href, String how) {}

  /**
   * Why it does not fit.
   *
   * @param chain from what begins it to what it must be ready for
   * @param levers what one can do
   */
  record Why(String what, List<String> chain, List<String> levers) {}

  /**
   * A task in the list, or what takes hands beside them.
   *
   * @param number of the task on the lanes; empty for what is none
   * @param by its latest start by lags
   * @param kind class of its state
   */
  record Row(
      String number,
      String when,
      String until,
      String what,
      String href,
      String who,
      String on,
      String by,
      String state,
      String kind) {
    private boolean isDone() {
      return kind.equals(Bar.Kind.DONE.code());
    }
  }

  static LanesView of(Crewed day, Optional<ProposalView> proposal, boolean byMachine) {
    Messages words = day.words();
    Outlook outlook = day.outlook();
    List<Row> rows = rows(day);
    boolean folds = rows.size() > SHORT;
    return new LanesView(
        day.day().toString(),
        words.date(day.day()),
        days(day),
        proposal.stream().toList(),
        words.say(fits(day, proposal)),
        day.isRough() ? "" : comes(day),
        told(day),
        left(day),
        words.say("lanes.left-out", outlook.leftOut().size(), outlook.leftOutTime()),
        whyNot(day),
        ways(day, byMachine),
        byMachine,
        day.bars().isEmpty() && outlook.leftOut().isEmpty(),
        byMachine ? Draughting.byMachine(day) : Draughting.byPerson(day),
        byMachine ? idle(day) : away(day),
        LoadView.of(day),
        rows.stream().filter(row -> folds && row.isDone()).toList(),
        rows.stream().filter(row -> !folds || !row.isDone()).toList(),
        whatIf(day),
        day.day().isAfter(day.clock().of(day.now())) ? "" : day.paper());
  }

  /** That it fitted when it was planned says little of a day that has moved. */
  private static String fits(Crewed day, Optional<ProposalView> proposal) {
    if (day.isRough()) {
      return "lanes.rough";
    }
    if (!day.outlook().fits()) {
      return "lanes.fits-not";
    }
    return proposal.isPresent() ? "lanes.fitted" : "lanes.fits";
  }

  /** How late, what stands too long, when the last is done. */
  static String comes(Crewed day) {
    Outlook outlook = day.outlook();
    Messages words = day.words();
    List<String> parts = new ArrayList<>(FitWords.wrong(outlook.fit(), words));
    outlook.finish().ifPresent(at -> parts.add(words.say("lanes.finish", day.time(at))));
    return String.join(" ", parts);
  }

  private static List<String> told(Crewed day) {
    List<String> told = new ArrayList<>();
    if (day.book().people().isEmpty()) {
      told.add(day.words().say("lanes.no-people"));
    }
    if (day.crew().roomy()) {
      told.add(day.words().say("lanes.roomy"));
    }
    if (day.crew().yielding()) {
      told.add(day.words().say("lanes.yielding"));
    }
    if (day.crew().cut() && !day.isRough()) {
      told.add(day.words().say("lanes.cut"));
    }
    return told;
  }

  static List<Why> whyNot(Crewed day) {
    if (day.outlook().fits() || day.isRough()) {
      return List.of();
    }
    return Reasons.of(day.book(), day.sheet(), day.facts(), day.crew()).stream()
        .map(
            one ->
                new Why(
                    day.say(one.what()),
                    one.chain().stream().map(day::say).toList(),
                    one.levers().stream().map(day::say).toList()))
        .toList();
  }

  /** What has no place; while a better plan is looked for, that is not known. */
  private static List<Left> left(Crewed day) {
    return day.isRough()
        ? List.of()
        : day.outlook().leftOut().stream().map(task -> left(day, task)).toList();
  }

  private static Left left(Crewed day, Task task) {
    return new Left(
        day.title(task),
        day.link(task),
        day.words()
            .say(
                "lanes.left", task.handsOn(), day.station(task.station()), day.time(task.start())));
  }

  /** Tasks and what takes hands beside them, in the order they start. */
  private static List<Row> rows(Crewed day) {
    record Timed(Instant from, Row row) {}
    List<Timed> rows = new ArrayList<>();
    day.bars().forEach(bar -> rows.add(new Timed(bar.placed().start(), row(day, bar))));
    day.errands().forEach(one -> rows.add(new Timed(one.strip().from(), row(day, one))));
    rows.sort(Comparator.comparing(Timed::from));
    return rows.stream().map(Timed::row).toList();
  }

  private static Row row(Crewed day, Errand one) {
    Strip strip = one.strip();
    return new Row(
        "",
        day.time(strip.from()),
        day.time(strip.off()),
        one.what(),
        strip.href(),
        one.who(),
        one.on().map(day::machine).orElse(""),
        "",
        "",
        strip.kind());
  }

  private static Row row(Crewed day, Bar bar) {
    return new Row(
        String.valueOf(bar.number()),
        day.time(bar.placed().start()),
        day.time(bar.placed().end()),
        day.title(bar.task()),
        day.link(bar.task()),
        bar.who(day),
        bar.machines(day),
        day.time(bar.task().start()),
        bar.state(day),
        bar.kind().code());
  }

  private static String away(Crewed day) {
    List<String> away =
        halfgram.prep.crew.Present.list(day.book(), day.facts(), day.day()).stream()
            .filter(one -> !one.isThere())
            .map(one -> one.person().name())
            .toList();
    return away.isEmpty() ? "" : day.words().say("lanes.not-there", away);
  }

  private static String idle(Crewed day) {
    List<String> idle = Draughting.idle(day).stream().map(day::machine).toList();
    return idle.isEmpty() ? "" : day.words().say("lanes.not-used", idle);
  }

  private static List<Link> ways(Crewed day, boolean byMachine) {
    String date = day.isToday() ? "" : "date=" + day.day();
    String people = day.address(date.isEmpty() ? "" : "?" + date);
    String machines = day.address("?by=machine" + (date.isEmpty() ? "" : "&" + date));
    return List.of(
        new Link(day.words().say("lanes.by-person"), byMachine ? people : ""),
        new Link(day.words().say("lanes.by-machine"), byMachine ? "" : machines));
  }

  private static String whatIf(Crewed day) {
    boolean over = day.day().isBefore(day.clock().of(day.now()));
    String date = day.isToday() ? "" : "?date=" + day.day();
    return over ? "" : day.address("/what-if" + date);
  }

  private static List<Link> days(Crewed day) {
    Messages words = day.words();
    LocalDate at = day.day();
    LocalDate today = day.clock().of(day.now());
    return List.of(
        new Link(words.shortDate(at.minusDays(1)), day.address("?date=" + at.minusDays(1))),
        new Link(words.say("today.today"), at.equals(today) ? "" : day.address("")),
        new Link(words.shortDate(at.plusDays(1)), day.address("?date=" + at.plusDays(1))));
  }
}
