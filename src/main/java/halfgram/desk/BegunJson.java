package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.prep.Begun;
import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.Thaw;
import halfgram.prep.Timeline;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Begun work as a plan keeps it: which makes, and how far; what they are stands in the plan before.
 * Of those of which nothing is wanted any more it keeps the id, {@code spent}.
 */
final class BegunJson {
  private static final String SPENT = "spent";

  private BegunJson() {}

  static String write(List<Begun> begun, SortedSet<String> spent) {
    ArrayNode list = JsonNodeFactory.instance.arrayNode();
    for (Begun one : begun) {
      ObjectNode node = list.addObject();
      node.put("make", one.make().id());
      ArrayNode started = node.putArray("started");
      one.started().forEach(started::add);
      ArrayNode done = node.putArray("done");
      one.done().forEach(done::add);
      if (one.failed()) {
        node.put("failed", true);
      }
      if (one.stretches()) {
        node.put("stretches", true);
      }
      if (one.opened().isPresent()) {
        new TreeSet<>(one.opened().get()).forEach(node.putArray("opened")::add);
      }
      if (!one.promised().isEmpty()) {
        ObjectNode promised = node.putObject("promised");
        one.promised()
            .forEach((output, amount) -> promised.put(output, amount.number().toString()));
      }
      if (!one.real().isEmpty()) {
        ObjectNode real = node.putObject("real");
        one.real().forEach((step, span) -> real.set(step, write(span)));
      }
    }
    spent.forEach(id -> list.addObject().put(SPENT, id));
    return list.toString();
  }

  private static ArrayNode write(Timeline.Span span) {
    ArrayNode moments = JsonNodeFactory.instance.arrayNode();
    moments.add(span.start().toString());
    moments.add(span.handsOff().toString());
    moments.add(span.end().toString());
    return moments;
  }

  private static SortedMap<String, Timeline.Span> real(JsonNode node) {
    SortedMap<String, Timeline.Span> real = new TreeMap<>();
    node.path("real")
        .properties()
        .forEach(
            step ->
                real.put(
                    step.getKey(),
                    new Timeline.Span(
                        Instant.parse(step.getValue().path(0).asText()),
                        Instant.parse(step.getValue().path(1).asText()),
                        Instant.parse(step.getValue().path(2).asText()))));
    return real;
  }

  private static SortedMap<String, Amount> promised(JsonNode node, FormulaVersion version) {
    SortedMap<String, Amount> promised = new TreeMap<>();
    for (Output output : version.outputs()) {
      JsonNode number = node.path("promised").path(output.code());
      if (number.isTextual()) {
        promised.put(output.code(), new Amount(new BigDecimal(number.asText()), output.unit()));
      }
    }
    return promised;
  }

  /** Whether there is begun work in it, which stands in the plan before. */
  static boolean carries(String json) {
    return BookStore.parse(json).findValue("make") != null;
  }

  /** The begun work of a plan, taken from the sheet of the plan before it; as far as it has it. */
  static List<Begun> read(String json, Optional<PrepSheet> before) {
    List<Begun> begun = new ArrayList<>();
    for (JsonNode node : BookStore.parse(json)) {
      Optional<PrepSheet> has =
          before.filter(sheet -> find(sheet, node.path("make").asText()).isPresent());
      if (has.isEmpty()) {
        continue;
      }
      PrepSheet sheet = has.get();
      Steps steps =
          new Steps(
              words(node, "started"),
              words(node, "done"),
              node.path("failed").asBoolean(),
              node.path("stretches").asBoolean(),
              real(node));
      Begun of = of(sheet, node.path("make").asText(), steps);
      Begun one = of.promising(promised(node, of.make().version()));
      begun.add(node.has("opened") ? one.dropping(words(node, "opened")) : one);
    }
    return begun;
  }

  /** Ids that the plan gave to none of its makes. */
  static SortedSet<String> readSpent(String json) {
    SortedSet<String> spent = new TreeSet<>();
    BookStore.parse(json).findValues(SPENT).forEach(id -> spent.add(id.asText()));
    return spent;
  }

  /**
   * How far a make is: codes of its steps started and done, whether it was lost, whether more can
   * still be weighed into it, and when its steps started really were or will be.
   */
  record Steps(
      SortedSet<String> started,
      SortedSet<String> done,
      boolean failed,
      boolean stretches,
      SortedMap<String, Timeline.Span> real) {
    Steps stretching(boolean now) {
      return new Steps(started, done, failed, now && !failed, real);
    }

    Steps at(SortedMap<String, Timeline.Span> pace) {
      return new Steps(started, done, failed, stretches, pace);
    }
  }

  /** A make of a sheet with all its tasks. */
  static Begun of(PrepSheet sheet, String make, Steps steps) {
    Optional<Begun> carried = findBegun(sheet, make);
    Make found = find(sheet, make).orElseThrow(() -> new IllegalStateException("no make " + make));
    // What the sheet shows is what stands: it may ask for more than the task that was carried.
    List<Task> tasks =
        new ArrayList<>(
            sheet.tasks().stream().filter(task -> task.make().id().equals(make)).toList());
    for (Task task : carried.map(Begun::tasks).orElse(List.of())) {
      if (tasks.stream().noneMatch(one -> one.id().equals(task.id()))) {
        tasks.add(task);
      }
    }
    return new Begun(
        found,
        tasks,
        steps.started(),
        steps.done(),
        steps.failed(),
        steps.stretches(),
        Optional.empty(),
        steps.real(),
        Optional.empty(),
        Optional.empty(),
        new TreeMap<>());
  }

  private static Optional<Begun> findBegun(PrepSheet sheet, String make) {
    return Stream.concat(
            sheet.begun().stream(), sheet.thaws().stream().flatMap(of -> of.begun().stream()))
        .filter(one -> one.make().id().equals(make))
        .findFirst();
  }

  /** A make that a sheet has, begun or not. */
  private static Optional<Make> find(PrepSheet sheet, String make) {
    return findBegun(sheet, make)
        .map(Begun::make)
        .or(() -> sheet.makes().stream().filter(one -> one.id().equals(make)).findFirst())
        .or(() -> findThaw(sheet, make));
  }

  private static Optional<Make> findThaw(PrepSheet sheet, String make) {
    return sheet.thaws().stream().map(Thaw::make).filter(one -> one.id().equals(make)).findFirst();
  }

  private static SortedSet<String> words(JsonNode node, String key) {
    SortedSet<String> words = new TreeSet<>();
    node.path(key).forEach(word -> words.add(word.asText()));
    return words;
  }
}
