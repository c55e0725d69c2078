package halfgram.formula;

import java.math.BigDecimal;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * A technique attached to one step of a formula.
 *
 * @param name of the technique
 * @param bath formula of the bath it sets in
 * @param pan container code of one bath
 * @param alginate ingredient code of the line that gives the bath its strength
 * @param salt ingredient code of the calcium salt in the base, searched through nesting
 * @param saltKind row code of that salt in the reference table
 * @param inputs the formula's own inputs by name, in the technique's units
 */
public record TechniqueUse(
    String name,
    String step,
    String bath,
    String pan,
    String alginate,
    Optional<String> salt,
    Optional<String> saltKind,
    SortedMap<String, BigDecimal> inputs) {
  public TechniqueUse {
    inputs = new TreeMap<>(Map.copyOf(inputs));
  }
}
