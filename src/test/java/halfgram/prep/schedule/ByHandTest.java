package halfgram.prep.schedule;

import static halfgram.prep.schedule.SchedulerTest.day;
import static halfgram.prep.schedule.SchedulerTest.due;
import static halfgram.prep.schedule.SchedulerTest.job;
import static halfgram.prep.schedule.SchedulerTest.on;
import static halfgram.prep.schedule.SchedulerTest.start;
import static halfgram.prep.schedule.SchedulerTest.there;
import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Seeds;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

/** Hands beside the jobs: somebody takes out what has stood, somebody washes the machine. */
class ByHandTest {
  private static final Budget SHORT = Budget.of(300, 7);

  /** One blender, washed for two slots of which the second is drying. */
  private static Workday blender(List<Job> jobs, Cook... cooks) {
    return new Workday(
        40,
        jobs,
        List.of(),
        List.of(cooks),
        List.of(new Machine("blender", 1, 2, 1, List.of(0), List.of())),
        List.of(),
        List.of(List.of(false, true), List.of(true, false)),
        List.of(),
        Prices.USUAL);
  }

  @Test
  void whatIsTakenOutBreaksNoRuleEither() {
    Seeds.over(
        8,
        seed -> {
          Workday day = Fuller.takenOut(MadeUpDay.ofSize(seed % 3 == 0 ? 90 : 40, seed));
          Rota rota = Scheduler.place(day, Budget.of(200, seed));
          assertThat(Checker.wrong(day, rota)).as("seed %s", seed).isEmpty();
        });
  }

  @Test
  void whatIsWashedByHandBreaksNoRuleAndLeavesNothingOut() {
    AtomicInteger washes = new AtomicInteger();
    Seeds.over(
        12,
        seed -> {
          int tasks = seed % 3 == 0 ? 90 : 40;
          Workday day = Fuller.washed(Fuller.takenOut(MadeUpDay.ofSize(tasks, seed)), 2);
          Rota rota = Scheduler.place(day, Budget.of(600, seed));
          assertThat(Checker.wrong(day, rota)).as("seed %s", seed).isEmpty();
          assertThat(rota.isComplete()).as("seed %s", seed).isTrue();
          washes.addAndGet(rota.washes().size());
        });
    assertThat(washes.get()).isPositive();
  }

  /** Two loads, one machine: the second goes in when somebody has taken out the first. */
  @Test
  void aMachineIsTakenUntilSomebodyIsThereToTakeOutWhatStandsInIt() {
    List<Job> jobs =
        List.of(
            on(job("a", 0, 10), 0).fixedAt(Job.Spot.of(0, List.of())),
            job("a/out", 1, 0, 0),
            due(on(job("b", 0, 5), 0), 12));
    List<Between> lags = List.of(new Between(0, 1, 0, OptionalInt.of(0), true, 1, 1));
    Workday late = day(40, jobs, lags, there("ines", 20, 40));
    Rota rota = Scheduler.place(late, SHORT);
    assertThat(Checker.wrong(late, rota)).isEmpty();
    assertThat(start(rota, 1)).as("as soon as somebody is there").isEqualTo(20);
    assertThat(start(rota, 2)).isEqualTo(21);
    Workday there = day(40, jobs, lags, there("ines", 0, 40));
    Rota inTime = Scheduler.place(there, SHORT);
    assertThat(start(inTime, 1)).isEqualTo(10);
    assertThat(start(inTime, 2)).isEqualTo(11);
  }

  @Test
  void theFirstPlanOfALargeDayWithWashesByHandLeavesNothingOut() {
    for (int seed = 1; seed <= 5; seed++) {
      Workday day = Fuller.washed(MadeUpDay.ofSize(400, seed), 10);
      Rota rota = Scheduler.place(day, Budget.of(0, seed));
      assertThat(rota.isComplete()).as("day %s", seed).isTrue();
      assertThat(Checker.wrong(day, rota)).as("day %s", seed).isEmpty();
    }
  }

  @Test
  void whoeverWashesAMachineDoesNothingElseMeanwhileAndIsFreeWhileItDries() {
    Job first = on(job("a", 5, 0, 0), 0).fixedAt(Job.Spot.of(0, List.of(0)));
    Job next = due(on(job("b", 5, 0, 0), 1), 12);
    Workday free = blender(List.of(first, next), there("ines", 0, 40));
    Rota rota = Scheduler.place(free, SHORT);
    assertThat(Checker.wrong(free, rota)).isEmpty();
    assertThat(rota.washes()).containsExactly(new Rota.Wash(0, 0, 5, 0, 0, 1));
    assertThat(start(rota, 1)).isEqualTo(7);
    Job other = job("c", 4, 0, 0).fixedAt(Job.Spot.of(5, List.of(0)));
    Workday full = blender(List.of(first, next, other), there("ines", 0, 40));
    Rota later = Scheduler.place(full, SHORT);
    assertThat(Checker.wrong(full, later)).isEmpty();
    assertThat(later.washes()).containsExactly(new Rota.Wash(0, 0, 9, 0, 0, 1));
    assertThat(start(later, 1)).as("washed after the other work, and dry").isEqualTo(11);
    Job drying = job("c", 1, 0, 0).fixedAt(Job.Spot.of(6, List.of(0)));
    Workday between = blender(List.of(first, next, drying), there("ines", 0, 40));
    assertThat(start(Scheduler.place(between, SHORT), 1)).isEqualTo(7);
  }

  @Test
  void whatNobodyCanWashForIsLeftOut() {
    Job first = on(job("a", 5, 0, 0), 0).fixedAt(Job.Spot.of(0, List.of(0)));
    Job next = on(job("b", 5, 0, 1), 1);
    Workday alone = blender(List.of(first, next), there("ines", 0, 5), there("lorcan", 0, 40));
    Rota rota = Scheduler.place(alone, SHORT);
    assertThat(rota.places().get(1)).as("only ines washes, and she has gone").isEmpty();
    assertThat(Checker.wrong(alone, rota)).isEmpty();
  }

  /** Plating: it stays where it is, and takes those who can do least else. */
  @Test
  void whatNamesNobodyTakesWhoeverIsThereAndNothingElseIsPlannedOnThem() {
    Job plating =
        new Job(
            "plating",
            10,
            2,
            4,
            0,
            List.of(0, 1, 2),
            List.of(),
            List.of(),
            0,
            Optional.empty(),
            Optional.empty(),
            Optional.of(Job.Spot.of(10, List.of())));
    Job task = due(job("task", 4, 0, 0), 14);
    Cook ines = new Cook("ines", List.of(new Cook.Span(0, 40)), 1);
    Cook lorcan = new Cook("lorcan", List.of(new Cook.Span(0, 40)), 3);
    Cook marit = new Cook("marit", List.of(new Cook.Span(0, 40)), 2);
    Workday day = day(40, List.of(plating, task), List.of(), ines, lorcan, marit);
    Rota rota = Scheduler.place(day, SHORT);
    assertThat(Checker.wrong(day, rota)).isEmpty();
    assertThat(rota.places().get(0).orElseThrow().cooks()).containsExactly(0, 2);
    assertThat(start(rota, 1)).as("before the plating, which ines has").isEqualTo(6);
    Job pinned = task.fixedAt(Job.Spot.of(10, List.of(0)));
    Workday other = day(40, List.of(plating, pinned), List.of(), ines, lorcan, marit);
    Rota around = Scheduler.place(other, SHORT);
    assertThat(Checker.wrong(other, around)).isEmpty();
    assertThat(around.places().get(0).orElseThrow().cooks()).containsExactly(1, 2);
    Workday few = day(40, List.of(plating, pinned), List.of(), ines, there("lorcan", 0, 12), marit);
    assertThat(Scheduler.place(few, SHORT).places().get(0).orElseThrow().cooks())
        .as("lorcan leaves before it is over")
        .containsExactly(2);
  }
}
