package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.prep.Circumstance;
import halfgram.prep.Difference;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * What a plan changed against the one before, short enough for a wall.
 *
 * @param covers services whose covers changed
 * @param moved services whose times changed
 * @param diets guests with a diet, where their number changed; empty in plans made before this was
 *     kept
 * @param tasks of the whole kitchen
 * @param stations the same by station; empty in plans made before this was kept
 * @param around what changed around the tasks; empty in plans made before this was kept
 */
public record Summary(
    List<Covers> covers,
    List<Moved> moved,
    List<Diet> diets,
    Tasks tasks,
    SortedMap<String, Tasks> stations,
    SortedSet<Circumstance> around) {

  /** Of a plan that changed nothing. */
  static final Summary NONE =
      new Summary(List.of(), List.of(), List.of(), Tasks.NONE, new TreeMap<>(), new TreeSet<>());

  /** Covers before and after; a service that came or went has 0 on one side. */
  public record Covers(Text service, int from, int to) {}

  /** Guests of an event with just these diets before and after. */
  public record Diet(Text event, SortedSet<String> diets, int from, int to) {}

  /** From when until when a service was, and is; it may be on another day. */
  public record Moved(Text service, Window from, Window to) {
    /** Whether it is at another hour or minute of the same day. */
    public boolean isSameDay(BusinessDay clock) {
      return clock.of(from.start()).equals(clock.of(to.start()));
    }
  }

  /**
   * How many tasks came, went, and moved or changed size.
   *
   * @param added tasks that came
   * @param withdrawn tasks that went
   * @param changed tasks that moved or changed size
   */
  public record Tasks(int added, int withdrawn, int changed) {
    public static final Tasks NONE = new Tasks(0, 0, 0);

    public boolean isEmpty() {
      return added == 0 && withdrawn == 0 && changed == 0;
    }

    public Tasks plus(Tasks other) {
      return new Tasks(added + other.added, withdrawn + other.withdrawn, changed + other.changed);
    }
  }

  /** Whether a wall has nothing to tell of it. */
  public boolean isEmpty() {
    return covers.isEmpty() && moved.isEmpty() && diets.isEmpty() && tasks.isEmpty();
  }

  /** Of one station; empty where the plan does not say. */
  public Optional<Tasks> tasks(String station) {
    return stations.isEmpty() && !tasks.isEmpty()
        ? Optional.empty()
        : Optional.of(stations.getOrDefault(station, Tasks.NONE));
  }

  /**
   * What a plan keeps.
   *
   * @param before the book of the plan before
   * @param after its own
   */
  static String write(Difference difference, KitchenBook before, KitchenBook after) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    ArrayNode covers = node.putArray("covers");
    ArrayNode moved = node.putArray("moved");
    for (Difference.Service service : difference.services()) {
      Text name = service.to().or(service::from).map(ServiceRun::name).orElse(Text.of("?"));
      Optional<ServiceRun> there = service.to().or(() -> onAnotherDay(service, after));
      int from = service.from().map(Summary::covers).orElse(0);
      int to = there.map(Summary::covers).orElse(0);
      if (from != to) {
        add(covers, name).put("from", from).put("to", to);
      }
      Optional<Window> was = service.from().map(ServiceRun::window);
      Optional<Window> is = there.map(ServiceRun::window);
      if (was.isPresent() && is.isPresent() && !was.equals(is)) {
        ObjectNode one = add(moved, name);
        put(one.putObject("from"), was.get());
        put(one.putObject("to"), is.get());
      }
    }
    ArrayNode guests = node.putArray("diets");
    Stream<ServiceRun> runs = difference.services().stream().flatMap(one -> one.to().stream());
    for (Diet diet : DietNews.between(before, after, runs)) {
      ObjectNode one = add(guests, diet.event()).put("from", diet.from()).put("to", diet.to());
      diet.diets().forEach(one.putArray("of")::add);
    }
    SortedMap<String, Tasks> stations = stations(difference);
    put(node, stations.values().stream().reduce(Tasks.NONE, Tasks::plus));
    ObjectNode byStation = node.putObject("stations");
    stations.forEach((station, tasks) -> put(byStation.putObject(station), tasks));
    ArrayNode around = node.putArray("around");
    difference.around().forEach(one -> around.add(one.name()));
    return node.toString();
  }

  /** A service that the plan has no more because it was moved to another day. */
  private static Optional<ServiceRun> onAnotherDay(Difference.Service service, KitchenBook after) {
    return service
        .from()
        .flatMap(
            from -> Services.run(after, from.id()).filter(to -> !to.date().equals(from.date())));
  }

  private static SortedMap<String, Tasks> stations(Difference difference) {
    SortedMap<String, Tasks> stations = new TreeMap<>();
    for (Task task : difference.added()) {
      stations.merge(task.station(), new Tasks(1, 0, 0), Tasks::plus);
    }
    for (Task task : difference.withdrawn()) {
      stations.merge(task.station(), new Tasks(0, 1, 0), Tasks::plus);
    }
    for (Difference.Changed one : difference.changed()) {
      stations.merge(one.to().station(), new Tasks(0, 0, 1), Tasks::plus);
    }
    return stations;
  }

  private static ObjectNode add(ArrayNode list, Text service) {
    ObjectNode one = list.addObject();
    service.byLanguage().forEach(one.putObject("name")::put);
    return one;
  }

  private static void put(ObjectNode node, Window window) {
    node.put("start", window.start().toString());
    node.put("end", window.end().toString());
  }

  private static void put(ObjectNode node, Tasks tasks) {
    node.put("added", tasks.added());
    node.put("withdrawn", tasks.withdrawn());
    node.put("changed", tasks.changed());
  }

  private static int covers(ServiceRun run) {
    OptionalInt covers = run.covers();
    return covers.orElse(0);
  }

  /** The summary a plan keeps. */
  public static Summary read(String json) {
    JsonNode node = BookStore.parse(json);
    List<Covers> covers = new ArrayList<>();
    for (JsonNode one : node.path("covers")) {
      covers.add(new Covers(name(one), one.path("from").asInt(), one.path("to").asInt()));
    }
    List<Moved> moved = new ArrayList<>();
    for (JsonNode one : node.path("moved")) {
      moved.add(new Moved(name(one), window(one.path("from")), window(one.path("to"))));
    }
    List<Diet> diets = new ArrayList<>();
    for (JsonNode one : node.path("diets")) {
      SortedSet<String> of = new TreeSet<>();
      one.path("of").forEach(code -> of.add(code.asText()));
      diets.add(new Diet(name(one), of, one.path("from").asInt(), one.path("to").asInt()));
    }
    SortedMap<String, Tasks> stations = new TreeMap<>();
    for (Map.Entry<String, JsonNode> entry : node.path("stations").properties()) {
      stations.put(entry.getKey(), readTasks(entry.getValue()));
    }
    SortedSet<Circumstance> around = new TreeSet<>();
    node.path("around").forEach(one -> around.add(Circumstance.valueOf(one.asText())));
    return new Summary(covers, moved, diets, readTasks(node), stations, around);
  }

  private static Text name(JsonNode one) {
    TreeMap<String, String> name = new TreeMap<>();
    for (Map.Entry<String, JsonNode> entry : one.path("name").properties()) {
      name.put(entry.getKey(), entry.getValue().asText());
    }
    return new Text(name);
  }

  private static Window window(JsonNode node) {
    return new Window(
        Instant.parse(node.path("start").asText()), Instant.parse(node.path("end").asText()));
  }

  private static Tasks readTasks(JsonNode node) {
    return new Tasks(
        node.path("added").asInt(), node.path("withdrawn").asInt(), node.path("changed").asInt());
  }
}
