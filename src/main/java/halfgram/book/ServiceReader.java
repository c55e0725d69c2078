package halfgram.book;

import halfgram.event.Curve;
import halfgram.event.RegularService;
import halfgram.event.ServiceDate;
import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.par.Par;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;

/** Reads regular services and their pars, and the curves that events use too. */
final class ServiceReader {
  /** What no kitchen plans for one service: ten tonnes, a million pieces. */
  private static final Amount MOST_MASS = Amount.grams(10_000_000);

  private static final Amount MOST_PIECES = Amount.pieces(1_000_000);

  private final Reading reading;
  private final ComponentReader components;
  private final MenuReader menu;
  private final LocalTime dayStart;
  private final Map<String, SortedSet<DayOfWeek>> daysOf = new HashMap<>();
  private final Set<List<Object>> pars = new HashSet<>();

  ServiceReader(Reading reading, ComponentReader components, MenuReader menu, LocalTime dayStart) {
    this.reading = reading;
    this.components = components;
    this.menu = menu;
    this.dayStart = dayStart;
  }

  RegularService service(Node node) {
    String code = reading.declare(Reading.Kind.SERVICE, node);
    SortedSet<DayOfWeek> days = KitchenReader.weekdays(node, "days");
    daysOf.put(code, days);
    LocalTime start = node.time("start");
    LocalTime end = node.time("end");
    checkOrder(node, start, end);
    Map<DayOfWeek, Integer> covers = new EnumMap<>(DayOfWeek.class);
    node.object("covers")
        .ifPresent(
            of -> {
              for (DayOfWeek day : DayOfWeek.values()) {
                of.findInteger(word(day), 0, 20_000).ifPresent(n -> covers.put(day, n));
              }
              of.done();
            });
    Curve curve = curve(node, start, end);
    RegularService usual =
        new RegularService(
            code, node.text("name"), days, start, end, curve, covers, new TreeMap<>());
    SortedMap<LocalDate, ServiceDate> dates = new TreeMap<>();
    List<ServiceDate> read = node.list("dates", date -> date(date, usual));
    for (int i = 0; i < read.size(); i++) {
      LocalDate date = read.get(i).date();
      if (dates.put(date, read.get(i)) != null) {
        node.problem("dates[" + i + "].date", date, "problem.duplicate", "date");
      } else if (!days.isEmpty() && !days.contains(date.getDayOfWeek())) {
        node.problem("dates[" + i + "].date", date, "problem.par-day", code);
      }
    }
    return new RegularService(code, usual.name(), days, start, end, curve, covers, dates);
  }

  private Curve fitting(Node node, Curve curve, LocalTime end) {
    for (Curve.PickUp pickUp : curve.pickUps()) {
      if (minute(pickUp.at()) > minute(end)) {
        node.problem("end", end, "problem.ends-before", pickUp.at());
        break;
      }
    }
    return curve;
  }

  /** A date that is not as usual; what it does not say is. */
  private ServiceDate date(Node node, RegularService usual) {
    LocalDate date = node.date("date");
    LocalTime start = node.has("start") ? node.time("start") : usual.start();
    LocalTime end = node.has("end") ? node.time("end") : usual.end();
    checkOrder(node, start, end);
    Curve curve =
        node.has("curve")
            ? curve(node, start, end)
            : fitting(node, usual.curve().later(minute(start) - minute(usual.start())), end);
    OptionalInt covers =
        node.findInteger("covers", 0, 20_000)
            .map(OptionalInt::of)
            .orElseGet(() -> usual.usual(date));
    return new ServiceDate(date, start, end, curve, covers, node.list("swaps", menu::replaced));
  }

  private static String word(DayOfWeek day) {
    return day.name().substring(0, 3).toLowerCase(java.util.Locale.ROOT);
  }

  /** A service must not end before it starts; times before the day start belong to the night. */
  void checkOrder(Node node, LocalTime start, LocalTime end) {
    if (node.isRead("start", "end") && minute(end) < minute(start)) {
      node.problem("end", end, "problem.ends-before", start);
    }
  }

  /** Minutes since the business day began. */
  int minute(LocalTime time) {
    int minutes = time.toSecondOfDay() / 60 - dayStart.toSecondOfDay() / 60;
    return minutes < 0 ? minutes + 24 * 60 : minutes;
  }

  Curve curve(Node node, LocalTime start, LocalTime end) {
    List<Curve.PickUp> pickUps =
        node.list(
            "curve",
            pickUp ->
                new Curve.PickUp(
                    pickUp.time("at"), Ratio.percent(pickUp.number("share", "0", "100"))));
    Ratio sum = Ratio.ZERO;
    for (int i = 0; i < pickUps.size(); i++) {
      LocalTime at = pickUps.get(i).at();
      int earliest = i == 0 ? minute(start) : minute(pickUps.get(i - 1).at()) + 1;
      boolean within = minute(at) >= earliest && minute(at) <= minute(end);
      if (node.isRead("start", "end", "curve[" + i + "].at") && !within) {
        node.problem("curve[" + i + "].at", at, "problem.pick-up", start, end);
      }
      sum = sum.plus(pickUps.get(i).share());
    }
    if (!pickUps.isEmpty() && sum.compareTo(Ratio.ONE) != 0) {
      node.problem("curve", Exact.plain(sum.percent(), 6) + " %", "problem.curve");
    }
    return new Curve(pickUps);
  }

  /** A par; one output has one amount for a service on a day, however it is named. */
  Par par(Node node) {
    String service = reading.code(Reading.Kind.SERVICE, node, "service");
    ComponentRef ref = components.component(node);
    Map<DayOfWeek, Amount> amounts = new EnumMap<>(DayOfWeek.class);
    Optional<Node> byDay = node.need("amounts", "accept.par-amounts");
    byDay.ifPresent(
        of -> {
          for (DayOfWeek day : DayOfWeek.values()) {
            Optional<Quantity> typed = of.findQuantity(word(day));
            typed.ifPresent(
                t -> {
                  Amount amount = components.amount(of, word(day), ref, t);
                  amounts.put(day, amount);
                  if (!pars.add(List.of(service, ref.formula(), components.output(ref), day))) {
                    reading.problems.addInNew(of.path(word(day)), t, "problem.par-twice", service);
                  }
                  Amount most = amount.dimension() == Dimension.COUNT ? MOST_PIECES : MOST_MASS;
                  if (amount.dimension() == most.dimension() && amount.compareTo(most) > 0) {
                    reading.problems.addInNew(of.path(word(day)), t, "problem.par-most", most);
                  }
                  SortedSet<DayOfWeek> runs = daysOf.get(service);
                  if (runs != null && !runs.contains(day)) {
                    of.problem(word(day), t, "problem.par-day", service);
                  }
                });
          }
          of.done();
        });
    return new Par(service, ref, amounts);
  }
}
