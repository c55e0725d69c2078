package halfgram.desk;

import halfgram.prep.Begun;
import halfgram.prep.Behind;
import java.time.Instant;
import java.util.List;

/** Work in hand that, as it goes, will be ready later than something needs it. */
public final class Delays {
  private Delays() {}

  /** The worst of each batch, the worst first. */
  public static List<Behind> list(InForce inForce, Instant now) {
    List<Begun> begun = BegunWork.of(inForce, now).stream().map(one -> one.at(now)).toList();
    return Behind.list(begun, inForce.sheet());
  }
}
