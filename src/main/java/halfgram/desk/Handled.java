package halfgram.desk;

import halfgram.lot.Tub;
import halfgram.measure.Message;
import java.util.List;

/** What came of something that hands did to a tub. */
public sealed interface Handled
    permits Handled.Done, Handled.Asks, Handled.Refused, Handled.NoSuchTub {

  /**
   * It is in the ledger, now or from the same entry before.
   *
   * @param tub as it is now
   * @param made tubs that it filled
   */
  record Done(Tub tub, List<Tub> made) implements Handled {
    public Done {
      made = List.copyOf(made);
    }
  }

  /** Nothing has changed yet: whoever is told this says that it is so. */
  record Asks(Message asks) implements Handled {}

  /**
   * A rule does not let it; nothing has changed.
   *
   * @param field what of the entry is in the way; empty when no other entry would do
   */
  record Refused(String field, Message because) implements Handled {}

  /** There is no tub of this code. */
  record NoSuchTub() implements Handled {}
}
