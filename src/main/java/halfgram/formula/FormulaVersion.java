package halfgram.formula;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Mass;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One saved version of a formula.
 *
 * @param formula code of the formula
 * @param written mass of the basis of the batch as written, when it says one
 * @param evening whether it is made the evening before the business day it is needed
 * @param most the most that one make may yield, of the first output
 * @param techniques attached to its steps; what they add is in it already
 */
public record FormulaVersion(
    String formula,
    Text name,
    int number,
    Optional<LocalDate> since,
    String note,
    Optional<Mass> written,
    List<Line> lines,
    List<Step> steps,
    List<Output> outputs,
    boolean evening,
    Optional<Amount> most,
    List<TechniqueUse> techniques) {
  public FormulaVersion {
    lines = List.copyOf(lines);
    steps = List.copyOf(steps);
    outputs = List.copyOf(outputs);
    techniques = List.copyOf(techniques);
  }

  /** This version with its techniques told more; what they add stays. */
  public FormulaVersion withTechniques(List<TechniqueUse> told) {
    return new FormulaVersion(
        formula, name, number, since, note, written, lines, steps, outputs, evening, most, told);
  }

  /** The technique by which pieces are dropped in a bath, where one does. */
  public Optional<TechniqueUse> dropping() {
    return techniques.stream().filter(TechniqueUse::drops).findFirst();
  }

  /** Whether this is the very same saved version; told by identity, which is quick and enough. */
  @SuppressWarnings("ReferenceEquality") // one version is one object in a formulary
  public boolean isSame(FormulaVersion other) {
    return this == other;
  }

  /** The position of an output by code; of the first when no code is given. */
  public int outputIndex(Optional<String> code) {
    if (code.isEmpty()) {
      return 0;
    }
    for (int i = 0; i < outputs.size(); i++) {
      if (outputs.get(i).code().equals(code.get())) {
        return i;
      }
    }
    throw new IllegalArgumentException(formula + " has no output " + code.get());
  }

  public int stepIndex(String code) {
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i).code().equals(code)) {
        return i;
      }
    }
    throw new IllegalArgumentException(formula + " has no step " + code);
  }
}
