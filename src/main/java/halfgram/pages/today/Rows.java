package halfgram.pages.today;

import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.prep.Begun;
import halfgram.prep.Make;
import halfgram.prep.Paths;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.words.Messages;
import halfgram.words.TurnWords;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Puts the tasks of a day into rows. */
final class Rows {
  /** Whose need of what at which moment. */
  private record Wanted(String formula, int output, String user, Instant readyBy) {}

  private final Shown shown;
  private final Messages words;
  private final Map<Wanted, List<Draw>> draws = new HashMap<>();

  Rows(Shown shown) {
    this.shown = shown;
    this.words = shown.words();
    for (Draw draw : shown.sheet().draws()) {
      if (!Begun.isExpected(draw.lot())) {
        Need need = draw.need();
        String formula = draw.lot().component().formula();
        draws
            .computeIfAbsent(
                new Wanted(formula, need.output(), need.user(), need.readyBy()),
                wanted -> new ArrayList<>())
            .add(draw);
      }
    }
  }

  Row row(Task task, boolean elsewhere) {
    boolean last = !task.stored().isEmpty();
    Make make = task.make();
    Output first = make.version().outputs().get(0);
    StateWords state = StateWords.of(shown, task);
    return new Row(
        "task-" + task.id().replaceAll("[^a-z0-9]", "-"),
        shown.link(task),
        shown.time(task.start()),
        shown.why(Paths.task(task.id(), "start")),
        planned(task),
        shown.names().title(task),
        elsewhere ? station(task) : "",
        task.stored().stream().map(stored -> made(task, stored)).toList(),
        last ? "" : words.say("today.part-of", amount(make.scaled().output(0))),
        last ? "" : shown.why(Paths.store(make, first, "made")),
        serves(task),
        words.say("today.ready-by", shown.time(make.readyBy())),
        shown.why(Paths.make(make, "ready-by")),
        then(task),
        notBefore(task, state),
        shown.names().contains(task.allergens()),
        kit(task),
        state);
  }

  private String station(Task task) {
    var station = shown.book().stations().get(task.station());
    return station == null ? task.station() : shown.text(station.name());
  }

  /** The time, then who, where somebody is named. */
  private List<String> planned(Task task) {
    return shown
        .planned(task)
        .map(
            placed ->
                List.of(
                    shown.time(placed.start()),
                    TurnWords.said(words, placed, shown::person, shown::time)))
        .orElse(List.of());
  }

  private String serves(Task task) {
    Set<String> serves = new LinkedHashSet<>();
    task.serves().forEach(user -> serves.add(shown.names().user(user, shown.day())));
    return String.join(", ", serves);
  }

  private String then(Task task) {
    return task.unattended().isZero() ? "" : shown.stands(task);
  }

  /** From when it may start by its deliveries; nothing once it has, or where the state says it. */
  private String notBefore(Task task, StateWords state) {
    if (shown.progress(task).state() != TaskState.TO_DO) {
      return "";
    }
    return shown.awaited(task).stream()
        .filter(one -> one.holds(shown.now()))
        .map(one -> shown.parts().notBefore(one, shown::time))
        .filter(said -> !state.detail().contains(said))
        .collect(Collectors.joining("; "));
  }

  /** Kit to wash before, or an earlier start; nothing where free-from is first. */
  private String kit(Task task) {
    return shown.sheet().contacts(task).stream()
        .filter(one -> !one.isFirst())
        .map(one -> shown.parts().contact(one, shown.names(), shown::time))
        .collect(Collectors.joining("; "));
  }

  private Row.Made made(Task task, Stored stored) {
    Make make = task.make();
    Output output = stored.output();
    List<Draw> tubs = tubs(make, output);
    Amount onHand = Amount.zero(output.unit());
    for (Draw draw : tubs) {
      onHand = onHand.plus(draw.amount());
    }
    boolean needed = stored.needed().isPositive();
    // When it was done decides, not when it had to be: the tubs have their own dates.
    boolean done = shown.progress(task).state() == TaskState.DONE;
    return new Row.Made(
        make.version().outputs().size() > 1 ? shown.text(output.name()) : "",
        amount(stored.made()),
        shown.why(stored.path()),
        amount(onHand),
        tubs.size() == 1 ? shown.why(Paths.tub(tubs.get(0))) : "",
        amount(stored.needed()),
        needed ? shown.why(Paths.store(make, output, "needed")) : "",
        done ? words.say("today.keeps-done") : keeps(stored),
        done ? shown.address("stock") : shown.why(Paths.store(make, output, "use-by")),
        stored.useByOf().isPresent() || output.hold().reason().isSafety()
            ? words.say("today.safety")
            : "");
  }

  /** The draws on tubs in store for the needs that a make serves. */
  private List<Draw> tubs(Make make, Output output) {
    List<Draw> all = new ArrayList<>();
    int index = make.version().outputs().indexOf(output);
    for (Need need : make.served()) {
      if (need.output() == index) {
        Wanted wanted = new Wanted(make.version().formula(), index, need.user(), need.readyBy());
        all.addAll(draws.getOrDefault(wanted, List.of()));
      }
    }
    return all.stream().distinct().toList();
  }

  private String keeps(Stored stored) {
    Output.Hold hold = stored.output().hold();
    List<String> parts = new ArrayList<>();
    parts.add(words.say("today.keeps", until(stored.useBy())));
    if (!hold.place().isEmpty()) {
      parts.add(hold.place());
    }
    hold.at().ifPresent(at -> parts.add(words.figures().temperature(at).whole()));
    return String.join(", ", parts);
  }

  /** Today by the clock, else with the date. */
  private String until(Instant useBy) {
    return shown.clock().of(useBy).equals(shown.day()) ? words.time(useBy) : words.moment(useBy);
  }

  private String amount(Amount amount) {
    return shown.names().amount(amount);
  }
}
