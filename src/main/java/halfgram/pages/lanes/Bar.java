package halfgram.pages.lanes;

import halfgram.kitchen.Text;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.crew.Fit;
import halfgram.prep.crew.Placed;
import halfgram.words.TurnWords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A task where it is planned or was done.
 *
 * @param number from 1, in the order of the starts
 * @param placed of what was done without ever being planned: the time it takes, until it was done
 * @param late by how much it starts or ends later than its lags allow
 */
record Bar(int number, Task task, Placed placed, Kind kind, Optional<Duration> late) {

  /** How it is drawn, and told. */
  enum Kind {
    TO_DO,
    LATE,
    ON_IT,
    PROBLEM,
    DONE;

    String code() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  static List<Bar> list(Crewed day) {
    record Found(Task task, Placed placed) {}
    List<Found> found = new ArrayList<>();
    for (Task task : day.sheet().tasks()) {
      TaskProgress progress = day.progress(task);
      Optional<Placed> planned = day.crew().find(task.id());
      done(task, progress, planned)
          .or(() -> begun(day, task, progress, planned))
          .or(() -> planned)
          .filter(placed -> progress.state() != TaskState.FAILED)
          .ifPresent(placed -> found.add(new Found(task, placed)));
    }
    found.sort(
        Comparator.comparing((Found one) -> one.placed().start())
            .thenComparing(one -> one.task().id()));
    List<Bar> bars = new ArrayList<>();
    for (Found one : found) {
      Optional<Duration> late =
          day.outlook()
              .fit()
              .late(one.task().id())
              .or(() -> Fit.late(one.task(), one.placed()).map(Fit.Late::by));
      Kind kind = kind(day.progress(one.task()), late.isPresent());
      bars.add(new Bar(bars.size() + 1, one.task(), one.placed(), kind, late));
    }
    return bars;
  }

  /** Where it was, as far as anybody knows: as long as it takes, until it was said to be done. */
  private static Optional<Placed> done(Task task, TaskProgress progress, Optional<Placed> planned) {
    if (progress.state() != TaskState.DONE || progress.doneAt().isEmpty()) {
      return Optional.empty();
    }
    Instant end = progress.doneAt().get();
    Instant handsOff = end.minus(task.unattended());
    Instant start = handsOff.minus(Duration.between(task.start(), task.handsOff()));
    List<String> who = progress.dones().stream().map(Tick::cook).distinct().toList();
    return Optional.of(new Placed(task.id(), start, handsOff, end, who, machines(planned)));
  }

  private static List<Placed.Unit> machines(Optional<Placed> planned) {
    return planned.map(Placed::machines).orElse(List.of());
  }

  /** Since when somebody is on it, for as long as it takes, and until now at least. */
  private static Optional<Placed> begun(
      Crewed day, Task task, TaskProgress progress, Optional<Placed> planned) {
    return progress
        .onIt()
        .map(
            on -> {
              Duration hands = Duration.between(task.start(), task.handsOff());
              Instant soonest = on.since().plus(hands);
              boolean over = !hands.isZero() && soonest.isBefore(day.now());
              Instant off = over ? day.now() : soonest;
              List<String> who = hands.isZero() ? List.of() : List.of(on.cook());
              Instant end = off.plus(task.unattended());
              Optional<Placed.Hands> out =
                  planned.flatMap(Placed::unload).filter(one -> one.to().isAfter(off));
              return new Placed(
                  task.id(), on.since(), off, end, who, machines(planned), out, List.of());
            });
  }

  private static Kind kind(TaskProgress progress, boolean late) {
    return switch (progress.state()) {
      case DONE, FAILED -> Kind.DONE;
      case PROBLEM -> Kind.PROBLEM;
      case ON_IT, PART_DONE -> Kind.ON_IT;
      case TO_DO -> late ? Kind.LATE : Kind.TO_DO;
    };
  }

  /** The word for how it stands; with minutes where it is late. */
  String state(Crewed day) {
    return late.isPresent() && kind != Kind.DONE
        ? day.words().say("lanes.state.late", late.get())
        : day.words().say("lanes.state." + kind.code());
  }

  /** Its people by name, or that it names nobody; with whoever else takes it out. */
  String who(Crewed day) {
    String who =
        placed.people().isEmpty()
            ? day.words().say("lanes.nobody")
            : TurnWords.said(day.words(), placed, day::person, day::time);
    List<String> out = placed.unload().map(Placed.Hands::people).orElse(placed.people());
    return out.equals(placed.people())
        ? who
        : day.words().say("lanes.who-out", Text.of(who), Text.of(names(day, out)));
  }

  private static String names(Crewed day, List<String> people) {
    return String.join(", ", people.stream().map(day::person).toList());
  }

  /** All of it, for a lane that is nobody's. */
  Strip strip(Crewed day) {
    return strip(day, new Placed.Hands(placed.start(), placed.handsOff(), placed.people()), true);
  }

  /** Somebody's turns at it, the last with how long it stands, and when they take it out. */
  List<Strip> strips(Crewed day, String person) {
    List<Strip> strips = new ArrayList<>();
    List<Placed.Hands> turns = placed.turns();
    for (int i = 0; i < turns.size(); i++) {
      if (turns.get(i).people().contains(person)) {
        strips.add(strip(day, turns.get(i), i == turns.size() - 1));
      }
    }
    placed
        .unload()
        .filter(out -> out.people().contains(person))
        .ifPresent(out -> strips.add(unload(day, out)));
    return strips;
  }

  private Strip strip(Crewed day, Placed.Hands turn, boolean last) {
    return new Strip(
        day.link(task),
        kind.code(),
        worded(day, Draughting.brief(day.title(task))),
        worded(day, String.valueOf(number)),
        told(day, turn.from(), turn.people().isEmpty() ? who(day) : names(day, turn.people())),
        turn.from(),
        turn.to(),
        last ? placed.end() : turn.to(),
        List.of());
  }

  private Strip unload(Crewed day, Placed.Hands out) {
    return new Strip(
        day.link(task),
        kind.code(),
        day.words().say("lanes.out", Text.of(Draughting.brief(day.title(task)))),
        day.words().say("lanes.out", Text.of(String.valueOf(number))),
        day.words().say("lanes.out", Text.of(told(day, out.from(), names(day, out.people())))),
        out.from(),
        out.to(),
        out.to(),
        List.of());
  }

  /** Late and begun are said, not only shown. */
  private String worded(Crewed day, String said) {
    return switch (kind) {
      case LATE, ON_IT, PROBLEM ->
          said + " \u00b7 " + day.words().say("lanes.short." + kind.code());
      case TO_DO, DONE -> said;
    };
  }

  private String told(Crewed day, Instant at, String who) {
    return number + ". " + day.time(at) + " " + day.title(task) + ", " + who + ", " + state(day);
  }

  String machines(Crewed day) {
    return String.join(", ", placed.machines().stream().map(day::machine).toList());
  }
}
