package halfgram.prep.crew;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.DemoBook;
import halfgram.measure.Window;
import halfgram.prep.PlatingLine;
import halfgram.prep.Task;
import halfgram.prep.schedule.Budget;
import halfgram.station.Equipment;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Hands beside the tasks themselves: who takes out what has stood, who washes a machine. */
class CrewHandsTest {
  private static final DemoDay SATURDAY = DemoDay.saturdayMorning();
  private static final CrewPlan PLAN =
      Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), SATURDAY.facts(), Budget.of(300, 1));

  @Test
  void somebodyOfItsStationTakesOutWhatHasStoodAndNotBefore() {
    int taken = 0;
    for (Task task : SATURDAY.sheet().tasks()) {
      Duration out = TaskJobs.unload(task);
      Optional<Placed.Hands> hands = PLAN.find(task.id()).flatMap(Placed::unload);
      assertThat(out.isZero() && hands.isPresent()).as(task.id()).isFalse();
      if (hands.isPresent()) {
        Placed placed = PLAN.find(task.id()).orElseThrow();
        assertThat(hands.get().people()).as(task.id()).hasSize(1);
        assertThat(stations(hands.get().people().get(0))).contains(task.station());
        assertThat(hands.get().from())
            .isAfterOrEqualTo(placed.handsOff().plus(task.unattended()).minus(out));
        assertThat(placed.end()).isEqualTo(hands.get().to());
        assertThat(Duration.between(hands.get().from(), hands.get().to())).isEqualTo(out);
        taken++;
      }
    }
    assertThat(taken).isPositive();
  }

  /**
   * A run has the set-up of its baths in its own time: one cook can do it alone, changes and all.
   */
  @Test
  void aBathRenewedDuringARunTakesNoHandsBesideThoseOfTheRun() {
    DemoDay day =
        DemoDay.of(
            DemoBook.fresh()
                .set("formulas/yoghurt-spheres/versions/0/technique/inputs/mostPieces", "30"),
            DemoDay.SATURDAY,
            LocalTime.of(7, 0));
    CrewPlan plan = Crewing.plan(day.book(), day.sheet(), day.facts(), Budget.of(300, 1));
    List<Task> renewed = day.sheet().tasks().stream().filter(Task::isInRun).toList();
    assertThat(renewed).hasSizeGreaterThan(3);
    for (Task task : renewed) {
      Placed placed = plan.find(task.id()).orElseThrow();
      assertThat(placed.turns()).as(task.id()).allMatch(turn -> turn.people().isEmpty());
    }
    Duration cold =
        day.sheet().tasks().stream()
            .filter(task -> task.station().equals("cold") && !renewed.contains(task))
            .map(Task::handsOn)
            .reduce(Duration.ZERO, Duration::plus);
    assertThat(day.sheet().loads(day.book()).get("cold")).isEqualTo(cold);
  }

  /** With nobody there after the start, the chiller is begun when it can be taken out. */
  @Test
  void whatNobodyIsThereToTakeOutInTimeIsBegunLater() {
    Placed chill =
        PLAN.placed().values().stream()
            .filter(one -> one.unload().isPresent())
            .findFirst()
            .orElseThrow();
    Placed.Hands out = chill.unload().orElseThrow();
    Window away = new Window(SATURDAY.at(7, 0), out.from());
    List<DayFacts.Hours> hours =
        SATURDAY.book().people().stream()
            .map(
                person ->
                    new DayFacts.Hours(
                        person.code(),
                        DemoDay.SATURDAY,
                        List.of(
                            new Window(SATURDAY.at(7, 0), out.from()),
                            new Window(out.to().plus(Duration.ofHours(1)), SATURDAY.at(23, 0)))))
            .toList();
    CrewPlan plan = plan(SATURDAY.facts().with(hours, List.of()));
    plan.placed().values().stream()
        .flatMap(one -> one.unload().stream())
        .forEach(
            one ->
                assertThat(
                        !one.to().isAfter(away.end())
                            || !one.from().isBefore(out.to().plus(Duration.ofHours(1))))
                    .as("%s", one)
                    .isTrue());
  }

  @Test
  void aMachineIsWashedByHandBetweenWhatDoesNotGoTogetherByWhoWorksThere() {
    assertThat(PLAN.washes()).isNotEmpty();
    for (Washed wash : PLAN.washes()) {
      Equipment machine = SATURDAY.book().equipment().get(wash.unit().equipment());
      Placed after = PLAN.find(wash.after()).orElseThrow();
      Placed before = PLAN.find(wash.before()).orElseThrow();
      assertThat(after.machines()).contains(wash.unit());
      assertThat(before.machines()).contains(wash.unit());
      assertThat(stations(wash.person())).contains(machine.station().orElseThrow());
      assertThat(wash.to()).isBeforeOrEqualTo(before.start());
      assertThat(Duration.between(wash.from(), wash.to())).isGreaterThanOrEqualTo(machine.scrub());
      assertThat(PLAN.placed().values())
          .as("%s does nothing else", wash)
          .filteredOn(one -> Duration.between(one.start(), one.handsOff()).toMinutes() < 60)
          .flatExtracting(Placed::hands)
          .filteredOn(one -> one.people().contains(wash.person()))
          .noneMatch(one -> one.from().isBefore(wash.to()) && wash.from().isBefore(one.to()));
    }
  }

  /** Whoever washes and goes home is told of, and another does it. */
  @Test
  void theWashOfSomebodyWhoIsNotThereIsAdriftAndGivenToAnother() {
    Washed wash = PLAN.washes().get(PLAN.washes().size() - 1);
    Window until = new Window(SATURDAY.at(7, 0), wash.from());
    DayFacts gone =
        SATURDAY
            .facts()
            .with(
                List.of(new DayFacts.Hours(wash.person(), DemoDay.SATURDAY, List.of(until))),
                List.of());
    assertThat(Adrift.list(SATURDAY.book(), SATURDAY.sheet(), gone, PLAN))
        .anyMatch(one -> one.task().equals(wash.before()) && one.what().equals(wash.person()));
    CrewPlan plan = plan(gone.after(PLAN.placed()));
    assertThat(plan.washes())
        .noneMatch(one -> one.person().equals(wash.person()) && one.to().isAfter(until.end()));
  }

  @Test
  void thePlatingOfADishHoldsAsManyAsItTakesUntilItsFire() {
    List<PlatingLine> lines =
        SATURDAY.sheet().services().stream()
            .flatMap(run -> PlatingLine.list(SATURDAY.book(), run).stream())
            .toList();
    assertThat(PLAN.platings()).isNotEmpty().hasSameSizeAs(lines);
    for (Plated line : PLAN.platings()) {
      assertThat(line.missing()).as(line.id()).isZero();
      assertThat(line.people()).hasSize(line.needed()).doesNotHaveDuplicates();
      assertThat(lines)
          .anyMatch(of -> of.start().equals(line.from()) && of.fire().at().equals(line.to()));
      for (String code : line.people()) {
        assertThat(stations(code)).contains(line.station().orElseThrow());
        assertThat(PLAN.placed().values())
            .as("%s does nothing else", code)
            .flatExtracting(Placed::hands)
            .filteredOn(one -> one.people().contains(code))
            .noneMatch(one -> one.from().isBefore(line.to()) && line.from().isBefore(one.to()));
      }
    }
  }

  @Test
  void whatIsPlatedEarlyHoldsNobodyAnyLonger() {
    Plated line = PLAN.platings().get(0);
    Instant done = line.from().plus(Duration.ofMinutes(5));
    DayFacts facts = SATURDAY.facts().platedAt(Map.of(line.id(), done));
    Plated now = plan(facts).platings().get(0);
    assertThat(now.id()).isEqualTo(line.id());
    assertThat(now.from()).isEqualTo(line.from());
    assertThat(now.to()).isEqualTo(done);
    Instant late = line.to().plus(Duration.ofMinutes(5));
    Plated after = plan(SATURDAY.facts().platedAt(Map.of(line.id(), late))).platings().get(0);
    assertThat(after.to()).as("late, it held them until the fire as planned").isEqualTo(line.to());
  }

  @Test
  void aPlatingThatIsShortOfHandsIsToldWithWhoCouldBeCalled() {
    Plated line = PLAN.platings().get(0);
    String gone = line.people().get(0);
    Window morning = new Window(SATURDAY.at(7, 0), SATURDAY.at(12, 0));
    DayFacts facts =
        SATURDAY
            .facts()
            .with(List.of(new DayFacts.Hours(gone, DemoDay.SATURDAY, List.of(morning))), List.of());
    assertThat(Adrift.list(SATURDAY.book(), SATURDAY.sheet(), facts, PLAN))
        .anyMatch(one -> one.task().equals(line.id()) && one.what().equals(gone));
    CrewPlan plan = plan(facts.after(PLAN.placed()));
    Plated now =
        plan.platings().stream()
            .filter(one -> one.id().equals(line.id()))
            .findFirst()
            .orElseThrow();
    assertThat(now.missing()).isEqualTo(1);
    assertThat(now.people()).doesNotContain(gone);
    assertThat(CrewDifference.of(SATURDAY.sheet(), facts, PLAN, plan).plated()).contains(now);
    Outlook outlook = Outlook.of(SATURDAY.book(), SATURDAY.sheet(), facts, plan);
    assertThat(outlook.shortPlatings()).contains(now);
    assertThat(outlook.fits()).isFalse();
    assertThat(Reasons.of(SATURDAY.book(), SATURDAY.sheet(), facts, plan))
        .anySatisfy(
            why -> {
              assertThat(why.what().key()).isEqualTo("nofit.plating");
              assertThat(why.levers()).isNotEmpty();
              assertThat(why.shortBy()).isEqualTo(Duration.between(line.from(), line.to()));
            });
  }

  @Test
  void aWashAndAPlatingAreAmongWhatHoldsATaskWhereItIs() {
    Set<String> said = new TreeSet<>();
    for (int seed = 1; seed <= 6; seed++) {
      CrewPlan plan =
          Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), SATURDAY.facts(), Budget.of(100, seed));
      Holding holding = new Holding(SATURDAY.book(), SATURDAY.sheet(), SATURDAY.facts(), plan);
      for (Task task : SATURDAY.sheet().tasks()) {
        holding.notEarlier(task).forEach(one -> said.add(one.said().key()));
        holding.notLater(task).forEach(one -> said.add(one.said().key()));
      }
    }
    assertThat(said)
        .contains("holding.washes-until", "holding.washes-from")
        .contains("holding.plates-until", "holding.plates-from");
  }

  private static Set<String> stations(String code) {
    return SATURDAY.book().people().stream()
        .filter(one -> one.code().equals(code))
        .findFirst()
        .orElseThrow()
        .stations();
  }

  private static CrewPlan plan(DayFacts facts) {
    return Crewing.plan(SATURDAY.book(), SATURDAY.sheet(), facts, Budget.of(200, 1));
  }
}
