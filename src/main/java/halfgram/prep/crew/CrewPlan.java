package halfgram.prep.crew;

import halfgram.prep.schedule.Rota;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A day's tasks on people and machines.
 *
 * @param from start of the first slot
 * @param placed by task id, in the order of the sheet
 * @param washes of machines between tasks, as they come
 * @param platings of dishes before their fires, as they come
 * @param leftOut ids of tasks that have no place
 * @param bill what it costs and for what
 * @param seed of chance, with which the same question gives the same answer
 * @param iterations rounds that were made
 * @param cut whether it was stopped before its budget was used
 * @param yielding whether holds of quality were let go because nothing else helped
 * @param roomy whether places and containers were left out of it because nothing fitted with them
 */
public record CrewPlan(
    Instant from,
    Map<String, Placed> placed,
    List<Washed> washes,
    List<Plated> platings,
    List<String> leftOut,
    Rota.Bill bill,
    long seed,
    int iterations,
    boolean cut,
    boolean yielding,
    boolean roomy) {
  public CrewPlan {
    washes = List.copyOf(washes);
    platings = List.copyOf(platings);
    leftOut = List.copyOf(leftOut);
  }

  public Optional<Placed> find(String task) {
    return Optional.ofNullable(placed.get(task));
  }
}
