package halfgram.book;

import halfgram.event.Course;
import halfgram.event.Covers;
import halfgram.event.Curve;
import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.event.Service;
import halfgram.event.Share;
import halfgram.kitchen.Text;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** Reads events, their covers, diets and services. */
final class EventReader {
  private static final int MOST_COVERS = 20_000;

  private final Reading reading;
  private final ServiceReader services;
  private final MenuReader menu;

  EventReader(Reading reading, ServiceReader services, MenuReader menu) {
    this.reading = reading;
    this.services = services;
    this.menu = menu;
  }

  Event event(Node node) {
    String code = reading.declare(Reading.Kind.EVENT, node);
    Text name = node.text("name");
    LocalDate date = node.date("date");
    Covers covers = covers(node);
    List<DietCount> diets = node.list("diets", this::diet);
    int guests = diets.stream().mapToInt(DietCount::count).sum();
    if (guests > covers.counted()) {
      node.problem("diets", guests, "problem.diets-over", covers.counted());
    }
    Set<String> codes = new HashSet<>();
    List<Service> read = node.some("services", service -> service(service, name));
    for (int i = 0; i < read.size(); i++) {
      if (!codes.add(read.get(i).code())) {
        node.problem(
            "services[" + i + "].code", read.get(i).code(), "problem.duplicate", "service");
      }
    }
    return new Event(
        code,
        name,
        date,
        covers,
        node.findPercent("buffer", "0", "100"),
        diets,
        read,
        node.flag("draft"));
  }

  private static Covers covers(Node node) {
    Optional<Node> covers = node.need("covers", "accept.covers");
    if (covers.isEmpty()) {
      return new Covers(MOST_COVERS, OptionalInt.empty());
    }
    Node of = covers.get();
    Optional<Integer> finalNumber = of.findInteger("final", 0, MOST_COVERS);
    Optional<Integer> expected = of.findInteger("expected", 0, MOST_COVERS);
    if (!of.has("expected") && !of.has("final")) {
      of.problem("expected", "", "problem.missing", Message.of("accept.covers"));
    }
    of.done();
    if (!of.isRead("expected", "final")) {
      // Nothing is held against what nobody has written.
      return new Covers(MOST_COVERS, OptionalInt.empty());
    }
    return new Covers(
        expected.or(() -> finalNumber).orElse(MOST_COVERS),
        finalNumber.map(OptionalInt::of).orElse(OptionalInt.empty()));
  }

  private DietCount diet(Node node) {
    List<String> diets = node.someWords("diets", "accept.diets");
    for (int i = 0; i < diets.size(); i++) {
      reading.refer(Reading.Kind.DIET, node, "diets[" + i + "]", diets.get(i));
    }
    int count = node.integer("count", 0, MOST_COVERS);
    int spare = node.findInteger("spare", 0, MOST_COVERS).orElse((count + 9) / 10);
    return new DietCount(new TreeSet<>(diets), count, spare);
  }

  private Service service(Node node, Text eventName) {
    String code = node.code("code");
    LocalTime start = node.time("start");
    LocalTime end = node.time("end");
    services.checkOrder(node, start, end);
    boolean hours = node.isRead("start", "end");
    List<Course> courses = node.list("courses", course -> course(course, start, end, hours));
    Set<String> codes = new HashSet<>();
    for (int i = 0; i < courses.size(); i++) {
      if (!codes.add(courses.get(i).code())) {
        node.problem(
            "courses[" + i + "].code", courses.get(i).code(), "problem.duplicate", "course");
      }
    }
    Curve curve = services.curve(node, start, end);
    List<Share> dishes = node.list("dishes", this::share);
    if (courses.isEmpty() == dishes.isEmpty()) {
      node.problem("courses", "", "problem.courses-or-dishes");
    }
    if (!courses.isEmpty() && !curve.pickUps().isEmpty()) {
      node.problem("curve", "", "problem.courses-or-dishes");
    }
    return new Service(
        code,
        node.findText("name").orElse(eventName),
        start,
        end,
        courses,
        curve,
        dishes,
        node.list("swaps", menu::replaced));
  }

  private Course course(Node node, LocalTime start, LocalTime end, boolean hours) {
    LocalTime at = node.time("at");
    boolean inside =
        services.minute(at) >= services.minute(start)
            && services.minute(at) <= services.minute(end);
    if (hours && !inside) {
      node.problem("at", at, "problem.pick-up", start, end);
    }
    List<Share> dishes = node.some("dishes", this::share);
    Ratio sum = dishes.stream().map(Share::share).reduce(Ratio.ZERO, Ratio::plus);
    if (!dishes.isEmpty() && sum.compareTo(Ratio.ONE) < 0) {
      node.problem("dishes", Exact.plain(sum.percent(), 6) + " %", "problem.split");
    }
    return new Course(node.code("code"), node.text("name"), at, dishes);
  }

  private Share share(Node node) {
    String dish = reading.code(Reading.Kind.DISH, node, "dish");
    BigDecimal share = node.findNumber("share", "0", "100").orElse(BigDecimal.valueOf(100));
    return new Share(dish, Ratio.percent(share), node.findInteger("perCover", 1, 100).orElse(1));
  }
}
