package halfgram.words;

import halfgram.kitchen.Kitchen;
import halfgram.kitchen.Kitchen.Units;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Length;
import halfgram.measure.Quantity;
import halfgram.measure.Temperature;
import halfgram.measure.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How numbers are shown: with the signs of a language, in the units a kitchen chose. The one place
 * where what is shown changes its unit; nothing is computed or judged in a unit of here.
 *
 * <p>Metric: grams to a tenth below 100 g, to the gram above; kilograms from 10 kg. Customary:
 * ounces below a pound, pounds and ounces above, fluid ounces, quarts and gallons of the United
 * States, inches; with as many decimals as keep the step of the metric number, so that no more is
 * hidden than what the scale hides anyhow. Doses below an ounce stay in grams, because a scale
 * weighs them (common practice). Factors are those of {@link Unit}: an ounce is 28.349523125 g, a
 * gallon 3785.411784 mL, an inch 25.4 mm, t_F = 1.8 t_C + 32.
 *
 * <p>Example: 1000 g are "1000 g" in a metric kitchen, "2 lb 3.27 oz" in a customary one, and "1000
 * g (2 lb 3.27 oz)" where both are read.
 */
public final class Figures {
  private static final BigDecimal TENTH = new BigDecimal("0.1");
  private static final BigDecimal KILOGRAMS_FROM = BigDecimal.valueOf(10_000);
  private static final BigDecimal LITRE = Unit.LITRE.factor();
  private static final BigDecimal POUND_OUNCES = BigDecimal.valueOf(16);

  private static final Set<Unit> CUSTOMARY =
      EnumSet.of(
          Unit.OUNCE,
          Unit.POUND,
          Unit.FLUID_OUNCE,
          Unit.CUP,
          Unit.LABEL_CUP,
          Unit.PINT,
          Unit.QUART,
          Unit.GALLON);

  /** What a sample is typed in where it reads customary units, larger ones first. */
  private static final List<Unit> TYPED =
      List.of(Unit.POUND, Unit.OUNCE, Unit.GALLON, Unit.QUART, Unit.FLUID_OUNCE);

  private static final MathContext ROUGH = new MathContext(2, RoundingMode.HALF_UP);

  /** Spoons are read everywhere. */
  private static final Set<Unit> SPOONS = EnumSet.of(Unit.TEASPOON, Unit.TABLESPOON);

  /** Digits before the point from which on they are grouped. */
  private static final int GROUPED = 5;

  private static final int GROUP = 3;

  /** As a language writes a number: what stands before the decimals, and between thousands. */
  private record Signs(String point, String thousands) {
    private static final Signs ENGLISH = new Signs(".", ",");

    /** A comma, and a narrow blank that no line breaks at. */
    private static final Signs COMMA = new Signs(",", "\u202f");

    private static Signs of(String language) {
      return language.equals("en") ? ENGLISH : COMMA;
    }
  }

  /**
   * A number as it is shown.
   *
   * @param first what is read first
   * @param beside the same in the other units; empty when there is nothing beside it
   */
  public record Shown(String first, String beside) {
    private static Shown alone(String first) {
      return new Shown(first, "");
    }

    /** In one piece: "1000 g (2 lb 3.27 oz)". */
    public String whole() {
      return beside.isEmpty() ? first : first + " (" + beside + ")";
    }
  }

  private final Signs signs;
  private final Units units;

  Figures(String language, Units units) {
    this(Signs.of(language), units);
  }

  private Figures(Signs signs, Units units) {
    this.signs = signs;
    this.units = units;
  }

  Figures in(Kitchen kitchen) {
    return new Figures(signs, kitchen.units());
  }

  public Units units() {
    return units;
  }

  /** A number with at most so many decimals: "1.81", in Spanish "1,81". */
  public String number(BigDecimal number, int decimals) {
    return signed(Exact.plain(number, decimals));
  }

  /** As a display shows it: the language's sign before the decimals, and nothing between digits. */
  public String read(BigDecimal number) {
    return number.toPlainString().replace(".", signs.point());
  }

  /** A number as computing has written it, with the signs of the language. */
  String signed(String plain) {
    int dot = plain.indexOf('.');
    String whole = dot < 0 ? plain : plain.substring(0, dot);
    String sign = whole.startsWith("-") ? "-" : "";
    StringBuilder digits = new StringBuilder(whole.substring(sign.length()));
    if (digits.length() >= GROUPED) {
      for (int at = digits.length() - GROUP; at > 0; at -= GROUP) {
        digits.insert(at, signs.thousands());
      }
    }
    return sign + digits + (dot < 0 ? "" : signs.point() + plain.substring(dot + 1));
  }

  /** A mass. */
  public Shown mass(BigDecimal grams) {
    String metric = metricMass(grams);
    if (grams.abs().compareTo(Unit.OUNCE.factor()) < 0) {
      return Shown.alone(metric);
    }
    return chosen(metric, customaryMass(grams, step(grams)));
  }

  /** What a scale reads in the units it does not: empty for a small dose, or where unasked. */
  public String beside(BigDecimal grams, Unit reads, BigDecimal step) {
    boolean small = grams.abs().compareTo(Unit.OUNCE.factor()) < 0;
    if (reads == Unit.GRAM) {
      return small || units == Units.METRIC ? "" : customaryMass(grams, step);
    }
    return units == Units.US ? "" : metricMass(grams);
  }

  private static BigDecimal step(BigDecimal grams) {
    return grams.abs().compareTo(Exact.HUNDRED) >= 0 ? BigDecimal.ONE : TENTH;
  }

  private String metricMass(BigDecimal grams) {
    return grams.compareTo(KILOGRAMS_FROM) >= 0
        ? number(grams.movePointLeft(GROUP), GROUP) + " kg"
        : number(grams, step(grams).scale()) + " g";
  }

  private String customaryMass(BigDecimal grams, BigDecimal step) {
    int decimals = decimals(Unit.OUNCE.factor(), step);
    BigDecimal ounces = in(grams.abs(), Unit.OUNCE.factor(), decimals);
    String sign = grams.signum() < 0 ? "-" : "";
    if (ounces.compareTo(POUND_OUNCES) < 0) {
      return sign + number(ounces, decimals) + " oz";
    }
    BigDecimal[] parts = ounces.divideAndRemainder(POUND_OUNCES);
    String pounds = sign + number(parts[0], 0) + " lb";
    return parts[1].signum() == 0 ? pounds : pounds + " " + number(parts[1], decimals) + " oz";
  }

  /** A volume, to a step in millilitres: below a litre in millilitres. */
  public Shown volume(BigDecimal millilitres, BigDecimal step) {
    int decimals = step.stripTrailingZeros().scale();
    String metric =
        millilitres.compareTo(LITRE) >= 0
            ? number(millilitres.movePointLeft(GROUP), Math.max(0, decimals + GROUP)) + " L"
            : number(millilitres, Math.max(0, decimals)) + " mL";
    Unit unit = Unit.FLUID_OUNCE;
    for (Unit larger : List.of(Unit.QUART, Unit.GALLON)) {
      unit = millilitres.compareTo(larger.factor()) >= 0 ? larger : unit;
    }
    int places = decimals(unit.factor(), step);
    String name = unit == Unit.FLUID_OUNCE ? "fl oz" : unit == Unit.QUART ? "qt" : "gal";
    return chosen(metric, number(in(millilitres, unit.factor(), places), places) + " " + name);
  }

  /** A length, to a step in millimetres. */
  public Shown length(Length length, BigDecimal step) {
    int metric = Math.max(0, step.stripTrailingZeros().scale());
    int places = decimals(Length.INCH, step);
    return chosen(
        number(length.millimetres(), metric) + " mm",
        number(in(length.millimetres(), Length.INCH, places), places) + " in");
  }

  /**
   * A temperature. What was typed stays to be read, because a limit is judged as it was typed; the
   * unit the kitchen reads comes first.
   */
  public Shown temperature(Temperature typed) {
    String own = number(typed.degrees(), 2) + (typed.isCelsius() ? " °C" : " °F");
    boolean reads = units == Units.BOTH || typed.isCelsius() == (units == Units.METRIC);
    String other =
        typed.isCelsius()
            ? number(typed.inFahrenheit(), 2) + " °F"
            : number(typed.inCelsius(), 1) + " °C";
    if (units == Units.BOTH) {
      return new Shown(own, other);
    }
    return reads ? Shown.alone(own) : new Shown(other, own);
  }

  /**
   * A mass, a volume or a length that stands in a text: as it was typed where the kitchen reads its
   * unit, else in the kitchen's own, a volume to about a hundredth.
   */
  public Shown quantity(Quantity typed) {
    Optional<Unit> unit = Unit.find(typed.unit());
    String own = number(typed.number(), 9) + " " + unit.map(Figures::sign).orElse(typed.unit());
    boolean customary = unit.map(CUSTOMARY::contains).orElse(typed.unit().equals("in"));
    boolean either = unit.filter(SPOONS::contains).isPresent();
    boolean reads = units == (customary ? Units.US : Units.METRIC);
    if (either || reads) {
      return Shown.alone(own);
    }
    Figures read = new Figures(signs, customary ? Units.METRIC : Units.US);
    String other = read.converted(typed).first();
    if (!customary && other.endsWith(" g")) {
      return Shown.alone(own); // a dose too small for ounces
    }
    return units == Units.BOTH ? new Shown(own, other) : Shown.alone(other);
  }

  private Shown converted(Quantity typed) {
    Optional<Length> length = Length.find(typed);
    if (length.isPresent()) {
      return length(length.get(), TENTH);
    }
    Amount amount = typed.canonical().orElseThrow();
    return amount.dimension() == Dimension.MASS
        ? mass(amount.number())
        : volume(
            amount.number(),
            amount.number().compareTo(LITRE) < 0 ? BigDecimal.ONE : BigDecimal.TEN);
  }

  /** The sign of a unit as it is read; as a book types it, it has no blank. */
  private static String sign(Unit unit) {
    return switch (unit) {
      case FLUID_OUNCE -> "fl oz";
      case QUART -> "qt";
      case LABEL_CUP -> "cup";
      case MILLIGRAM,
          GRAM,
          KILOGRAM,
          OUNCE,
          POUND,
          MILLILITRE,
          CENTILITRE,
          LITRE,
          TEASPOON,
          TABLESPOON,
          CUP,
          PINT,
          GALLON,
          PIECE ->
          unit.symbol();
    };
  }

  private Shown chosen(String metric, String customary) {
    return switch (units) {
      case METRIC -> Shown.alone(metric);
      case US -> Shown.alone(customary);
      case BOTH -> new Shown(metric, customary);
    };
  }

  /**
   * A mass the way one would type it into a field: one number, one unit, and no comma before three
   * digits, which could be thousands.
   */
  String typed(BigDecimal grams) {
    boolean thousand = grams.compareTo(LITRE) >= 0;
    BigDecimal step = thousand ? BigDecimal.ONE : TENTH;
    List<Unit> larger =
        units == Units.US
            ? List.of(Unit.POUND, Unit.OUNCE)
            : thousand ? List.of(Unit.KILOGRAM) : List.of();
    for (Unit unit : larger) {
      int places = decimals(unit.factor(), step);
      String number = ungrouped(in(grams, unit.factor(), places), places);
      if (grams.compareTo(unit.factor()) >= 0 && !number.matches(".*,\\d{3}")) {
        return number + " " + unit.symbol();
      }
    }
    return ungrouped(grams, step.scale()) + " g";
  }

  /**
   * A measure as one would type it for a sample, to two digits: "5 kg" is "11 lb" where ounces are
   * read. A dose too small for ounces stays in grams.
   */
  String sample(Quantity metric) {
    Optional<Length> length = Length.find(metric);
    BigDecimal base =
        length.isPresent() ? length.get().millimetres() : metric.canonical().orElseThrow().number();
    if (units == Units.US && length.isPresent()) {
      return rough(base.divide(Length.INCH, Exact.DIGITS)) + " in";
    }
    for (Unit unit : units == Units.US ? TYPED : List.<Unit>of()) {
      boolean same = Unit.find(metric.unit()).orElseThrow().dimension() == unit.dimension();
      if (same && base.compareTo(unit.factor()) >= 0) {
        return rough(base.divide(unit.factor(), Exact.DIGITS)) + " " + unit.symbol();
      }
    }
    return pointed(metric.number()) + " " + metric.unit();
  }

  /** As {@link #sample(Quantity)}: "7.5 °C", "46 °F". */
  String sample(Temperature metric) {
    return units == Units.US
        ? rough(metric.inFahrenheit()) + " °F"
        : pointed(metric.degrees()) + " °C";
  }

  private String rough(BigDecimal number) {
    return pointed(number.round(ROUGH));
  }

  private String pointed(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString().replace(".", signs.point());
  }

  private String ungrouped(BigDecimal number, int decimals) {
    return Exact.plain(number, decimals).replace(".", signs.point());
  }

  /** Every way in which a mass may stand in a field, whatever the device and the kitchen read. */
  public static Set<String> typedForms(Amount mass) {
    Set<String> forms = new LinkedHashSet<>();
    for (Signs signs : List.of(Signs.ENGLISH, Signs.COMMA)) {
      for (Units units : Units.values()) {
        forms.add(new Figures(signs, units).typed(mass.number()));
      }
    }
    return forms;
  }

  /** So many decimals that a unit of the last one is no more than a step in base units. */
  private static int decimals(BigDecimal factor, BigDecimal step) {
    int decimals = 0;
    while (factor.movePointLeft(decimals).compareTo(step) > 0) {
      decimals++;
    }
    return decimals;
  }

  private static BigDecimal in(BigDecimal base, BigDecimal factor, int decimals) {
    return base.divide(factor, Exact.DIGITS).setScale(decimals, RoundingMode.HALF_UP);
  }
}
