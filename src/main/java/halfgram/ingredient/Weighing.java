package halfgram.ingredient;

import halfgram.measure.Exact;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * How a mass gets weighed: on the coarsest scale whose error in service stays inside the line's
 * tolerance, the bowl counted in its capacity; among equals the one in use, so that nobody changes
 * scales for nothing. A dose too small for every scale becomes a worked dilution: of the substance
 * in a carrier, 1 in 10 (or 100, or 1000), of which ten (hundred, thousand) times the dose is
 * taken.
 *
 * <p>What no scale carries at once is weighed in the fewest equal parts.
 *
 * <p>Example: 37 g at 1 % goes on the 0.1 g scale (a 1 g scale may be off by 2.7 %). 0.18 g at 1 %,
 * finest scale 0.01 g (off by 5.6 %): 5 g of it and 45 g of carrier, of which 1.81 g; the three
 * weighings together are off by 0.8 % at most.
 *
 * <p>Source: the tolerance rule is common practice; scale errors see {@link AccuracyClass}.
 *
 * @param target the mass wanted
 * @param shown what the displays of all parts read together
 * @param scale empty when no scale weighs it well enough, or it is diluted
 * @param parts how often it is weighed
 */
public record Weighing(
    Mass target, Mass shown, Optional<Scale> scale, int parts, Optional<Dilution> dilution) {

  /**
   * A dose worked through a mix.
   *
   * @param oneIn the mix holds one part of the substance in this many
   * @param substance what to weigh of the substance, on substanceScale
   * @param carrier what to weigh of the carrier
   * @param take how much of the mix holds the dose, on takeScale
   */
  public record Dilution(
      int oneIn,
      Mass substance,
      Scale substanceScale,
      Mass carrier,
      Scale carrierScale,
      Mass take,
      Scale takeScale) {

    private Dilution taking(Mass whole, Mass part) {
      BigDecimal grams = take.grams().multiply(part.grams()).divide(whole.grams(), Exact.DIGITS);
      return new Dilution(
          oneIn,
          substance,
          substanceScale,
          carrier,
          carrierScale,
          takeScale.shown(grams),
          takeScale);
    }

    /** The part of what is taken that is carrier: the batch's own carrier line gives it up. */
    public Mass carrierTaken(Mass dose) {
      return take.minus(dose);
    }
  }

  private static final int MOST_PARTS = 40;
  private static final int[] FACTORS = {10, 100, 1000};
  private static final List<String> ROUND_STARTS = List.of("1", "2", "5");

  /**
   * How a mass is weighed with the scales there are.
   *
   * @param onScale mass already on the scale: the bowl and what was weighed into it
   * @param current the scale in use, if any
   */
  public static Weighing of(
      Mass target, Mass onScale, Ratio tolerance, List<Scale> scales, Optional<Scale> current) {
    if (target.isZero()) {
      return unweighed(target);
    }
    Optional<Scale> direct = coarsest(target.grams(), onScale, tolerance, scales, current);
    if (direct.isPresent()) {
      Mass shown = direct.get().shown(target.grams());
      return new Weighing(target, shown, direct, 1, Optional.empty());
    }
    boolean mayBeParted = scales.stream().anyMatch(s -> target.compareTo(s.max()) > 0);
    for (int parts = 2; mayBeParted && parts <= MOST_PARTS; parts++) {
      BigDecimal part = target.grams().divide(BigDecimal.valueOf(parts), Exact.DIGITS);
      Optional<Scale> scale = coarsest(part, Mass.ZERO, tolerance, scales, current);
      if (scale.isPresent() && target.compareTo(scale.get().max()) > 0) {
        Mass shown = scale.get().shown(target.grams());
        return new Weighing(target, shown, scale, parts, Optional.empty());
      }
    }
    boolean tooSmall = scales.stream().anyMatch(s -> tooSmallFor(s, target, tolerance));
    Optional<Dilution> dilution = tooSmall ? dilute(target, tolerance, scales) : Optional.empty();
    return new Weighing(target, target, Optional.empty(), 1, dilution);
  }

  /**
   * What is still to be weighed when part of it is in: on the same scale, a dilution in proportion.
   *
   * @param in less than the target
   */
  public Weighing lacking(Mass in) {
    Mass more = target.minus(in);
    Mass read = scale.map(of -> of.shown(more.grams())).orElse(more);
    return new Weighing(more, read, scale, 1, dilution.map(mix -> mix.taking(target, more)));
  }

  /** A mass that needs no scale: nothing, or something counted out. */
  public static Weighing unweighed(Mass target) {
    return new Weighing(target, target, Optional.empty(), 1, Optional.empty());
  }

  private static boolean tooSmallFor(Scale scale, Mass target, Ratio tolerance) {
    return scale.leastLoad().compareTo(target.grams()) > 0
        || scale.relativeError(target.grams()).compareTo(tolerance) > 0;
  }

  private static Optional<Scale> coarsest(
      BigDecimal grams,
      Mass onScale,
      Ratio tolerance,
      List<Scale> scales,
      Optional<Scale> current) {
    return scales.stream()
        .filter(scale -> scale.weighs(grams, onScale, tolerance))
        .max(
            Comparator.comparing(Scale::step)
                .thenComparing(scale -> current.filter(scale::equals).isPresent())
                .thenComparing(Scale::code, Comparator.reverseOrder()));
  }

  private static Optional<Dilution> dilute(Mass dose, Ratio tolerance, List<Scale> scales) {
    for (int factor : FACTORS) {
      BigDecimal take = dose.grams().multiply(BigDecimal.valueOf(factor));
      for (int exponent = -4; exponent <= 3; exponent++) {
        for (String start : ROUND_STARTS) {
          BigDecimal substance = new BigDecimal(start).scaleByPowerOfTen(exponent);
          if (substance.compareTo(dose.grams()) >= 0) {
            Optional<Dilution> found = mix(factor, substance, take, tolerance, scales);
            if (found.isPresent()) {
              return found;
            }
          }
        }
      }
    }
    return Optional.empty();
  }

  /** The mix of so much substance, when all three weighings together stay in the tolerance. */
  private static Optional<Dilution> mix(
      int factor, BigDecimal substance, BigDecimal take, Ratio tolerance, List<Scale> scales) {
    BigDecimal carrier = substance.multiply(BigDecimal.valueOf(factor - 1L));
    Optional<Scale> substanceScale = best(substance, tolerance, scales);
    Optional<Scale> carrierScale = best(carrier, tolerance, scales);
    Optional<Scale> takeScale = best(take, tolerance, scales);
    if (substanceScale.isEmpty() || carrierScale.isEmpty() || takeScale.isEmpty()) {
      return Optional.empty();
    }
    Ratio error =
        substanceScale
            .get()
            .relativeError(substance)
            .plus(carrierScale.get().relativeError(carrier))
            .plus(takeScale.get().relativeError(take));
    return error.compareTo(tolerance) > 0
        ? Optional.empty()
        : Optional.of(
            new Dilution(
                factor,
                Mass.exactly(substance),
                substanceScale.get(),
                Mass.exactly(carrier),
                carrierScale.get(),
                takeScale.get().shown(take),
                takeScale.get()));
  }

  /** The scale that is least off at this mass. */
  private static Optional<Scale> best(BigDecimal grams, Ratio tolerance, List<Scale> scales) {
    return scales.stream()
        .filter(scale -> scale.weighs(grams, Mass.ZERO, tolerance))
        .min(
            Comparator.comparing((Scale scale) -> scale.relativeError(grams))
                .thenComparing(Scale::code));
  }
}
