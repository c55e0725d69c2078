package halfgram.prep;

import halfgram.measure.Because;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Explodes a plan, and where making for several times together is what makes something late, makes
 * it for each time by itself instead.
 *
 * <p>Rule. As long as something is too late and a make on its way to the guest serves several
 * times, that formula is taken apart and the plan is exploded again; the plan that is short of the
 * least time stands. Where all such formulas apart help nothing, one of them may. Example: fish
 * brined for tonight and for Sunday together wants more thawed fish than there is; for tonight
 * alone the tubs are enough.
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
    Tried best = tried(Set.of());
    for (int tries = 0; tries < MOST_TRIES; tries++) {
      Optional<Tried> better = better(best);
      if (better.isEmpty()) {
        break;
      }
      best = better.get();
    }
    return because.asked() ? explode(best.apart, because) : best.explosion;
  }

  /**
   * A plan that is short of less: with all apart that are together and late, else with one of them.
   */
  private Optional<Tried> better(Tried than) {
    Set<String> late = new TreeSet<>(Misfits.pooledAndLate(request, than.explosion));
    late.removeAll(than.apart);
    if (late.isEmpty()) {
      return Optional.empty();
    }
    Tried all = tried(than.with(late));
    if (late.size() == 1 || all.isShortOfLess(than)) {
      return Optional.of(all).filter(one -> one.isShortOfLess(than));
    }
    return late.stream()
        .map(formula -> tried(than.with(Set.of(formula))))
        .filter(one -> one.isShortOfLess(than))
        .min(Comparator.comparing(Tried::shortBy));
  }

  private Tried tried(Set<String> apart) {
    Explosion explosion = explode(apart, Because.NOT_ASKED);
    return new Tried(apart, explosion, shortBy(explosion));
  }

  /** A plan with some formulas made for each time by itself. */
  private record Tried(Set<String> apart, Explosion explosion, Duration shortBy) {
    private boolean isShortOfLess(Tried other) {
      return shortBy.compareTo(other.shortBy) < 0;
    }

    private Set<String> with(Set<String> more) {
      Set<String> all = new TreeSet<>(apart);
      all.addAll(more);
      return all;
    }
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
