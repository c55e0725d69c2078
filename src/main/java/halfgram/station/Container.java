package halfgram.station;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Mass;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * Something food is weighed into or kept in.
 *
 * @param volume usable volume, mL
 * @param tare its own mass, counted in a scale's capacity
 * @param count how many there are; empty: not counted
 * @param inside inner length, width and depth, for baths and trays
 */
public record Container(
    String code,
    Text name,
    Amount volume,
    Mass tare,
    Optional<Integer> count,
    Optional<Inside> inside) {

  /** Inner measures in millimetres. */
  public record Inside(BigDecimal lengthMm, BigDecimal widthMm, BigDecimal depthMm) {}
}
