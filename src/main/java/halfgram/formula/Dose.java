package halfgram.formula;

import halfgram.kitchen.Text;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import java.util.Optional;

/**
 * How much of a line there is, as a share of the basis.
 *
 * @param kind how it is written
 * @param counted the share that the mix can rely on: for a from-to line the measured ratio, else
 *     its low end
 * @param setOut the share that is weighed out: for a from-to line its high end
 * @param typed an absolute amount as typed
 * @param stopWhen the sign to stop at, for a from-to line
 * @param figure what a technique of the formula works out, for a line that is so much
 */
public record Dose(
    Kind kind,
    Ratio counted,
    Ratio setOut,
    Optional<Quantity> typed,
    Optional<Text> stopWhen,
    Optional<String> figure) {

  /** How a dose is written. */
  public enum Kind {
    /** One of the lines that together are 100 %. */
    BASIS,
    /** Percent of the basis. */
    PERCENT,
    /** An amount of the written batch. */
    ABSOLUTE,
    /** By eye between two shares, stop at a sign; the tub is weighed before and after. */
    FROM_TO,
    /** What binds the hardness of the site's water. */
    SEQUESTRANT,
    /** What a technique of the formula works out. */
    TECHNIQUE
  }

  private static final Optional<Quantity> NO_TYPED = Optional.empty();
  private static final Optional<String> NO_WORD = Optional.empty();
  private static final Optional<Text> NO_TEXT = Optional.empty();

  public static Dose basis(Ratio share) {
    return new Dose(Kind.BASIS, share, share, NO_TYPED, NO_TEXT, NO_WORD);
  }

  public static Dose percent(Ratio share) {
    return new Dose(Kind.PERCENT, share, share, NO_TYPED, NO_TEXT, NO_WORD);
  }

  public static Dose absolute(Quantity typed, Ratio share) {
    return new Dose(Kind.ABSOLUTE, share, share, Optional.of(typed), NO_TEXT, NO_WORD);
  }

  public static Dose fromTo(Ratio from, Ratio to, Optional<Ratio> measured, Text stopWhen) {
    Ratio counted = measured.orElse(from);
    Ratio setOut = counted.compareTo(to) > 0 ? counted : to;
    return new Dose(Kind.FROM_TO, counted, setOut, NO_TYPED, Optional.of(stopWhen), NO_WORD);
  }

  public static Dose sequestrant(Ratio share) {
    return new Dose(Kind.SEQUESTRANT, share, share, NO_TYPED, NO_TEXT, NO_WORD);
  }

  public static Dose technique(String figure, Ratio share) {
    return new Dose(Kind.TECHNIQUE, share, share, NO_TYPED, NO_TEXT, Optional.of(figure));
  }

  public boolean isBasis() {
    return kind == Kind.BASIS;
  }
}
