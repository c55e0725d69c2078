package halfgram.technique.gel;

import halfgram.technique.Tables.Row;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * A row of the agents as a gel asks it; a number the table does not have is NaN.
 *
 * <p>Example: agar sets at 35 to 45 °C (another source: below 35 °C) and melts at 80 to 90 °C, so
 * it melts 35 to 55 °C above where it sets.
 */
record Agent(Row row) {
  /** Times of setting are for a layer of so many mm; common practice. */
  static final double LAYER_MM = 30;

  boolean is(String field, String word) {
    return row.text(field).equals(word);
  }

  double number(String field) {
    return row.number(field);
  }

  boolean has(String field) {
    return row.has(field);
  }

  String name() {
    return row.text("name");
  }

  /** What of several things lets it set, one of them being enough. */
  List<String> needs() {
    return row.has("needs") ? Arrays.asList(row.text("needs").split(" ", -1)) : List.of();
  }

  boolean thickensOnly() {
    return is("kind", "thickener");
  }

  boolean setsHot() {
    return is("kind", "heat-gel");
  }

  /** Lowest and highest dose that anybody gives, percent. */
  double lowest() {
    return least(
        number("low_percent"), number("usual_low_percent"), number("suspends_low_percent"));
  }

  double highest() {
    return most(number("high_percent"), number("usual_high_percent"));
  }

  /** The highest temperature at which a source lets it begin to set. */
  double setsFrom() {
    return most(number("set_high_c"), number("set_other_high_c"));
  }

  /** The lowest temperature that a source asks for before it is set. */
  double setsBelow() {
    double first = has("set_low_c") ? number("set_low_c") : number("set_high_c");
    double other = has("set_other_low_c") ? number("set_other_low_c") : number("set_other_high_c");
    return least(first, other);
  }

  /** Where it begins to melt: published, or counted from where it sets. */
  double meltsFrom() {
    return has("melt_low_c")
        ? number("melt_low_c")
        : number("set_low_c") + number("melt_over_low_c");
  }

  /** Where it is molten. */
  double meltsTo() {
    return has("melt_high_c") ? number("melt_high_c") : setsFrom() + number("melt_over_high_c");
  }

  double leastHysteresis() {
    return has("melt_over_low_c") ? number("melt_over_low_c") : number("melt_low_c") - setsFrom();
  }

  double mostHysteresis() {
    return has("melt_over_high_c")
        ? number("melt_over_high_c")
        : number("melt_high_c") - setsBelow();
  }

  /**
   * Minutes to stand until set, the time growing with the square of the depth above the layer that
   * the table means, never shrinking below it.
   */
  double stand(String place, double depthMm) {
    double layer = number("stand_" + place + "_min");
    double deeper = Math.max(1, depthMm / LAYER_MM);
    return is("kind", "enzyme") ? layer : layer * deeper * deeper;
  }

  private static double least(double... numbers) {
    return DoubleStream.of(numbers).filter(n -> !Double.isNaN(n)).min().orElse(Double.NaN);
  }

  private static double most(double... numbers) {
    return DoubleStream.of(numbers).filter(n -> !Double.isNaN(n)).max().orElse(Double.NaN);
  }
}
