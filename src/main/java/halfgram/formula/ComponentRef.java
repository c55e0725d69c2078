package halfgram.formula;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * A reference to what a formula yields: the formula, the output when it has several, and a version
 * when one is pinned.
 */
public record ComponentRef(String formula, Optional<String> output, OptionalInt version) {
  public static ComponentRef of(String formula) {
    return new ComponentRef(formula, Optional.empty(), OptionalInt.empty());
  }
}
