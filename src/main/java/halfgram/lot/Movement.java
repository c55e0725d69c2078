package halfgram.lot;

import halfgram.measure.Amount;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * Something that happened to a tub; append-only. A mistake is put right by a further movement.
 *
 * @param amount what it adds to the tub, below zero for what it takes out; for a reservation, what
 *     it keeps for the event
 * @param stated what was counted, for a count
 * @param event for whom, for a reservation
 * @param tick the tick that caused it
 * @param turn what it made of the tub's place and dates
 * @param loss what it had cost, when it was lost
 * @param undoes number of the change that it takes back
 * @param change number of the change it belongs to; 0 before it is kept
 */
public record Movement(
    UUID lot,
    Kind kind,
    Amount amount,
    Optional<Amount> stated,
    Optional<String> event,
    Optional<String> reason,
    String who,
    Instant at,
    Optional<UUID> tick,
    Turn turn,
    Optional<Loss> loss,
    OptionalLong undoes,
    long change) {
  /** Who signs what nobody did, as a day's first plan is signed. */
  public static final String CLOCK = "the kitchen's clock";

  /** One that turns nothing, loses nothing and takes nothing back. */
  public Movement(
      UUID lot,
      Kind kind,
      Amount amount,
      Optional<Amount> stated,
      Optional<String> event,
      Optional<String> reason,
      String who,
      Instant at,
      Optional<UUID> tick) {
    this(
        lot,
        kind,
        amount,
        stated,
        event,
        reason,
        who,
        at,
        tick,
        Turn.NONE,
        Optional.empty(),
        OptionalLong.empty(),
        0);
  }

  /** One of which nothing more is to be said. */
  public static Movement of(UUID lot, Kind kind, Amount amount, String who, Instant at) {
    Optional<String> none = Optional.empty();
    return new Movement(lot, kind, amount, Optional.empty(), none, none, who, at, Optional.empty());
  }

  public Movement because(Optional<String> why) {
    return new Movement(
        lot, kind, amount, stated, event, why, who, at, tick, turn, loss, undoes, change);
  }

  public Movement turning(Turn into) {
    return new Movement(
        lot, kind, amount, stated, event, reason, who, at, tick, into, loss, undoes, change);
  }

  public Movement losing(Loss lost) {
    return new Movement(
        lot,
        kind,
        amount,
        stated,
        event,
        reason,
        who,
        at,
        tick,
        turn,
        Optional.of(lost),
        undoes,
        change);
  }

  public Movement undoing(long number) {
    return new Movement(
        lot,
        kind,
        amount,
        stated,
        event,
        reason,
        who,
        at,
        tick,
        turn,
        loss,
        OptionalLong.of(number),
        change);
  }

  /** The same of what is kept for an event, by another amount. */
  public Movement keeping(Kind of, String whose, Amount much, Optional<String> why) {
    return new Movement(lot, of, much, Optional.empty(), Optional.of(whose), why, who, at, tick);
  }

  /**
   * What became of a tub's place and dates.
   *
   * @param place where it stands from then on
   * @param useBy frozen: until when the kitchen said it keeps; thawed: its use-by from then on
   * @param days frozen: how many days may still be used
   */
  public record Turn(Optional<String> place, Optional<Instant> useBy, OptionalInt days) {
    public static final Turn NONE =
        new Turn(Optional.empty(), Optional.empty(), OptionalInt.empty());

    /** To another place; empty for the same. */
    public static Turn to(Optional<String> place) {
      return new Turn(place, Optional.empty(), OptionalInt.empty());
    }
  }

  /** What happened. */
  public enum Kind {
    /** It was filled. */
    MADE,
    /** It was in the house before the ledger began, or came with a book. */
    BROUGHT,
    USED,
    /** A service was planned to use it; nobody has seen it. */
    ASSUMED,
    COUNTED,
    /** All that was left was thrown away. */
    BINNED,
    /** Some of it was thrown away. */
    WASTED,
    /** Some of it broke. */
    BROKE,
    /** Put into other tubs of the same, or filled out of one. */
    SPLIT,
    /** Put together with other tubs of the same. */
    COMBINED,
    /** Put in another place. */
    MOVED,
    FROZEN,
    THAWED,
    /** Kept for an event; moves nothing out of the tub. */
    RESERVED,
    /** Somebody else took of what was kept for an event. */
    DIPPED,
    /** An earlier movement taken back. */
    UNDONE;

    /** Whether it changes what is in the tub. */
    public boolean moves() {
      return !keeps() && !turns();
    }

    /** Whether it changes what is kept for an event. */
    public boolean keeps() {
      return this == RESERVED || this == DIPPED;
    }

    /** Whether it changes the tub's place or dates alone. */
    public boolean turns() {
      return this == MOVED || this == FROZEN || this == THAWED;
    }

    /** Whether it can be what a tub was filled by. */
    public boolean fills() {
      return this == MADE || this == BROUGHT || this == SPLIT || this == COMBINED;
    }

    /** Whether what it takes out is lost. */
    public boolean loses() {
      return this == BINNED || this == WASTED || this == BROKE;
    }
  }
}
