package halfgram.book;

import halfgram.formula.ComponentRef;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

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
    Optional<String> container = node.findCode("container");
    container.ifPresent(name -> reading.refer(Reading.Kind.CONTAINER, node, "container", name));
    List<Reservation> reserved = node.list("reserved", item -> reservation(item, ref));
    Amount kept =
        reserved.stream()
            .map(Reservation::amount)
            .reduce(Amount.zero(left.dimension()), Amount::plus);
    if (kept.compareTo(left) > 0) {
      node.problem("reserved", said(kept), "problem.reserved-over", said(left));
    }
    return new Lot(
        code,
        ref,
        left,
        instant(made),
        instant(useBy),
        node.findWord("place").orElse(""),
        container,
        reserved);
  }

  private static String said(Amount amount) {
    String unit = amount.dimension() == Dimension.COUNT ? " piece" : " g";
    return Exact.plain(amount.number(), 6) + unit;
  }

  private Reservation reservation(Node node, ComponentRef ref) {
    String event = node.code("event");
    reading.refer(Reading.Kind.EVENT, node, "event", event);
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
