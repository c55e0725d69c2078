package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Scaled;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.netting.Need;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One making of a formula.
 *
 * @param id the component, the service it is first for, and which of several: {@code
 *     dill-oil/harvest-dinner/1}
 * @param service the service it is first for
 * @param event the event it is for when it is for one only
 * @param needs what it is sized for
 * @param given later needs that what it gives over serves
 * @param readyBy when the first of them must be ready
 * @param scaled its size, raised to machines and packs
 * @param asked its size before raising
 * @param raisedBy why it was raised
 * @param useBys the end of the hold of each output
 */
public record Make(
    String id,
    FormulaVersion version,
    String service,
    Optional<String> event,
    List<Need> needs,
    List<Need> given,
    Instant readyBy,
    Scaled scaled,
    Scaled asked,
    List<Message> raisedBy,
    Timeline timeline,
    List<Instant> useBys) {

  /** What was asked of it before raising, as output mass. */
  public Amount wanted() {
    return asked.outputMass();
  }

  /** Everything it serves. */
  public List<Need> served() {
    if (given.isEmpty()) {
      return needs;
    }
    List<Need> served = new ArrayList<>(needs);
    served.addAll(given);
    return served;
  }

  /** This make, giving to one more need what it has over. */
  Make giving(Need need) {
    List<Need> more = new ArrayList<>(given);
    more.add(need);
    Optional<String> only = need.event().equals(event) ? event : Optional.empty();
    return new Make(
        id,
        version,
        service,
        only,
        needs,
        List.copyOf(more),
        readyBy,
        scaled,
        asked,
        raisedBy,
        timeline,
        useBys);
  }

  /** This make at a larger size, for one more need. */
  Make larger(Scaled size, Need need) {
    List<Need> more = new ArrayList<>(needs);
    more.add(need);
    return new Make(
        id,
        version,
        service,
        event,
        List.copyOf(more),
        given,
        readyBy,
        size,
        size,
        raisedBy,
        timeline,
        useBys);
  }

  /** What is asked of one output. */
  public Amount needed(int output) {
    Amount sum = Amount.zero(version.outputs().get(output).unit());
    for (Need need : needs) {
      sum = need.output() == output ? sum.plus(need.amount()) : sum;
    }
    return sum;
  }

  public Instant firstUse() {
    return served().stream().map(Need::readyBy).min(Instant::compareTo).orElse(readyBy);
  }

  /** When the last of what is made of it is eaten. */
  public Instant eaten() {
    Instant latest = readyBy;
    for (Need need : served()) {
      latest = need.eaten().isAfter(latest) ? need.eaten() : latest;
    }
    return latest;
  }

  /** The moment from which an output, rested, may be used. */
  public Instant readyAt(int output) {
    Timeline.Span last = timeline.steps().get(timeline.steps().size() - 1);
    return last.end().plus(version.outputs().get(output).rest().min());
  }

  /** The moment after which an output is past its hold. */
  public Instant useBy(int output) {
    return useBys.get(output);
  }
}
