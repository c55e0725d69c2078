package halfgram.desk;

import halfgram.book.BookReader;
import halfgram.db.Tx;
import halfgram.measure.Because;
import halfgram.prep.Begun;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.PlanStore;
import halfgram.prep.PlanStore.Accepted;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiFunction;

/**
 * Plans of the store, computed again from what they were computed from.
 *
 * <p>What a plan carries of begun work stands in the plan before it, which may carry some itself: a
 * kitchen in which something always stands over night would need all its plans for today's. But
 * what was begun days ago is in none of today's work. So it goes back one day and tries; a plan
 * that comes out as it was kept is right, and so is all that follows it. Otherwise it goes back
 * further, as far as begun work may be anybody's. What is not right even then was kept by an older
 * program.
 */
final class Again {
  private static final int[] DAYS = {1, 3};

  /** What was begun longer ago is nobody's any more. */
  private static final int MOST_DAYS = 8;

  private static final int KEPT = 32;

  private final Desk desk;
  private final BiFunction<KitchenBook, PrepSheet, String> result;
  private final PlanStore store = new PlanStore();
  private final LastFew<UUID, Plans.Computation> kept = new LastFew<>(KEPT);

  /**
   * @param result writes a sheet as the JSON that a plan keeps
   */
  Again(Desk desk, BiFunction<KitchenBook, PrepSheet, String> result) {
    this.desk = desk;
    this.result = result;
  }

  /** A computation that is at hand. */
  Optional<Plans.Computation> find(UUID plan) {
    return kept.find(plan);
  }

  /** Keeps one that was computed just now. */
  void keep(UUID plan, Plans.Computation made) {
    kept.put(plan, made);
  }

  /** A plan of the store; from the last time when it can be. */
  Plans.Computation of(Tx tx, House house, Accepted plan) {
    Optional<Plans.Computation> known = kept.find(plan.id());
    if (known.isPresent()) {
      return known.get();
    }
    for (int days : DAYS) {
      Optional<Plans.Computation> made = walk(tx, house, back(tx, house, plan, days), false);
      if (made.isPresent()) {
        return made.get();
      }
    }
    return walk(tx, house, back(tx, house, plan, MOST_DAYS), true).orElseThrow();
  }

  /** A plan of the store, saying why. */
  Plans.Computation of(Tx tx, House house, Accepted plan, Because because) {
    Optional<PrepSheet> before =
        BegunJson.carries(plan.begun())
            ? before(tx, house, plan).map(one -> of(tx, house, one).sheet())
            : Optional.empty();
    return compute(tx, house, plan, before, because);
  }

  /** The plan and those it is to be computed from, the oldest first. */
  private List<Accepted> back(Tx tx, House house, Accepted plan, int days) {
    List<Accepted> chain = new ArrayList<>(List.of(plan));
    while (BegunJson.carries(chain.get(0).begun())) {
      Optional<Accepted> before =
          before(tx, house, chain.get(0))
              .filter(one -> kept.find(one.id()).isEmpty())
              .filter(one -> !one.day().isBefore(plan.day().minusDays(days)));
      if (before.isEmpty()) {
        break;
      }
      chain.add(0, before.get());
    }
    return chain;
  }

  /**
   * Computes one after the other, and keeps what is sure to be right.
   *
   * @param anyway whether what comes out is taken as it is
   * @return the last, when that is sure
   */
  private Optional<Plans.Computation> walk(
      Tx tx, House house, List<Accepted> chain, boolean anyway) {
    Accepted oldest = chain.get(0);
    boolean carries = BegunJson.carries(oldest.begun());
    Optional<PrepSheet> before =
        carries
            ? before(tx, house, oldest)
                .flatMap(one -> kept.find(one.id()))
                .map(Plans.Computation::sheet)
            : Optional.empty();
    boolean sure = anyway || !carries || before.isPresent();
    Optional<Plans.Computation> last = Optional.empty();
    for (Accepted plan : chain) {
      Plans.Computation made = compute(tx, house, plan, before, Because.NOT_ASKED);
      sure = sure || isAsKept(tx, house, plan, made);
      last = sure ? Optional.of(made) : Optional.empty();
      last.ifPresent(right -> kept.put(plan.id(), right));
      before = Optional.of(made.sheet());
    }
    return last;
  }

  private boolean isAsKept(Tx tx, House house, Accepted plan, Plans.Computation made) {
    String json = result.apply(made.book(), made.sheet());
    return Hash.of(json).equals(store.result(tx, house.id(), plan.id()).hash());
  }

  private Optional<Accepted> before(Tx tx, House house, Accepted plan) {
    return plan.previous().flatMap(id -> store.find(tx, house.id(), id));
  }

  private Plans.Computation compute(
      Tx tx, House house, Accepted plan, Optional<PrepSheet> before, Because because) {
    KitchenBook book = parse(store.snapshot(tx, house.id(), plan.snapshot()));
    PlanRequest request =
        new PlanRequest(plan.day(), 1, plan.asOf(), BegunJson.readSpent(plan.begun()));
    List<Begun> begun = BegunJson.read(plan.begun(), before);
    return new Plans.Computation(book, Planning.plan(book, request, begun, because));
  }

  KitchenBook parse(String snapshot) {
    BookReader.Outcome outcome = desk.check(snapshot);
    return outcome
        .standing()
        .orElseThrow(
            () -> new IllegalStateException("a snapshot does not read: " + outcome.problems()));
  }
}
