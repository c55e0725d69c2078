package halfgram.pages.deliveries;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryEntry;
import halfgram.delivery.DeliveryStand;
import halfgram.desk.House;
import halfgram.input.Problem;
import halfgram.words.Messages;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One delivery: what is expected, what it holds up, what came of it.
 *
 * @param toCome whether it can still arrive, be late or be called off
 * @param here whether lines can be turned away
 * @param typed the form that was not accepted, with what is wrong with it
 * @param day from which on it can be late
 * @param ids a number of its own for each form on the page
 */
record OneView(
    Told.One told,
    String date,
    String checkIn,
    boolean toCome,
    boolean here,
    boolean off,
    List<Line> lines,
    List<Entry> entries,
    EntryForm typed,
    Map<String, String> faults,
    List<String> ids,
    LocalDate day) {

  /** An ingredient with what was ordered and what came. */
  record Line(String code, String name, String ordered, String came, String said) {}

  /** Something entered; one that counts can be undone. */
  record Entry(String id, String time, String who, String what, boolean counts, boolean isUndo) {}

  /** What is wrong with a form, by its fields. */
  static Map<String, String> faults(String place, List<Problem> problems, Messages words) {
    Map<String, String> faults = new LinkedHashMap<>();
    for (Problem problem : problems) {
      String key = problem.path().replaceFirst("^\\Q" + place + "\\E\\.?", "");
      String value = problem.value().isEmpty() ? "" : problem.value() + ": ";
      faults.merge(key, value + words.say(problem.message()), (one, other) -> one + ". " + other);
    }
    return faults;
  }

  static OneView of(
      House house,
      DeliveryStand stand,
      Told told,
      Told.One one,
      EntryForm typed,
      Map<String, String> faults,
      List<String> ids,
      LocalDate today,
      Messages words) {
    Delivery delivery = stand.delivery();
    String checkIn =
        words.say(
            delivery.checkInStated() ? "deliveries.checked" : "deliveries.checked-default",
            delivery.checkIn());
    return new OneView(
        one,
        words.date(delivery.date()),
        checkIn,
        stand.isAwaited(),
        stand.isHere(),
        stand.cancelled().isPresent(),
        delivery.lines().stream().map(line -> line(stand, line, told, words)).toList(),
        entries(house, stand, told, words),
        typed,
        faults,
        ids,
        delivery.date().isBefore(today) ? today : delivery.date());
  }

  private static Line line(DeliveryStand stand, Delivery.Line line, Told told, Messages words) {
    boolean less = stand.came(line).compareTo(line.amount()) < 0;
    DeliveryEntry rejected = stand.rejected().get(line.ingredient());
    List<String> said = new ArrayList<>();
    if (rejected != null) {
      said.add(words.say("deliveries.turned-away", rejected.reason().orElse("")));
      rejected.reading().ifPresent(read -> said.add(words.say("deliveries.read", read)));
    }
    if (line.inHouse()) {
      said.add(words.say("deliveries.in-house-said"));
    }
    return new Line(
        line.ingredient(),
        told.name(line.ingredient()),
        line.typed(),
        less ? words.amount(stand.came(line)) : "",
        String.join("; ", said));
  }

  /** What was entered, the last first. */
  private static List<Entry> entries(House house, DeliveryStand stand, Told told, Messages words) {
    List<Entry> entries = new ArrayList<>();
    for (DeliveryEntry entry : stand.delivery().entries()) {
      entries.add(
          0,
          new Entry(
              entry.id().toString(),
              words.at(house.book().kitchen()).moment(entry.at()),
              told.person(entry.who()),
              what(stand.delivery(), entry, told, words),
              stand.counts(entry.id()),
              entry.kind() == DeliveryEntry.Kind.UNDO));
    }
    return entries;
  }

  private static String what(Delivery delivery, DeliveryEntry entry, Told told, Messages words) {
    String name = entry.ingredient().map(told::name).orElse("");
    return switch (entry.kind()) {
      case ARRIVED -> words.say("deliveries.entry-arrived");
      case LATE -> words.say("deliveries.entry-late", entry.expected().map(told::time).orElse(""));
      case SHORT ->
          words.say("deliveries.entry-short", name, entry.came().map(words::amount).orElse(""));
      case REJECTED ->
          words.say(
              "deliveries.entry-rejected",
              name,
              entry.reason().orElse("")
                  + entry
                      .reading()
                      .map(read -> ", " + words.say("deliveries.read", read))
                      .orElse(""));
      case CANCELLED -> words.say("deliveries.entry-cancelled");
      case UNDO ->
          words.say(
              "deliveries.entry-undo",
              delivery.entries().stream()
                  .filter(one -> entry.undoes().filter(one.id()::equals).isPresent())
                  .findFirst()
                  .map(one -> what(delivery, one, told, words))
                  .orElse(""));
    };
  }
}
