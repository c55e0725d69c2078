package halfgram.prep.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Seeds;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The laws of placing, on days made up by seed and on a few written by hand. */
class SchedulerTest {
  private static final Budget SHORT = Budget.of(300, 7);

  static Job job(String id, int handsOn, int alone, Integer... able) {
    return new Job(
        id,
        0,
        handsOn == 0 ? 0 : 1,
        handsOn,
        alone,
        List.of(able),
        List.of(),
        List.of(),
        0,
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static Job due(Job job, int slot) {
    return new Job(
        job.id(),
        job.earliest(),
        job.hands(),
        job.handsOn(),
        job.alone(),
        job.able(),
        job.uses(),
        job.keeps(),
        job.leaves(),
        Optional.of(new Job.Due(slot, 1, OptionalInt.of(0), 0)),
        job.previous(),
        job.fixed());
  }

  static Job on(Job job, int leaves) {
    return new Job(
        job.id(),
        job.earliest(),
        job.hands(),
        job.handsOn(),
        job.alone(),
        job.able(),
        List.of(new Job.Use(0, 1, Job.During.WHOLE)),
        job.keeps(),
        leaves,
        job.due(),
        job.previous(),
        job.fixed());
  }

  static Workday day(int slots, List<Job> jobs, List<Between> lags, Cook... cooks) {
    return new Workday(
        slots,
        jobs,
        lags,
        List.of(cooks),
        List.of(new Machine("blender", 1, 2, List.of())),
        List.of(),
        List.of(List.of(false, true), List.of(true, false)),
        List.of(),
        Prices.USUAL);
  }

  static Cook there(String id, int from, int to) {
    return new Cook(id, List.of(new Cook.Span(from, to)), 1);
  }

  private static Workday with(Workday day, List<Job> jobs, List<Cook> cooks) {
    return new Workday(
        day.slots(),
        jobs,
        day.lags(),
        cooks,
        day.machines(),
        day.spaces(),
        day.cleans(),
        day.rushes(),
        day.prices());
  }

  static int start(Rota rota, int job) {
    return rota.places().get(job).orElseThrow().start();
  }

  @Test
  void noRuleIsBrokenAndTheBillIsRight() {
    Seeds.over(
        12,
        seed -> {
          Workday day = MadeUpDay.ofSize(seed % 3 == 0 ? 90 : 40, seed);
          Rota rota = Scheduler.place(day, Budget.of(200, seed));
          assertThat(Checker.wrong(day, rota)).as("seed %s", seed).isEmpty();
        });
  }

  @Test
  void theSameSeedGivesTheSamePlanAndTwoSearchesAreNoWorseThanOne() {
    Workday day = MadeUpDay.ofSize(40, 3);
    Rota one = Scheduler.place(day, SHORT);
    Rota two = Scheduler.place(day, SHORT.twice());
    assertThat(Scheduler.place(day, SHORT)).isEqualTo(one);
    assertThat(Scheduler.place(day, SHORT.twice())).isEqualTo(two);
    assertThat(two.bill().total()).isLessThanOrEqualTo(one.bill().total());
  }

  @Test
  void theOrderOfTheInputDoesNotMatter() {
    Seeds.over(
        4,
        seed -> {
          Workday day = Fuller.washed(Fuller.takenOut(MadeUpDay.ofSize(40, seed)), 3);
          List<Integer> order = new ArrayList<>();
          for (int j = 0; j < day.jobs().size(); j++) {
            order.add(j);
          }
          Collections.shuffle(order, new Random(seed));
          List<Between> lags = new ArrayList<>();
          for (Between lag : day.lags()) {
            lags.add(
                new Between(
                    order.indexOf(lag.from()),
                    order.indexOf(lag.to()),
                    lag.min(),
                    lag.max(),
                    lag.yields(),
                    lag.dear(),
                    lag.holds()));
          }
          Collections.shuffle(lags, new Random(seed));
          Workday other =
              day.with(order.stream().map(day.jobs()::get).toList(), lags, day.machines());
          Rota one = Scheduler.place(day, SHORT);
          Rota two = Scheduler.place(other, SHORT);
          for (int i = 0; i < order.size(); i++) {
            assertThat(two.places().get(i)).isEqualTo(one.places().get(order.get(i)));
          }
        });
  }

  @Test
  void daysOfFortyTasksComeNearTheLeastCostsKnown() {
    double sum = 0;
    for (int seed = 1; seed <= MadeUpDay.LEAST_OF_FORTY.size(); seed++) {
      Rota rota = Scheduler.place(MadeUpDay.ofSize(40, seed), Budget.of(4000, 1).twice());
      sum += (double) rota.bill().total() / MadeUpDay.LEAST_OF_FORTY.get(seed - 1);
    }
    assertThat(sum / MadeUpDay.LEAST_OF_FORTY.size()).isLessThanOrEqualTo(1.3);
  }

  @Test
  void theFirstPlanOfALargeDayLeavesNothingOut() {
    for (int seed = 1; seed <= 10; seed++) {
      Rota rota = Scheduler.place(MadeUpDay.ofSize(400, seed), Budget.of(0, seed));
      assertThat(rota.isComplete()).as("day %s", seed).isTrue();
      assertThat(rota.iterations()).isZero();
    }
  }

  private static List<Job> after(Workday day, Rota rota, int now) {
    List<Job> jobs = new ArrayList<>();
    for (int j = 0; j < day.jobs().size(); j++) {
      Job job = day.jobs().get(j);
      Optional<Rota.Place> place = rota.places().get(j);
      if (place.isEmpty()) {
        jobs.add(job);
        continue;
      }
      Job.Spot spot = new Job.Spot(place.get().start(), place.get().cooks(), place.get().units());
      jobs.add(spot.start() < now ? job.fixedAt(spot) : job.after(spot));
    }
    return jobs;
  }

  @Test
  void withAnotherCookThePlanInForceIsNeverMadeWorse() {
    Seeds.over(
        6,
        seed -> {
          Workday day = Fuller.washed(Fuller.takenOut(MadeUpDay.ofSize(40, seed)), 2);
          Rota before = Scheduler.place(day, SHORT);
          List<Cook> more = new ArrayList<>(day.cooks());
          more.add(there("cook-x", 0, 150));
          Rota now = Scheduler.place(with(day, after(day, before, 0), more), Budget.of(50, seed));
          assertThat(now.bill().total())
              .as("seed %s", seed)
              .isLessThanOrEqualTo(before.bill().total());
        });
  }

  @Test
  void whatHasBegunStaysWhenACookGoesHome() {
    Seeds.over(
        6,
        seed -> {
          Workday day = MadeUpDay.ofSize(40, seed);
          Rota before = Scheduler.place(day, SHORT);
          List<Cook> left = new ArrayList<>(day.cooks());
          left.set(1, new Cook(left.get(1).id(), List.of(new Cook.Span(24, 60)), 2));
          Workday later = with(day, after(day, before, 60), left);
          Rota now = Scheduler.place(later, SHORT);
          for (int j = 0; j < day.jobs().size(); j++) {
            Optional<Rota.Place> place = before.places().get(j);
            if (place.isPresent() && place.get().start() < 60) {
              assertThat(start(now, j)).isEqualTo(place.get().start());
              assertThat(now.places().get(j).orElseThrow().cooks()).isEqualTo(place.get().cooks());
            }
          }
        });
  }

  @Test
  void aJobIsAsLateAsItsDueTimeAllowsAndItsPartsAsLateAsItNeedsThem() {
    Workday day =
        day(
            100,
            List.of(job("part", 4, 0, 0), due(job("whole", 3, 0, 0), 80)),
            List.of(new Between(0, 1, 6, OptionalInt.of(40), false, 1)),
            there("ines", 0, 100));
    Rota rota = Scheduler.place(day, SHORT);
    assertThat(start(rota, 1)).isEqualTo(77);
    assertThat(start(rota, 0)).isEqualTo(67);
    assertThat(rota.bill().total()).isZero();
  }

  @Test
  void aMachineIsWashedBetweenWhatDoesNotGoTogetherAndNotOtherwise() {
    List<Job> jobs =
        List.of(
            due(on(job("a", 0, 5), 0), 30),
            due(on(job("b", 0, 5), 1), 30),
            due(on(job("c", 0, 5), 0), 30));
    Rota rota = Scheduler.place(day(40, jobs, List.of(), there("ines", 0, 40)), SHORT);
    int apart = Math.abs(start(rota, 0) - start(rota, 2));
    assertThat(apart).as("like follows like without a wash").isEqualTo(5);
    assertThat(Checker.wrong(day(40, jobs, List.of(), there("ines", 0, 40)), rota)).isEmpty();
  }

  @Test
  void aHoldOfQualityYieldsAtItsPriceWhenNothingElseHelpsAndOneOfSafetyNever() {
    List<Job> jobs = List.of(job("cook", 4, 0, 0), job("chill", 4, 0, 0));
    Cook away = new Cook("ines", List.of(new Cook.Span(0, 6), new Cook.Span(20, 40)), 1);
    Between quality = new Between(0, 1, 0, OptionalInt.of(3), true, 0);
    Rota yielding =
        Scheduler.place(
            day(
                40,
                List.of(due(jobs.get(0), 6), jobs.get(1).after(Job.Spot.of(22, List.of(0)))),
                List.of(quality),
                away),
            SHORT);
    assertThat(yielding.isComplete()).isTrue();
    Between safety = new Between(0, 1, 0, OptionalInt.of(3), false, 0);
    Job fixed = jobs.get(0).fixedAt(Job.Spot.of(0, List.of(0)));
    Rota strict =
        Scheduler.place(day(40, List.of(fixed, jobs.get(1)), List.of(safety), away), SHORT);
    assertThat(strict.places().get(1)).isEmpty();
    Rota soft =
        Scheduler.place(day(40, List.of(fixed, jobs.get(1)), List.of(quality), away), SHORT);
    assertThat(soft.yielding()).isTrue();
    assertThat(soft.bill().overrun()).isEqualTo(13 * Prices.USUAL.overrun());
  }

  @Test
  void whatCannotBeIsLeftOutAndNeverAnException() {
    Between one = new Between(0, 1, 10, OptionalInt.empty(), false, 0);
    Between contrary = new Between(1, 0, 10, OptionalInt.empty(), false, 0);
    List<Job> two = List.of(job("a", 2, 0, 0), job("b", 2, 0, 0));
    Cook ines = there("ines", 0, 40);
    assertThat(Scheduler.place(day(40, two, List.of(one, contrary), ines), SHORT).isComplete())
        .as("lags that contradict each other")
        .isFalse();
    assertThat(Scheduler.place(day(40, List.of(job("a", 2, 0)), List.of(), ines), SHORT).places())
        .as("nobody can do it")
        .containsExactly(Optional.empty());
    Cook absent = new Cook("ines", List.of(), 1);
    assertThat(Scheduler.place(day(40, two, List.of(), absent), SHORT).bill().leftOut())
        .as("an empty shift")
        .isEqualTo(2 * Prices.USUAL.leftOut());
    Rota late = Scheduler.place(day(40, List.of(due(two.get(0), -5)), List.of(), ines), SHORT);
    assertThat(start(late, 0)).as("due in the past: as early as can be").isZero();
    assertThat(late.bill().late()).isEqualTo(7 * Prices.USUAL.late());
    assertThat(Scheduler.place(day(40, List.of(), List.of()), SHORT).places()).isEmpty();
  }

  @Test
  void aSearchStopsWhenToldAndSaysSo() {
    Workday day = MadeUpDay.ofSize(40, 1);
    Rota rota = Scheduler.place(day, Budget.of(1_000_000, 1).until(() -> true));
    assertThat(rota.cut()).isTrue();
    assertThat(rota.isComplete()).isTrue();
    assertThat(Checker.wrong(day, rota)).isEmpty();
  }
}
