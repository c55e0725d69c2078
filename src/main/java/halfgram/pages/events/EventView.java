package halfgram.pages.events;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.book.BookStore;
import halfgram.desk.House;
import halfgram.desk.Plans;
import halfgram.desk.WhatIf;
import halfgram.event.Event;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.pages.WhatIfLink;
import halfgram.pages.WhyLink;
import halfgram.prep.KitchenBook;
import halfgram.prep.Paths;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/**
 * One event: covers to change, what is plated, what it uses.
 *
 * @param prepared covers made, buffer included
 * @param preparedWhy address of why
 * @param seen number of the event's last change
 * @param fields of the quick form
 * @param sure what it asks before it stores anything
 * @param problems those that belong to no field
 * @param lanes where the lanes of its days with it are: its own day first, then those before; none
 *     when it is agreed, over or too far off
 * @param lanesFrom from when on there are some; empty unless it is too far off
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
    Sure sure,
    List<Link> lanes,
    String lanesFrom,
    boolean ahead,
    List<Serving> servings,
    List<Log> log) {

  /** A way somewhere. */
  record Link(String text, String href) {}

  /** What happened to it. */
  record Log(String at, String who, String said) {}

  /**
   * An event as the pages ask for it.
   *
   * @param preview its day, with it even when it is only a draft
   * @param today the business day
   */
  record Asked(
      House house,
      Event event,
      Plans.Proposal preview,
      EditView.Sent sent,
      boolean ahead,
      List<Change> changes,
      LocalDate today,
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
            .filter(path -> !event.draft() && !asked.root().isEmpty())
            .map(path -> WhyLink.of(asked.root(), event.date(), WhyLink.PREVIEW, path))
            .orElse(""),
        spares(words, spares),
        asked.sent().seen(),
        fields,
        faults.left(),
        asked.sent().sure(),
        lanes(asked, words),
        lanesFrom(asked, words),
        asked.ahead(),
        servings,
        asked.changes().stream().map(change -> log(asked.house().book(), change, words)).toList());
  }

  private static String spares(Messages words, int spares) {
    return switch (spares) {
      case 0 -> "";
      case 1 -> words.say("events.spare-plate");
      default -> words.say("events.spares", spares);
    };
  }

  private static List<Link> lanes(Asked asked, Messages words) {
    Event event = asked.event();
    List<LocalDate> days =
        event.draft()
            ? new ArrayList<>(WhatIf.days(asked.house().book(), event, asked.today()))
            : new ArrayList<>();
    Collections.reverse(days);
    return days.stream()
        .map(day -> new Link(words.shortDate(day), WhatIfLink.of(asked.root(), day, event.code())))
        .toList();
  }

  private static String lanesFrom(Asked asked, Messages words) {
    Event event = asked.event();
    LocalDate from = WhatIf.askedFrom(asked.house().book(), event);
    return event.draft() && from.isAfter(asked.today())
        ? words.say("events.draft-lanes-from", words.date(from))
        : "";
  }

  private static Log log(KitchenBook book, Change change, Messages words) {
    String said = said(BookStore.parse(change.detail()), words);
    return new Log(words.moment(change.at()), book.personName(change.who()), said);
  }

  private static String said(JsonNode detail, Messages words) {
    JsonNode covers = detail.path("covers");
    boolean draft = detail.path("draft").asBoolean(false);
    if (detail.has("added")) {
      String key = draft ? "events.log-added-draft" : "events.log-added";
      return words.say(key, covers.path("to").asInt());
    }
    if (detail.has("removed")) {
      return words.say("events.log-removed");
    }
    List<String> parts = new ArrayList<>();
    if (detail.has("draft")) {
      parts.add(words.say(draft ? "events.log-draft" : "events.log-agreed"));
    }
    if (covers.has("from")) {
      int from = covers.path("from").asInt();
      parts.add(words.say("events.covers-from-to", from, covers.path("to").asInt()));
    }
    return parts.isEmpty() ? words.say("events.changed-otherwise") : String.join(", ", parts);
  }
}
