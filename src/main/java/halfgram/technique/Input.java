package halfgram.technique;

import halfgram.measure.Standing;
import java.util.List;
import java.util.Optional;

/**
 * One input of a technique.
 *
 * @param unit in which its numbers are given; "1" for a bare number
 * @param least and most: outside of them a number is refused; both belong to the range
 * @param usual the default; of a choice the position of its option; NaN: it has to be given
 * @param standing how far the default can be believed
 * @param source where the default comes from, in words
 * @param origin where a batch has it from
 * @param part the part of a formula whose mass it is, where the origin is a line
 * @param options the words of a choice; empty for a number
 * @param table the reference table whose rows are the options
 * @param absent whether it may be left out without anything in its place
 * @param whole whether it is a count, which has no fractions
 */
public record Input(
    String name,
    String unit,
    double least,
    double most,
    double usual,
    Standing standing,
    String source,
    Origin origin,
    String part,
    List<String> options,
    Optional<String> table,
    boolean absent,
    boolean whole) {
  public Input {
    options = List.copyOf(options);
  }

  /** Where a batch has an input from. */
  public enum Origin {
    /** What the formula says, else the default. */
    FORMULA,
    /** Grams of one of its lines in a batch of 1 kg of basis. */
    LINE,
    /** Grams of everything that goes in, in a batch of 1 kg of basis. */
    MIX,
    /** Natural calcium of all that goes in, components searched through; total, partly bound. */
    CALCIUM,
    /** Whether anything that goes in contains milk, components searched through. */
    MILK,
    /** What only a plan can say: the piece, its pan, its bath. */
    PLAN,
    /** What is known of the kitchen: its water. */
    KITCHEN,
    /** What the tub or the bag says. */
    TUB,
    /** What somebody reads off an instrument. */
    READING;

    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  private static final String PRACTICE = "common practice";
  private static final String GUESS = "a guess to be measured here";

  /** A number with a default that is common practice. */
  public static Input common(String name, String unit, double least, double most, double usual) {
    return number(name, unit, least, most, usual, Standing.COMMON_PRACTICE, PRACTICE);
  }

  /** A number with a default that is a guess. */
  public static Input guess(String name, String unit, double least, double most, double usual) {
    return number(name, unit, least, most, usual, Standing.UNVERIFIED, GUESS);
  }

  /** A number with a default of a publication. */
  public static Input published(
      String name, String unit, double least, double most, double usual, String source) {
    return number(name, unit, least, most, usual, Standing.PUBLISHED, source);
  }

  /** A number that has to be given. */
  public static Input needed(String name, String unit, double least, double most) {
    return number(name, unit, least, most, Double.NaN, Standing.ENTERED, "");
  }

  public static Input number(
      String name,
      String unit,
      double least,
      double most,
      double usual,
      Standing standing,
      String source) {
    return new Input(
        name,
        unit,
        least,
        most,
        usual,
        standing,
        source,
        Origin.FORMULA,
        "",
        List.of(),
        Optional.empty(),
        false,
        false);
  }

  /** One word of several; the first is the default. */
  public static Input choice(String name, String... options) {
    return new Input(
        name,
        "1",
        0,
        options.length - 1.0,
        0,
        Standing.COMMON_PRACTICE,
        PRACTICE,
        Origin.FORMULA,
        "",
        List.of(options),
        Optional.empty(),
        false,
        false);
  }

  /** The code of a row of a reference table; it has to be given. */
  public static Input row(String name, String table) {
    return new Input(
        name,
        "1",
        0,
        0,
        Double.NaN,
        Standing.ENTERED,
        "",
        Origin.FORMULA,
        "",
        List.of(),
        Optional.of(table),
        false,
        false);
  }

  /** The code of a row of a reference table, one of them the default. */
  public static Input row(String name, String table, String usual) {
    return new Input(
        name,
        "1",
        0,
        0,
        0,
        Standing.COMMON_PRACTICE,
        PRACTICE,
        Origin.FORMULA,
        "",
        List.of(usual),
        Optional.of(table),
        false,
        false);
  }

  /** A number that may be left out: a reading nobody has taken. */
  public static Input optional(String name, String unit, double least, double most) {
    Input needed = needed(name, unit, least, most);
    return new Input(
        name,
        unit,
        least,
        most,
        Double.NaN,
        needed.standing(),
        "",
        Origin.READING,
        "",
        List.of(),
        Optional.empty(),
        true,
        false);
  }

  /** This input, had from somewhere else than the formula's own word. */
  public Input from(Origin other) {
    return new Input(
        name, unit, least, most, usual, standing, source, other, part, options, table, absent,
        whole);
  }

  /** This input as the mass of a line. */
  public Input ofLine(String name) {
    return new Input(
        this.name,
        unit,
        least,
        most,
        usual,
        standing,
        source,
        Origin.LINE,
        name,
        options,
        table,
        absent,
        whole);
  }

  /** This input as a count. */
  public Input counted() {
    return new Input(
        name, unit, least, most, usual, standing, source, origin, part, options, table, absent,
        true);
  }

  public boolean isNeeded() {
    return Double.isNaN(usual) && !absent;
  }

  public boolean isWord() {
    return !options.isEmpty() || table.isPresent();
  }
}
