package halfgram.pages.deliveries;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryEntry;
import halfgram.delivery.DeliveryStand;
import halfgram.desk.House;
import halfgram.menu.Dish;
import halfgram.prep.DeliveryAnswer;
import halfgram.prep.PrepSheet;
import halfgram.prep.Served;
import halfgram.prep.ServiceRun;
import halfgram.prep.ShortPlates;
import halfgram.prep.Task;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import halfgram.words.TaskWords;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;

/** What a delivery has come to and what it means, in words; the same on every page that says it. */
public final class Told {

  /**
   * A delivery and its answer.
   *
   * @param state "EXPECTED 14:00", "LATE, 15:30", "HERE 14:05", "CALLED OFF"
   * @param tone "here", "late", "off" or "open"
   * @param holds which tasks wait, each with its times
   * @param serves which dishes of which services
   * @param last the last moment at which it still works; empty when nothing waits
   * @param tooLate by how much it is too late; empty when in time
   * @param meanwhile what can be done now, in order
   * @param shorts what less of it costs
   */
  public record One(
      String code,
      String supplier,
      String time,
      String state,
      String tone,
      String lines,
      List<String> holds,
      List<String> serves,
      String last,
      String tooLate,
      List<String> meanwhile,
      List<Less> shorts) {

    /** A line of it, and whether it does harm. */
    public record Less(String said, boolean harms) {}
  }

  private final House house;
  private final PrepSheet sheet;
  private final Messages words;
  private final SheetWords names;

  public Told(House house, PrepSheet sheet, Messages words) {
    this.house = house;
    this.sheet = sheet;
    this.words = words;
    this.names = new SheetWords(house.book(), sheet, words);
  }

  public One of(DeliveryAnswer answer) {
    DeliveryStand stand = answer.stand();
    boolean tooLate = !answer.tooLateBy().isZero();
    return new One(
        answer.delivery().code(),
        answer.delivery().supplier(),
        time(stand.arrived().map(DeliveryEntry::at).orElse(stand.expected())),
        state(stand),
        tooLate ? "late" : tone(stand),
        lines(answer.delivery()),
        answer.blocked().stream()
            .map(
                one ->
                    words.say(
                        "deliveries.holds",
                        names.title(one.task()),
                        time(one.task().start()),
                        new TaskWords(house.book(), words).notBefore(one, this::time)))
            .toList(),
        answer.served().stream().map(this::serves).toList(),
        answer.lastMoment().filter(last -> counts(answer)).map(this::time).orElse(""),
        tooLate ? words.duration(answer.tooLateBy()) : "",
        answer.meanwhile().stream().map(this::meanwhile).toList(),
        answer.shorts().stream().map(this::less).flatMap(List::stream).toList());
  }

  /** Whether there is still a moment to come by: not for what is here and in time. */
  private static boolean counts(DeliveryAnswer answer) {
    return answer.stand().isAwaited()
        || !answer.tooLateBy().isZero()
        || answer.blocked().stream().anyMatch(one -> one.from().isEmpty());
  }

  static String tone(DeliveryStand stand) {
    return stand.cancelled().isPresent()
        ? "off"
        : stand.isHere() ? "here" : stand.lateBy().isZero() ? "open" : "late";
  }

  String state(DeliveryStand stand) {
    if (stand.cancelled().isPresent()) {
      return words.say("deliveries.state-off");
    }
    if (stand.isHere()) {
      DeliveryEntry here = stand.arrived().orElseThrow();
      return words.say("deliveries.state-here", time(here.at()), person(here.who()));
    }
    return stand.lateBy().isZero()
        ? words.say("deliveries.state-expected", time(stand.expected()))
        : words.say("deliveries.state-late", time(stand.expected()), stand.lateBy());
  }

  String lines(Delivery delivery) {
    return String.join(
        ", ",
        delivery.lines().stream()
            .map(line -> words.say("deliveries.line", name(line.ingredient()), line.typed()))
            .toList());
  }

  String name(String ingredient) {
    return words.text(house.book().ingredient(ingredient).name());
  }

  private String serves(Served served) {
    String service = names.user(served.run().id(), sheet.request().from());
    if (served.dishes().isEmpty()) {
      return service;
    }
    List<String> dishes = served.dishes().stream().map(Dish::name).map(words::text).toList();
    return words.say("deliveries.serves", service, String.join(", ", dishes));
  }

  private String meanwhile(Task task) {
    return words.say("deliveries.meanwhile-task", names.title(task), time(task.start()));
  }

  private List<One.Less> less(DeliveryAnswer.Less less) {
    List<String> said = new ArrayList<>();
    String name = name(less.line().ingredient());
    said.add(
        less.came().isPositive()
            ? words.say("deliveries.less", name, words.amount(less.came()), less.line().typed())
            : words.say("deliveries.nothing", name, less.line().typed()));
    for (ShortPlates plates : less.plates()) {
      said.add(
          words.say(
              "deliveries.short-plates",
              names.user(plates.run().id(), sheet.request().from()),
              plate(plates.plates()),
              plates.possible(),
              plates.plates().count(),
              plates.shortBy()));
    }
    boolean harms = !less.plates().isEmpty();
    if (!harms) {
      said.add(words.say("deliveries.short-none"));
    }
    return said.stream().map(line -> new One.Less(line, harms)).toList();
  }

  private String plate(ServiceRun.Plates plates) {
    String dish = words.text(plates.dish().name());
    if (plates.diets().isEmpty()) {
      return dish;
    }
    List<String> diets =
        plates.diets().stream()
            .map(code -> house.book().diets().get(code))
            .filter(Objects::nonNull)
            .map(diet -> words.text(diet.name()).toUpperCase(Locale.ROOT))
            .toList();
    return String.join(" + ", diets) + ": " + dish;
  }

  String person(String code) {
    return house.book().personName(code);
  }

  /** A time; with its weekday when it is of another day than the sheet. */
  String time(Instant at) {
    return house.day(at).equals(sheet.request().from()) ? words.time(at) : words.dayTime(at);
  }
}
