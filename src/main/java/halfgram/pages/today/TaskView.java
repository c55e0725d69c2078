package halfgram.pages.today;

import halfgram.formula.Output;
import halfgram.prep.Paths;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Waiting;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.TaskWords;
import halfgram.words.TurnWords;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * One task on a page of its own: when, what for, cautions, what to weigh, what comes out of it.
 *
 * @param times start, hands off, and the end of what stands alone
 * @param said what to do, and what to mind
 * @param lanes address of it in the lanes; empty where nobody worked out who does what when
 * @param gates what the chef has to say yes to
 */
record TaskView(
    String title,
    String date,
    String back,
    StateWords state,
    List<Fact> times,
    String contains,
    List<String> cautions,
    List<String> said,
    List<String> waits,
    String fills,
    List<WeighView> weigh,
    List<String> gates,
    List<Kept> kept,
    List<String> raised,
    String lanes) {

  /** A number with its name, and where it is said why. */
  record Fact(String name, String value, String href) {}

  /**
   * What is put away of one output.
   *
   * @param how into which tubs, rest, keeping
   */
  record Kept(String name, Fact made, Fact needed, List<String> how, Fact keeps) {}

  static TaskView of(Shown shown, Task task) {
    Messages words = shown.words();
    return new TaskView(
        shown.names().title(task),
        words.date(shown.day()),
        shown.dayLink(shown.day()),
        StateWords.of(shown, task),
        times(shown, task),
        shown.names().contains(task.allergens()),
        task.cautions().stream().map(code -> words.say("caution." + code)).toList(),
        said(shown, task),
        waits(shown, task),
        parts(shown).fills(task).orElse(""),
        WeighView.of(shown, task),
        parts(shown).gate(task).stream().toList(),
        task.stored().stream().map(stored -> kept(shown, task, stored)).toList(),
        whyMade(shown, task),
        lanes(shown, task));
  }

  private static String lanes(Shown shown, Task task) {
    return shown.crew().isEmpty()
        ? ""
        : shown.address("lanes/task?date=" + shown.day() + "&id=" + Visit.encoded(task.id()));
  }

  /** Why so much of it is made, and why again. */
  private static List<String> whyMade(Shown shown, Task task) {
    List<String> why = new ArrayList<>();
    if (!task.stored().isEmpty()) {
      why.addAll(parts(shown).raised(task));
      parts(shown).anew(shown.sheet(), task).ifPresent(why::add);
    }
    return why;
  }

  private static List<Fact> times(Shown shown, Task task) {
    List<Fact> times = new ArrayList<>();
    shown
        .planned(task)
        .ifPresent(
            placed ->
                times.add(
                    new Fact(
                        shown.words().say("today.task-planned"),
                        placed.people().isEmpty()
                            ? shown.time(placed.start())
                            : shown.time(placed.start())
                                + " "
                                + TurnWords.said(shown.words(), placed, shown::person, shown::time),
                        shown.address("lanes?date=" + shown.day()))));
    times.add(at(shown, "today.task-start", task, "start", shown.time(task.start())));
    times.add(at(shown, "today.task-off", task, "hands-off", shown.time(task.handsOff())));
    if (!task.unattended().isZero()) {
      times.add(at(shown, "today.task-end", task, "end", shown.time(task.end())));
    }
    times.add(
        at(shown, "today.task-hands", task, "hands-on", shown.words().duration(task.handsOn())));
    times.add(
        new Fact(
            shown.words().say("today.task-ready"),
            shown.time(task.make().readyBy()),
            shown.why(Paths.make(task.make(), "ready-by"))));
    return times;
  }

  private static Fact at(Shown shown, String key, Task task, String field, String value) {
    return new Fact(shown.words().say(key), value, shown.why(Paths.task(task.id(), field)));
  }

  private static List<String> said(Shown shown, Task task) {
    Messages words = shown.words();
    List<String> said = new ArrayList<>();
    if (task.kind() == Task.Kind.STEP) {
      said.add(shown.text(task.step().instruction()));
    }
    task.note().ifPresent(note -> said.add(words.say(note)));
    task.reminders().forEach(reminder -> said.add(words.say(reminder)));
    if (!task.unattended().isZero()) {
      said.add(shown.stands(task));
    }
    if (task.hands() > 1) {
      said.add(words.say("sheet.hands", task.hands()));
    }
    said.addAll(parts(shown).wants(task));
    shown.sheet().contacts(task).stream()
        .map(one -> parts(shown).contact(one, shown.names(), shown::time))
        .forEach(said::add);
    Set<String> serves = new LinkedHashSet<>();
    task.serves().forEach(user -> serves.add(shown.names().user(user, shown.day())));
    said.add(words.say("today.for", String.join(", ", serves)));
    return said;
  }

  /** What it waits for now, then the times that must lie between whenever it is done. */
  private static List<String> waits(Shown shown, Task task) {
    List<String> waits = new ArrayList<>();
    if (shown.phase() != Shown.Phase.PREVIEW) {
      for (Waiting one :
          Waiting.of(task, shown.byId(), shown.progress(), shown.awaited(), shown.now())) {
        waits.add(shown.words().say("today.waits") + " " + StateWords.wait(shown, task, one));
      }
    }
    task.links().forEach(link -> parts(shown).lag(task, link).ifPresent(waits::add));
    if (shown.phase() == Shown.Phase.PREVIEW) {
      shown.awaited(task).forEach(one -> waits.add(parts(shown).notBefore(one, shown::time)));
    }
    return waits;
  }

  private static TaskWords parts(Shown shown) {
    return shown.parts();
  }

  private static Kept kept(Shown shown, Task task, Stored stored) {
    Messages words = shown.words();
    Output output = stored.output();
    List<String> how = new ArrayList<>();
    parts(shown).tubs(stored).ifPresent(how::add);
    if (!output.rest().min().isZero()) {
      how.add(words.say("sheet.rests", output.rest().min()));
    }
    if (!output.hold().place().isEmpty()) {
      how.add(output.hold().place());
    }
    output.hold().at().ifPresent(at -> how.add(words.figures().temperature(at).whole()));
    stored.useByOf().ifPresent(of -> how.add(words.say("today.date-of", shown.names().user(of))));
    boolean needed = stored.needed().isPositive();
    boolean done = shown.progress(task).state() == TaskState.DONE;
    String until = done ? words.say("today.keeps-done") : words.moment(stored.useBy());
    return new Kept(
        task.version().outputs().size() > 1 ? shown.text(output.name()) : "",
        new Fact(
            words.say("today.gives"),
            shown.names().amount(stored.made()),
            shown.why(stored.path())),
        new Fact(
            words.say("today.needed"),
            shown.names().amount(stored.needed()),
            needed ? shown.why(Paths.store(task.make(), output, "needed")) : ""),
        how,
        new Fact(
            words.say("today.keeps-to"),
            stored.endsForSafety() ? until + " " + words.say("today.safety") : until,
            done ? shown.address("stock") : shown.why(Paths.store(task.make(), output, "use-by"))));
  }
}
