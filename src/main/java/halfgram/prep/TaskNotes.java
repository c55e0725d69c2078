package halfgram.prep;

import halfgram.formula.Output;
import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.List;

/** The derivations of a task's times, and of what it weighs besides the mass itself. */
final class TaskNotes {
  private final KitchenBook book;
  private final Because because;

  TaskNotes(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  void note(Task task) {
    time(task, "start", Notes.time(book, task.start()));
    time(task, "hands-off", Notes.time(book, task.handsOff()));
    time(task, "end", Notes.time(book, task.end()));
    time(task, "hands-on", Notes.minutes(task.handsOn()));
    time(task, "unattended", Notes.minutes(task.unattended()));
    step(task, "hands", String.valueOf(task.hands()));
    step(task, "fills", String.valueOf(task.fill().count()));
    step(task, "fill-mass", Notes.grams(task.fill().each()));
    if (!task.late().isZero()) {
      time(task, "late", Notes.minutes(task.late()));
    }
    task.weigh().forEach(group -> group.lines().forEach(line -> note(task, line)));
    if (task.kind() != Task.Kind.THAW) {
      task.stored().forEach(stored -> note(task, stored));
    }
  }

  private void time(Task task, String field, String value) {
    because.note(
        () ->
            new Because.Note(
                Paths.task(task.id(), field),
                value,
                Message.of("why.rule.task." + field),
                inputs(task)));
  }

  private void step(Task task, String field, String value) {
    because.note(
        () ->
            new Because.Note(
                Paths.task(task.id(), field),
                value,
                Message.of("why.rule.task." + field),
                List.of(
                    Input.derived(
                        Message.of("why.basis"),
                        Notes.grams(task.make().scaled().basis()),
                        Paths.make(task.make(), "basis")))));
  }

  private List<Input> inputs(Task task) {
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        Input.derived(
            Message.of("why.ready-by"),
            Notes.time(book, task.make().readyBy()),
            Paths.make(task.make(), "ready-by")));
    for (int i = task.make().timeline().steps().size() - 1; i >= 0; i--) {
      Timeline.Span span = task.make().timeline().steps().get(i);
      var step = task.version().steps().get(i);
      inputs.add(
          Input.plain(
              Message.of("why.step", step.code()),
              Notes.minutes(java.time.Duration.between(span.start(), span.handsOff()))
                  + " + "
                  + Notes.minutes(java.time.Duration.between(span.handsOff(), span.end()))));
      for (var lag : step.after()) {
        if (!lag.min().isZero()) {
          inputs.add(
              Input.entered(
                  Message.of("why.lag", lag.step(), step.code()),
                  Notes.minutes(lag.min()),
                  Message.of("why.said-by", lag.reason().source())));
        }
      }
      if (step.code().equals(task.step().code())) {
        break;
      }
    }
    var rest = task.version().outputs().get(0).rest();
    if (!rest.min().isZero()) {
      inputs.add(
          Input.entered(
              Message.of("why.rest"),
              Notes.minutes(rest.min()),
              Message.of("why.said-by", rest.reason().source())));
    }
    return inputs;
  }

  private void note(Task task, WeighLine line) {
    Input mass =
        Input.derived(Message.of("why.mass"), Notes.grams(line.weighing().target()), line.path());
    weighed(task, line, "shown", Notes.grams(line.weighing().shown()), mass);
    weighed(task, line, "held-back", Notes.grams(line.heldBack()), mass);
    line.atLeast().ifPresent(from -> weighed(task, line, "at-least", Notes.grams(from), mass));
    weighed(task, line, "parts", String.valueOf(line.weighing().parts()), mass);
    line.counted().ifPresent(count -> weighed(task, line, "counted", count.toString(), mass));
    weighed(task, line, "pulled", Notes.grams(line.pulled()), mass);
    line.weighing()
        .dilution()
        .ifPresent(
            dilution -> {
              weighed(task, line, "one-in", String.valueOf(dilution.oneIn()), mass);
              weighed(task, line, "substance", Notes.grams(dilution.substance()), mass);
              weighed(task, line, "carrier", Notes.grams(dilution.carrier()), mass);
              weighed(task, line, "take", Notes.grams(dilution.take()), mass);
            });
  }

  private void weighed(Task task, WeighLine line, String field, String value, Input mass) {
    because.note(
        () ->
            new Because.Note(
                Paths.weigh(task.make(), task.step(), line.line(), field),
                value,
                Message.of("why.rule.weigh." + field),
                List.of(mass)));
  }

  private List<Input> useBy(Task task, Stored stored) {
    var hold = stored.output().hold();
    List<Input> inputs = new ArrayList<>();
    inputs.add(
        Input.entered(
            Message.of(hold.days().isPresent() ? "why.hold-days" : "why.hold"),
            hold.days().isPresent()
                ? String.valueOf(hold.days().getAsInt())
                : Notes.minutes(hold.max()),
            Message.of("why.said-by", hold.reason().source())));
    for (Output.Hold.LastDay last : hold.lastDays()) {
      inputs.add(
          Input.entered(
              Message.of("why.hold-days"),
              String.valueOf(last.days()),
              Message.of("why.said-by", hold.reason().source())));
    }
    inputs.add(
        Input.plain(
            Message.of("why.own-use-by"),
            Notes.time(book, task.make().useBys().get(indexOf(task, stored)))));
    stored
        .useByOf()
        .ifPresent(
            of ->
                inputs.add(
                    Input.plain(Message.of("why.date-of", of), Notes.time(book, stored.useBy()))));
    return inputs;
  }

  private static int indexOf(Task task, Stored stored) {
    return task.version().outputs().indexOf(stored.output());
  }

  private void note(Task task, Stored stored) {
    Input made = Input.derived(Message.of("why.made"), Notes.amount(stored.made()), stored.path());
    because.note(
        () ->
            new Because.Note(
                Paths.store(task.make(), stored.output(), "needed"),
                Notes.amount(stored.needed()),
                Message.of("why.rule.needed"),
                List.of(
                    Input.derived(
                        Message.of("why.wanted"),
                        Notes.grams(task.make().wanted()),
                        Paths.make(task.make(), "wanted")))));
    because.note(
        () ->
            new Because.Note(
                Paths.store(task.make(), stored.output(), "use-by"),
                Notes.time(book, stored.useBy()),
                Message.of("why.rule.use-by"),
                useBy(task, stored)));
    for (int i = 0; i < stored.fills().size(); i++) {
      String fill = Notes.amount(stored.fills().get(i));
      String field = "fill-" + (i + 1);
      because.note(
          () ->
              new Because.Note(
                  Paths.store(task.make(), stored.output(), field),
                  fill,
                  Message.of("why.rule.fill"),
                  List.of(made)));
    }
  }
}
