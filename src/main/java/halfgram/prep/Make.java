package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Scaled;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * One making of a formula.
 *
 * @param id the component, the service it is first for, and which of several: {@code
 *     dill-oil/harvest-dinner/1}
 * @param service the service it is first for
 * @param event the event it is for when it is for one only
 * @param needs what it serves
 * @param readyBy when the first of them must be ready
 * @param scaled its size, raised to machines and packs
 * @param asked its size before raising
 * @param raisedBy why it was raised
 */
public record Make(
    String id,
    FormulaVersion version,
    String service,
    Optional<String> event,
    List<Need> needs,
    Instant readyBy,
    Scaled scaled,
    Scaled asked,
    List<Message> raisedBy,
    Timeline timeline) {

  /** What was asked of it before raising, as output mass. */
  public Amount wanted() {
    return asked.outputMass();
  }

  /** What is needed of one output. */
  public Amount needed(int output) {
    Amount sum = Amount.zero(version.outputs().get(output).unit());
    for (Need need : needs) {
      sum = need.output() == output ? sum.plus(need.amount()) : sum;
    }
    return sum;
  }

  public Instant firstUse() {
    return needs.stream().map(Need::readyBy).min(Instant::compareTo).orElse(readyBy);
  }

  public Instant lastUse() {
    return needs.stream().map(Need::lastUse).max(Instant::compareTo).orElse(readyBy);
  }

  /** The moment after which an output is past its hold. */
  public Instant useBy(int output) {
    return timeline.ready().plus(version.outputs().get(output).hold().max());
  }
}
