package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import halfgram.input.Problems;
import halfgram.kitchen.Text;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;

/**
 * One JSON object while it is read: every wrong value becomes a {@link halfgram.input.Problem} with
 * its path and what would be accepted, and reading goes on with something harmless. Keys nobody
 * asked for are problems too, unless they begin with {@code x-}.
 */
final class Node {
  private final JsonNode json;
  private final String path;
  private final Problems problems;
  private final Set<String> asked = new LinkedHashSet<>();

  Node(JsonNode json, String path, Problems problems) {
    this.json = json;
    this.path = path;
    this.problems = problems;
  }

  String path() {
    return path;
  }

  /** Where a key stands; the object itself when the key is empty. */
  String path(String key) {
    return key.isEmpty() ? path : path + "." + key;
  }

  Problems problems() {
    return problems;
  }

  void problem(String key, Object value, String message, Object... args) {
    problems.add(path(key), value, message, args);
  }

  /** A problem with the value of a key as it stands in the file. */
  void refuse(String key, String message, Object... args) {
    problem(key, has(key) ? shown(get(key)) : "", message, args);
  }

  boolean has(String key) {
    asked.add(key);
    return json.has(key) && !json.get(key).isNull();
  }

  JsonNode get(String key) {
    asked.add(key);
    JsonNode value = json.get(key);
    return value == null || value.isNull() ? MissingNode.getInstance() : value;
  }

  private boolean isMissing(String key, String accepted) {
    if (has(key)) {
      return false;
    }
    problem(key, "", "problem.missing", Message.of(accepted));
    return true;
  }

  private void wrong(String key, String accepted, Object... args) {
    refuse(key, "problem.accepted", Message.of(accepted, args));
  }

  private static String shown(JsonNode value) {
    return value.isValueNode() ? value.asText() : value.toString();
  }

  /** Whether all of these were there and could be read, so that they can be compared. */
  boolean isRead(String... keys) {
    return Stream.of(keys).map(this::path).noneMatch(problems::isUnread);
  }

  /** A value of the caller's own kind: the parser answers empty when it is none. */
  <T> Optional<T> find(String key, Function<String, Optional<T>> parser, String accepted) {
    if (!has(key)) {
      return Optional.empty();
    }
    JsonNode value = get(key);
    Optional<T> parsed = value.isTextual() ? parser.apply(value.asText()) : Optional.empty();
    if (parsed.isEmpty()) {
      wrong(key, accepted);
    }
    return parsed;
  }

  private <T> T get(
      String key, Function<String, Optional<T>> parser, String accepted, T otherwise) {
    return isMissing(key, accepted) ? otherwise : find(key, parser, accepted).orElse(otherwise);
  }

  String code(String key) {
    return get(key, Wording::code, "accept.code", "");
  }

  Optional<String> findCode(String key) {
    return find(key, Wording::code, "accept.code");
  }

  String word(String key) {
    return get(key, Wording::text, "accept.word", "");
  }

  Optional<String> findWord(String key) {
    return find(key, Wording::text, "accept.word");
  }

  /** A text in one or more languages. */
  Text text(String key) {
    return isMissing(key, "accept.text") ? Text.of("?") : findText(key).orElse(Text.of("?"));
  }

  Optional<Text> findText(String key) {
    if (!has(key)) {
      return Optional.empty();
    }
    JsonNode value = get(key);
    if (value.isTextual()) {
      return find(key, Wording::text, "accept.text").map(Text::of);
    }
    TreeMap<String, String> byLanguage = new TreeMap<>();
    for (Map.Entry<String, JsonNode> entry : value.properties()) {
      Optional<String> said =
          entry.getValue().isTextual() ? Wording.text(entry.getValue().asText()) : Optional.empty();
      if (entry.getKey().matches("[a-z]{2}") && said.isPresent()) {
        byLanguage.put(entry.getKey(), said.get());
      } else {
        problem(key + "." + entry.getKey(), shown(entry.getValue()), "problem.language");
      }
    }
    if (!byLanguage.isEmpty()) {
      return Optional.of(new Text(byLanguage));
    }
    if (!value.isObject() || value.isEmpty()) {
      wrong(key, "accept.text");
    }
    return Optional.empty();
  }

  List<Text> sentences(String key) {
    List<Text> texts = new ArrayList<>();
    for (Node item : wrapped(key)) {
      item.findText("").ifPresent(text -> texts.add(Wording.marked(item, "", text)));
    }
    return texts;
  }

  /** Plain strings of a list, at least one. */
  List<String> someWords(String key, String accepted) {
    List<String> words = words(key);
    if (!has(key) || (get(key).isArray() && words.isEmpty())) {
      problem(key, "", "problem.missing", Message.of(accepted));
    }
    return words;
  }

  /** Plain strings of a list, each in its place; a problem leaves an empty one. */
  List<String> words(String key) {
    List<String> words = new ArrayList<>();
    for (Node item : wrapped(key)) {
      words.add(item.word(""));
    }
    return words;
  }

  /** Each item of a list of values, as the nameless key of an object, so that it has a path. */
  private List<Node> wrapped(String key) {
    List<Node> items = new ArrayList<>();
    JsonNode list = array(key);
    for (int i = 0; i < list.size(); i++) {
      JsonNode object = JsonNodeFactory.instance.objectNode().set("", list.get(i));
      items.add(new Node(object, path(key) + "[" + i + "]", problems));
    }
    return items;
  }

  /** One of an enum's words, in lower case with hyphens. */
  <E extends Enum<E>> E choice(String key, Class<E> type, E otherwise) {
    return choice(key, type, name -> name.toLowerCase(Locale.ROOT).replace('_', '-'), otherwise);
  }

  /** One of an enum's words, spelled from its names. */
  <E extends Enum<E>> E choice(
      String key, Class<E> type, UnaryOperator<String> spelled, E otherwise) {
    if (!has(key)) {
      return otherwise;
    }
    List<String> words = new ArrayList<>();
    for (E value : type.getEnumConstants()) {
      words.add(spelled.apply(value.name()));
    }
    int at = words.indexOf(get(key).asText());
    if (at < 0) {
      wrong(key, "accept.one-of", String.join(", ", words));
    }
    return at < 0 ? otherwise : type.getEnumConstants()[at];
  }

  boolean flag(String key) {
    if (has(key) && !get(key).isBoolean()) {
      wrong(key, "accept.flag");
    }
    return get(key).asBoolean(false);
  }

  /** A number between two, both included. */
  Optional<BigDecimal> findNumber(String key, String least, String most) {
    if (!has(key)) {
      return Optional.empty();
    }
    Optional<BigDecimal> number =
        Numbers.between(get(key), new BigDecimal(least), new BigDecimal(most));
    if (number.isEmpty()) {
      wrong(key, "accept.number", least, most);
    }
    return number;
  }

  BigDecimal number(String key, String least, String most) {
    if (!has(key)) {
      problem(key, "", "problem.missing", Message.of("accept.number", least, most));
    }
    return findNumber(key, least, most).orElse(BigDecimal.ONE);
  }

  int integer(String key, int least, int most) {
    BigDecimal number = number(key, String.valueOf(least), String.valueOf(most));
    return whole(key, number, least, most);
  }

  Optional<Integer> findInteger(String key, int least, int most) {
    return findNumber(key, String.valueOf(least), String.valueOf(most))
        .map(number -> whole(key, number, least, most));
  }

  private int whole(String key, BigDecimal number, int least, int most) {
    if (!Numbers.isWhole(number)) {
      wrong(key, "accept.integer", least, most);
      return Math.max(least, 1);
    }
    return number.intValue();
  }

  Optional<Ratio> findPercent(String key, String least, String most) {
    return findNumber(key, least, most).map(Ratio::percent);
  }

  Ratio percent(String key, Ratio otherwise, String least, String most) {
    return findPercent(key, least, most).orElse(otherwise);
  }

  Optional<Quantity> findQuantity(String key) {
    return find(key, Quantity::parse, "accept.quantity");
  }

  /** A mass; an amount of another dimension is a problem. */
  Optional<Mass> findMass(String key) {
    return find(key, Node::massOf, "accept.mass");
  }

  private static Optional<Mass> massOf(String text) {
    return Quantity.parse(text)
        .flatMap(Quantity::canonical)
        .filter(known -> known.dimension() == Dimension.MASS)
        .map(amount -> amount.mass(Rounding.TO_MICROGRAM));
  }

  /** A mass above zero, required. */
  Mass mass(String key) {
    Optional<Mass> mass = isMissing(key, "accept.mass") ? Optional.empty() : findMass(key);
    if (mass.filter(Mass::isZero).isPresent()) {
      wrong(key, "accept.mass");
    }
    return mass.filter(some -> !some.isZero()).orElse(Mass.grams("1"));
  }

  Duration duration(String key, Duration otherwise) {
    return find(key, Durations::parse, "accept.duration").orElse(otherwise);
  }

  Optional<Duration> findDuration(String key) {
    return find(key, Durations::parse, "accept.duration");
  }

  LocalTime time(String key) {
    return get(key, Moments::time, "accept.time", LocalTime.NOON);
  }

  Optional<LocalTime> findTime(String key) {
    return find(key, Moments::time, "accept.time");
  }

  LocalDate date(String key) {
    return get(key, Moments::date, "accept.date", LocalDate.EPOCH);
  }

  Optional<LocalDate> findDate(String key) {
    return find(key, Moments::date, "accept.date");
  }

  /** A moment on the kitchen's wall clock, "2026-12-05T15:20". */
  LocalDateTime moment(String key) {
    return get(key, Moments::moment, "accept.moment", LocalDate.EPOCH.atStartOfDay());
  }

  /** An object below; empty when it is absent. */
  Optional<Node> object(String key) {
    if (!has(key)) {
      return Optional.empty();
    }
    if (!get(key).isObject()) {
      wrong(key, "accept.object");
      return Optional.empty();
    }
    return Optional.of(new Node(get(key), path(key), problems));
  }

  /** An object below, required. */
  Optional<Node> need(String key, String accepted) {
    return isMissing(key, accepted) ? Optional.empty() : object(key);
  }

  /** A list; of none, and of what is none, no items. */
  private JsonNode array(String key) {
    if (has(key) && !get(key).isArray()) {
      wrong(key, "accept.list");
    }
    return get(key).isArray() ? get(key) : MissingNode.getInstance();
  }

  /** Every object of a list, each read whole and then asked for keys nobody knows. */
  <T> List<T> list(String key, Function<Node, T> reader) {
    List<T> read = new ArrayList<>();
    JsonNode list = array(key);
    for (int i = 0; i < list.size(); i++) {
      String at = path(key) + "[" + i + "]";
      if (list.get(i).isObject()) {
        Node item = new Node(list.get(i), at, problems);
        read.add(reader.apply(item));
        item.done();
      } else {
        problems.add(at, shown(list.get(i)), "problem.accepted", Message.of("accept.object"));
      }
    }
    return read;
  }

  /** As {@link #list}, and at least one. */
  <T> List<T> some(String key, Function<Node, T> reader) {
    if (!has(key) || (get(key).isArray() && get(key).isEmpty())) {
      problem(key, "", "problem.missing", Message.of("accept.some"));
    }
    return list(key, reader);
  }

  /** As {@link #list}, and there, though perhaps empty. */
  <T> List<T> all(String key, Function<Node, T> reader) {
    if (!has(key)) {
      problem(key, "", "problem.missing", Message.of("accept.list"));
    }
    return list(key, reader);
  }

  /** The object has been read: what was not asked for is not known. */
  void done() {
    for (String key : (Iterable<String>) json::fieldNames) {
      if (!asked.contains(key) && !key.startsWith("x-")) {
        problem(key, shown(json.path(key)), "problem.unknown-key", String.join(", ", asked));
      }
    }
  }
}
