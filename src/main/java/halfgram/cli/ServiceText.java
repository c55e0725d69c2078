package halfgram.cli;

import halfgram.event.Course;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.formula.AllergenTrace;
import halfgram.kitchen.Text;
import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.measure.Unit;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.Plated;
import halfgram.prep.PlatingLine;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.words.Messages;
import halfgram.words.PlatingWords;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The services of a sheet as plain text: covers, plates by course and diet, what is on each. */
final class ServiceText {
  private static final int INDENT = 17;

  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Messages messages;
  private final TaskText tasks;
  private final AllergenTrace trace;
  private final StringBuilder text = new StringBuilder();

  ServiceText(KitchenBook book, PrepSheet sheet, Messages messages, TaskText tasks) {
    this.book = book;
    this.sheet = sheet;
    this.messages = messages;
    this.tasks = tasks;
    this.trace = new AllergenTrace(book.formulary(), book::ingredient);
  }

  String write() {
    for (ServiceRun run : sheet.services()) {
      String when = sheet.request().days() == 1 ? "" : messages.shortDate(run.date()) + " ";
      String hours = messages.time(run.window().start()) + "-" + messages.time(run.window().end());
      line(when + hours + "  " + Columns.left(messages.text(run.name()), 30) + covers(run));
      diets(run);
      if (run.plates().isEmpty()) {
        pars(run);
      }
      for (ServiceRun.Plates plates : run.plates()) {
        if (plates.diets().isEmpty() || !isStandard(plates)) {
          plates(run, plates);
        }
      }
    }
    return text.toString();
  }

  private String covers(ServiceRun run) {
    if (run.prepared().isEmpty()) {
      return run.covers().isPresent()
          ? messages.say("sheet.usual", run.covers().getAsInt())
          : messages.say("sheet.pars");
    }
    Optional<Event> event =
        book.events().stream()
            .filter(e -> run.event().filter(e.code()::equals).isPresent())
            .findFirst();
    boolean isFinal = event.filter(e -> e.covers().finalNumber().isPresent()).isPresent();
    int spares = event.map(e -> e.diets().stream().mapToInt(d -> d.spare()).sum()).orElse(0);
    String said =
        messages.say(
            isFinal ? "sheet.covers-final" : "sheet.covers",
            run.covers().orElse(0),
            run.prepared().getAsInt());
    return spares == 0 ? said : said + messages.say("sheet.diet-spares", spares);
  }

  /** Guests with diets apart: how many, their spares, and their plates in this service. */
  private void diets(ServiceRun run) {
    book.events().stream()
        .filter(event -> run.event().filter(event.code()::equals).isPresent())
        .flatMap(event -> event.diets().stream())
        .forEach(
            diet -> {
              int plates = ServiceRun.Plates.count(run.platesFor(diet.diets()));
              String who = String.join(" + ", names(diet.diets())).toUpperCase(Locale.ROOT);
              line("   " + messages.say("sheet.diet", who, diet.count(), diet.spare(), plates));
            });
  }

  private void pars(ServiceRun run) {
    List<String> amounts =
        run.uses().stream()
            .map(
                use ->
                    messages.amount(use.amount())
                        + " "
                        + messages.text(Components.name(use.version(), use.output()))
                        + allergens(use))
            .toList();
    detail(String.join("; ", amounts));
  }

  private String allergens(ServiceRun.Use use) {
    String contains = tasks.words().contains(trace.of(use.version()).allergenCodes());
    return contains.isEmpty() ? "" : " (" + contains + ")";
  }

  private void plates(ServiceRun run, ServiceRun.Plates plates) {
    String diets =
        plates.diets().isEmpty()
            ? ""
            : String.join(" + ", names(plates.diets())).toUpperCase(Locale.ROOT) + ": ";
    Text name =
        isStandard(plates)
            ? plates.dish().name()
            : plates.variant().map(Variant::name).orElse(plates.dish().name());
    List<ServiceRun.Plates> same = plates.diets().isEmpty() ? standard(run, plates) : List.of();
    int all = plates.count() + ServiceRun.Plates.count(same);
    line("   " + fire(run, plates) + Columns.right(all + " x ", 8) + diets + messages.text(name));
    if (!same.isEmpty()) {
      List<String> who =
          same.stream()
              .map(of -> of.count() + " " + String.join(" + ", names(of.diets())))
              .toList();
      detail(messages.say("sheet.standard-for", String.join(", ", who)));
    }
    detail(String.join(" · ", plates.items().stream().map(this::portion).toList()));
    String contains = tasks.words().contains(Plated.allergens(book, plates.items()));
    detail((contains.isEmpty() ? "" : contains + "; ") + cost(plates));
    if (plates.diets().isEmpty()) {
      PlatingLine.list(book, run).stream()
          .filter(of -> of.dish().code().equals(plates.dish().code()))
          .filter(of -> plates.course().isEmpty() || of.fire().code().equals(plates.course()))
          .forEach(of -> detail(new PlatingWords(messages).said(of)));
    }
    if (plates.diets().isEmpty() && !plates.dish().finish().isEmpty()) {
      List<String> finish = plates.dish().finish().stream().map(messages::text).toList();
      detail(messages.say("sheet.finish", String.join("; ", finish)));
    }
  }

  private String portion(PlateItem item) {
    Text name = Components.name(book, item.item());
    boolean pieces = item.typed().unit().equals(Unit.PIECE.symbol());
    String much = pieces ? item.typed().number().toPlainString() : item.typed().toString();
    return much + " " + messages.text(name);
  }

  private String cost(ServiceRun.Plates plates) {
    Money cost = Plated.cost(book.cost(), plates.items());
    return messages.say(
        cost.complete() ? "sheet.cost" : "sheet.cost-least",
        book.kitchen().currency(),
        Rounding.TO_CENT.round(cost.number()).toPlainString());
  }

  /** Plates that are the dish as it is. */
  private static boolean isStandard(ServiceRun.Plates plates) {
    return plates.variant().isEmpty();
  }

  /** Plates for diets that are the same dish as these. */
  private static List<ServiceRun.Plates> standard(ServiceRun run, ServiceRun.Plates plates) {
    return run.plates().stream()
        .filter(other -> other.course().equals(plates.course()))
        .filter(other -> other.dish().code().equals(plates.dish().code()))
        .filter(other -> !other.diets().isEmpty() && isStandard(other))
        .toList();
  }

  private List<String> names(Collection<String> diets) {
    return diets.stream()
        .map(code -> Optional.ofNullable(book.diets().get(code)))
        .flatMap(Optional::stream)
        .map(diet -> messages.text(diet.name()))
        .toList();
  }

  /** When a course is fired; blank for what is picked up along the service. */
  private String fire(ServiceRun run, ServiceRun.Plates plates) {
    return book.events().stream()
        .filter(event -> run.event().filter(event.code()::equals).isPresent())
        .map(Event::services)
        .flatMap(List::stream)
        .map(Service::courses)
        .flatMap(List::stream)
        .filter(course -> course.code().equals(plates.course()))
        .map(Course::at)
        .map(at -> at + " ")
        .findFirst()
        .orElse(" ".repeat(6));
  }

  private void detail(String said) {
    line(" ".repeat(INDENT) + Columns.wrap(said, INDENT));
  }

  private void line(String line) {
    text.append(line.stripTrailing()).append('\n');
  }
}
