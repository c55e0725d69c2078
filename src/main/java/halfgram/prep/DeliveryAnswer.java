package halfgram.prep;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryStand;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.menu.Dish;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What a delivery means for the plan in force: which work waits for it, what that work is for, the
 * last moment at which it still works, what can be done meanwhile, and what less of it costs.
 *
 * <p>Rules. Only work that nobody has started waits. The last moment is the latest start of the
 * first task that needs it, less the check-in. Meanwhile are tasks of the same stations that could
 * be started now and whose time comes after the first that waits.
 *
 * @param blocked by their latest start
 * @param served services with the dishes that wait for it
 * @param lastMoment empty when nothing waits
 * @param shorts lines of which less came, or none
 */
public record DeliveryAnswer(
    DeliveryStand stand,
    List<Awaited> blocked,
    List<Served> served,
    Optional<Instant> lastMoment,
    List<Task> meanwhile,
    List<Less> shorts) {

  /** A line of which there is less than ordered, and the plates that costs. */
  public record Less(Delivery.Line line, Amount came, List<ShortPlates> plates) {}

  public Delivery delivery() {
    return stand.delivery();
  }

  /** How much too late it comes for the first task that waits; zero when in time. */
  public Duration tooLateBy() {
    return blocked.stream()
        .flatMap(one -> one.from().map(from -> Duration.between(one.task().start(), from)).stream())
        .filter(by -> !by.isNegative())
        .max(Comparator.naturalOrder())
        .orElse(Duration.ZERO);
  }

  /**
   * The answers for the deliveries of a sheet's days, those of before that come then among them.
   */
  public static List<DeliveryAnswer> list(
      KitchenBook now, PrepSheet sheet, Map<String, TaskProgress> progress, Instant at) {
    BusinessDay clock = now.kitchen().clock();
    List<DeliveryStand> stands =
        now.deliveries().stream()
            .filter(delivery -> !delivery.date().isAfter(sheet.request().last()))
            .map(Delivery::stand)
            .filter(stand -> !stand.lastDay(clock).isBefore(sheet.request().from()))
            .filter(stand -> stand.cancelled().isEmpty())
            .toList();
    return list(now, sheet, progress, stands, at);
  }

  /**
   * The answers for some deliveries, the first expected first.
   *
   * @param now the book with the deliveries as they stand
   * @param sheet in force
   * @param progress by task id; a task without any is to do
   */
  public static List<DeliveryAnswer> list(
      KitchenBook now,
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      List<DeliveryStand> stands,
      Instant at) {
    List<Awaited> all =
        Awaited.of(now, sheet).stream()
            .filter(one -> state(progress, one.task()) == TaskState.TO_DO)
            .toList();
    return stands.stream()
        .sorted(Comparator.comparing(DeliveryStand::expected))
        .map(stand -> of(sheet, progress, all, stand, at))
        .toList();
  }

  /** The answer for one delivery. */
  public static DeliveryAnswer of(
      KitchenBook now,
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      DeliveryStand stand,
      Instant at) {
    return list(now, sheet, progress, List.of(stand), at).get(0);
  }

  /**
   * The answer for one delivery.
   *
   * @param all that waits for a delivery and nobody has started
   */
  private static DeliveryAnswer of(
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      List<Awaited> all,
      DeliveryStand stand,
      Instant at) {
    List<Awaited> blocked =
        all.stream()
            .filter(one -> one.delivery().code().equals(stand.delivery().code()) && one.holds(at))
            .sorted(Comparator.comparing(one -> one.task().start()))
            .toList();
    return new DeliveryAnswer(
        stand,
        blocked,
        served(sheet, blocked),
        lastMoment(sheet, stand, blocked),
        meanwhile(sheet, progress, all, blocked, at),
        shorts(sheet, progress, stand));
  }

  private static TaskState state(Map<String, TaskProgress> progress, Task task) {
    return progress.getOrDefault(task.id(), TaskProgress.NONE).state();
  }

  /** Services in their order, each with every dish that waits. */
  private static List<Served> served(PrepSheet sheet, List<Awaited> blocked) {
    Map<ServiceRun, Set<Dish>> dishes = new LinkedHashMap<>();
    Set<String> makes = new HashSet<>();
    for (Awaited one : blocked) {
      if (makes.add(one.task().make().id())) {
        for (Served served : Served.of(sheet, one.task().make())) {
          dishes
              .computeIfAbsent(served.run(), run -> new LinkedHashSet<>())
              .addAll(served.dishes());
        }
      }
    }
    List<Served> served = new ArrayList<>();
    for (ServiceRun run : sheet.allServices()) {
      Set<Dish> of = dishes.get(run);
      if (of != null) {
        served.add(new Served(run, List.copyOf(of)));
      }
    }
    return served;
  }

  /** Of the work that waits, and of plates that take it as it is. */
  private static Optional<Instant> lastMoment(
      PrepSheet sheet, DeliveryStand stand, List<Awaited> blocked) {
    List<Instant> moments = new ArrayList<>();
    blocked.forEach(one -> moments.add(one.lastMoment()));
    for (ServiceRun run : sheet.services()) {
      boolean takes =
          stand.isAwaited()
              && run.plates().stream()
                  .flatMap(plates -> plates.items().stream())
                  .flatMap(item -> item.item().ingredient().stream())
                  .flatMap(code -> stand.delivery().findLine(code).stream())
                  .anyMatch(line -> !line.inHouse());
      if (takes) {
        moments.add(run.from().minus(stand.delivery().checkIn()));
      }
    }
    return moments.stream().min(Instant::compareTo);
  }

  private static List<Task> meanwhile(
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      List<Awaited> awaited,
      List<Awaited> blocked,
      Instant at) {
    if (blocked.isEmpty()) {
      return List.of();
    }
    Instant first = blocked.get(0).task().start();
    Set<String> stations = new HashSet<>();
    blocked.forEach(one -> stations.add(one.task().station()));
    Map<String, Task> byId = new HashMap<>();
    sheet.tasks().forEach(task -> byId.put(task.id(), task));
    return sheet.tasks().stream()
        .filter(task -> stations.contains(task.station()))
        .filter(task -> state(progress, task) == TaskState.TO_DO)
        .filter(task -> task.start().isAfter(first) && task.kind() == Task.Kind.STEP)
        .filter(task -> Waiting.of(task, byId, progress, awaited, at).isEmpty())
        .sorted(Comparator.comparing(Task::start))
        .toList();
  }

  private static List<Less> shorts(
      PrepSheet sheet, Map<String, TaskProgress> progress, DeliveryStand stand) {
    List<Less> shorts = new ArrayList<>();
    for (Delivery.Line line : stand.delivery().lines()) {
      Amount came = stand.came(line);
      boolean less = came.compareTo(line.amount()) < 0;
      if (less && stand.cancelled().isEmpty() && !line.inHouse()) {
        List<ShortPlates> plates =
            ShortPlates.of(
                sheet, line.ingredient(), came, task -> state(progress, task) != TaskState.DONE);
        shorts.add(new Less(line, came, plates));
      } else if (less) {
        shorts.add(new Less(line, came, List.of()));
      }
    }
    return shorts;
  }
}
