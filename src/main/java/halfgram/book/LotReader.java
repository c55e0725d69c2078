package halfgram.book;

import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.lot.Frozen;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;

/** Reads the tubs on hand. */
final class LotReader {
  private final Reading reading;
  private final ComponentReader components;
  private final BusinessDay clock;

  LotReader(Reading reading, ComponentReader components, BusinessDay clock) {
    this.reading = reading;
    this.components = components;
    this.clock = clock;
  }

  Lot lot(Node node) {
    String code = reading.declare(Reading.Kind.TUB, node);
    ComponentRef ref = components.component(node);
    Amount left = amount(node, "left", ref);
    LocalDateTime made = node.moment("made");
    LocalDateTime useBy = node.moment("useBy");
    if (useBy.isBefore(made)) {
      node.problem("useBy", useBy, "problem.use-by", made);
    }
    Optional<String> container = reading.findCode(Reading.Kind.CONTAINER, node, "container");
    List<Reservation> reserved = node.list("reserved", item -> reservation(item, ref));
    Amount kept =
        reserved.stream()
            .map(Reservation::amount)
            .reduce(Amount.zero(left.dimension()), Amount::plus);
    if (kept.compareTo(left) > 0) {
      node.problem("reserved", said(kept), "problem.reserved-over", said(left));
    }
    Contains known =
        new Contains(IngredientReader.allergens(reading, node), new TreeSet<>(node.words("tags")));
    Lot lot =
        new Lot(
                code,
                ref,
                left,
                instant(made),
                instant(useBy),
                node.findWord("place").orElse(""),
                container,
                reserved)
            .knowing(known);
    return frost(node, lot, made, useBy);
  }

  /** Frozen, or thawed once; never both: what was thawed is not frozen again. */
  private Lot frost(Node node, Lot lot, LocalDateTime made, LocalDateTime useBy) {
    Optional<LocalDateTime> thawed =
        node.has("thawed") ? Optional.of(node.moment("thawed")) : Optional.empty();
    thawed
        .filter(at -> at.isBefore(made))
        .ifPresent(at -> node.problem("thawed", at, "problem.use-by", made));
    Optional<Node> ice = node.object("frozen");
    if (ice.isPresent() && thawed.isPresent()) {
      node.problem("frozen", "", "problem.refrozen", thawed.get());
    }
    return ice.map(of -> frozen(of, lot, made, useBy))
        .orElse(lot.frosted(lot.useBy(), Optional.empty(), thawed.map(this::instant)));
  }

  private Lot frozen(Node node, Lot lot, LocalDateTime made, LocalDateTime useBy) {
    LocalDateTime since = node.moment("since");
    LocalDateTime until = node.moment("keepUntil");
    OptionalInt days =
        node.findInteger("days", 1, 10_000).map(OptionalInt::of).orElse(OptionalInt.empty());
    if (since.isBefore(made) || !since.isBefore(useBy)) {
      node.problem("since", since, "problem.frozen-since", made, useBy);
    }
    if (!until.isAfter(since)) {
      node.problem("keepUntil", until, "problem.keep-until", since);
    }
    node.done();
    Duration life = Duration.between(instant(since), instant(useBy));
    Frozen ice = new Frozen(instant(since), life, days);
    return lot.frosted(instant(until), Optional.of(ice), Optional.empty());
  }

  private static String said(Amount amount) {
    String unit = amount.dimension() == Dimension.COUNT ? " piece" : " g";
    return Exact.plain(amount.number(), 6) + unit;
  }

  private Reservation reservation(Node node, ComponentRef ref) {
    String event = reading.code(Reading.Kind.EVENT, node, "event");
    return new Reservation(event, amount(node, "amount", ref));
  }

  private Amount amount(Node node, String key, ComponentRef ref) {
    if (!node.has(key)) {
      node.problem(key, "", "problem.missing", Message.of("accept.output-amount"));
    }
    Optional<Quantity> typed = node.findQuantity(key);
    return typed
        .map(quantity -> components.amount(node, key, ref, quantity))
        .orElseGet(() -> components.zero(ref));
  }

  private Instant instant(LocalDateTime moment) {
    return moment.atZone(clock.zone()).toInstant();
  }
}
