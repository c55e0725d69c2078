package halfgram.pages.events;

import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.menu.Diet;
import halfgram.words.Dots;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The events of a kitchen.
 *
 * @param past whether it shows those that are over
 * @param removed events taken out that can be put back
 */
record EventsView(List<Row> rows, boolean past, List<Row> removed) {

  /**
   * One event.
   *
   * @param draft that it is only a draft, in words; empty when it is agreed
   */
  record Row(
      String code,
      String draft,
      String date,
      String name,
      String covers,
      String said,
      String diets,
      String times) {}

  static EventsView of(House house, Events events, LocalDate today, boolean past, Messages words) {
    Comparator<Event> order = Comparator.comparing(Event::date).thenComparing(Event::code);
    List<Row> rows =
        house.book().allEvents().stream()
            .filter(event -> event.date().isBefore(today) == past)
            .sorted(past ? order.reversed() : order)
            .map(event -> row(house, event, words))
            .toList();
    List<Row> removed =
        events.listRemoved(house).stream()
            .filter(one -> one.body().path("date").asText().compareTo(today.toString()) >= 0)
            .map(
                one ->
                    new Row(
                        one.change().subject(),
                        draft(Events.isDraft(one.body()), words),
                        words.date(LocalDate.parse(one.body().path("date").asText())),
                        name(one),
                        "",
                        "",
                        "",
                        ""))
            .toList();
    return new EventsView(rows, past, removed);
  }

  private static String name(Events.Removed removed) {
    return removed.body().path("name").isTextual()
        ? removed.body().path("name").asText()
        : removed.body().at("/name/en").asText(removed.change().subject());
  }

  static Row row(House house, Event event, Messages words) {
    boolean isFinal = event.covers().finalNumber().isPresent();
    return new Row(
        event.code(),
        draft(event.draft(), words),
        words.date(event.date()),
        words.text(event.name()),
        String.valueOf(event.covers().counted()),
        isFinal
            ? words.say("events.final-of", event.covers().expected())
            : words.say("events.expected-only"),
        diets(house, event, words),
        event.services().stream()
            .map(service -> time(service, words))
            .collect(Collectors.joining(Dots.BETWEEN)));
  }

  private static String draft(boolean draft, Messages words) {
    return draft ? words.say("events.draft") : "";
  }

  private static String time(Service service, Messages words) {
    String times = words.time(service.start()) + "–" + words.time(service.end());
    return times + " " + words.text(service.name());
  }

  static String diets(House house, Event event, Messages words) {
    return event.diets().stream()
        .map(
            count ->
                count.count()
                    + " "
                    + count.diets().stream()
                        .map(code -> diet(house, code, words))
                        .collect(Collectors.joining(" + ")))
        .collect(Collectors.joining(Dots.BETWEEN));
  }

  /** "DAIRY-FREE". */
  static String diet(House house, String code, Messages words) {
    return Optional.ofNullable(house.book().diets().get(code))
        .map(Diet::name)
        .map(words::text)
        .map(name -> name.toUpperCase(java.util.Locale.ROOT))
        .orElse(code);
  }
}
