package halfgram.prep;

import halfgram.delivery.Delivery;
import halfgram.delivery.DeliveryStand;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.menu.Dish;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Work that would have to start before what it needs is here.
 *
 * <p>Rules. A task whose latest start by the timeline lies before its delivery is here and checked
 * in does not fit; neither does a plate that takes an ingredient as it is and is served before. A
 * task that has begun had what it needed. A line that was turned away with nothing to take its
 * place is a misfit of no length: no waiting helps.
 */
final class AwaitedMisfits {
  private final KitchenBook book;
  private final List<ServiceRun> services;
  private final List<Make> makes;
  private final Set<String> started = new HashSet<>();
  private final List<Misfit> found = new ArrayList<>();

  private AwaitedMisfits(KitchenBook book, List<ServiceRun> services, Explosion explosion) {
    this.book = book;
    this.services = services;
    this.makes = new ArrayList<>(explosion.makes());
    for (Begun begun : explosion.begun()) {
      makes.add(begun.make());
      begun.started().forEach(step -> started.add(begun.make().id() + "/" + step));
    }
  }

  static List<Misfit> of(
      KitchenBook book, List<ServiceRun> services, Explosion explosion, List<Awaited> awaited) {
    if (book.deliveries().isEmpty()) {
      return List.of();
    }
    AwaitedMisfits misfits = new AwaitedMisfits(book, services, explosion);
    for (Awaited one : awaited) {
      if (one.isTooLate() && !misfits.hasStarted(one.task())) {
        misfits.task(one);
      }
    }
    services.forEach(misfits::plates);
    return misfits.found;
  }

  private boolean hasStarted(Task task) {
    return started.contains(task.make().id() + "/" + task.step().code());
  }

  private void task(Awaited awaited) {
    Task task = awaited.task();
    Delivery delivery = awaited.delivery();
    List<Served> served = Served.of(services, makes, task.make());
    List<Message> chain = new ArrayList<>();
    chain(awaited.stand(), chain);
    for (Served of : served) {
      chain.add(serves(of, task));
    }
    List<Text> dishes = dishes(served);
    String path = Paths.shortBy(task.make(), task.step().code() + "/" + delivery.code());
    Object name = task.version().name();
    String step = task.step().code();
    if (awaited.from().isEmpty()) {
      Message said =
          Message.of("misfit.turned-away", name, step, names(awaited), delivery.supplier(), dishes);
      found.add(new Misfit(path, said, Duration.ZERO, false, chain));
      return;
    }
    Instant from = awaited.from().get();
    Duration shortBy = Duration.between(task.start(), from);
    Message said =
        Message.of(
            dishes.isEmpty() ? "misfit.delivery-no-dish" : "misfit.delivery",
            name,
            step,
            task.start(),
            names(awaited),
            delivery.supplier(),
            from,
            shortBy,
            dishes);
    found.add(new Misfit(path, said, shortBy, false, chain));
  }

  private List<Text> names(Awaited awaited) {
    return awaited.ingredients().stream().map(code -> book.ingredient(code).name()).toList();
  }

  private static void chain(DeliveryStand stand, List<Message> chain) {
    String supplier = stand.delivery().supplier();
    chain.add(
        stand.isHere()
            ? Message.of("misfit.delivery-here", supplier, stand.arrived().orElseThrow().at())
            : Message.of("misfit.delivery-expected", supplier, stand.expected()));
    if (!stand.lateBy().isZero()) {
      chain.add(Message.of("misfit.delivery-late", stand.lateBy()));
    }
    chain.add(
        Message.of(
            stand.delivery().checkInStated() ? "misfit.check-in" : "misfit.check-in-default",
            stand.delivery().checkIn()));
  }

  private static Message serves(Served served, Task task) {
    return Message.of(
        served.dishes().isEmpty() ? "misfit.delivery-for" : "misfit.delivery-serves",
        served.run().name(),
        task.make().readyBy(),
        served.dishes().stream().map(Dish::name).toList());
  }

  private static List<Text> dishes(List<Served> served) {
    return served.stream().flatMap(of -> of.dishes().stream()).map(Dish::name).distinct().toList();
  }

  /** Ingredients that go on plates as they are. */
  private void plates(ServiceRun run) {
    Set<String> told = new HashSet<>();
    for (ServiceRun.Plates plates : run.plates()) {
      for (var item : plates.items()) {
        item.item().ingredient().filter(told::add).ifPresent(code -> plate(run, plates, code));
      }
    }
  }

  private void plate(ServiceRun run, ServiceRun.Plates plates, String code) {
    Awaited.ofPlate(book.deliveries(), book.kitchen().clock(), run.date(), code)
        .filter(stand -> stand.from().isAfter(run.from()))
        .ifPresent(stand -> plate(run, plates, code, stand));
  }

  private void plate(ServiceRun run, ServiceRun.Plates plates, String code, DeliveryStand stand) {
    Duration shortBy = Duration.between(run.from(), stand.from());
    List<Message> chain = new ArrayList<>();
    chain(stand, chain);
    found.add(
        new Misfit(
            Paths.shortOfPlate(run, code),
            Message.of(
                "misfit.delivery-plate",
                plates.dish().name(),
                run.name(),
                run.from(),
                book.ingredient(code).name(),
                stand.delivery().supplier(),
                stand.from(),
                shortBy),
            shortBy,
            false,
            chain));
  }
}
