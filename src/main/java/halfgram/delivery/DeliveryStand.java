package halfgram.delivery;

import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * What a delivery has come to: the fold of its entries.
 *
 * <p>Rules. An undone entry counts as never made. The last time said is when it is expected; of a
 * line the last thing said counts. One that is cancelled brings nothing and holds nothing up.
 *
 * <p>Example: expected 14:00, late 15:30, arrived 15:40, short fish 1.2 kg: expected 15:30, late by
 * 1 h 30 min, in use from 15:50 with a check-in of 10 min, 1200 g of fish.
 *
 * @param expected when it was or is to be here
 * @param shorts the entry of each line that came short, by ingredient
 * @param rejected the entry of each line that was turned away, by ingredient
 */
public record DeliveryStand(
    Delivery delivery,
    Instant expected,
    Optional<DeliveryEntry> arrived,
    Optional<DeliveryEntry> cancelled,
    Map<String, DeliveryEntry> shorts,
    Map<String, DeliveryEntry> rejected) {

  static DeliveryStand of(Delivery delivery) {
    Instant expected = delivery.expected();
    Optional<DeliveryEntry> arrived = Optional.empty();
    Optional<DeliveryEntry> cancelled = Optional.empty();
    Map<String, DeliveryEntry> shorts = new LinkedHashMap<>();
    Map<String, DeliveryEntry> rejected = new LinkedHashMap<>();
    for (DeliveryEntry entry : counting(delivery)) {
      String line = entry.ingredient().orElse("");
      switch (entry.kind()) {
        case ARRIVED -> arrived = Optional.of(entry);
        case LATE -> expected = entry.expected().orElse(expected);
        case SHORT -> {
          rejected.remove(line);
          shorts.put(line, entry);
        }
        case REJECTED -> {
          shorts.remove(line);
          rejected.put(line, entry);
        }
        case CANCELLED -> cancelled = Optional.of(entry);
        case UNDO -> {}
      }
    }
    return new DeliveryStand(
        delivery, expected, arrived, cancelled, Map.copyOf(shorts), Map.copyOf(rejected));
  }

  /** The entries that nobody has undone. */
  private static List<DeliveryEntry> counting(Delivery delivery) {
    Set<UUID> undone = new HashSet<>();
    delivery.entries().forEach(entry -> entry.undoes().ifPresent(undone::add));
    return delivery.entries().stream()
        .filter(entry -> entry.kind() != DeliveryEntry.Kind.UNDO)
        .filter(entry -> !undone.contains(entry.id()))
        .toList();
  }

  public boolean isHere() {
    return arrived.isPresent();
  }

  /** Whether it is still to come. */
  public boolean isAwaited() {
    return arrived.isEmpty() && cancelled.isEmpty();
  }

  /** Whether an entry counts, so that it can be undone. */
  public boolean counts(UUID entry) {
    return counting(delivery).stream().anyMatch(one -> one.id().equals(entry));
  }

  /** By how much it is later than it was ordered for; zero when it is not. */
  public Duration lateBy() {
    Duration late = Duration.between(delivery.expected(), expected);
    return late.isNegative() ? Duration.ZERO : late;
  }

  /** The last day on which it is waited for: when it came or is to come, not before its own. */
  public LocalDate lastDay(BusinessDay clock) {
    LocalDate day = clock.of(arrived.map(DeliveryEntry::at).orElse(expected));
    return day.isBefore(delivery.date()) ? delivery.date() : day;
  }

  /**
   * The day whose sheet says what it holds up: its own, and once that is over the one on which it
   * came or is to come.
   */
  public LocalDate day(BusinessDay clock, LocalDate today) {
    return delivery.date().isBefore(today) ? lastDay(clock) : delivery.date();
  }

  /** From when what it brings can be worked on. */
  public Instant from() {
    return arrived.map(DeliveryEntry::at).orElse(expected).plus(delivery.checkIn());
  }

  /** How much of a line there is, or will be. */
  public Amount came(Delivery.Line line) {
    if (cancelled.isPresent() || rejected.containsKey(line.ingredient())) {
      return Amount.NO_MASS;
    }
    DeliveryEntry less = shorts.get(line.ingredient());
    return less == null ? line.amount() : less.came().orElse(line.amount());
  }

  /** Why an entry is not taken; empty when it is. */
  public Optional<Message> refuses(DeliveryEntry entry) {
    Optional<Delivery.Line> line = entry.ingredient().flatMap(delivery::findLine);
    return switch (entry.kind()) {
      case UNDO ->
          entry.undoes().filter(this::counts).isPresent()
              ? Optional.empty()
              : Optional.of(Message.of("delivery.refused.undo"));
      case ARRIVED -> over(true);
      case CANCELLED -> over(true);
      case LATE -> over(true).or(() -> cannotCome(entry));
      case SHORT -> over(false).or(() -> isLess(entry, line));
      case REJECTED ->
          over(false)
              .or(
                  () ->
                      isHere()
                          ? Optional.empty()
                          : Optional.of(Message.of("delivery.refused.not-here")));
    };
  }

  /**
   * Why nothing more can be said of it.
   *
   * @param toCome whether it must be still to come
   */
  private Optional<Message> over(boolean toCome) {
    if (cancelled.isPresent()) {
      return Optional.of(Message.of("delivery.refused.cancelled"));
    }
    return toCome && isHere()
        ? Optional.of(Message.of("delivery.refused.here", arrived.get().at()))
        : Optional.empty();
  }

  /** Why it cannot be expected when it is said to be: it is so already, or that is over. */
  private Optional<Message> cannotCome(DeliveryEntry entry) {
    Instant at = entry.expected().orElse(expected);
    if (at.equals(expected)) {
      return Optional.of(Message.of("delivery.refused.same-time", expected));
    }
    return at.isBefore(entry.at())
        ? Optional.of(Message.of("delivery.refused.time-over", at))
        : Optional.empty();
  }

  private static Optional<Message> isLess(DeliveryEntry entry, Optional<Delivery.Line> line) {
    boolean less =
        line.isPresent()
            && entry.came().filter(came -> came.compareTo(line.get().amount()) < 0).isPresent();
    return less
        ? Optional.empty()
        : Optional.of(
            Message.of("delivery.refused.not-less", line.map(Delivery.Line::typed).orElse("")));
  }
}
