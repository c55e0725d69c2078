package halfgram.book;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryEntry;
import halfgram.delivery.DeliveryStand;
import halfgram.ingredient.Ingredient;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Temperature;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Reads deliveries and what was entered of them. */
final class DeliveryReader {
  private final Reading reading;
  private final Map<String, Ingredient> ingredients;
  private final BusinessDay clock;

  DeliveryReader(Reading reading, Map<String, Ingredient> ingredients, BusinessDay clock) {
    this.reading = reading;
    this.ingredients = ingredients;
    this.clock = clock;
  }

  Delivery delivery(Node node) {
    String code = reading.declare(Reading.Kind.DELIVERY, node);
    String supplier = node.word("supplier");
    LocalDate date = node.date("date");
    LocalTime expected = node.time("expected");
    Optional<Duration> checkIn = node.findDuration("checkIn");
    List<Delivery.Line> lines = node.some("lines", this::line);
    once(node, lines);
    List<DeliveryEntry> entries = node.list("entries", entry -> entry(entry, date));
    onceEach(node, entries);
    Delivery delivery =
        new Delivery(
            code,
            supplier,
            date,
            clock.at(date, expected),
            checkIn.orElse(Delivery.USUAL_CHECK_IN),
            checkIn.isPresent(),
            lines,
            entries);
    onLines(node, delivery);
    return delivery;
  }

  /** What counts is about a line there is; what was undone may be about one that was taken out. */
  private static void onLines(Node node, Delivery delivery) {
    DeliveryStand stand = delivery.stand();
    for (int i = 0; i < delivery.entries().size(); i++) {
      DeliveryEntry entry = delivery.entries().get(i);
      String code = entry.ingredient().orElse("");
      if (!code.isEmpty() && delivery.findLine(code).isEmpty() && stand.counts(entry.id())) {
        String known =
            String.join(", ", delivery.lines().stream().map(Delivery.Line::ingredient).toList());
        node.problem("entries[" + i + "].ingredient", code, "problem.no-delivery-line", known);
      }
    }
  }

  private Delivery.Line line(Node node) {
    String code = reading.code(Reading.Kind.INGREDIENT, node, "ingredient");
    boolean inHouse = node.flag("inHouse");
    Optional<Quantity> typed = node.findQuantity("amount");
    if (!node.has("amount")) {
      node.problem("amount", "", "problem.missing", Message.of("accept.quantity"));
    }
    Amount amount = typed.flatMap(of -> mass(node, "amount", code, of)).orElse(Amount.grams(1));
    if (!amount.isPositive()) {
      node.refuse("amount", "problem.accepted", Message.of("accept.mass"));
    }
    return new Delivery.Line(code, amount, typed.map(Quantity::toString).orElse(""), inHouse);
  }

  private Optional<Amount> mass(Node node, String key, String ingredient, Quantity typed) {
    return Optional.ofNullable(ingredients.get(ingredient))
        .flatMap(of -> FormulaReader.mass(node, key, typed, Optional.of(of)));
  }

  /** One line for each ingredient, so that what is said of it is said of one. */
  private static void once(Node node, List<Delivery.Line> lines) {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < lines.size(); i++) {
      String code = lines.get(i).ingredient();
      if (!seen.add(code)) {
        node.problem("lines[" + i + "].ingredient", code, "problem.delivery-line");
      }
    }
  }

  private static void onceEach(Node node, List<DeliveryEntry> entries) {
    Set<UUID> seen = new HashSet<>();
    for (int i = 0; i < entries.size(); i++) {
      UUID id = entries.get(i).id();
      if (!seen.add(id)) {
        node.problem("entries[" + i + "].entry", id, "problem.entry-twice");
      }
    }
  }

  private DeliveryEntry entry(Node node, LocalDate date) {
    Optional<UUID> id = node.find("entry", DeliveryReader::uuid, "accept.uuid");
    if (!node.has("entry")) {
      node.problem("entry", "", "problem.missing", Message.of("accept.uuid"));
    }
    DeliveryEntry.Kind kind =
        node.choice("kind", DeliveryEntry.Kind.class, DeliveryEntry.Kind.ARRIVED);
    if (!node.has("kind")) {
      node.problem("kind", "", "problem.missing", Message.of("accept.entry-kind"));
    }
    Optional<LocalTime> expected = node.findTime("expected");
    LocalDate day = node.findDate("day").orElse(date);
    if (day.isBefore(date)) {
      node.problem("day", day, "problem.delivery-before", date);
    }
    Optional<String> ingredient = node.findCode("ingredient");
    Optional<Amount> came =
        node.findQuantity("came")
            .flatMap(typed -> mass(node, "came", ingredient.orElse(""), typed));
    Optional<Temperature> read = node.find("reading", Temperature::parse, "accept.temperature");
    Optional<UUID> undoes = node.find("undoes", DeliveryReader::uuid, "accept.uuid");
    needed(node, kind);
    return new DeliveryEntry(
        id.orElse(new UUID(0, 0)),
        kind,
        expected.map(time -> clock.at(day, time)),
        ingredient,
        came,
        node.findWord("reason"),
        read,
        node.word("who"),
        instant(node),
        undoes);
  }

  /** What each kind of entry cannot do without. */
  private static void needed(Node node, DeliveryEntry.Kind kind) {
    switch (kind) {
      case LATE -> need(node, "expected", "accept.time");
      case SHORT -> {
        need(node, "ingredient", "accept.code");
        need(node, "came", "accept.quantity");
      }
      case REJECTED -> {
        need(node, "ingredient", "accept.code");
        need(node, "reason", "accept.word");
      }
      case UNDO -> need(node, "undoes", "accept.uuid");
      case ARRIVED, CANCELLED -> {}
    }
  }

  private static void need(Node node, String key, String accepted) {
    if (!node.has(key)) {
      node.problem(key, "", "problem.missing", Message.of(accepted));
    }
  }

  private Instant instant(Node node) {
    return node.moment("at").atZone(clock.zone()).toInstant();
  }

  private static Optional<UUID> uuid(String text) {
    return text.matches("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}")
        ? Optional.of(UUID.fromString(text))
        : Optional.empty();
  }
}
