package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Lag;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import java.time.Duration;
import java.util.IdentityHashMap;

/** How long before its use the first step of a formula, or of anything in it, may have to start. */
final class Lead {
  private final Formulary formulary;
  private final IdentityHashMap<FormulaVersion, Duration> known = new IdentityHashMap<>();

  private Lead(Formulary formulary) {
    this.formulary = formulary;
  }

  /** The longest of all current formulas. */
  static Duration longest(Formulary formulary) {
    Lead lead = new Lead(formulary);
    return formulary.list().stream()
        .map(formula -> lead.of(formula.current()))
        .max(Duration::compareTo)
        .orElse(Duration.ZERO);
  }

  private Duration of(FormulaVersion version) {
    Duration before = known.get(version);
    if (before != null) {
      return before;
    }
    Duration own = version.evening() ? Duration.ofDays(1) : Duration.ZERO;
    for (Step step : version.steps()) {
      own =
          own.plus(step.handsOn().of(Amount.NO_MASS, 0))
              .plus(step.unattended().of(Amount.NO_MASS, 0));
      own = own.plus(step.after().stream().map(Lag::min).max(Duration::compareTo).orElse(ZERO));
    }
    own =
        own.plus(
            version.outputs().stream()
                .map(Output::rest)
                .map(Output.Rest::min)
                .max(Duration::compareTo)
                .orElse(ZERO));
    own = longer(own, thaw(version));
    Duration parts =
        formulary.parts(version).stream().map(this::of).max(Duration::compareTo).orElse(ZERO);
    Duration whole = own.plus(parts);
    known.put(version, whole);
    return whole;
  }

  /** Instead of being made it may be pulled from the freezer. */
  private static Duration thaw(FormulaVersion version) {
    return version.outputs().stream()
        .flatMap(output -> output.thaw().stream())
        .max(Duration::compareTo)
        .orElse(ZERO);
  }

  private static Duration longer(Duration one, Duration other) {
    return one.compareTo(other) < 0 ? other : one;
  }

  private static final Duration ZERO = Duration.ZERO;
}
