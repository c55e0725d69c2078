package halfgram.technique;

import halfgram.input.Problem;
import halfgram.input.Problems;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One technique worked out from what somebody typed.
 *
 * @param problems all that is wrong with the inputs; then nothing is worked out
 */
public record Calculation(
    Technique technique,
    Map<String, String> typed,
    List<Problem> problems,
    Optional<Values> values,
    Optional<Result> result) {

  public static Calculation of(Technique technique, Tables tables, Map<String, String> typed) {
    Problems problems = new Problems();
    Optional<Values> values = new Typed(technique, tables, "", problems).read(typed);
    return new Calculation(
        technique,
        Map.copyOf(typed),
        problems.list(),
        values,
        values.map(read -> technique.work(read, tables)));
  }

  /** Whether it may be done: the inputs are right and nothing stops it. */
  public boolean isGood() {
    return result.filter(one -> one.stops().isEmpty()).isPresent();
  }
}
