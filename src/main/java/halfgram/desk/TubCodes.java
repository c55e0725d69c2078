package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.LotStore;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Codes for tubs that are put in by hand: the next ones of the day that no tub has. */
final class TubCodes {
  private TubCodes() {}

  /** So many codes, within a transaction that has the kitchen locked. */
  static List<String> next(Tx tx, House house, Instant now, int many) {
    LotStore lots = new LotStore();
    String prefix = Filling.prefix(house, now);
    int number = lots.count(tx, house.id(), prefix);
    List<String> codes = new ArrayList<>();
    while (codes.size() < many) {
      number++;
      if (lots.find(tx, house.id(), prefix + number).isEmpty()) {
        codes.add(prefix + number);
      }
    }
    return codes;
  }
}
