package halfgram.prep.netting;

import halfgram.measure.Amount;
import java.time.Instant;
import java.util.Comparator;
import java.util.Optional;

/**
 * Something needed of one output of a formula.
 *
 * @param user what needs it: a service, or a make further up
 * @param service the service it is for in the end; the earliest when it is for several
 * @param event the event it is for in the end, when it is for one only: tubs reserved for that
 *     event may be used
 * @param output position of the output
 * @param amount in the output's unit
 * @param readyBy latest moment at which it must be ready
 * @param lastUse moment until which it must hold: its last use; for what holds for safety's sake,
 *     when the last of what it went into is eaten
 * @param tubUntil moment to which the date on a tub must reach
 * @param eaten when the last of what it went into is eaten, or cooked through
 */
public record Need(
    String user,
    String service,
    Optional<String> event,
    int output,
    Amount amount,
    Instant readyBy,
    Instant lastUse,
    Instant tubUntil,
    Instant eaten) {

  /** The order in which needs are met; complete, so that input order never matters. */
  public static final Comparator<Need> ORDER = Need::inOrder;

  /** Written out, because sorting needs is a good part of a large plan. */
  private static int inOrder(Need a, Need b) {
    int order = a.readyBy.compareTo(b.readyBy);
    order = order != 0 ? order : a.lastUse.compareTo(b.lastUse);
    order = order != 0 ? order : a.user.compareTo(b.user);
    order = order != 0 ? order : Integer.compare(a.output, b.output);
    return order != 0 ? order : a.amount.compareTo(b.amount);
  }

  public Need with(Amount other) {
    return new Need(user, service, event, output, other, readyBy, lastUse, tubUntil, eaten);
  }
}
