package halfgram.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.input.Problem;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.prep.TickStore;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.UUID;

/**
 * The body of a call while it is read: every wrong value becomes a problem with its path and what
 * would be accepted, all at once.
 */
final class Call {
  private final JsonNode body;
  private final List<Problem> problems = new ArrayList<>();

  Call(JsonNode body) {
    this.body = body;
  }

  List<Problem> problems() {
    return problems;
  }

  /** Answers with everything that is wrong. */
  void refuse(Visit visit) {
    refuse(visit, problems);
  }

  static void refuse(Visit visit, List<Problem> problems) {
    visit.json(422, json(problems, visit.words()));
  }

  /**
   * Problems of the book as problems of a body that stands in it: below its place they begin with
   * "$" as everywhere, elsewhere with "book".
   *
   * @param place of the body in the book: "$.events[3]"
   */
  static List<Problem> within(String place, List<Problem> problems) {
    return problems.stream()
        .map(one -> new Problem(path(place, one.path()), one.value(), one.message()))
        .toList();
  }

  private static String path(String place, String path) {
    boolean inside =
        path.equals(place) || path.startsWith(place + ".") || path.startsWith(place + "[");
    return inside ? "$" + path.substring(place.length()) : path.replaceFirst("^\\$?", "book");
  }

  void problem(String key, String value, String message, Object... args) {
    problems.add(new Problem("$." + key, value, Message.of(message, args)));
  }

  Optional<String> findText(String key) {
    JsonNode value = body.path(key);
    if (value.isMissingNode() || value.isNull()) {
      return Optional.empty();
    }
    if (!value.isTextual() || value.asText().length() > 500) {
      problem(key, value.toString(), "api.accept-text");
      return Optional.empty();
    }
    return Optional.of(value.asText()).filter(text -> !text.isBlank());
  }

  /** A list of texts; none for a key that is not there. */
  List<String> texts(String key) {
    List<String> texts = new ArrayList<>();
    JsonNode list = body.path(key);
    if (has(key) && !list.isArray()) {
      problem(key, list.toString(), "api.accept-texts");
    }
    for (JsonNode one : list) {
      if (one.isTextual() && one.asText().length() <= 500) {
        texts.add(one.asText());
      } else {
        problem(key, one.toString(), "api.accept-texts");
      }
    }
    return texts;
  }

  String text(String key) {
    int before = problems.size();
    Optional<String> text = findText(key);
    if (text.isEmpty() && problems.size() == before) {
      problem(key, "", "api.accept-text");
    }
    return text.orElse("");
  }

  long number(String key, long least) {
    JsonNode value = body.path(key);
    BigDecimal number = value.isNumber() ? value.decimalValue() : BigDecimal.valueOf(-1);
    boolean whole = number.stripTrailingZeros().scale() <= 0 && number.precision() < 19;
    if (!value.isNumber() || !whole || number.longValue() < least) {
      problem(key, value.isMissingNode() ? "" : value.toString(), "api.accept-number", least);
      return least;
    }
    return number.longValue();
  }

  Optional<Long> findNumber(String key, long least) {
    return has(key) ? Optional.of(number(key, least)) : Optional.empty();
  }

  /** A decimal number that is not negative. */
  Optional<BigDecimal> findDecimal(String key) {
    JsonNode value = body.path(key);
    if (!has(key)) {
      return Optional.empty();
    }
    if (!value.isNumber() || value.decimalValue().signum() < 0 || value.asText().length() > 20) {
      problem(key, value.toString(), "api.accept-decimal");
      return Optional.empty();
    }
    return Optional.of(value.decimalValue());
  }

  /** Whether a field is there and true. */
  boolean flag(String key) {
    JsonNode value = body.path(key);
    if (has(key) && !value.isBoolean()) {
      problem(key, value.toString(), "api.accept-flag");
    }
    return value.asBoolean();
  }

  boolean has(String key) {
    return !body.path(key).isMissingNode() && !body.path(key).isNull();
  }

  Optional<UUID> findUuid(String key) {
    Optional<String> text = findText(key);
    Optional<UUID> uuid = text.flatMap(Call::uuid);
    if (text.isPresent() && uuid.isEmpty()) {
      problem(key, text.get(), "api.accept-uuid");
    }
    return uuid;
  }

  static Optional<UUID> uuid(String text) {
    return text.matches("[0-9a-fA-F]{8}(-[0-9a-fA-F]{4}){3}-[0-9a-fA-F]{12}")
        ? Optional.of(UUID.fromString(text))
        : Optional.empty();
  }

  /** Where an entry comes from: the device and its own number of it, which it has to say. */
  TickStore.Origin origin(Instant now) {
    Optional<UUID> device = findUuid("device");
    if (device.isEmpty() && problems.stream().noneMatch(one -> one.path().equals("$.device"))) {
      problem("device", "", "api.accept-uuid");
    }
    return new TickStore.Origin(
        device.orElse(new UUID(0, 0)),
        number("sequence", 0),
        findMoment("deviceTime").orElse(now),
        findNumber("deviceOffsetMinutes", -1440).orElse(0L).intValue());
  }

  LocalDate date(String key, LocalDate otherwise) {
    Optional<String> text = findText(key);
    try {
      return text.map(LocalDate::parse).orElse(otherwise);
    } catch (DateTimeParseException e) {
      problem(key, text.orElse(""), "accept.date");
      return otherwise;
    }
  }

  /** A moment with its offset. */
  Optional<Instant> findMoment(String key) {
    Optional<String> text = findText(key);
    try {
      return text.map(Instant::parse);
    } catch (DateTimeParseException e) {
      problem(key, text.orElse(""), "api.accept-moment");
      return Optional.empty();
    }
  }

  /** A list of codes; none when it is not there. */
  SortedSet<String> words(String key) {
    SortedSet<String> words = new TreeSet<>();
    JsonNode list = body.path(key);
    if (has(key) && !list.isArray()) {
      problem(key, list.toString(), "api.accept-text");
    }
    list.forEach(one -> words.add(one.asText()));
    return words;
  }

  /** An amount, as the book writes it ("1.2 kg", "14 piece"). */
  Optional<Amount> findAmount(String key) {
    Optional<String> text = findText(key);
    Optional<Amount> amount =
        text.flatMap(Quantity::parse)
            .flatMap(Quantity::canonical)
            .filter(known -> known.dimension() != Dimension.VOLUME);
    if (text.isPresent() && amount.isEmpty()) {
      problem(key, text.get(), "accept.quantity");
    }
    return amount;
  }

  <E extends Enum<E>> Optional<E> choice(String key, Class<E> type) {
    String word = text(key);
    List<String> words = new ArrayList<>();
    for (E one : type.getEnumConstants()) {
      String spelled = word(one);
      words.add(spelled);
      if (spelled.equals(word)) {
        return Optional.of(one);
      }
    }
    if (!word.isEmpty()) {
      problem(key, word, "problem.accepted", Message.of("accept.one-of", String.join(", ", words)));
    }
    return Optional.empty();
  }

  /** A name of ours as the API spells it: lower case, hyphens. */
  static String word(Enum<?> one) {
    return one.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** The problems as an answer. */
  static String json(List<Problem> problems, Messages words) {
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    answer.put("kind", "bad-input");
    answer.put("said", words.say("api.problems", problems.size()));
    list(answer.putArray("problems"), problems, words);
    return answer.toString();
  }

  /** What is done all the same, and told of; nothing when there is nothing to doubt. */
  static void tell(ObjectNode answer, List<Problem> doubts, Messages words) {
    if (!doubts.isEmpty()) {
      list(answer.putArray("doubts"), doubts, words);
    }
  }

  private static void list(ArrayNode list, List<Problem> problems, Messages words) {
    for (Problem problem : problems) {
      ObjectNode one = list.addObject();
      one.put("path", problem.path());
      one.put("value", problem.value());
      one.put("said", words.say(problem.message()));
    }
  }
}
