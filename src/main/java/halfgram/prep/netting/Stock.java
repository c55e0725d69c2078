package halfgram.prep.netting;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Set;

/**
 * A tub as needs see it: one in store, one that thaws, or one still being made.
 *
 * @param ready from when it may be used
 * @param holds until when it may be used itself
 * @param safe until when what it went into may be eaten, where its date binds that
 * @param meant users it is being made for: late it still serves them, when nothing made anew would
 *     be in time, nor sooner by more than the hands it takes
 */
public record Stock(Lot lot, Instant ready, Instant holds, Instant safe, Map<String, Meant> meant) {
  public Stock {
    meant = Map.copyOf(meant);
  }

  /**
   * What is made for one user.
   *
   * @param anew when as much made anew could be ready at the earliest
   * @param hands what that would cost
   */
  public record Meant(Amount amount, Instant anew, Duration hands) {}

  /** One that serves nobody late. */
  public Stock(Lot lot, Instant ready, Instant holds, Instant safe) {
    this(lot, ready, holds, safe, Map.of());
  }

  /** The same, keeping nothing for some events. */
  public Stock without(Set<String> events) {
    return new Stock(lot.without(events), ready, holds, safe, meant);
  }

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
    return !ready.isAfter(need.readyBy()) && lasts(need);
  }

  /** Whether it serves a need after its time: making it anew would help nobody. */
  public boolean servesLate(Need need) {
    Meant of = meant.get(need.user());
    return of != null
        && of.anew().isAfter(need.readyBy())
        && !ready.isAfter(of.anew().plus(of.hands()))
        && lasts(need);
  }

  private boolean lasts(Need need) {
    return !holds.isBefore(need.lastUse()) && !safe.isBefore(need.tubUntil());
  }
}
