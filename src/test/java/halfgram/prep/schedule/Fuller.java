package halfgram.prep.schedule;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Made-up days with more in them: hands that take things out, hands that wash. */
final class Fuller {
  private Fuller() {}

  /** A day on which all that stands on a machine is taken out by somebody at its end. */
  static Workday takenOut(Workday day) {
    List<Job> jobs = new ArrayList<>(day.jobs());
    int[] last = new int[jobs.size()];
    List<Between> lags = new ArrayList<>();
    for (int j = 0; j < last.length; j++) {
      Job job = jobs.get(j);
      last[j] = j;
      if (job.alone() > 0 && !job.uses().isEmpty()) {
        last[j] = jobs.size();
        jobs.set(j, shorter(job));
        lags.add(new Between(j, last[j], 0, OptionalInt.of(0), true, 1, 1));
        jobs.add(hands(job, day.cooks().size()));
      }
    }
    for (Between lag : day.lags()) {
      lags.add(
          new Between(last[lag.from()], lag.to(), lag.min(), lag.max(), lag.yields(), lag.dear()));
    }
    return day.with(jobs, lags, day.machines());
  }

  /** A day on which what is washed is washed by hand, by any of the first few, and dries. */
  static Workday washed(Workday day, int washers) {
    List<Integer> who = IntStream.range(0, washers).boxed().toList();
    return day.with(
        day.jobs(),
        day.lags(),
        day.machines().stream()
            .map(
                one ->
                    one.wash() == 0
                        ? one
                        : new Machine(one.id(), one.units(), one.wash(), 1, who, one.out()))
            .toList());
  }

  private static Job shorter(Job job) {
    return new Job(
        job.id(),
        job.earliest(),
        job.hands(),
        job.handsOn(),
        job.alone() - 1,
        job.able(),
        job.uses(),
        List.of(),
        job.leaves(),
        Optional.empty(),
        job.previous(),
        job.fixed());
  }

  private static Job hands(Job job, int cooks) {
    List<Integer> able = new ArrayList<>(job.able());
    for (int c = 0; able.isEmpty() || c < cooks; c++) {
      if (!able.contains(c)) {
        able.add(c);
      }
    }
    return new Job(
        job.id() + "/out",
        0,
        1,
        1,
        0,
        able,
        List.of(),
        job.keeps(),
        0,
        job.due(),
        Optional.empty(),
        Optional.empty());
  }
}
