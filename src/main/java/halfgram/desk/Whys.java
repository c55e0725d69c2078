package halfgram.desk;

import halfgram.measure.Because;
import halfgram.prep.PlanStore;
import halfgram.prep.Planning;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;

/**
 * Why the numbers of a plan are what they are: the plan is computed again, with a recorder. The
 * last few recordings are kept, since whoever asks once asks again.
 */
public final class Whys {
  private static final int KEPT = 6;

  /** Which plan: one in the store by its id, or a preview by today and the last change. */
  private record Key(Object of, LocalDate day, long change) {}

  /** What a preview is seen from. */
  private record Seen(UUID kitchen, LocalDate today) {}

  private final Desk desk;
  private final Plans plans;
  private final PlanStore store = new PlanStore();
  private final LastFew<Key, Because.Recording> recordings = new LastFew<>(KEPT);

  public Whys(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /** Everything that makes a number in a plan of a day; empty when there is no such plan. */
  public Optional<Because.Recording> find(House house, LocalDate day, int number) {
    return desk.read(
        tx ->
            store.list(tx, house.id(), day).stream()
                .filter(plan -> plan.number() == number)
                .findFirst()
                .map(
                    plan ->
                        kept(
                            new Key(plan.id(), day, plan.change()),
                            because -> plans.recompute(tx, house, plan, because))));
  }

  /**
   * Everything that makes a number in what the plan in force on a day would become; empty when it
   * is another.
   */
  public Optional<Because.Recording> findProposed(House house, LocalDate day, int number) {
    return plans
        .find(house, day)
        .filter(inForce -> inForce.plan().number() == number)
        .map(inForce -> of(plans.propose(house, inForce)));
  }

  /** Everything that makes a number in a sheet that is not in force. */
  public static Because.Recording of(Plans.Proposal proposal) {
    Because.Recording recording = Because.recording();
    Planning.plan(proposal.book(), proposal.sheet().request(), proposal.begun(), recording);
    return recording;
  }

  /** Everything that makes a number in a sheet that nobody has put in force. */
  public Because.Recording preview(House house, LocalDate day) {
    return kept(
        new Key(new Seen(house.id(), house.day(desk.now())), day, house.stand().change()),
        because -> plans.preview(house, day, 1, because));
  }

  /** Computes what is not kept, with a recorder. */
  private Because.Recording kept(Key key, java.util.function.Consumer<Because> compute) {
    return recordings.get(
        key,
        unknown -> {
          Because.Recording recording = Because.recording();
          compute.accept(recording);
          return recording;
        });
  }
}
