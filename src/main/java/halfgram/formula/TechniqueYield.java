package halfgram.formula;

import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.technique.Result;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Whether what a technique says comes out of the vessel is what the yields of the steps say, since
 * a batch is scaled by those alone.
 *
 * <p>Rules. The figure is held against the yield of the technique's own step, and of that step and
 * those after it, up to each: oil that is blended drips in a later one. A twentieth apart is the
 * same (common practice).
 *
 * <p>Example: 57 % of the oil through the cloth, of 1 kg with 450 g of squeezed herb, is 39 % of
 * the mash; a drip that yields 57 % says more than comes.
 */
public final class TechniqueYield {
  private static final BigDecimal SAME = new BigDecimal("0.05");
  private static final BigDecimal PERCENT = new BigDecimal(100);

  private TechniqueYield() {}

  /** What speaks against one of the two; empty where they agree, or nothing says it. */
  public static Optional<Message> findDoubt(FormulaVersion version, TechniqueUse use) {
    return Techniques.find(use.name())
        .flatMap(Technique::comesOut)
        .flatMap(figure -> use.result().orElse(Result.NONE).find(figure))
        .map(figure -> BigDecimal.valueOf(figure.number()))
        .flatMap(says -> findDoubt(version, use, says));
  }

  private static Optional<Message> findDoubt(
      FormulaVersion version, TechniqueUse use, BigDecimal says) {
    BigDecimal kept = PERCENT;
    for (Step step :
        version.steps().subList(version.stepIndex(use.step()), version.steps().size())) {
      kept = kept.multiply(step.yield().number(), Exact.DIGITS);
      if (kept.subtract(says).abs().compareTo(says.multiply(SAME)) <= 0) {
        return Optional.empty();
      }
    }
    return Optional.of(
        Message.of("warn.technique-yield", Exact.plain(says, 1), Exact.plain(kept, 1)));
  }
}
