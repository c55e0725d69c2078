package halfgram.formula;

import java.util.Comparator;
import java.util.List;

/**
 * A preparation in ratios and all its versions; the highest number is the current one.
 *
 * @param takenOut whether it is kept for what was made of it alone, and nothing may use it
 */
public record Formula(String code, List<FormulaVersion> versions, boolean takenOut) {
  public Formula {
    versions = versions.stream().sorted(Comparator.comparingInt(FormulaVersion::number)).toList();
  }

  public FormulaVersion current() {
    return versions.get(versions.size() - 1);
  }
}
