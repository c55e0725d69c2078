package halfgram.station;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;

/**
 * A place where tubs stand and how much goes into it.
 *
 * @param called what it is called, in the kitchen's languages
 */
public record Place(Text called, Amount volume) {

  /** As holds and tubs name it: "walk-in". */
  public String name() {
    return called.in("en");
  }
}
