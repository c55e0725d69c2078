package halfgram.pages.events;

import halfgram.desk.Plans;
import halfgram.event.Course;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.measure.Unit;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import halfgram.pages.WhyLink;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.Paths;
import halfgram.prep.Plated;
import halfgram.prep.ServiceRun;
import halfgram.words.Dots;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A service of an event: its plates in the order of the courses, and what it uses. */
record Serving(
    String id, String name, String time, String pickUps, List<Plate> plates, List<Use> uses) {

  /**
   * Plates of one kind.
   *
   * @param at when its course is fired; empty for what is picked up
   * @param count with the address of why
   */
  record Plate(
      String at,
      String course,
      Linked count,
      String diet,
      String name,
      String share,
      String items,
      String contains,
      Linked cost) {}

  /** A number and the address of why it is so; empty when there is none. */
  record Linked(String said, String why) {}

  /** What is used of a component. */
  record Use(String name, Linked amount) {}

  /** The services of an event in a sheet. */
  static List<Serving> list(Plans.Proposal sheet, Event event, String root, Messages words) {
    Builder builder =
        new Builder(
            sheet.book(), event, root, new SheetWords(sheet.book(), sheet.sheet(), words), words);
    return sheet.sheet().allServices().stream()
        .filter(run -> run.event().equals(Optional.of(event.code())))
        .map(builder::serving)
        .toList();
  }

  /** Puts a service into words. */
  private record Builder(
      KitchenBook book, Event event, String root, SheetWords names, Messages words) {

    private Serving serving(ServiceRun run) {
      return new Serving(
          run.id().replaceAll("[^a-z0-9]+", "-"),
          words.text(run.name()),
          words.time(run.window().start()) + "–" + words.time(run.window().end()),
          service(run).map(this::pickUps).orElse(""),
          run.plates().stream().map(of -> plate(run, of)).toList(),
          uses(run));
    }

    /** The service a run is of: named by its code when the event has several. */
    private Optional<Service> service(ServiceRun run) {
      return event.services().size() == 1
          ? Optional.of(event.services().get(0))
          : event.services().stream()
              .filter(service -> run.id().endsWith("/" + service.code()))
              .findFirst();
    }

    private String pickUps(Service service) {
      return service.curve().pickUps().stream()
          .map(of -> of.at() + " " + Exact.plain(of.share().percent(), 2) + " %")
          .collect(Collectors.joining(", "));
    }

    private Plate plate(ServiceRun run, ServiceRun.Plates of) {
      Optional<Course> course =
          service(run).stream()
              .flatMap(service -> service.courses().stream())
              .filter(one -> one.code().equals(of.course()))
              .findFirst();
      String diets =
          of.diets().stream()
              .map(code -> Optional.ofNullable(book.diets().get(code)))
              .flatMap(Optional::stream)
              .map(diet -> words.text(diet.name()).toUpperCase(Locale.ROOT))
              .collect(Collectors.joining(" + "));
      String dish = words.text(of.dish().name());
      String variant =
          of.variant().map(Variant::name).map(words::text).map(name -> ", " + name).orElse("");
      String share =
          of.diets().isEmpty() && !of.share().isOne()
              ? words.say("events.share-of", Exact.plain(of.share().percent(), 2))
              : "";
      return new Plate(
          course.map(one -> words.time(one.at())).orElse(""),
          course.map(Course::name).map(words::text).orElse(""),
          new Linked(String.valueOf(of.count()), why(Paths.plates(run, of))),
          diets,
          dish + variant,
          share,
          isAsItIs(of)
              ? ""
              : of.items().stream().map(this::portion).collect(Collectors.joining(Dots.BETWEEN)),
          names.contains(Plated.allergens(book, of.items())),
          new Linked(cost(of), why(Paths.cost(of))));
    }

    /** Plates for a diet that the dish suits anyway: what lies on them is told above. */
    private static boolean isAsItIs(ServiceRun.Plates of) {
      return !of.diets().isEmpty() && of.variant().isEmpty();
    }

    private String portion(PlateItem item) {
      Text name = Components.name(book, item.item());
      boolean pieces = item.typed().unit().equals(Unit.PIECE.symbol());
      String much = pieces ? item.typed().number().toPlainString() : item.typed().toString();
      return much + " " + words.text(name);
    }

    private String cost(ServiceRun.Plates of) {
      Money cost = Plated.cost(book.cost(), of.items());
      String number = Rounding.TO_CENT.round(cost.number()).toPlainString();
      if (cost.complete()) {
        return number;
      }
      return cost.number().signum() > 0
          ? words.say("events.cost-least", number)
          : words.say("events.cost-none");
    }

    /** A component that several courses use is told once, with all of it. */
    private List<Use> uses(ServiceRun run) {
      Map<String, Amount> amounts = new LinkedHashMap<>();
      Map<String, String> called = new LinkedHashMap<>();
      for (ServiceRun.Use use : run.uses()) {
        String component = Components.word(book.formulary(), use.version(), use.output());
        String path = Paths.need(run.id(), component, use.amount().dimension());
        amounts.merge(path, use.amount(), Amount::plus);
        called.put(path, words.text(Components.name(use.version(), use.output())));
      }
      return amounts.entrySet().stream()
          .map(
              entry ->
                  new Use(
                      called.getOrDefault(entry.getKey(), ""),
                      new Linked(names.amount(entry.getValue()), why(entry.getKey()))))
          .toList();
    }

    /** Of a draft no plan has a number that could say why. */
    private String why(String path) {
      return event.draft() || root.isEmpty()
          ? ""
          : WhyLink.of(root, event.date(), WhyLink.PREVIEW, path);
    }
  }
}
