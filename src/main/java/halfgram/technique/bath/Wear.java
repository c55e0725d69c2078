package halfgram.technique.bath;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/** What has gone through one bath, planned or real, and when that is too much. */
final class Wear {
  private Instant from;
  private long pieces;
  private double lostMl;
  private double calciumMg;
  private Optional<Instant> milkSince = Optional.empty();
  private final SortedSet<String> carries = new TreeSet<>();

  /**
   * @param from when it came into use
   */
  Wear(Instant from) {
    this.from = from;
  }

  /** One that wears on by itself. */
  Wear copy() {
    Wear copy = new Wear(from);
    copy.pieces = pieces;
    copy.lostMl = lostMl;
    copy.calciumMg = calciumMg;
    copy.milkSince = milkSince;
    copy.carries.addAll(carries);
    return copy;
  }

  Instant from() {
    return from;
  }

  long pieces() {
    return pieces;
  }

  double lostMl() {
    return lostMl;
  }

  double calciumMg() {
    return calciumMg;
  }

  SortedSet<String> carries() {
    return new TreeSet<>(carries);
  }

  /**
   * Why it would have to be renewed before some more pieces, when these went in now.
   *
   * @param more pieces of one drop
   * @param at when they go in
   */
  Optional<Renewal> trips(SphereBath bath, SortedSet<String> allergens, long more, Instant at) {
    if (pieces == 0) {
      return Optional.empty();
    }
    Instant out = at.plus(bath.cycle());
    for (Renewal rule : Renewal.values()) {
      boolean trips =
          switch (rule) {
            case CONTACT -> !allergens.containsAll(carries);
            case FOOD_SAFETY -> milkSince.filter(s -> over(s, bath.milkHours(), out)).isPresent();
            case HOURS -> over(from, bath.hours(), out);
            case LEVEL -> lostMl + more * bath.lossPerPiece() > bath.usable();
            case COUNT -> pieces + more > bath.mostPieces();
            case CALCIUM -> calciumMg + more * bath.calciumPerPiece() > bath.calciumLimit();
            case STRENGTH -> bath.strengthAfter(pieces + more) < bath.leastStrength();
          };
      if (trips) {
        return Optional.of(rule);
      }
    }
    return Optional.empty();
  }

  private static boolean over(Instant since, Duration limit, Instant at) {
    return at.isAfter(since.plus(limit));
  }

  /**
   * A drop goes in.
   *
   * @param since when the first of these pieces, or their test piece, was in the bath
   */
  void take(SphereBath bath, SortedSet<String> allergens, long more, Instant since) {
    pieces += more;
    lostMl += more * bath.lossPerPiece();
    calciumMg += more * bath.calciumPerPiece();
    carries.addAll(allergens);
    from = since.isBefore(from) ? since : from;
    if (bath.facts().milk() && milkSince.filter(known -> !known.isAfter(since)).isEmpty()) {
      milkSince = Optional.of(since);
    }
  }

  /** More calcium than its pieces were reckoned to leave. */
  void addCalcium(double mg) {
    calciumMg += mg;
  }

  /** Somebody has measured what is gone. */
  void measured(double lost) {
    lostMl = lost;
  }
}
