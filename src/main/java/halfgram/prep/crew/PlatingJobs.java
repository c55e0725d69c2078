package halfgram.prep.crew;

import halfgram.prep.PlatingLine;
import halfgram.prep.ServiceRun;
import halfgram.prep.schedule.Job;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Makes jobs of plating lines: they do not move, and take whoever is there. */
final class PlatingJobs {
  private final TaskJobs made;
  private final Cooks cooks;
  private final List<Question.Plating> platings = new ArrayList<>();

  PlatingJobs(TaskJobs made, Cooks cooks) {
    this.made = made;
    this.cooks = cooks;
  }

  List<Question.Plating> all() {
    return platings;
  }

  /** Plating holds its people until the fire, or until somebody said that all is plated. */
  void add(ServiceRun run, PlatingLine line) {
    String id = Plated.id(run.id(), line.fire().code(), line.dish().code());
    Instant end =
        Optional.ofNullable(made.facts.plated().get(id))
            .filter(line.fire().at()::isAfter)
            .orElse(line.fire().at());
    int from = made.slots.down(line.start());
    int to = made.slots.up(end);
    if (cooks.isEmpty() || from < 0 || to <= from) {
      return;
    }
    Optional<String> station = line.plating().station();
    Plated nobody =
        new Plated(
            run.id(),
            line.fire().code(),
            line.dish().code(),
            station,
            line.start(),
            end,
            line.plating().people(),
            List.of());
    platings.add(new Question.Plating(made.jobs.size(), nobody));
    made.jobs.add(
        new Job(
            nobody.id(),
            from,
            nobody.needed(),
            to - from,
            0,
            station.map(cooks::able).orElseGet(cooks::everybody),
            List.of(),
            List.of(),
            made.washes.none(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(Job.Spot.of(from, List.of()))));
  }
}
