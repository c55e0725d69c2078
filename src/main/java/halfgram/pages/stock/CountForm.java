package halfgram.pages.stock;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Quantity;
import halfgram.measure.Rounding;
import halfgram.web.Visit;
import java.math.BigDecimal;
import java.util.Optional;

/**
 * What somebody counted in a tub.
 *
 * @param typed as it was typed
 * @param amount in the unit of the tub; empty when it cannot be read as one
 */
record CountForm(String typed, Optional<Amount> amount) {
  /** Ten tonnes, or as many pieces: more is in no tub. */
  private static final BigDecimal MOST = BigDecimal.valueOf(10_000_000);

  static CountForm of(Visit visit, Lot lot) {
    String typed = visit.field("amount").strip();
    return new CountForm(typed, read(typed, lot.left().dimension()));
  }

  /** "1.2 kg" and "1.2kg"; of pieces the number alone says it all. */
  private static Optional<Amount> read(String typed, Dimension unit) {
    String bare = typed.replaceFirst("^([0-9.]+)([A-Za-z])", "$1 $2");
    boolean number = unit == Dimension.COUNT && bare.matches("\\d{1,9}");
    return Quantity.parse(number ? bare + " piece" : bare)
        .flatMap(Quantity::canonical)
        .filter(amount -> amount.dimension() == unit)
        .filter(amount -> unit != Dimension.COUNT || isWhole(amount))
        .filter(amount -> amount.number().compareTo(MOST) <= 0)
        .map(amount -> amount.rounded(Rounding.TO_MICROGRAM));
  }

  private static boolean isWhole(Amount amount) {
    return amount.number().stripTrailingZeros().scale() <= 0;
  }
}
