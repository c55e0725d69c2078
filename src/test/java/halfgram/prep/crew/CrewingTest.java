package halfgram.prep.crew;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.DemoBook;
import halfgram.measure.Window;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.schedule.Budget;
import halfgram.prep.schedule.Checker;
import halfgram.prep.schedule.Rota;
import halfgram.prep.schedule.Scheduler;
import halfgram.station.Person;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** A sheet's tasks on the people and machines of its day. */
class CrewingTest {
  private static final Budget SHORT = Budget.of(2000, 1).twice();
  private static final DemoDay SATURDAY = DemoDay.saturdayMorning();
  private static final CrewPlan PLAN =
      Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), SATURDAY.facts(), SHORT);

  @Test
  void noRuleOfTheSchedulerIsBrokenOnTheDaysOfTheDemo() {
    for (int day = 0; day < 3; day++) {
      DemoDay of =
          DemoDay.of(DemoBook.fresh(), DemoDay.SATURDAY.plusDays(day - 1L), LocalTime.of(7, 0));
      Question question = Question.of(of.book(), of.sheet(), of.facts());
      Rota rota = Scheduler.place(question.day(), Budget.of(300, 1));
      assertThat(Checker.wrong(question.day(), rota)).isEmpty();
    }
  }

  /** Ends by the clock, not by the slot: what is eaten at the plate too. */
  @Test
  void whereNothingYieldsNoHoldIsOverrunByASlot() {
    DemoDay day = DemoDay.of(DemoBook.fresh(), DemoDay.SATURDAY, LocalTime.of(9, 0));
    int strict = 0;
    for (int seed = 1; seed <= 12; seed++) {
      CrewPlan plan = Crewing.plan(day.book(), day.sheet(), day.facts(), Budget.of(600, seed));
      if (!plan.yielding()) {
        strict++;
        assertThat(CrewDifference.over(day.sheet(), day.facts(), plan))
            .as("seed %s", seed)
            .isEmpty();
      }
    }
    assertThat(strict).isGreaterThan(6);
  }

  @Test
  void theSameStepMadeForAnotherServiceIsNoNewWork() {
    Outlook outlook = Outlook.of(SATURDAY.book(), SATURDAY.sheet(), SATURDAY.facts(), PLAN);
    assertThat(outlook.moves(PLAN.placed())).isEmpty();
    Map<String, Placed> renamed = new java.util.HashMap<>();
    PLAN.placed()
        .forEach(
            (id, of) -> {
              String other = id.replace("/harvest-dinner/", "/other-dinner/");
              renamed.put(
                  other,
                  new Placed(
                      other, of.start(), of.handsOff(), of.end(), of.people(), of.machines()));
            });
    assertThat(renamed.keySet()).isNotEqualTo(PLAN.placed().keySet());
    assertThat(outlook.moves(renamed)).isEmpty();
    renamed.remove(renamed.keySet().stream().sorted().findFirst().orElseThrow());
    assertThat(outlook.moves(renamed)).hasSize(1).allMatch(move -> move.from().isEmpty());
  }

  @Test
  void everyTaskOfTheSaturdayHasItsPlace() {
    assertThat(PLAN.leftOut()).isEmpty();
    assertThat(PLAN.placed()).hasSameSizeAs(SATURDAY.sheet().tasks());
  }

  @Test
  void whoDoesATaskWorksItsStationAndIsThere() {
    for (Placed placed : PLAN.placed().values()) {
      Task task = SATURDAY.task(placed.task());
      for (String code : placed.people()) {
        Person person =
            SATURDAY.book().people().stream()
                .filter(one -> one.code().equals(code))
                .findFirst()
                .orElseThrow();
        assertThat(person.stations()).contains(task.station());
        assertThat(person.shifts())
            .as("%s at %s", code, placed)
            .anySatisfy(
                shift -> {
                  Window hours = shift.on(DemoDay.SATURDAY, SATURDAY.book().kitchen().clock());
                  assertThat(placed.start()).isAfterOrEqualTo(hours.start());
                  assertThat(placed.start()).isBefore(hours.end());
                });
      }
    }
  }

  /** Long work by hand may be handed over across the meal; what is short may not touch it. */
  @Test
  void nobodyStartsAnythingDuringTheStaffMeal() {
    Instant from = SATURDAY.at(16, 30);
    Instant to = SATURDAY.at(17, 0);
    assertThat(PLAN.placed().values())
        .filteredOn(placed -> !placed.people().isEmpty())
        .filteredOn(placed -> !placed.start().isBefore(from) && placed.start().isBefore(to))
        .isEmpty();
  }

  @Test
  void whatATaskWaitsForIsOverWithItsRestBeforeItStarts() {
    for (Task task : SATURDAY.sheet().tasks()) {
      for (Task.Link link : task.links()) {
        PLAN.find(link.task())
            .ifPresent(
                before ->
                    assertThat(PLAN.find(task.id()).orElseThrow().start())
                        .as("%s after %s", task.id(), link.task())
                        .isAfterOrEqualTo(before.end().plus(link.min())));
      }
    }
  }

  @Test
  void longWorkByHandIsCutIntoSpellsAndEndsAsMuchLaterAsThePausesTake() {
    Placed drop = PLAN.find("yoghurt-spheres/harvest-dinner/1/drop").orElseThrow();
    Duration hands = Duration.between(drop.start(), drop.handsOff());
    Task task = SATURDAY.task(drop.task());
    assertThat(hands)
        .isGreaterThanOrEqualTo(Duration.between(task.start(), task.handsOff()))
        .isLessThanOrEqualTo(Duration.ofHours(4));
    assertThat(drop.people()).isNotEmpty();
  }

  @Test
  void aPinStaysAndTheRestGoesAroundIt() {
    String id = "kohlrabi-ribbons/harvest-dinner/1/shave";
    Instant noon = SATURDAY.at(12, 30);
    DayFacts pinned = SATURDAY.facts().pinned(Map.of(id, new DayFacts.Pin(noon, List.of("yrsa"))));
    CrewPlan plan = Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), pinned, SHORT);
    assertThat(plan.find(id).orElseThrow().start()).isEqualTo(noon);
    assertThat(plan.find(id).orElseThrow().people()).containsExactly("yrsa");
    assertThat(plan.placed().values())
        .filteredOn(placed -> placed.people().contains("yrsa") && !placed.task().equals(id))
        .noneMatch(
            placed ->
                placed.start().isBefore(plan.find(id).orElseThrow().handsOff())
                    && noon.isBefore(placed.handsOff())
                    && Duration.between(placed.start(), placed.handsOff())
                            .compareTo(Duration.ofHours(1))
                        < 0);
  }

  @Test
  void planningAgainWithNothingChangedMovesNothing() {
    CrewPlan again =
        Crewing.plan(
            SATURDAY.book(),
            SATURDAY.sheet(),
            SATURDAY.facts().after(PLAN.placed()),
            Budget.of(0, 1));
    assertThat(again.placed()).isEqualTo(PLAN.placed());
    assertThat(again.washes()).isEqualTo(PLAN.washes());
    assertThat(again.bill().change()).isZero();
  }

  @Test
  void aBookWithoutPeoplePlansItsMachinesAlone() {
    DemoDay alone =
        DemoDay.of(DemoBook.fresh().set("people", "[]"), DemoDay.SATURDAY, LocalTime.of(7, 0));
    CrewPlan plan = Crewing.plan(alone.book(), alone.sheet(), alone.facts(), Budget.of(300, 1));
    assertThat(plan.leftOut()).isEmpty();
    assertThat(plan.placed().values()).allMatch(placed -> placed.people().isEmpty());
  }

  @Test
  void nothingRunsOnAMachineThatIsBroken() {
    Window day = new Window(SATURDAY.at(7, 0), SATURDAY.at(15, 0));
    DayFacts broken =
        SATURDAY.facts().with(List.of(), List.of(new DayFacts.Broken("blender", 1, day)));
    CrewPlan plan = Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), broken, SHORT);
    assertThat(plan.placed().values())
        .filteredOn(p -> p.machines().contains(new Placed.Unit("blender", 1)))
        .isNotEmpty()
        .allMatch(p -> !p.start().isBefore(day.end()));
  }

  /** By the clock, not by the slot: a minute too long is too long. */
  @Test
  void whatMustNotStandLongerForSafetyDoesNotByAMinute() {
    int bound = 0;
    for (int day = 0; day < 3; day++) {
      DemoDay of =
          DemoDay.of(DemoBook.fresh(), DemoDay.SATURDAY.plusDays(day - 1L), LocalTime.of(7, 0));
      for (long seed = 1; seed <= 3; seed++) {
        CrewPlan plan = Crewing.plan(of.book(), of.sheet(), of.facts(), Budget.of(300, seed));
        assertThat(CrewDifference.over(of.sheet(), of.facts(), plan))
            .noneMatch(over -> over.reason().isSafety());
        for (Task task : of.sheet().tasks()) {
          for (Task.Link link : task.links()) {
            if (link.max().isPresent()
                && link.reason().isSafety()
                && plan.find(task.id()).isPresent()
                && plan.find(link.task()).isPresent()) {
              Duration stands =
                  Duration.between(
                      plan.find(link.task()).orElseThrow().end(),
                      plan.find(task.id()).orElseThrow().start());
              assertThat(stands)
                  .as("%s after %s", task.id(), link.task())
                  .isLessThanOrEqualTo(link.max().get());
              bound++;
            }
          }
        }
      }
    }
    assertThat(bound).isGreaterThan(50);
  }

  private static TaskProgress onIt(String cook, Instant since) {
    return progress(
        TaskState.ON_IT, Optional.of(new TaskProgress.OnIt(cook, since, since)), Optional.empty());
  }

  private static TaskProgress done(Instant at) {
    return progress(TaskState.DONE, Optional.empty(), Optional.of(at));
  }

  private static TaskProgress progress(
      TaskState state, Optional<TaskProgress.OnIt> on, Optional<Instant> done) {
    return new TaskProgress(
        state,
        state,
        on,
        on.map(TaskProgress.OnIt::since),
        new TreeMap<>(),
        Optional.empty(),
        done,
        done,
        new TaskProgress.Since(done, done),
        Optional.empty(),
        List.of(),
        Optional.empty(),
        List.of(),
        List.of());
  }

  private static DayFacts facts(Instant now, Map<String, TaskProgress> progress) {
    return DayFacts.at(now).progressed(progress);
  }

  private static CrewPlan plan(DayFacts facts) {
    return Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), facts, Budget.of(200, 1));
  }

  @Test
  void whatWasBegunBeforeTheKitchenOpenedStaysWhereItIs() {
    String id = "pea-stock/bar.2026-12-05/1/simmer";
    Instant since = SATURDAY.at(7, 0).minus(Duration.ofHours(8));
    CrewPlan plan = plan(facts(SATURDAY.at(7, 10), Map.of(id, onIt("marit", since))));
    assertThat(plan.find(id).orElseThrow().start()).isEqualTo(since);
  }

  @Test
  void whatWasDoneBeforeTheKitchenOpenedHoldsNothingUp() {
    String id = "pea-stock/bar.2026-12-05/1/simmer";
    Task strain = SATURDAY.task("pea-stock/bar.2026-12-05/1/strain");
    Instant at = SATURDAY.at(6, 55);
    CrewPlan plan = plan(facts(SATURDAY.at(7, 10), Map.of(id, done(at))));
    Duration most = strain.links().get(0).max().orElseThrow();
    assertThat(plan.find(strain.id()).map(Placed::start))
        .as("it must be strained within its time for safety, or has no place")
        .satisfiesAnyOf(
            start -> assertThat(start).isEmpty(),
            start -> assertThat(start.orElseThrow()).isBeforeOrEqualTo(at.plus(most)));
  }

  @Test
  void whatStandsAloneNeedsNoHandsAndEndsWhenItHasStood() {
    String id = "mushroom-jus/harvest-dinner/1/simmer";
    Task task = SATURDAY.task(id);
    Instant since = SATURDAY.at(12, 0);
    Instant handsOff = since.plus(Duration.between(task.start(), task.handsOff()));
    Instant now = handsOff.plus(Duration.ofMinutes(20));
    DayFacts facts = facts(now, Map.of(id, onIt("marit", since))).after(PLAN.placed());
    Placed placed = plan(facts).find(id).orElseThrow();
    assertThat(placed.handsOff()).isEqualTo(handsOff);
    assertThat(placed.end()).isEqualTo(handsOff.plus(task.unattended()));
    CrewPlan there =
        new CrewPlan(
            PLAN.from(),
            Map.of(id, placed),
            List.of(),
            List.of(),
            List.of(),
            PLAN.bill(),
            1,
            0,
            false,
            false,
            false);
    assertThat(Adrift.list(SATURDAY.book(), SATURDAY.sheet(), facts, there))
        .noneMatch(one -> one.task().equals(id));
  }

  @Test
  void whatDripsOverNightIsBegunInTheEvening() {
    Placed drip = PLAN.find("dill-oil/naming-day/1/drip").orElseThrow();
    assertThat(drip.end()).isAfter(SATURDAY.at(23, 0).plus(Duration.ofHours(5)));
    assertThat(drip.handsOff()).isBefore(SATURDAY.at(23, 0).plus(Duration.ofMinutes(1)));
  }
}
