package halfgram.measure;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/**
 * A unit of mass (base: gram), volume (base: millilitre) or count (base: piece) with its exact
 * factor to the base unit.
 *
 * <p>Factors are definitions: the avoirdupois pound is 453.59237 g and the US gallon 231 cubic
 * inches of 25.4 mm (NIST Handbook 44, Appendix C). A label cup (240 mL, 21 CFR 101.9(b)(5)(viii))
 * is another unit than the customary cup and never mixed with it. Codes are UCUM's.
 */
public enum Unit {
  MILLIGRAM("mg", "mg", Dimension.MASS, "0.001"),
  GRAM("g", "g", Dimension.MASS, "1"),
  KILOGRAM("kg", "kg", Dimension.MASS, "1000"),
  OUNCE("oz", "[oz_av]", Dimension.MASS, "28.349523125"),
  POUND("lb", "[lb_av]", Dimension.MASS, "453.59237"),
  MILLILITRE("mL", "mL", Dimension.VOLUME, "1"),
  CENTILITRE("cL", "cL", Dimension.VOLUME, "10"),
  LITRE("L", "L", Dimension.VOLUME, "1000"),
  TEASPOON("tsp", "[tsp_us]", Dimension.VOLUME, "4.92892159375"),
  TABLESPOON("tbsp", "[tbs_us]", Dimension.VOLUME, "14.78676478125"),
  FLUID_OUNCE("fl-oz", "[foz_us]", Dimension.VOLUME, "29.5735295625"),
  CUP("cup", "[cup_us]", Dimension.VOLUME, "236.5882365"),
  LABEL_CUP("label-cup", "[cup_m]", Dimension.VOLUME, "240"),
  PINT("pint", "[pt_us]", Dimension.VOLUME, "473.176473"),
  QUART("quart", "[qt_us]", Dimension.VOLUME, "946.352946"),
  GALLON("gal", "[gal_us]", Dimension.VOLUME, "3785.411784"),
  PIECE("piece", "{piece}", Dimension.COUNT, "1");

  private final String symbol;
  private final String ucum;
  private final Dimension dimension;
  private final BigDecimal factor;

  Unit(String symbol, String ucum, Dimension dimension, String factor) {
    this.symbol = symbol;
    this.ucum = ucum;
    this.dimension = dimension;
    this.factor = new BigDecimal(factor);
  }

  public String symbol() {
    return symbol;
  }

  /** The unit's code in the Unified Code for Units of Measure. */
  public String ucum() {
    return ucum;
  }

  public Dimension dimension() {
    return dimension;
  }

  /** How many base units (g, mL or pieces) one of this unit is; exact. */
  public BigDecimal factor() {
    return factor;
  }

  public static Optional<Unit> find(String symbol) {
    return Arrays.stream(values()).filter(unit -> unit.symbol.equals(symbol)).findFirst();
  }

  /** The symbols of all units, for messages that say what would be accepted. */
  public static String symbols() {
    return String.join(", ", Arrays.stream(values()).map(Unit::symbol).toList());
  }
}
