package halfgram.prep.schedule;

import java.util.List;

/**
 * Everything there is to place, and where it can go. Times are whole slots from 0.
 *
 * @param slots length of the horizon
 * @param cleans whether a machine is washed between what leaves one thing and what is next: {@code
 *     cleans.get(a).get(b)}, by {@link Job#leaves}
 * @param rushes the last stretches before services, in which some time is better left
 * @param prices what is worse than what
 */
public record Workday(
    int slots,
    List<Job> jobs,
    List<Between> lags,
    List<Cook> cooks,
    List<Machine> machines,
    List<Space> spaces,
    List<List<Boolean>> cleans,
    List<Cook.Span> rushes,
    Prices prices) {
  public Workday {
    jobs = List.copyOf(jobs);
    lags = List.copyOf(lags);
    cooks = List.copyOf(cooks);
    machines = List.copyOf(machines);
    spaces = List.copyOf(spaces);
    cleans = cleans.stream().map(List::copyOf).toList();
    rushes = List.copyOf(rushes);
  }

  /** The same day with other jobs, times between them and machines. */
  public Workday with(List<Job> others, List<Between> between, List<Machine> units) {
    return new Workday(slots, others, between, cooks, units, spaces, cleans, rushes, prices);
  }
}
