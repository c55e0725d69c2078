package halfgram.formula;

import halfgram.measure.Ratio;
import java.util.function.Function;

/** What of something is in a formula's mix, searched through all components. */
public final class Contents {
  private Contents() {}

  /**
   * The average over the mix, before any loss, of what each ingredient holds of it.
   *
   * @param inside what a gram of an ingredient holds: 1 for the ingredient looked for and 0 for all
   *     others gives its mass share
   */
  public static Ratio average(
      Formulary formulary, FormulaVersion version, Function<String, Ratio> inside) {
    Ratio mix = Ratio.ZERO;
    Ratio found = Ratio.ZERO;
    for (Line line : version.lines()) {
      Ratio part = line.contribution();
      mix = mix.plus(part);
      Ratio holds =
          line.item()
              .fold(
                  ingredient -> inside.apply(ingredient.code()),
                  component -> average(formulary, formulary.get(component.ref()), inside));
      found = found.plus(part.times(holds));
    }
    return mix.isZero() ? Ratio.ZERO : found.dividedBy(mix);
  }
}
