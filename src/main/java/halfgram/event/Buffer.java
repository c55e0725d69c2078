package halfgram.event;

import halfgram.measure.Amount;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import java.util.List;
import java.util.OptionalInt;

/**
 * The extra covers made, by tiers of the guest count, rounded up to whole covers. More guests never
 * prepare less: a count just above a tier gets at least what the tier's top gets.
 *
 * <p>Example: 84 guests, 93 covers; 100 and 101 guests, 110. Source: a catering textbook's overset
 * rule (10 % to 100 guests, 5 % to 1,000, 3 % above); monotony is this program's.
 */
public record Buffer(List<Tier> tiers) {

  /**
   * One tier.
   *
   * @param to highest guest count of the tier; empty for the last
   * @param extra share added
   */
  public record Tier(OptionalInt to, Ratio extra) {}

  public static final Buffer PUBLISHED =
      new Buffer(
          List.of(
              new Tier(OptionalInt.of(100), Ratio.percent(10)),
              new Tier(OptionalInt.of(1000), Ratio.percent(5)),
              new Tier(OptionalInt.empty(), Ratio.percent(3))));

  /** One share for any count. */
  public static Buffer flat(Ratio extra) {
    return new Buffer(List.of(new Tier(OptionalInt.empty(), extra)));
  }

  public int prepared(int guests) {
    int least = 0;
    for (Tier tier : tiers) {
      if (tier.to().isEmpty() || guests <= tier.to().getAsInt()) {
        return Math.max(least, with(guests, tier));
      }
      least = Math.max(least, with(tier.to().getAsInt(), tier));
    }
    return Math.max(least, guests);
  }

  /** The share that applies to a count. */
  public Ratio extra(int guests) {
    return tiers.stream()
        .filter(tier -> tier.to().isEmpty() || guests <= tier.to().getAsInt())
        .map(Tier::extra)
        .findFirst()
        .orElse(Ratio.ZERO);
  }

  private static int with(int guests, Tier tier) {
    return (int)
        Amount.pieces(guests)
            .times(Ratio.ONE.plus(tier.extra()))
            .rounded(Rounding.UP_TO_WHOLE)
            .pieces();
  }
}
