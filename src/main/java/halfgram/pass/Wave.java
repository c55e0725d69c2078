package halfgram.pass;

import halfgram.prep.Make;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A making that is only ready while the service runs, because it does not hold.
 *
 * @param first its first task
 * @param run the service
 * @param started when somebody first said to be on it
 */
public record Wave(ServiceRun run, Make make, Task first, Optional<Instant> started) {

  /**
   * The waves of a service, in the order they have to start.
   *
   * @param started by task id, when each was first entered
   */
  public static List<Wave> list(PrepSheet sheet, ServiceRun run, Map<String, Instant> started) {
    List<Wave> waves = new ArrayList<>();
    for (Make make : sheet.makes()) {
      boolean serves = make.served().stream().anyMatch(need -> need.user().equals(run.id()));
      if (serves && !make.readyBy().isBefore(run.window().start())) {
        sheet.tasks().stream()
            .filter(task -> task.make().id().equals(make.id()))
            .min(Comparator.comparing(Task::start))
            .ifPresent(
                task ->
                    waves.add(
                        new Wave(run, make, task, Optional.ofNullable(started.get(task.id())))));
      }
    }
    waves.sort(Comparator.comparing(wave -> wave.first().start()));
    return waves;
  }

  /**
   * How late it started, or is by now; zero when in time. None when the service is over and nobody
   * entered a start: then nobody knows.
   */
  public Optional<Duration> late(Instant now) {
    if (started.isEmpty() && run.isOver(now)) {
      return Optional.empty();
    }
    Duration late = Duration.between(first.start(), started.orElse(now));
    return Optional.of(late.isNegative() ? Duration.ZERO : late);
  }
}
