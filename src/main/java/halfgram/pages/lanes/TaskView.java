package halfgram.pages.lanes;

import halfgram.prep.Task;
import halfgram.prep.crew.Holding;
import halfgram.prep.crew.Placed;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A task among the lanes, on a page of its own.
 *
 * @param state the word, with how late it is
 * @param facts when, who, on what
 * @param notEarlier what keeps it from starting earlier
 * @param notLater what keeps it from starting later
 * @param waits what has to be before it
 * @param after what waits for it
 * @param move the form that moves it; none where it cannot be
 * @param sheet where the task stands with what to do and weigh
 */
record TaskView(
    String title,
    String date,
    String back,
    String state,
    boolean heed,
    List<Fact> facts,
    List<Held> notEarlier,
    List<Held> notLater,
    List<Near> waits,
    List<Near> after,
    List<MoveView> move,
    String sheet) {

  /** A thing to know, with its name. */
  record Fact(String name, String value) {}

  /** What holds it, and the task that does, if one does. */
  record Held(String said, String href) {}

  /** A task before or after, how it hangs together with this one, and where it is placed. */
  record Near(String what, String href, String how, String where) {}

  static TaskView of(Crewed day, Task task, MoveForm form, String fault) {
    Messages words = day.words();
    Optional<Bar> bar = day.bar(task.id());
    Holding holding = new Holding(day.book(), day.sheet(), day.facts(), day.crew());
    return new TaskView(
        day.title(task),
        words.date(day.day()),
        day.address(day.isToday() ? "" : "?date=" + day.day()),
        bar.map(one -> one.state(day)).orElse(words.say("lanes.state.left")),
        bar.isEmpty() || bar.get().kind() == Bar.Kind.LATE,
        facts(day, task, bar),
        holding.notEarlier(task).stream().map(hold -> held(day, hold)).toList(),
        holding.notLater(task).stream().map(hold -> held(day, hold)).toList(),
        waits(day, task),
        after(day, task),
        MoveView.of(day, task, form, fault),
        "task?date=" + day.day() + "&id=" + halfgram.web.Visit.encoded(task.id()));
  }

  private static Held held(Crewed day, Holding.Hold hold) {
    String href = hold.task().flatMap(day::find).map(day::link).orElse("");
    return new Held(day.say(hold.said()), href);
  }

  private static List<Fact> facts(Crewed day, Task task, Optional<Bar> bar) {
    Messages words = day.words();
    List<Fact> facts = new ArrayList<>();
    if (bar.isPresent()) {
      Placed placed = bar.get().placed();
      add(facts, words.say("lanes.starts"), day.time(placed.start()));
      add(facts, words.say("today.task-off"), day.time(placed.handsOff()));
      if (placed.end().isAfter(placed.handsOff())) {
        add(facts, words.say("today.task-end"), day.time(placed.end()));
      }
      add(facts, words.say("lanes.who"), bar.get().who(day));
      placed
          .unload()
          .ifPresent(out -> add(facts, words.say("lanes.taken-out"), day.time(out.from())));
      if (!placed.machines().isEmpty()) {
        add(facts, words.say("lanes.on"), bar.get().machines(day));
      }
    }
    add(facts, words.say("lanes.latest"), day.time(task.start()));
    add(facts, words.say("lanes.station"), day.station(task.station()));
    add(facts, words.say("today.task-hands"), words.duration(task.handsOn()));
    return facts;
  }

  private static void add(List<Fact> facts, String name, String value) {
    facts.add(new Fact(name, value));
  }

  private static List<Near> waits(Crewed day, Task task) {
    List<Near> waits = new ArrayList<>();
    for (Task.Link link : task.links()) {
      day.find(link.task()).ifPresent(before -> waits.add(near(day, before, link)));
    }
    return waits;
  }

  private static List<Near> after(Crewed day, Task task) {
    List<Near> after = new ArrayList<>();
    for (Task other : day.sheet().tasks()) {
      for (Task.Link link : other.links()) {
        if (link.task().equals(task.id())) {
          after.add(near(day, other, link));
        }
      }
    }
    return after;
  }

  private static Near near(Crewed day, Task other, Task.Link link) {
    Messages words = day.words();
    String how = lag(words, link);
    Optional<Bar> bar = day.bar(other.id());
    String where =
        bar.map(one -> span(day, one.placed().start(), one.placed().end()))
            .orElse(words.say("lanes.state.left"));
    return new Near(day.title(other), day.link(other), how, where);
  }

  private static String lag(Messages words, Task.Link link) {
    boolean now = link.min().isZero();
    if (link.max().isEmpty()) {
      return now ? words.say("lanes.lag-any") : words.say("lanes.lag", link.min());
    }
    return now
        ? words.say("lanes.lag-most", link.max().get())
        : words.say("lanes.lag-within", link.min(), link.max().get());
  }

  private static String span(Crewed day, Instant from, Instant to) {
    return day.words().say("lanes.hours", day.time(from), day.time(to));
  }
}
