package halfgram.pages.events;

import halfgram.desk.House;
import halfgram.event.Event;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.prep.Components;
import halfgram.prep.KitchenBook;
import halfgram.prep.Plated;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One event: covers to change, what is plated, what it uses.
 *
 * @param seen number of the event's last change
 * @param finalNumber as typed, or as it is
 */
record EventView(
    EventsView.Row row,
    String prepared,
    String seen,
    String expected,
    String finalNumber,
    String fault,
    List<Serving> servings,
    List<Log> log) {

  /** A service: its plates and what it uses. */
  record Serving(String name, String time, List<Plate> plates, List<Use> uses) {}

  /** Plates of one kind. */
  record Plate(String at, int count, String name, String diet, String contains) {}

  /** What is used of a component. */
  record Use(String name, String amount) {}

  /** What happened to it. */
  record Log(String at, String who, String said) {}

  static EventView of(
      House house,
      Event event,
      KitchenBook book,
      PrepSheet sheet,
      Typed typed,
      List<Change> changes,
      Messages words) {
    SheetWords names = new SheetWords(book, sheet, words);
    List<Serving> servings =
        sheet.allServices().stream()
            .filter(run -> run.event().equals(Optional.of(event.code())))
            .map(run -> serving(book, run, names, words))
            .toList();
    return new EventView(
        EventsView.row(house, event, words),
        String.valueOf(event.prepared(house.book().buffer())),
        typed.seen(),
        typed.expected(),
        typed.finalNumber(),
        typed.fault(),
        servings,
        changes.stream().map(change -> log(change, words)).toList());
  }

  /** The covers form as typed. */
  record Typed(String seen, String expected, String finalNumber, String fault) {
    static Typed of(Event event, long seen) {
      return new Typed(
          String.valueOf(seen),
          String.valueOf(event.covers().expected()),
          event.covers().finalNumber().isPresent()
              ? String.valueOf(event.covers().finalNumber().getAsInt())
              : "",
          "");
    }
  }

  private static Serving serving(
      KitchenBook book, ServiceRun run, SheetWords names, Messages words) {
    List<Plate> plates = new ArrayList<>();
    for (ServiceRun.Plates of : run.plates()) {
      String name = words.text(of.dish().name());
      String variant = of.variant().map(one -> ": " + words.text(one.name())).orElse("");
      String diets =
          String.join(
              " + ",
              of.diets().stream()
                  .map(code -> book.diets().get(code))
                  .map(diet -> words.text(diet.name()).toUpperCase(java.util.Locale.ROOT))
                  .toList());
      plates.add(
          new Plate(
              of.course(),
              of.count(),
              name + variant,
              diets,
              names.contains(Plated.allergens(book, of.items()))));
    }
    List<Use> uses =
        run.uses().stream()
            .map(
                use ->
                    new Use(
                        words.text(Components.name(use.version(), use.output())),
                        names.amount(use.amount())))
            .toList();
    String time = words.time(run.window().start()) + "–" + words.time(run.window().end());
    return new Serving(words.text(run.name()), time, plates, uses);
  }

  private static Log log(Change change, Messages words) {
    var covers = halfgram.book.BookStore.parse(change.detail()).path("covers");
    String said =
        covers.has("from")
            ? words.say(
                "events.covers-from-to", covers.path("from").asInt(), covers.path("to").asInt())
            : words.say("events.changed-otherwise");
    return new Log(words.moment(change.at()), change.who(), said);
  }
}
