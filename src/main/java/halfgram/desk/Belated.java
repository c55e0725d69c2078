package halfgram.desk;

import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import java.time.Instant;
import java.util.function.BiFunction;

/**
 * What is done at the wall and the pass, at the moment at which it was sent: for what comes late.
 * What was made then is as old as it is, and keeps no longer.
 */
public record Belated(
    Desk desk, Plans plans, Ticking ticking, Bathing bathing, Gating gating, Sending sending) {

  /**
   * The verbs of a moment.
   *
   * @param result writes a sheet as the JSON that a plan keeps
   */
  public static Belated at(
      Instant moment, Desk desk, BiFunction<KitchenBook, PrepSheet, String> result) {
    Desk then = desk.at(moment);
    Plans plans = new Plans(then, result);
    Ticking ticking = new Ticking(then, plans);
    return new Belated(
        then,
        plans,
        ticking,
        new Bathing(then, plans, ticking),
        new Gating(then, ticking),
        new Sending(then, new Swapping(then, new Events(then))));
  }
}
