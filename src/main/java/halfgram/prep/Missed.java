package halfgram.prep;

import halfgram.formula.Output;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Something that the evening before should have done for today and did not: what does it now, and
 * what that costs.
 *
 * @param task of the evening before, the first of its make
 * @param now the first task of the make that takes its place today; of what was to be pulled from
 *     the freezer, of what is made instead
 * @param late how long too late it is even when it starts at once; zero when it is still in time
 * @param stands how long what is made at once would stand before its use
 */
public record Missed(Task task, Task now, Duration late, Duration stands) {

  /** Its output that stands longest before use. */
  public Output output() {
    return now.version().outputs().stream()
        .max(Comparator.comparing(output -> output.rest().min()))
        .orElseThrow();
  }

  /** Whether it would stand shorter than it should. */
  public boolean isShort() {
    return stands.compareTo(output().rest().min()) < 0;
  }

  /**
   * What an evening has left undone.
   *
   * @param evening the last sheet of the day before
   * @param begun ids of makes of that evening on which somebody has begun
   * @param today the sheet of today
   * @param started ids of makes of today on which somebody has begun: these make good
   * @param asOf now
   */
  public static List<Missed> of(
      PrepSheet evening, Set<String> begun, PrepSheet today, Set<String> started, Instant asOf) {
    List<Missed> missed = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    Set<String> taken = new HashSet<>();
    for (Task task : evening.tonight()) {
      Make make = task.make();
      if (begun.contains(make.id()) || !seen.add(make.id())) {
        continue;
      }
      findNow(make, today, taken)
          .ifPresent(
              now -> {
                taken.add(now.id());
                if (!started.contains(now.id())) {
                  first(now, today).map(first -> missed(task, first, asOf)).ifPresent(missed::add);
                }
              });
    }
    return missed;
  }

  /** The make of today for the same; the same id where it has kept it. */
  private static Optional<Make> findNow(Make make, PrepSheet today, Set<String> taken) {
    Set<String> services = services(make);
    return Stream.concat(today.makes().stream(), today.thaws().stream().map(Thaw::make))
        .filter(now -> now.version().formula().equals(make.version().formula()))
        .filter(now -> !taken.contains(now.id()))
        .filter(now -> services(now).stream().anyMatch(services::contains))
        .min(
            Comparator.comparing((Make now) -> !now.id().equals(make.id()))
                .thenComparing(now -> now.timeline().start()));
  }

  private static Set<String> services(Make make) {
    Set<String> services = new LinkedHashSet<>();
    make.served().forEach(need -> services.add(need.service()));
    return services;
  }

  private static Optional<Task> first(Make make, PrepSheet today) {
    return today.tasks().stream()
        .filter(task -> task.make().id().equals(make.id()))
        .min(Comparator.comparing(Task::start));
  }

  private static Missed missed(Task task, Task now, Instant asOf) {
    Make make = now.make();
    Instant start = make.timeline().start();
    Duration late = start.isBefore(asOf) ? Duration.between(start, asOf) : Duration.ZERO;
    Instant end = make.timeline().steps().get(make.timeline().steps().size() - 1).end();
    Instant ready = end.plus(late);
    Duration stands =
        ready.isBefore(make.firstUse()) ? Duration.between(ready, make.firstUse()) : Duration.ZERO;
    return new Missed(task, now, late, stands);
  }
}
