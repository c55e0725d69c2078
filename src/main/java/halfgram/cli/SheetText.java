package halfgram.cli;

import halfgram.event.Course;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.prep.KitchenBook;
import halfgram.prep.Misfit;
import halfgram.prep.Plated;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.netting.Draw;
import halfgram.station.Person;
import halfgram.station.Station;
import halfgram.technique.bath.BathDay;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * A prep sheet as plain text to pin up: services, then each day's work by station, then the rest.
 */
final class SheetText {
  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Messages messages;
  private final TaskText tasks;
  private final StringBuilder text = new StringBuilder();

  SheetText(KitchenBook book, PrepSheet sheet, Messages messages) {
    this.book = book;
    this.sheet = sheet;
    this.messages = messages.at(book.kitchen().clock().zone());
    this.tasks = new TaskText(book, sheet, this.messages);
  }

  String write() {
    head();
    misfits();
    services();
    LocalDate day = sheet.request().from();
    for (int i = 0; i < sheet.request().days(); i++) {
      day(day.plusDays(i));
    }
    tonight();
    tubs();
    baths();
    pulls();
    warnings();
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
      line(messages.say("sheet.fits", tasks.title(next), messages.moment(next.start())));
    }
    line(messages.say("sheet.lags-only"));
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

  private void services() {
    heading(messages.say("sheet.services"), "");
    for (ServiceRun run : sheet.services()) {
      String when = sheet.request().days() == 1 ? "" : messages.shortDate(run.date()) + " ";
      line(
          when
              + messages.time(run.window().start())
              + "-"
              + messages.time(run.window().end())
              + "  "
              + Columns.left(messages.text(run.name()), 30)
              + covers(run));
      for (ServiceRun.Plates plates : run.plates()) {
        boolean own = plates.diets().isEmpty() || !isAsItIs(plates);
        if (own) {
          plates(run, plates);
        }
      }
    }
  }

  private String covers(ServiceRun run) {
    if (run.prepared().isPresent()) {
      boolean isFinal =
          book.events().stream()
              .filter(event -> run.event().filter(event.code()::equals).isPresent())
              .anyMatch(event -> event.covers().finalNumber().isPresent());
      return messages.say(
          isFinal ? "sheet.covers-final" : "sheet.covers",
          run.covers().orElse(0),
          run.prepared().getAsInt());
    }
    return run.covers().isPresent()
        ? messages.say("sheet.usual", run.covers().getAsInt())
        : messages.say("sheet.pars");
  }

  private void plates(ServiceRun run, ServiceRun.Plates plates) {
    String diets =
        plates.diets().isEmpty()
            ? ""
            : String.join(" + ", names(plates.diets())).toUpperCase(Locale.ROOT) + ": ";
    Text name =
        plates.diets().isEmpty()
            ? plates.dish().name()
            : plates
                .dish()
                .findVariant(plates.diets())
                .map(v -> v.name())
                .orElse(plates.dish().name());
    List<ServiceRun.Plates> same = plates.diets().isEmpty() ? asItIs(run, plates) : List.of();
    int all = plates.count() + same.stream().mapToInt(ServiceRun.Plates::count).sum();
    line("   " + fire(run, plates) + Columns.right(all + " x ", 8) + diets + messages.text(name));
    if (!same.isEmpty()) {
      String who =
          String.join(
              ", ",
              same.stream()
                  .map(of -> of.count() + " " + String.join(" + ", names(of.diets())))
                  .toList());
      line(" ".repeat(17) + Columns.wrap(messages.say("sheet.as-it-is", who), 17));
    }
    String contains = tasks.contains(Plated.allergens(book, plates.items()));
    Money cost = Plated.cost(book, plates.items());
    String price =
        messages.say(
            cost.complete() ? "sheet.cost" : "sheet.cost-least",
            book.kitchen().currency(),
            Rounding.TO_CENT.round(cost.number()).toPlainString());
    line(" ".repeat(17) + Columns.wrap((contains.isEmpty() ? "" : contains + "; ") + price, 17));
    if (plates.diets().isEmpty() && !plates.dish().finish().isEmpty()) {
      String finish =
          String.join("; ", plates.dish().finish().stream().map(messages::text).toList());
      line(" ".repeat(17) + Columns.wrap(messages.say("sheet.finish", finish), 17));
    }
  }

  /** Plates for a diet that are the dish as it is. */
  private static boolean isAsItIs(ServiceRun.Plates plates) {
    return plates.dish().findVariant(plates.diets()).isEmpty();
  }

  private static List<ServiceRun.Plates> asItIs(ServiceRun run, ServiceRun.Plates plates) {
    return run.plates().stream()
        .filter(other -> other.course().equals(plates.course()))
        .filter(other -> other.dish().code().equals(plates.dish().code()))
        .filter(other -> !other.diets().isEmpty() && isAsItIs(other))
        .toList();
  }

  private List<String> names(Collection<String> diets) {
    return diets.stream()
        .map(code -> book.diets().get(code))
        .filter(java.util.Objects::nonNull)
        .map(diet -> messages.text(diet.name()))
        .toList();
  }

  private String fire(ServiceRun run, ServiceRun.Plates plates) {
    for (var event : book.events()) {
      if (run.event().filter(event.code()::equals).isEmpty()) {
        continue;
      }
      for (var service : event.services()) {
        for (Course course : service.courses()) {
          if (course.code().equals(plates.course())) {
            return course.at() + " ";
          }
        }
      }
    }
    return " ".repeat(6);
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
      heading(messages.text(station.name()) + date, people(station, day, work));
      work.forEach(task -> text.append(tasks.write(task, day)));
    }
  }

  /** The day under which a task is shown; what is late from before stands under the first. */
  private LocalDate shownDay(Task task) {
    LocalDate day = book.kitchen().clock().of(task.start());
    return day.isBefore(sheet.request().from()) ? sheet.request().from() : day;
  }

  private String people(Station station, LocalDate day, List<Task> work) {
    List<String> names =
        book.people().stream()
            .filter(person -> person.stations().contains(station.code()))
            .filter(person -> !person.on(day).isZero())
            .map(Person::name)
            .toList();
    Duration handsOn = work.stream().map(Task::handsOn).reduce(Duration.ZERO, Duration::plus);
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

  private void tubs() {
    if (sheet.draws().isEmpty()) {
      return;
    }
    heading(messages.say("sheet.tubs"), "");
    for (Draw draw : sheet.draws()) {
      LocalDate day = book.kitchen().clock().of(draw.need().readyBy());
      if (day.isAfter(sheet.request().last())) {
        continue;
      }
      line(
          Columns.left(draw.lot().code(), 16)
              + Columns.right(amount(messages, draw.amount()), 11)
              + "  "
              + Columns.left(tasks.componentName(draw.lot().component()), 28)
              + Columns.left(messages.say("sheet.by", messages.moment(draw.lot().useBy())), 22)
              + tasks.user(draw.need().user()));
    }
  }

  private void baths() {
    for (PrepSheet.BathSheet bath : sheet.baths()) {
      heading(
          messages.say("sheet.baths") + ", " + messages.shortDate(bath.day()),
          messages.say("sheet.bath-spares", bath.answer().spares()));
      for (BathDay.Use use : bath.answer().uses()) {
        line(
            messages.say(
                "sheet.bath",
                use.label(),
                use.pieces(),
                messages.time(use.from()),
                messages.time(use.to()),
                Exact.plain(BigDecimal.valueOf(use.lostMl()), 0)));
      }
    }
  }

  private void pulls() {
    if (sheet.pulls().isEmpty()) {
      return;
    }
    heading(messages.say("sheet.pulls"), "");
    sheet.pulls().entrySet().stream()
        .map(pull -> Map.entry(name(pull.getKey()), pull.getValue()))
        .sorted(Map.Entry.comparingByKey())
        .forEach(
            pull -> line(Columns.aligned(pull.getValue().number(), 1) + "g  " + pull.getKey()));
  }

  private String name(String ingredient) {
    return messages.text(book.ingredient(ingredient).name());
  }

  private void warnings() {
    if (sheet.warnings().isEmpty()) {
      line("");
      return;
    }
    heading(messages.say("sheet.warnings"), "");
    sheet.warnings().forEach(warning -> line("- " + Columns.wrap(messages.say(warning), 2)));
    line("");
  }

  private void heading(String left, String right) {
    line("");
    String upper = left.toUpperCase(Locale.ROOT);
    line(Columns.left(upper, Math.max(upper.length() + 2, Columns.WIDTH - right.length())) + right);
    line("-".repeat(Columns.WIDTH));
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }

  /** An amount for reading: whole grams from 100 g on, tenths below, kilograms from 10 kg. */
  static String amount(Messages messages, Amount amount) {
    if (amount.dimension() == Dimension.COUNT) {
      return messages.say("sheet.pieces", Exact.plain(amount.number(), 0));
    }
    BigDecimal grams = amount.number();
    if (grams.compareTo(BigDecimal.valueOf(10_000)) >= 0) {
      return Exact.plain(grams.movePointLeft(3), 3) + " kg";
    }
    return Exact.plain(grams, grams.compareTo(Exact.HUNDRED) >= 0 ? 0 : 1) + " g";
  }
}
