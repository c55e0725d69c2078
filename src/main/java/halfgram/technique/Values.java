package halfgram.technique;

import halfgram.measure.Standing;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The inputs of a technique as used: the formula's own where it gives them, else the defaults. */
public final class Values {

  /** A number with its unit and standing. */
  public record Value(double number, String unit, Standing standing, String source) {}

  private final Map<String, Value> byName = new TreeMap<>();

  public Values(List<Input> inputs, Map<String, BigDecimal> given) {
    for (Input input : inputs) {
      BigDecimal own = given.get(input.name());
      byName.put(
          input.name(),
          own != null
              ? new Value(own.doubleValue(), input.unit(), Standing.ENTERED, "")
              : new Value(input.usual(), input.unit(), input.standing(), input.source()));
    }
  }

  public Value get(String name) {
    Value value = byName.get(name);
    if (value == null) {
      throw new IllegalArgumentException("no input " + name);
    }
    return value;
  }

  public double number(String name) {
    return get(name).number();
  }
}
