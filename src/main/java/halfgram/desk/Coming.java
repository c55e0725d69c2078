package halfgram.desk;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.prep.Begun;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Stock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A tub on the way: what a batch in work will give, as the plan nets it.
 *
 * @param lot what is to come: when it is made, until when it may be used
 * @param takers how much of it is for whom, by who takes it
 */
public record Coming(Begun begun, Lot lot, Map<String, Amount> takers) {

  /** What the work begun of a plan will give, first ready first. */
  public static List<Coming> list(InForce inForce, Instant now) {
    List<Coming> all = new ArrayList<>();
    for (Begun begun : BegunWork.of(inForce, now)) {
      for (Stock stock : begun.at(now).expected()) {
        all.add(new Coming(begun, stock.lot(), takers(begun, stock.lot())));
      }
    }
    all.sort(java.util.Comparator.comparing(one -> one.lot().made()));
    return all;
  }

  private static Map<String, Amount> takers(Begun begun, Lot lot) {
    int output = begun.make().version().outputIndex(lot.component().output());
    Map<String, Amount> takers = new LinkedHashMap<>();
    for (Need need : begun.make().served()) {
      if (need.output() == output) {
        takers.merge(need.user(), need.amount(), Amount::plus);
      }
    }
    return takers;
  }
}
