package halfgram.prep;

import halfgram.event.Course;
import halfgram.event.Curve;
import halfgram.event.Event;
import halfgram.event.RegularService;
import halfgram.event.Service;
import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.measure.Ratio;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Something that is called at the pass: a course for everybody, or a pick-up with its share.
 *
 * @param code of the course; the time of a pick-up
 * @param share of the service's plates that a pick-up takes; all of a course's own
 */
public record Fire(String code, Text name, Instant at, Ratio share) {

  /** Whether it is a pick-up, whose code and name are its time. */
  public boolean isPickUp() {
    return code.indexOf(':') >= 0;
  }

  /** What is called in a service, in order; nothing where the curve is even. */
  public static List<Fire> list(KitchenBook book, ServiceRun run) {
    BusinessDay clock = book.kitchen().clock();
    List<Fire> fires = new ArrayList<>();
    Optional<Service> service = findService(book, run);
    for (Course course : service.map(Service::courses).orElse(List.of())) {
      Instant at = clock.at(run.date(), course.at());
      fires.add(new Fire(course.code(), course.name(), at, Ratio.ONE));
    }
    for (Curve.PickUp pickUp : curve(book, run, service).pickUps()) {
      String time = pickUp.at().toString();
      Instant at = clock.at(run.date(), pickUp.at());
      fires.add(new Fire(time, Text.of(time), at, pickUp.share()));
    }
    return fires;
  }

  private static Curve curve(KitchenBook book, ServiceRun run, Optional<Service> service) {
    return service
        .map(Service::curve)
        .or(() -> findRegular(book, run).map(RegularService::curve))
        .orElse(Curve.EVEN);
  }

  /** The event of a service run. */
  public static Optional<Event> findEvent(KitchenBook book, ServiceRun run) {
    return book.events().stream()
        .filter(event -> run.event().equals(Optional.of(event.code())))
        .findFirst();
  }

  /** The service of an event that a run is of. */
  public static Optional<Service> findService(KitchenBook book, ServiceRun run) {
    return findEvent(book, run)
        .flatMap(
            event ->
                event.services().size() == 1
                    ? Optional.of(event.services().get(0))
                    : event.services().stream()
                        .filter(one -> run.id().equals(event.code() + "." + one.code()))
                        .findFirst());
  }

  private static Optional<RegularService> findRegular(KitchenBook book, ServiceRun run) {
    return book.services().values().stream()
        .filter(one -> run.id().equals(one.code() + "." + run.date()))
        .findFirst();
  }
}
