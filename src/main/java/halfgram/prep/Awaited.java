package halfgram.prep;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryStand;
import halfgram.measure.BusinessDay;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A task that weighs what comes with a delivery of its day, or of a day before that is to come only
 * then.
 *
 * <p>Rules. It cannot start before the delivery is here and checked in. A line of which the kitchen
 * has some to begin with holds nothing up. When several deliveries of a day bring an ingredient,
 * the first of them counts. One that is called off holds nothing up; a line that was turned away is
 * waited for without end, until another delivery brings it.
 *
 * @param ingredients codes of what it takes from the delivery
 * @param from the earliest start; empty when everything that would bring it was turned away
 */
public record Awaited(
    Task task, DeliveryStand stand, List<String> ingredients, Optional<Instant> from) {
  public Awaited {
    ingredients = List.copyOf(ingredients);
  }

  /** What one delivery of a day brings of an ingredient. */
  private record Source(DeliveryStand stand, Delivery.Line line) {
    private boolean brings() {
      return stand.came(line).isPositive();
    }
  }

  /** Every task that waits for a delivery, or waited, in the order of the tasks. */
  static List<Awaited> of(List<Delivery> deliveries, BusinessDay clock, List<Task> tasks) {
    if (deliveries.isEmpty()) {
      return List.of();
    }
    List<Awaited> awaited = new ArrayList<>();
    for (Task task : tasks) {
      LocalDate day = clock.of(task.start());
      Map<String, List<String>> codes = new LinkedHashMap<>();
      Map<String, Source> sources = new LinkedHashMap<>();
      for (String ingredient : ingredients(task)) {
        find(deliveries, clock, day, ingredient)
            .ifPresent(
                source -> {
                  String code = source.stand().delivery().code();
                  codes.computeIfAbsent(code, any -> new ArrayList<>()).add(ingredient);
                  // What was turned away is the worse of two lines of one delivery.
                  sources.merge(code, source, (one, other) -> one.brings() ? other : one);
                });
      }
      sources.forEach(
          (code, source) -> awaited.add(of(task, codes.getOrDefault(code, List.of()), source)));
    }
    return List.copyOf(awaited);
  }

  private static Awaited of(Task task, List<String> ingredients, Source source) {
    Optional<Instant> from =
        source.brings() ? Optional.of(source.stand().from()) : Optional.empty();
    return new Awaited(task, source.stand(), ingredients, from);
  }

  /** As {@link #of(List, BusinessDay, List)} for the tasks of a sheet, by the deliveries of now. */
  public static List<Awaited> of(KitchenBook now, PrepSheet sheet) {
    return of(now.deliveries(), now.kitchen().clock(), sheet.tasks());
  }

  /** Ingredients that a task weighs. */
  static TreeSet<String> ingredients(Task task) {
    TreeSet<String> codes = new TreeSet<>();
    for (WeighGroup group : task.weigh()) {
      group.lines().forEach(line -> line.line().item().ingredient().ifPresent(codes::add));
    }
    return codes;
  }

  /** The delivery that an ingredient is waited for on a day; empty when it is not. */
  private static Optional<Source> find(
      List<Delivery> deliveries, BusinessDay clock, LocalDate day, String ingredient) {
    List<Source> sources = sources(deliveries, clock, day, ingredient);
    return sources.stream().anyMatch(source -> source.line().inHouse())
        ? Optional.empty()
        : sources.stream()
            .min(
                Comparator.comparing((Source source) -> !source.brings())
                    .thenComparing(source -> source.stand().from()));
  }

  private static List<Source> sources(
      List<Delivery> deliveries, BusinessDay clock, LocalDate day, String ingredient) {
    List<Source> sources = new ArrayList<>();
    for (Delivery delivery : deliveries) {
      DeliveryStand stand = delivery.stand();
      boolean isOfDay = !delivery.date().isAfter(day) && !stand.lastDay(clock).isBefore(day);
      if (isOfDay && stand.cancelled().isEmpty()) {
        delivery.findLine(ingredient).ifPresent(line -> sources.add(new Source(stand, line)));
      }
    }
    return sources;
  }

  /** The earliest moment at which a day's deliveries let an ingredient be used on a plate. */
  static Optional<DeliveryStand> ofPlate(
      List<Delivery> deliveries, BusinessDay clock, LocalDate day, String ingredient) {
    return find(deliveries, clock, day, ingredient).filter(Source::brings).map(Source::stand);
  }

  public Delivery delivery() {
    return stand.delivery();
  }

  /** The latest moment at which the delivery may come for this task to start in time. */
  public Instant lastMoment() {
    return task.start().minus(delivery().checkIn());
  }

  /** Whether it comes too late for the latest start. */
  public boolean isTooLate() {
    return from.isEmpty() || from.get().isAfter(task.start());
  }

  /** Whether the task cannot start at a moment. */
  public boolean holds(Instant now) {
    return !stand.isHere() || from.isEmpty() || from.get().isAfter(now);
  }
}
