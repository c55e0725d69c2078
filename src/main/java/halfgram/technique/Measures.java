package halfgram.technique;

import halfgram.measure.Exact;
import halfgram.measure.Unit;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * The units somebody may type for an input and what one of them is in the input's own; definitions.
 * Temperatures are apart, because their zeros differ.
 */
final class Measures {
  /** Units of one kind with what one of each is in the first's. */
  private static final List<Map<String, String>> KINDS =
      List.of(
          ofUnits(halfgram.measure.Dimension.MASS),
          ofUnits(halfgram.measure.Dimension.VOLUME),
          Map.of("mm", "1", "cm", "10", "m", "1000", "in", "25.4"),
          Map.of("s", "1", "min", "60", "h", "3600", "d", "86400"),
          Map.of("%", "1", "ppm", "0.0001", "g/kg", "0.1"),
          Map.of("mg/L", "1", "ppm", "1", "gpg", "17.118061"),
          Map.of("g/mL", "1", "kg/L", "1", "g/L", "0.001"),
          Map.of("µm²/s", "1", "um2/s", "1"));

  private Measures() {}

  private static Map<String, String> ofUnits(halfgram.measure.Dimension dimension) {
    Map<String, String> factors = new TreeMap<>();
    Arrays.stream(Unit.values())
        .filter(unit -> unit.dimension() == dimension)
        .forEach(unit -> factors.put(unit.symbol(), unit.factor().toPlainString()));
    return factors;
  }

  /** What may be typed where this unit is asked for, the unit itself first. */
  static List<String> accepted(String unit) {
    SortedSet<String> others = new TreeSet<>();
    KINDS.stream().filter(kind -> kind.containsKey(unit)).forEach(k -> others.addAll(k.keySet()));
    if (unit.equals("°C")) {
      others.add("°F");
    }
    others.remove(unit);
    java.util.ArrayList<String> all = new java.util.ArrayList<>(List.of(unit));
    all.addAll(others);
    return all;
  }

  /** A number of one unit in another; empty when they do not measure the same. */
  static Optional<BigDecimal> convert(BigDecimal number, String from, String to) {
    if (from.equals(to)) {
      return Optional.of(number);
    }
    return KINDS.stream()
        .filter(kind -> kind.containsKey(from) && kind.containsKey(to))
        .findFirst()
        .map(
            kind ->
                number
                    .multiply(new BigDecimal(kind.get(from)))
                    .divide(new BigDecimal(kind.get(to)), Exact.DIGITS));
  }
}
