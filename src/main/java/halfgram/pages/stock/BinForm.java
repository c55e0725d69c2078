package halfgram.pages.stock;

import halfgram.desk.Stock;
import halfgram.web.Visit;
import java.util.Optional;

/**
 * Why a tub is thrown away: a reason chosen, or one written.
 *
 * @param chosen as it was chosen
 * @param typed as it was written
 */
record BinForm(String chosen, String typed) {
  static BinForm of(Visit visit) {
    return new BinForm(visit.field("reason").strip(), visit.field("other").strip());
  }

  /** What was written, else what was chosen; empty when there is neither, or a whole letter. */
  Optional<String> reason() {
    return Stock.reason(typed.isEmpty() ? chosen : typed);
  }
}
