package halfgram.prep.crew;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.DemoBook;
import halfgram.measure.Window;
import halfgram.prep.Task;
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
}
