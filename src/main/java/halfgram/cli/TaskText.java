package halfgram.cli;

import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import halfgram.words.TaskWords;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.Set;

/** One task as plain text: when, what for, cautions, the weigh list, what comes out of it. */
final class TaskText {
  private static final int INDENT = 13;

  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Messages messages;
  private final SheetWords words;
  private final TaskWords parts;
  private final WeighText weighs;
  private final StringBuilder text = new StringBuilder();

  TaskText(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.book = book;
    this.sheet = sheet;
    this.messages = messages;
    this.words = new SheetWords(book, sheet, messages);
    this.parts = new TaskWords(book, messages);
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
    parts.wants(task).forEach(this::detail);
    String contains = words.contains(task.allergens());
    if (!contains.isEmpty()) {
      detail(contains);
    }
    task.cautions().forEach(caution -> detail(messages.say("caution." + caution)));
    task.reminders().forEach(reminder -> detail(messages.say(reminder)));
    sheet.awaited(task).forEach(one -> detail(parts.notBefore(one, from -> time(from, day))));
    sheet.contacts(task).forEach(one -> detail(parts.contact(one, words, at -> time(at, day))));
    task.links().forEach(link -> parts.lag(task, link).ifPresent(this::detail));
    parts.fills(task).ifPresent(this::detail);
    text.append(weighs.write(task));
    parts.gate(task).ifPresent(this::detail);
    task.stored().forEach(stored -> stored(task, stored));
    parts.anew(sheet, task).ifPresent(this::detail);
    line("");
    return text.toString();
  }

  private void stored(Task task, Stored stored) {
    detail(String.join("; ", parts.gives(task, stored, words)));
    if (stored.needed().isPositive()) {
      parts.raised(task).forEach(this::detail);
    }
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
