package halfgram.pages.today;

import halfgram.formula.Output;
import halfgram.ingredient.Ingredient;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.Paths;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.Waiting;
import halfgram.station.Equipment;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * One task on a page of its own: when, what for, cautions, what to weigh, what comes out of it.
 *
 * @param times start, hands off, and the end of what stands alone
 * @param said what to do, and what to mind
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
    List<String> raised) {

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
        fills(shown, task),
        WeighView.of(shown, task),
        gates(words, task),
        task.stored().stream().map(stored -> kept(shown, task, stored)).toList(),
        task.stored().isEmpty() ? List.of() : raised(shown, task));
  }

  private static List<Fact> times(Shown shown, Task task) {
    List<Fact> times = new ArrayList<>();
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
    if (!task.unattended().isZero()) {
      said.add(words.say("sheet.unattended", task.unattended(), shown.time(task.end())));
    }
    if (task.hands() > 1) {
      said.add(words.say("sheet.hands", task.hands()));
    }
    Set<String> serves = new LinkedHashSet<>();
    task.serves().forEach(user -> serves.add(shown.names().user(user, shown.day())));
    said.add(words.say("today.for", String.join(", ", serves)));
    return said;
  }

  /** What it waits for now, then the times that must lie between whenever it is done. */
  private static List<String> waits(Shown shown, Task task) {
    List<String> waits = new ArrayList<>();
    if (shown.phase() != Shown.Phase.PREVIEW) {
      for (Waiting one : Waiting.of(task, shown.byId(), shown.progress(), shown.now())) {
        waits.add(shown.words().say("today.waits") + " " + StateWords.wait(shown, task, one));
      }
    }
    for (Task.Link link : task.links()) {
      boolean told = !link.min().isZero() || link.max().isPresent();
      boolean own = link.task().startsWith(task.make().id() + "/");
      if (told && own && task.kind() != Task.Kind.FRESH_BATH) {
        String after = link.task().substring(link.task().lastIndexOf('/') + 1);
        String safety = link.reason().isSafety() ? shown.words().say("sheet.safety") : "";
        waits.add(between(shown.words(), link, after) + safety);
      }
    }
    return waits;
  }

  private static String between(Messages words, Task.Link link, String after) {
    if (link.max().isEmpty()) {
      return words.say("sheet.wait", link.min(), after);
    }
    return link.min().isZero()
        ? words.say("sheet.wait-max", link.max().get(), after)
        : words.say("sheet.wait-both", link.min(), link.max().get(), after);
  }

  private static String fills(Shown shown, Task task) {
    if (task.fill().count() <= 1) {
      return "";
    }
    List<String> machines =
        task.machines().stream()
            .map(use -> shown.book().equipment().get(use.equipment()))
            .filter(java.util.Objects::nonNull)
            .map(equipment -> shown.text(equipment.name()))
            .toList();
    return shown
        .words()
        .say(
            task.weigh().isEmpty() ? "sheet.fills" : "sheet.fills-each",
            task.fill().count(),
            shown.names().amount(Amount.of(task.fill().each())),
            machines);
  }

  private static List<String> gates(Messages words, Task task) {
    return task.kind() != Task.Kind.STEP
        ? List.of()
        : task.step().check().stream()
            .map(check -> check.name().toLowerCase(Locale.ROOT).replace('_', '-'))
            .map(check -> words.say("sheet.check." + check))
            .toList();
  }

  private static Kept kept(Shown shown, Task task, Stored stored) {
    Messages words = shown.words();
    Output output = stored.output();
    List<String> how = new ArrayList<>();
    stored
        .container()
        .filter(container -> !stored.fills().isEmpty())
        .ifPresent(
            container ->
                how.add(words.say("sheet.stored-in", tubs(shown, stored), container.name())));
    if (!output.rest().min().isZero()) {
      how.add(words.say("sheet.rests", output.rest().min()));
    }
    if (!output.hold().place().isEmpty()) {
      how.add(output.hold().place());
    }
    output.hold().at().ifPresent(at -> how.add(at.toString()));
    stored.useByOf().ifPresent(of -> how.add(words.say("today.date-of", shown.names().user(of))));
    boolean needed = stored.needed().isPositive();
    boolean safety = output.hold().reason().isSafety() || stored.useByOf().isPresent();
    String until = words.moment(stored.useBy());
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
            safety ? until + " " + words.say("today.safety") : until,
            shown.why(Paths.store(task.make(), output, "use-by"))));
  }

  /** "6 x 950 g + 1 x 398 g". */
  private static String tubs(Shown shown, Stored stored) {
    List<Amount> fills = stored.fills();
    List<String> runs = new ArrayList<>();
    int from = 0;
    while (from < fills.size()) {
      int to = from;
      while (to < fills.size() && fills.get(to).compareTo(fills.get(from)) == 0) {
        to++;
      }
      String each = shown.names().amount(fills.get(from));
      runs.add(shown.words().say("sheet.stored", to - from, each));
      from = to;
    }
    return String.join(" + ", runs);
  }

  private static List<String> raised(Shown shown, Task task) {
    return task.make().raisedBy().stream()
        .map(why -> shown.words().say("sheet.raised", named(shown, why)))
        .toList();
  }

  /** A reason for raising with the machine or the ingredient by its name. */
  private static Message named(Shown shown, Message why) {
    String code = String.valueOf(why.args().get(0));
    Equipment machine = shown.book().equipment().get(code);
    Ingredient ingredient = shown.book().ingredients().get(code);
    if (why.key().equals("raised.machine") && machine != null) {
      return Message.of(why.key(), machine.name());
    }
    return ingredient != null ? Message.of(why.key(), ingredient.name()) : why;
  }
}
