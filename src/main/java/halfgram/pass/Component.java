package halfgram.pass;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Output;
import halfgram.kitchen.Text;
import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.Components;

/** What a formula yields, whichever version made it: a tub of an older version serves as well. */
public record Component(String formula, String output, Dimension unit)
    implements Comparable<Component> {

  public static Component of(Formulary formulary, ComponentRef ref) {
    FormulaVersion version = formulary.get(ref);
    return of(version, version.outputIndex(ref.output()));
  }

  public static Component of(FormulaVersion version, int output) {
    Output made = version.outputs().get(output);
    return new Component(version.formula(), made.code(), made.unit());
  }

  /** Whether a tub has this in it. */
  boolean isIn(Formulary formulary, Lot lot) {
    return lot.component().formula().equals(formula)
        && lot.left().dimension() == unit
        && formulary
            .find(lot.component())
            .map(version -> lot.component().output().orElse(version.outputs().get(0).code()))
            .filter(output::equals)
            .isPresent();
  }

  /** What it is called. */
  public Text name(Formulary formulary) {
    FormulaVersion version = formulary.get(ComponentRef.of(formula));
    for (int i = 0; i < version.outputs().size(); i++) {
      if (version.outputs().get(i).code().equals(output)) {
        return Components.name(version, i);
      }
    }
    return version.name();
  }

  /** None of it. */
  public Amount none() {
    return Amount.zero(unit);
  }

  @Override
  public int compareTo(Component other) {
    int order = formula.compareTo(other.formula);
    return order != 0 ? order : output.compareTo(other.output);
  }
}
