package halfgram.prep;

import halfgram.measure.Because;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Explodes a plan, and where making for several times together is what makes something late, makes
 * it for each time by itself instead.
 *
 * <p>Rule. As long as something is too late and a make on its way to the guest serves several
 * times, that formula is taken apart and the plan is exploded again; the plan that is short of the
 * least time stands. Example: fish brined for tonight and for Sunday together wants more thawed
 * fish than there is; for tonight alone the tubs are enough.
 */
final class Pooling {
  private static final int MOST_TRIES = 6;

  private final KitchenBook book;
  private final PlanRequest request;
  private final List<ServiceRun> services;
  private final List<Begun> begun;
  private final OpenHours hours;

  Pooling(
      KitchenBook book,
      PlanRequest request,
      List<ServiceRun> services,
      List<Begun> begun,
      OpenHours hours) {
    this.book = book;
    this.request = request;
    this.services = services;
    this.begun = begun;
    this.hours = hours;
  }

  Explosion explode(Because because) {
    Set<String> apart = new TreeSet<>();
    Explosion best = explode(apart, Because.NOT_ASKED);
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      Set<String> more = new TreeSet<>(apart);
      more.addAll(Misfits.pooledAndLate(request, best));
      if (more.equals(apart)) {
        break;
      }
      Explosion tried = explode(more, Because.NOT_ASKED);
      if (shortBy(tried).compareTo(shortBy(best)) >= 0) {
        break;
      }
      best = tried;
      apart = more;
    }
    return because.asked() ? explode(apart, because) : best;
  }

  private Explosion explode(Set<String> apart, Because because) {
    return Explosion.of(book, services, hours, request, apart, begun, because);
  }

  private Duration shortBy(Explosion explosion) {
    return Misfits.of(request, services, explosion).stream()
        .map(Misfit::shortBy)
        .reduce(Duration.ZERO, Duration::plus);
  }
}
