package halfgram.pages.lanes;

import halfgram.desk.Push;
import halfgram.desk.WhatIf;
import halfgram.event.Event;
import halfgram.input.Problem;
import halfgram.pages.WhatIfLink;
import halfgram.prep.ServiceRun;
import halfgram.prep.crew.Load;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Present;
import halfgram.words.Messages;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the page of what if shows: the question as it was put, and both sides of the answer.
 *
 * @param asked what was asked, in words; empty while nothing is
 * @param ahead the date of a day that has not begun; empty for today
 * @param drafts that a plan of the day would look at; none where there are none
 * @param then what it comes to; none or one
 * @param moved what would move, the farthest first
 * @param more how many more would, in words; empty when all are shown
 */
record WhatIfView(
    String back,
    String date,
    String ahead,
    List<Turn> turns,
    List<Choice> drafts,
    List<Choice> off,
    List<Choice> more,
    List<Choice> broken,
    List<String> problems,
    List<String> asked,
    List<ThenView> then,
    List<ThenView.Compared> people,
    List<ThenView.Compared> stations,
    List<Moved> moved,
    String moreMoved) {
  private static final int MOST = 40;

  /**
   * A service with what is typed for it.
   *
   * @param coversWrong what is wrong with them; empty when nothing is, as of the minutes
   */
  record Turn(
      String id,
      String name,
      String now,
      String covers,
      String coversWrong,
      String minutes,
      String minutesWrong) {}

  /** One of a list to choose from. */
  record Choice(String value, String name, boolean chosen) {}

  /** A task that would be elsewhere. */
  record Moved(String what, String href, String how, String from, String to) {}

  /** The other side: how it would be. */
  record Side(Crewed day, WhatIf.Answer answer) {}

  static WhatIfView of(
      Crewed today,
      WhatIfForm form,
      List<Event> drafts,
      Optional<Side> then,
      List<Problem> problems) {
    Messages words = today.words();
    List<Outlook.Move> moves = then.map(side -> side.answer().moves()).orElse(List.of());
    return new WhatIfView(
        today.address(today.isToday() ? "" : "?date=" + today.day()),
        words.date(today.day()),
        today.isToday() ? "" : today.day().toString(),
        form.turns().stream().map(turn -> turn(today, form, turn, problems)).toList(),
        drafts.stream().map(one -> draft(today, one, form.drafts())).toList(),
        people(today, form.off()),
        machines(today, form.more()),
        machines(today, form.broken()),
        problems(words, form, problems),
        then.isPresent() ? asked(today, form, drafts) : List.of(),
        then.map(side -> ThenView.of(today, side.day())).stream().toList(),
        then.map(side -> byPerson(today, side.day())).orElse(List.of()),
        then.map(side -> byStation(today, side.day())).orElse(List.of()),
        moves.stream().limit(MOST).map(move -> moved(today, then.orElseThrow(), move)).toList(),
        moves.size() > MOST ? words.say("today.more-made", moves.size() - MOST) : "");
  }

  // ---- the question ----

  private static Turn turn(
      Crewed day, WhatIfForm form, WhatIfForm.Turn typed, List<Problem> problems) {
    Messages words = day.words();
    ServiceRun run =
        day.sheet().services().stream()
            .filter(one -> one.id().equals(typed.run()))
            .findFirst()
            .orElseThrow();
    String start = day.time(run.window().start());
    String now =
        run.covers().isPresent()
            ? words.say("lanes.service", start, run.covers().getAsInt())
            : start;
    return new Turn(
        typed.run(),
        words.text(run.name()),
        now,
        typed.covers(),
        typed.isCovers()
            ? at(words, form.covers(typed), problems)
            : words.say("lanes.covers-fault"),
        typed.minutes(),
        typed.isMinutes()
            ? at(words, form.minutes(typed), problems)
            : words.say("slip.minutes-fault", Push.MOST));
  }

  /** What is wrong with a field; empty when nothing is. */
  private static String at(Messages words, String path, List<Problem> problems) {
    return problems.stream()
        .filter(one -> one.path().equals(path))
        .map(one -> words.say(one.message()))
        .findFirst()
        .orElse("");
  }

  private static Choice draft(Crewed day, Event draft, Set<String> chosen) {
    return new Choice(
        WhatIfLink.field(draft.code()), called(day, draft), chosen.contains(draft.code()));
  }

  private static String called(Crewed day, Event draft) {
    Messages words = day.words();
    String name = words.text(draft.name());
    int covers = draft.covers().counted();
    return draft.date().equals(day.day())
        ? words.say("lanes.draft", name, covers)
        : words.say("lanes.draft-of", name, covers, words.shortDate(draft.date()));
  }

  private static List<Choice> people(Crewed day, String chosen) {
    List<Choice> choices = new ArrayList<>();
    choices.add(new Choice("", day.words().say("lanes.all-there"), chosen.isEmpty()));
    for (Present one : Present.list(day.book(), day.facts(), day.day())) {
      if (one.isThere()) {
        String code = one.person().code();
        choices.add(new Choice(code, one.person().name(), code.equals(chosen)));
      }
    }
    return choices;
  }

  private static List<Choice> machines(Crewed day, String chosen) {
    List<Choice> choices = new ArrayList<>();
    choices.add(new Choice("", day.words().say("lanes.none-such"), chosen.isEmpty()));
    day.book()
        .equipment()
        .values()
        .forEach(
            one ->
                choices.add(
                    new Choice(
                        one.code(),
                        day.words().say("lanes.kind-of", day.words().text(one.name()), one.units()),
                        one.code().equals(chosen))));
    return choices;
  }

  /** What is wrong with what has no field of its own. */
  private static List<String> problems(Messages words, WhatIfForm form, List<Problem> problems) {
    Set<String> fields = new HashSet<>();
    form.turns().forEach(turn -> fields.addAll(List.of(form.covers(turn), form.minutes(turn))));
    return problems.stream()
        .filter(one -> !fields.contains(one.path()))
        .map(one -> words.say("slip.problem", one.value(), words.say(one.message())))
        .toList();
  }

  private static List<String> asked(Crewed day, WhatIfForm form, List<Event> drafts) {
    Messages words = day.words();
    List<String> asked = new ArrayList<>();
    drafts.stream()
        .filter(one -> form.drafts().contains(one.code()))
        .forEach(one -> asked.add(words.say("lanes.asked-draft", called(day, one))));
    for (WhatIf.Turn turn : form.asked().turns()) {
      String name =
          day.sheet().services().stream()
              .filter(run -> run.id().equals(turn.run()))
              .map(run -> words.text(run.name()))
              .findFirst()
              .orElse(turn.run());
      if (turn.covers() != 0) {
        String key = turn.covers() > 0 ? "lanes.asked-more" : "lanes.asked-fewer";
        asked.add(words.say(key, name, Math.abs(turn.covers())));
      }
      if (turn.minutes() != 0) {
        String key = turn.minutes() > 0 ? "lanes.asked-later" : "lanes.asked-earlier";
        asked.add(words.say(key, name, Duration.ofMinutes(Math.abs(turn.minutes()))));
      }
    }
    form.asked().off().forEach(code -> asked.add(words.say("lanes.asked-off", day.person(code))));
    form.asked().more().forEach(code -> asked.add(words.say("lanes.asked-one", kind(day, code))));
    form.asked()
        .broken()
        .forEach(code -> asked.add(words.say("lanes.asked-broken", kind(day, code))));
    return asked;
  }

  private static String kind(Crewed day, String code) {
    return Optional.ofNullable(day.book().equipment().get(code))
        .map(one -> day.words().text(one.name()))
        .orElse(code);
  }

  // ---- the answer ----

  private static List<ThenView.Compared> byPerson(Crewed today, Crewed then) {
    List<ThenView.Compared> rows = new ArrayList<>();
    for (Load.OfPerson one : today.outlook().load().people()) {
      Optional<Load.OfPerson> other =
          then.outlook().load().people().stream()
              .filter(of -> of.person().equals(one.person()))
              .findFirst();
      rows.add(
          new ThenView.Compared(
              today.person(one.person()),
              said(today, one.shift(), one.mark()),
              other
                  .map(of -> said(today, of.shift(), of.mark()))
                  .orElse(today.words().say("lanes.away")),
              other.map(of -> worse(one.mark(), of.mark())).orElse(false)));
    }
    return rows;
  }

  private static List<ThenView.Compared> byStation(Crewed today, Crewed then) {
    List<ThenView.Compared> rows = new ArrayList<>();
    for (Load.OfStation one : today.outlook().load().stations()) {
      then.outlook().load().stations().stream()
          .filter(of -> of.station().equals(one.station()))
          .findFirst()
          .ifPresent(
              of ->
                  rows.add(
                      new ThenView.Compared(
                          today.station(one.station()),
                          said(today, one.day(), one.mark()),
                          said(today, of.day(), of.mark()),
                          worse(one.mark(), of.mark()))));
    }
    return rows;
  }

  private static boolean worse(Load.Mark today, Load.Mark then) {
    return today == Load.Mark.NONE && then != Load.Mark.NONE;
  }

  private static String said(Crewed day, Load.Share share, Load.Mark mark) {
    LoadView.Share view = LoadView.share(day.words(), share, mark);
    return (view.said() + " " + view.word()).strip();
  }

  private static Moved moved(Crewed today, Side side, Outlook.Move move) {
    Messages words = today.words();
    boolean gone = move.to().isEmpty();
    Crewed home = today.find(move.task()).isPresent() ? today : side.day();
    String title = home.find(move.task()).map(home::title).orElse(move.task());
    String how;
    if (move.from().isEmpty()) {
      how = words.say("lanes.moved-new");
    } else if (gone) {
      boolean left = side.day().crew().leftOut().contains(move.task());
      how = words.say(left ? "lanes.state.left" : "lanes.moved-gone");
    } else if (move.by().isZero()) {
      how = words.say("lanes.moved-other");
    } else {
      how = words.say(move.by().isNegative() ? "lanes.earlier" : "lanes.later", move.by().abs());
    }
    return new Moved(
        title,
        today.find(move.task()).map(today::link).orElse(""),
        how,
        move.from().map(at -> where(today, at)).orElse("\u2013"),
        move.to().map(at -> where(side.day(), at)).orElse("\u2013"));
  }

  static String where(Crewed day, Placed at) {
    String who = String.join(", ", at.people().stream().map(day::person).toList());
    return who.isEmpty() ? day.time(at.start()) : day.time(at.start()) + " " + who;
  }
}
