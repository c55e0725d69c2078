package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.event.Event;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.pages.WhyLink;
import halfgram.prep.Paths;
import halfgram.words.Messages;
import java.util.List;
import java.util.Optional;

/**
 * One event: covers to change, what is plated, what it uses.
 *
 * @param prepared covers made, buffer included
 * @param preparedWhy address of why
 * @param seen number of the event's last change
 * @param fields of the quick form
 * @param problems those that belong to no field
 * @param ahead whether Today has changes to accept
 */
record EventView(
    EventsView.Row row,
    String prepared,
    String preparedWhy,
    String spares,
    String seen,
    List<EditView.Field> fields,
    List<String> problems,
    boolean ahead,
    List<Serving> servings,
    List<Log> log) {

  /** What happened to it. */
  record Log(String at, String who, String said) {}

  /** An event as the pages ask for it. */
  record Asked(
      House house,
      Event event,
      Plans.Proposal preview,
      EditView.Sent sent,
      boolean ahead,
      List<Change> changes,
      String root) {}

  static EventView of(Asked asked, Messages words) {
    House house = asked.house();
    Event event = asked.event();
    List<Serving> servings = Serving.list(asked.preview(), event, asked.root(), words);
    int spares = event.diets().stream().mapToInt(diet -> diet.spare()).sum();
    Faults faults = new Faults(house, asked.sent().problems(), asked.sent().typed(), words);
    List<EditView.Field> fields = EditView.quick(house, asked.sent(), words);
    fields.forEach(field -> faults.take(field.name()));
    for (int i = 0; i < event.diets().size(); i++) {
      faults.take("/diets/" + i);
    }
    faults.take("/diets");
    return new EventView(
        EventsView.row(house, event, words),
        String.valueOf(event.prepared(house.book().buffer())),
        asked.preview().sheet().allServices().stream()
            .filter(run -> run.event().equals(Optional.of(event.code())))
            .findFirst()
            .map(run -> Paths.covers(run, "prepared"))
            .map(path -> WhyLink.of(asked.root(), event.date(), WhyLink.PREVIEW, path))
            .orElse(""),
        spares == 0 ? "" : words.say("events.spares", spares),
        asked.sent().seen(),
        fields,
        faults.left(),
        asked.ahead(),
        servings,
        asked.changes().stream().map(change -> log(change, words)).toList());
  }

  private static Log log(Change change, Messages words) {
    JsonNode detail = BookStore.parse(change.detail());
    JsonNode covers = detail.path("covers");
    String said;
    if (detail.has("added")) {
      said = words.say("events.log-added", covers.path("to").asInt());
    } else if (detail.has("removed")) {
      said = words.say("events.log-removed");
    } else if (covers.has("from")) {
      said =
          words.say(
              "events.covers-from-to", covers.path("from").asInt(), covers.path("to").asInt());
    } else {
      said = words.say("events.changed-otherwise");
    }
    return new Log(words.moment(change.at()), change.who(), said);
  }
}
