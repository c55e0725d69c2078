package halfgram.pages.lanes;

import halfgram.pages.TypedTime;
import halfgram.prep.Task;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Placed;
import halfgram.web.Visit;
import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Where the chef wants a task: its start as typed, and who.
 *
 * @param people codes; an empty one for whoever has it now
 * @param letGo whether it is no longer to be held where it is
 */
record MoveForm(String task, String start, List<String> people, boolean letGo) {

  static MoveForm of(Visit visit) {
    return new MoveForm(
        visit.field("id"),
        visit.field("start").strip(),
        visit.fields("person"),
        visit.field("do").equals("unpin"));
  }

  /** As the task is placed now, or pinned. */
  static MoveForm placed(Crewed day, Task task) {
    DayFacts.Pin pin = day.facts().pins().get(task.id());
    String start = day.bar(task.id()).map(bar -> day.words().time(bar.placed().start())).orElse("");
    List<String> people = new ArrayList<>();
    if (pin != null) {
      people.addAll(pin.people());
    } else {
      day.bar(task.id()).map(Bar::placed).map(Placed::people).ifPresent(people::addAll);
    }
    return new MoveForm(
        task.id(), pin == null ? start : day.words().time(pin.start()), people, false);
  }

  /** The moment that is typed, on that day; empty when it is no time. */
  Optional<Instant> start(Crewed day) {
    String typed = TypedTime.of(start);
    return typed.matches("([01]\\d|2[0-3]):[0-5]\\d")
        ? Optional.of(day.clock().at(day.day(), LocalTime.parse(typed)))
        : Optional.empty();
  }

  /** Those who are named. */
  List<String> named() {
    return people.stream().filter(code -> !code.isBlank()).distinct().toList();
  }
}
