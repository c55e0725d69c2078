package halfgram.formula;

import java.util.IdentityHashMap;

/**
 * Which outputs carry a date for safety's sake: by their own hold, or through anything in them that
 * is not cooked through afterwards.
 */
public final class SafetyDates {
  private final Formulary formulary;
  private final IdentityHashMap<FormulaVersion, Boolean> inside = new IdentityHashMap<>();

  public SafetyDates(Formulary formulary) {
    this.formulary = formulary;
  }

  /** Whether an output's date is one of safety. */
  public boolean binds(FormulaVersion version, int output) {
    return version.outputs().get(output).hold().reason().isSafety() || inside(version);
  }

  private boolean inside(FormulaVersion version) {
    Boolean known = inside.get(version);
    if (known != null) {
      return known;
    }
    boolean found = false;
    for (Line line : version.lines()) {
      if (line.item().component().isPresent() && !renewed(version, line)) {
        ComponentRef ref = line.item().component().get();
        FormulaVersion part = formulary.get(ref);
        found |= binds(part, part.outputIndex(ref.output()));
      }
    }
    inside.put(version, found);
    return found;
  }

  /** Whether what goes in with a line is cooked through at its step or after it. */
  public static boolean renewed(FormulaVersion version, Line line) {
    return renewed(version, line.step());
  }

  /** Whether what goes in at a step is cooked through there or after it. */
  public static boolean renewed(FormulaVersion version, String step) {
    return version.steps().stream().skip(version.stepIndex(step)).anyMatch(Step::renewsDate);
  }
}
