package halfgram.prep.netting;

import halfgram.lot.Lot;
import java.time.Instant;

/**
 * A tub as needs see it: one in store, one that thaws, or one still being made.
 *
 * @param ready from when it may be used
 * @param holds until when it may be used itself
 * @param safe until when what it went into may be eaten, where its date binds that
 */
public record Stock(Lot lot, Instant ready, Instant holds, Instant safe) {

  /** A tub in store has one date, and it counts for both. */
  public static Stock of(Lot lot) {
    return of(lot, lot.made());
  }

  /** A tub in store that may be used from a moment. */
  public static Stock of(Lot lot, Instant ready) {
    return new Stock(lot, ready, lot.useBy(), lot.useBy());
  }

  /** Whether it is there in time for a need, and lasts. */
  public boolean serves(Need need) {
    return !ready.isAfter(need.readyBy())
        && !holds.isBefore(need.lastUse())
        && !safe.isBefore(need.tubUntil());
  }
}
