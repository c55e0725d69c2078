package halfgram.desk;

import halfgram.db.Tx;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.Frozen;
import halfgram.lot.LedgerStore;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dated;
import halfgram.measure.Message;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;

/**
 * What hands do to one tub: some of it breaks or is thrown away, it is put elsewhere, frozen,
 * thawed.
 *
 * <p>Rules. More than is in a tub cannot be lost. In the freezer the clock of a tub stands still
 * ({@link Frozen}); until when it keeps there is what the kitchen says. What is past its date, or
 * would have no day left, does not go in; what came out of the freezer once does not go in again.
 */
public final class Handling {
  /** A longer stay in the freezer is a slip of the hand. */
  private static final Duration LONGEST_FROZEN = Duration.ofDays(1000);

  /**
   * Some of a tub that is lost.
   *
   * @param id of whoever enters it: the same sent again is the same loss
   */
  public record Lost(UUID id, Amount amount, String reason) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final LotStore lots = new LotStore();
  private final LedgerStore ledger = new LedgerStore();
  private final Posting posting = new Posting();

  public Handling(Desk desk) {
    this.desk = desk;
  }

  /** Some of it is thrown away. */
  public Handled waste(House house, String code, Lost lost, String who) {
    return lose(house, code, Movement.Kind.WASTED, lost, who);
  }

  /** Some of it broke. */
  public Handled broke(House house, String code, Lost lost, String who) {
    return lose(house, code, Movement.Kind.BROKE, lost, who);
  }

  private Handled lose(House house, String code, Movement.Kind kind, Lost lost, String who) {
    return handle(
        house,
        code,
        (tx, tub) -> {
          if (ledger.has(tx, house.id(), lost.id())) {
            return done(tx, house, tub);
          }
          Amount left = tub.lot().left();
          if (!lost.amount().isPositive() || lost.amount().compareTo(left) > 0) {
            return new Handled.Refused("amount", Message.of("handling.more-than-left", left));
          }
          Movement movement =
              Movement.of(tub.id(), kind, lost.amount().times(-1), who, desk.now())
                  .because(Optional.of(lost.reason()));
          return save(tx, house, tub, lost.id(), movement);
        });
  }

  /** It stands elsewhere from now on; where it stands already it is not moved. */
  public Handled move(House house, String code, String place, String who) {
    return handle(
        house,
        code,
        (tx, tub) -> {
          if (tub.lot().place().equals(place)) {
            return done(tx, house, tub);
          }
          if (!tub.lot().left().isPositive()) {
            return new Handled.Refused("", Message.of("handling.empty", code));
          }
          Movement moved =
              turn(tub, Movement.Kind.MOVED, who).turning(Movement.Turn.to(Optional.of(place)));
          return save(tx, house, tub, UUID.randomUUID(), moved);
        });
  }

  /**
   * It goes into the freezer, and its clock stands.
   *
   * @param keepUntil until when the kitchen says that it keeps there
   * @param place where it stands then; empty for where it stands
   */
  public Handled freeze(
      House house, String code, Instant keepUntil, Optional<String> place, String who) {
    return handle(
        house,
        code,
        (tx, tub) -> {
          Lot lot = tub.lot();
          if (lot.isFrozen() && lot.useBy().equals(keepUntil)) {
            return done(tx, house, tub);
          }
          Instant now = desk.now();
          BusinessDay clock = house.book().kitchen().clock();
          boolean days = output(house, lot).hold().days().isPresent();
          Frozen ice = Frozen.of(now, lot.useBy(), days, clock);
          Optional<Handled> refused =
              refusal(lot, ice, now, clock).or(() -> refusal(keepUntil, now, clock));
          if (refused.isPresent()) {
            return refused.get();
          }
          Movement frozen =
              turn(tub, Movement.Kind.FROZEN, who)
                  .turning(new Movement.Turn(place, Optional.of(keepUntil), ice.days()));
          return save(tx, house, tub, UUID.randomUUID(), frozen);
        });
  }

  /** Why a tub does not go into the freezer. */
  private static Optional<Handled> refusal(Lot lot, Frozen ice, Instant now, BusinessDay clock) {
    if (lot.isFrozen()) {
      return refused("handling.frozen-already", lot.code());
    }
    if (lot.thawed().isPresent()) {
      return refused("handling.refreeze", lot.code(), said(lot.thawed().get(), now, clock));
    }
    if (!lot.left().isPositive()) {
      return refused("handling.empty", lot.code());
    }
    if (!lot.useBy().isAfter(now)) {
      return refused("handling.freeze-past", lot.code(), said(lot.useBy(), now, clock));
    }
    return ice.isSpent()
        ? refused("handling.freeze-last-day", lot.code(), said(lot.useBy(), now, clock))
        : Optional.empty();
  }

  private static Optional<Handled> refused(String key, Object... args) {
    return Optional.of(new Handled.Refused("", Message.of(key, args)));
  }

  private static Optional<Handled> refusal(Instant keepUntil, Instant now, BusinessDay clock) {
    Instant most = now.plus(LONGEST_FROZEN);
    return keepUntil.isAfter(now) && !keepUntil.isAfter(most)
        ? Optional.empty()
        : Optional.of(
            new Handled.Refused(
                "until",
                Message.of("handling.keep-until", said(now, now, clock), said(most, now, clock))));
  }

  private static Dated said(Instant moment, Instant now, BusinessDay clock) {
    return Dated.of(moment, now, clock.zone());
  }

  /**
   * It comes out of the freezer, and its clock goes on.
   *
   * @param place where it stands then; empty for where its formula keeps it
   */
  public Handled thaw(House house, String code, Optional<String> place, String who) {
    return handle(
        house,
        code,
        (tx, tub) -> {
          Lot lot = tub.lot();
          if (lot.frozen().isEmpty() && lot.thawed().isPresent()) {
            return done(tx, house, tub);
          }
          if (lot.frozen().isEmpty()) {
            return new Handled.Refused("", Message.of("handling.not-frozen", code));
          }
          Instant now = desk.now();
          BusinessDay clock = house.book().kitchen().clock();
          if (!lot.useBy().isAfter(now)) {
            return new Handled.Refused(
                "", Message.of("handling.thaw-past", code, said(lot.useBy(), now, clock)));
          }
          Duration out = TakingBack.wasOut(lots.listOf(tx, house.id(), tub.id()));
          Instant useBy = lot.frozen().get().useBy(now.minus(out), clock);
          Movement thawed =
              turn(tub, Movement.Kind.THAWED, who)
                  .turning(
                      new Movement.Turn(
                          place.or(() -> kept(house, lot)),
                          Optional.of(useBy),
                          OptionalInt.empty()));
          return save(tx, house, tub, UUID.randomUUID(), thawed);
        });
  }

  // ---- behind the verbs ----

  /** What is done to a tub that is there, with the kitchen locked. */
  private interface Work {
    Handled of(Tx tx, Tub tub);
  }

  private Handled handle(House house, String code, Work work) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          return lots.find(tx, house.id(), code)
              .map(tub -> work.of(tx, tub))
              .orElseGet(Handled.NoSuchTub::new);
        });
  }

  private Movement turn(Tub tub, Movement.Kind kind, String who) {
    Amount none = Amount.zero(tub.lot().left().dimension());
    return Movement.of(tub.id(), kind, none, who, desk.now());
  }

  private Handled save(Tx tx, House house, Tub tub, UUID id, Movement movement) {
    List<Movement> rows = Posting.rows(house, tub, movement, Optional.empty());
    long change =
        kitchens.change(tx, house.id(), StockNews.of(tub.lot().code(), rows), movement.at());
    lots.move(tx, house.id(), id, rows.get(0), change);
    posting.keep(tx, house.id(), rows.subList(1, rows.size()), change);
    return done(tx, house, tub);
  }

  private Handled done(Tx tx, House house, Tub tub) {
    return new Handled.Done(lots.findById(tx, house.id(), tub.id()), List.of());
  }

  /** Where its formula keeps it; empty when that says nothing. */
  private static Optional<String> kept(House house, Lot lot) {
    return Optional.of(output(house, lot).hold().place()).filter(where -> !where.isEmpty());
  }

  private static Output output(House house, Lot lot) {
    FormulaVersion version = house.book().formulary().get(lot.component());
    return version.outputs().get(version.outputIndex(lot.component().output()));
  }
}
