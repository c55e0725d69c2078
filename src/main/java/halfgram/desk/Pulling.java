package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.Frozen;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dated;
import halfgram.measure.Message;
import halfgram.measure.Rounding;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.Thaw;
import halfgram.prep.Tick;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What a task moves in the ledger that pulls a tub from the freezer.
 *
 * <p>Rules. The tub is out as soon as somebody has begun: its clock goes on from then, to the date
 * that it comes to then, whatever the plan said. It is out once: whoever finds it thawed already
 * changes nothing. What is past the date the kitchen gave it in the freezer is not pulled. When it
 * is out at another time than planned, so that it is not ready or does not last as planned, the
 * plan can no longer be right. Failed bins it. That it is out can be taken back as long as any
 * thawing can ({@link TakingBack}).
 */
final class Pulling {
  private static final Set<Tick.Kind> OUT =
      EnumSet.of(Tick.Kind.START, Tick.Kind.PART_DONE, Tick.Kind.DONE);

  private final LotStore lots = new LotStore();
  private final Posting posting = new Posting();

  /** Why a tick is not taken on a task that pulls a tub. */
  Optional<Message> refuses(Tx tx, House house, Task task, Tick.Kind kind, Instant now) {
    if (task.kind() != Task.Kind.THAW || !OUT.contains(kind)) {
      return Optional.empty();
    }
    String code = Thaw.tub(task);
    Optional<Lot> lot = lots.find(tx, house.id(), code).map(Tub::lot);
    if (lot.filter(of -> of.left().isPositive()).isEmpty()) {
      return Optional.of(Message.of("handling.empty", code));
    }
    return lot.filter(of -> of.isFrozen() && !of.useBy().isAfter(now))
        .map(of -> Dated.of(of.useBy(), now, house.book().kitchen().clock().zone()))
        .map(date -> Message.of("handling.thaw-past", code, date));
  }

  /**
   * Moves what a tick says.
   *
   * @return whether the plan can no longer be right
   */
  boolean move(Tx tx, House house, Task task, Tick tick, long change) {
    Optional<Tub> tub = lots.find(tx, house.id(), Thaw.tub(task));
    if (tub.isEmpty()) {
      return false;
    }
    if (tick.kind() == Tick.Kind.FAILED) {
      bin(tx, house, tub.get(), tick, change);
      return true;
    }
    Optional<Frozen> ice = tub.get().lot().frozen();
    if (ice.isEmpty() || !OUT.contains(tick.kind())) {
      return false;
    }
    BusinessDay clock = house.book().kitchen().clock();
    Duration out = TakingBack.wasOut(lots.listOf(tx, house.id(), tub.get().id()));
    Instant useBy = ice.get().useBy(tick.at().minus(out), clock);
    Stored stored = task.stored().get(0);
    String place = stored.output().hold().place();
    Movement thawed =
        movement(tub.get(), Movement.Kind.THAWED, tick)
            .turning(
                new Movement.Turn(
                    Optional.of(place).filter(where -> !where.isEmpty()),
                    Optional.of(useBy),
                    OptionalInt.empty()));
    posting.post(tx, house, tub.get(), thawed, Optional.empty(), change);
    Duration late = Duration.between(task.start(), tick.at());
    return useBy.isBefore(stored.useBy()) || late.compareTo(LATE) > 0;
  }

  /** So much later it is not ready in time; less is what anybody takes to get there. */
  private static final Duration LATE = Duration.ofMinutes(15);

  private void bin(Tx tx, House house, Tub tub, Tick tick, long change) {
    Amount left = tub.lot().left();
    if (left.isPositive()) {
      Movement binned = movement(tub, Movement.Kind.BINNED, left.times(-1), tick);
      posting.post(tx, house, tub, binned, Optional.empty(), change);
    }
  }

  /** Why a tick that pulled a tub cannot be taken back: it is out too long, or has been used. */
  Optional<Message> rests(Tx tx, House house, Movement pulled, Instant now) {
    List<Movement> all = lots.listOf(tx, house.id(), pulled.lot());
    String code = lots.findById(tx, house.id(), pulled.lot()).lot().code();
    if (TakingBack.last(all).filter(of -> of.change() == pulled.change()).isEmpty()) {
      return Optional.of(Message.of("tick.refused.tub-used", code));
    }
    return TakingBack.isOut(all, pulled, now)
        ? Optional.of(Message.of("handling.thawed-since", code, pulled.at()))
        : Optional.empty();
  }

  private static Movement movement(Tub tub, Movement.Kind kind, Tick tick) {
    return movement(tub, kind, Amount.zero(tub.lot().left().dimension()), tick);
  }

  private static Movement movement(Tub tub, Movement.Kind kind, Amount amount, Tick tick) {
    return new Movement(
        tub.id(),
        kind,
        amount.rounded(Rounding.TO_MICROGRAM),
        Optional.empty(),
        Optional.empty(),
        tick.note(),
        tick.cook(),
        tick.at(),
        Optional.of(tick.id()));
  }
}
