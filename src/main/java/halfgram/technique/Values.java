package halfgram.technique;

import halfgram.measure.Standing;
import halfgram.measure.Temperature;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The inputs of a technique as used: what was given where it was, else the defaults. */
public final class Values {

  /**
   * An input as used.
   *
   * @param number in the input's unit; of a choice the position of its option, of a row 0
   * @param word the option or row chosen; empty for a number
   * @param typed as somebody typed it, a temperature with its own unit; empty for a default
   */
  public record Value(
      double number, String unit, String word, Standing standing, String source, String typed) {}

  private final Map<String, Value> byName;

  Values(Map<String, Value> byName) {
    this.byName = new TreeMap<>(byName);
  }

  /** The defaults, with some numbers in the inputs' own units. */
  public Values(List<Input> inputs, Map<String, BigDecimal> given) {
    byName = new TreeMap<>();
    for (Input input : inputs) {
      BigDecimal own = given.get(input.name());
      byName.put(input.name(), own == null ? usual(input) : entered(input, own.doubleValue(), ""));
    }
  }

  static Value usual(Input input) {
    String word = input.options().isEmpty() ? "" : input.options().get((int) input.usual());
    return new Value(input.usual(), input.unit(), word, input.standing(), input.source(), "");
  }

  static Value entered(Input input, double number, String typed) {
    return new Value(number, input.unit(), "", Standing.ENTERED, "", typed);
  }

  /** This value as something worked out from the formula, which nobody entered. */
  static Value derived(Value value) {
    return new Value(
        value.number(),
        value.unit(),
        value.word(),
        Standing.COMPUTED,
        "the formula's lines",
        value.typed());
  }

  static Value chosen(Input input, String word) {
    int place = Math.max(0, input.options().indexOf(word));
    return new Value(place, input.unit(), word, Standing.ENTERED, "", word);
  }

  /** These with one number changed, in its input's own unit. */
  public Values with(String name, double number) {
    Value old = get(name);
    Map<String, Value> changed = new TreeMap<>(byName);
    changed.put(name, new Value(number, old.unit(), old.word(), Standing.ENTERED, "", ""));
    return new Values(changed);
  }

  public Value get(String name) {
    Value value = byName.get(name);
    if (value == null) {
      throw new IllegalArgumentException("no input " + name);
    }
    return value;
  }

  /** Whether a number that may be left out was given. */
  public boolean has(String name) {
    return !Double.isNaN(get(name).number());
  }

  public double number(String name) {
    return get(name).number();
  }

  /** The option or row chosen. */
  public String word(String name) {
    return get(name).word();
  }

  public boolean is(String name, String word) {
    return word(name).equals(word);
  }

  /**
   * Whether a temperature is at or below a limit that a code prints in both scales; judged in the
   * scale it was typed in, never converted.
   */
  public boolean isAtMost(String name, String celsius, String fahrenheit) {
    return compared(name, celsius, fahrenheit) <= 0;
  }

  /** Whether a temperature is below such a limit. */
  public boolean isBelow(String name, String celsius, String fahrenheit) {
    return compared(name, celsius, fahrenheit) < 0;
  }

  private int compared(String name, String celsius, String fahrenheit) {
    Optional<Temperature> typed = Temperature.parse(get(name).typed());
    if (typed.isPresent() && typed.get().scale() == Temperature.Scale.FAHRENHEIT) {
      return typed.get().degrees().compareTo(new BigDecimal(fahrenheit));
    }
    BigDecimal degrees =
        typed.map(Temperature::degrees).orElseGet(() -> BigDecimal.valueOf(number(name)));
    return degrees.compareTo(new BigDecimal(celsius));
  }

  /** All of them by name. */
  public Map<String, Value> all() {
    return java.util.Collections.unmodifiableMap(byName);
  }
}
