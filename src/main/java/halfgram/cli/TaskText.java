package halfgram.cli;

import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.ingredient.Ingredient;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.station.Equipment;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** One task as plain text: when, what for, cautions, the weigh list, what comes out of it. */
final class TaskText {
  private static final int INDENT = 13;

  private final KitchenBook book;
  private final Messages messages;
  private final SheetWords words;
  private final WeighText weighs;
  private final StringBuilder text = new StringBuilder();

  TaskText(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.book = book;
    this.messages = messages;
    this.words = new SheetWords(book, sheet, messages);
    this.weighs = new WeighText(book, messages, INDENT);
  }

  /** What the things of the sheet are called. */
  SheetWords words() {
    return words;
  }

  String write(Task task, LocalDate day) {
    text.setLength(0);
    String times = time(task.start(), day) + "-" + time(task.handsOff(), day);
    Set<String> serves = new LinkedHashSet<>();
    task.serves().forEach(user -> serves.add(words.user(user, day)));
    String head = times + "  " + words.title(task);
    String late = task.late().isZero() ? "" : "  " + messages.say("sheet.late", task.late());
    line(Columns.left(head, 52) + late);
    detail(messages.say("sheet.for", String.join(", ", serves), time(task.make().readyBy(), day)));
    if (task.kind() == Task.Kind.STEP) {
      detail(messages.text(task.step().instruction()));
    }
    task.note().ifPresent(note -> detail(messages.say(note)));
    if (!task.handsOff().equals(task.end())) {
      Duration alone = Duration.between(task.handsOff(), task.end());
      detail(messages.say("sheet.unattended", alone, time(task.end(), day)));
    }
    if (task.hands() > 1) {
      detail(messages.say("sheet.hands", task.hands()));
    }
    String contains = words.contains(task.allergens());
    if (!contains.isEmpty()) {
      detail(contains);
    }
    task.cautions().forEach(caution -> detail(messages.say("caution." + caution)));
    waits(task);
    weigh(task);
    if (task.kind() == Task.Kind.STEP) {
      check(task.step());
    }
    task.stored().forEach(stored -> stored(task, stored));
    line("");
    return text.toString();
  }

  private void waits(Task task) {
    for (Task.Link link : task.links()) {
      boolean told = !link.min().isZero() || link.max().isPresent();
      if (!told || task.kind() == Task.Kind.FRESH_BATH || isPart(task, link)) {
        continue;
      }
      String after = link.task().substring(link.task().lastIndexOf('/') + 1);
      detail(wait(link, after) + (link.reason().isSafety() ? messages.say("sheet.safety") : ""));
    }
  }

  private String wait(Task.Link link, String after) {
    if (link.max().isEmpty()) {
      return messages.say("sheet.wait", link.min(), after);
    }
    return link.min().isZero()
        ? messages.say("sheet.wait-max", link.max().get(), after)
        : messages.say("sheet.wait-both", link.min(), link.max().get(), after);
  }

  private static boolean isPart(Task task, Task.Link link) {
    return !link.task().startsWith(task.make().id() + "/");
  }

  private void weigh(Task task) {
    if (task.fill().count() > 1) {
      String machine =
          String.join(
              ", ",
              task.machines().stream()
                  .map(use -> book.equipment().get(use.equipment()))
                  .filter(java.util.Objects::nonNull)
                  .map(equipment -> messages.text(equipment.name()))
                  .toList());
      detail(
          messages.say(
              task.weigh().isEmpty() ? "sheet.fills" : "sheet.fills-each",
              task.fill().count(),
              SheetText.amount(messages, Amount.of(task.fill().each())),
              machine));
    }
    text.append(weighs.write(task));
  }

  private void check(Step step) {
    step.check()
        .ifPresent(
            check ->
                detail(
                    messages.say(
                        "sheet.check."
                            + check.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'))));
  }

  private void stored(Task task, Stored stored) {
    Output output = stored.output();
    String needed =
        stored.made().compareTo(stored.needed()) > 0 && stored.needed().isPositive()
            ? messages.say("sheet.more-than-needed", SheetText.amount(messages, stored.needed()))
            : "";
    StringBuilder said =
        new StringBuilder(
            messages.say("sheet.gives", SheetText.amount(messages, stored.made()), needed));
    if (task.version().outputs().size() > 1) {
      said.append(' ').append(messages.text(output.name()));
    }
    stored
        .container()
        .filter(container -> !stored.fills().isEmpty())
        .ifPresent(container -> said.append("; ").append(fills(stored, container.name())));
    if (!output.rest().min().isZero()) {
      said.append("; ").append(messages.say("sheet.rests", output.rest().min()));
    }
    String place =
        output.hold().place().isEmpty() ? "" : messages.say("sheet.place", output.hold().place());
    place += output.hold().at().map(at -> messages.say("sheet.place", at)).orElse("");
    said.append("; ").append(messages.say("sheet.keeps", messages.moment(stored.useBy()), place));
    stored.useByOf().ifPresent(of -> said.append(messages.say("sheet.date-of", words.user(of))));
    if (output.hold().reason().isSafety() || stored.useByOf().isPresent()) {
      said.append(messages.say("sheet.safety"));
    }
    detail(said.toString());
    if (!stored.needed().isPositive()) {
      return;
    }
    task.make().raisedBy().forEach(why -> detail(messages.say("sheet.raised", raised(why))));
  }

  /** A reason for raising with the machine or the ingredient by its name. */
  private Message raised(Message why) {
    String code = String.valueOf(why.args().get(0));
    Equipment machine = book.equipment().get(code);
    Ingredient ingredient = book.ingredients().get(code);
    if (why.key().equals("raised.machine") && machine != null) {
      return Message.of(why.key(), machine.name());
    }
    return ingredient != null ? Message.of(why.key(), ingredient.name()) : why;
  }

  private String fills(Stored stored, Text container) {
    List<Amount> fills = stored.fills();
    List<String> runs = new ArrayList<>();
    int from = 0;
    while (from < fills.size()) {
      int to = from;
      while (to < fills.size() && fills.get(to).compareTo(fills.get(from)) == 0) {
        to++;
      }
      runs.add(
          messages.say("sheet.stored", to - from, SheetText.amount(messages, fills.get(from))));
      from = to;
    }
    return messages.say("sheet.stored-in", String.join(" + ", runs), container);
  }

  private String time(Instant instant, LocalDate day) {
    LocalDate of = book.kitchen().clock().of(instant);
    return of.equals(day) ? messages.time(instant) : messages.dayTime(instant);
  }

  private void detail(String said) {
    line(" ".repeat(INDENT) + Columns.wrap(said, INDENT));
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }
}
