package halfgram.pages.stock;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.pages.TypedAmount;
import halfgram.web.Visit;
import java.util.Optional;

/**
 * What somebody counted in a tub.
 *
 * @param typed as it was typed
 * @param amount in the unit of the tub; empty when it cannot be read as one
 * @param sure whether they were told what speaks against it, and say that it is so
 */
record CountForm(String typed, Optional<Amount> amount, boolean sure) {

  static boolean sure(Visit visit) {
    return visit.field("sure").equals("yes");
  }

  static CountForm of(Visit visit, Lot lot) {
    String typed = visit.field("amount").strip();
    return new CountForm(typed, TypedAmount.read(typed, lot.left()), sure(visit));
  }
}
