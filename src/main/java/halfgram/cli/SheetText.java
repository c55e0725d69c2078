package halfgram.cli;

import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.Misfit;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.station.Person;
import halfgram.station.Station;
import halfgram.words.Messages;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A prep sheet as plain text to pin up: services, then each day's work by station, then the rest.
 */
final class SheetText {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Messages messages;
  private final TaskText tasks;
  private final Optional<CrewText> crew;
  private final StringBuilder text = new StringBuilder();

  SheetText(KitchenBook book, PrepSheet sheet, Messages messages) {
    this(book, sheet, Optional.empty(), messages);
  }

  /** With who does what when, where somebody asked for it. */
  SheetText(KitchenBook book, PrepSheet sheet, Optional<CrewText> crew, Messages messages) {
    this.book = book;
    this.crew = crew;
    this.sheet = sheet;
    this.messages = messages.at(book.kitchen());
    this.tasks = new TaskText(book, sheet, this.messages);
  }

  String write() {
    head();
    misfits();
    warnings();
    crew.ifPresent(of -> text.append(of.write()));
    heading(messages.say("sheet.services"), "");
    text.append(new ServiceText(book, sheet, messages, tasks).write());
    LocalDate day = sheet.request().from();
    for (int i = 0; i < sheet.request().days(); i++) {
      day(day.plusDays(i));
    }
    tonight();
    text.append(new StockText(book, sheet, messages, tasks).write());
    line("");
    line(messages.say("sheet.defer"));
    return text.toString();
  }

  private void head() {
    String title = messages.say("sheet.title", book.kitchen().name()).toUpperCase(Locale.ROOT);
    String days =
        sheet.request().days() == 1
            ? messages.date(sheet.request().from())
            : messages.say("sheet.days", sheet.request().from(), sheet.request().last());
    line(Columns.left(title, Columns.WIDTH - days.length()) + days);
    line(messages.say("sheet.as-of", sheet.request().asOf()));
    if (!sheet.fits()) {
      int count = sheet.misfits().size();
      String reasons =
          count == 1
              ? messages.say("sheet.misfits-count.one")
              : messages.say("sheet.misfits-count.many", count);
      line(messages.say("sheet.misfits", reasons));
    } else if (sheet.tasks().isEmpty()) {
      line(messages.say("sheet.fits-idle"));
    } else {
      Task next = sheet.tasks().get(0);
      line(messages.say("sheet.fits", tasks.words().title(next), messages.moment(next.start())));
    }
    line(messages.say(crew.isPresent() ? "sheet.latest-only" : "sheet.lags-only"));
    if (sheet.services().stream().allMatch(run -> run.uses().isEmpty())) {
      line(messages.say("sheet.empty"));
    }
  }

  private void misfits() {
    for (Misfit misfit : sheet.misfits()) {
      line("");
      line("!! " + Columns.wrap(messages.say(misfit.what()), 3));
      for (Message step : misfit.chain()) {
        line("   - " + Columns.wrap(messages.say(step), 5));
      }
    }
  }

  private void day(LocalDate day) {
    for (Station station : book.stations().values()) {
      List<Task> work =
          sheet.tasks().stream()
              .filter(task -> task.station().equals(station.code()))
              .filter(task -> !task.tonight())
              .filter(task -> shownDay(task).equals(day))
              .toList();
      if (work.isEmpty()) {
        continue;
      }
      String date = sheet.request().days() == 1 ? "" : ", " + messages.shortDate(day);
      heading(messages.text(station.name()) + date, people(station, day));
      work.forEach(task -> text.append(tasks.write(task, day)));
    }
  }

  /** The day under which a task is shown; what is late from before stands under the first. */
  private LocalDate shownDay(Task task) {
    LocalDate day = book.kitchen().clock().of(task.start());
    return day.isBefore(sheet.request().from()) ? sheet.request().from() : day;
  }

  private String people(Station station, LocalDate day) {
    List<String> names =
        book.people().stream()
            .filter(person -> person.stations().contains(station.code()))
            .filter(person -> !person.on(day).isZero())
            .map(Person::name)
            .toList();
    Duration handsOn =
        sheet.tasks().stream()
            .filter(task -> task.station().equals(station.code()))
            .filter(task -> shownDay(task).equals(day))
            .map(Task::handsOn)
            .reduce(Duration.ZERO, Duration::plus);
    String who = names.isEmpty() ? messages.say("sheet.nobody") : String.join(", ", names);
    return messages.say("sheet.station-people", who, handsOn);
  }

  private void tonight() {
    heading(messages.say("sheet.tonight"), "");
    if (sheet.tonight().isEmpty()) {
      line(messages.say("sheet.tonight-none"));
    }
    for (Task task : sheet.tonight()) {
      text.append(tasks.write(task, shownDay(task)));
    }
  }

  private void warnings() {
    if (sheet.warnings().isEmpty()) {
      return;
    }
    heading(messages.say("sheet.warnings"), "");
    sheet.warnings().forEach(warning -> line("- " + Columns.wrap(messages.say(warning), 2)));
  }

  private void heading(String left, String right) {
    text.append(underlined(left, right));
  }

  /** A heading over a rule, with something at its right end. */
  static String underlined(String left, String right) {
    String upper = left.toUpperCase(Locale.ROOT);
    int width = Math.max(upper.length() + 2, Columns.WIDTH - right.length());
    String line = (Columns.left(upper, width) + right).stripTrailing();
    return "\n" + line + "\n" + "-".repeat(Columns.WIDTH) + "\n";
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }
}
