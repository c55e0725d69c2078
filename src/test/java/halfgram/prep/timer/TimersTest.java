package halfgram.prep.timer;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import halfgram.prep.crew.DemoDay;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Timers as they follow from the ticks of the demo's Saturday. */
class TimersTest {
  private static final DemoDay SATURDAY = DemoDay.saturdayMorning();
  private static final Task COOK = SATURDAY.task("parsnip-puree/lunch.2026-12-05/1/cook");
  private static final Task BLEND = SATURDAY.task("parsnip-puree/lunch.2026-12-05/1/blend");
  private static final Task CHILL = SATURDAY.task("parsnip-puree/lunch.2026-12-05/1/chill");
  private static final Task BLANCH = dill("/blanch");
  private static final Task SQUEEZE = dill("/squeeze");
  private static final Task BASE = SATURDAY.task("yoghurt-base/harvest-dinner/1/shear");
  private static final Task PIECE =
      SATURDAY.task("yoghurt-spheres/harvest-dinner/1/drop/test-piece");
  private static final Task LATER_PIECE =
      SATURDAY.task("yoghurt-spheres/terrace/1/drop/test-piece");
  private static final Instant TEN = Instant.parse("2026-12-05T09:00:00Z");

  /** A step of the dill, which may wait a quarter of an hour between them. */
  private static Task dill(String step) {
    return SATURDAY.sheet().tasks().stream()
        .filter(one -> one.id().startsWith("blanched-dill/") && one.id().endsWith(step))
        .findFirst()
        .orElseThrow();
  }

  private final Map<String, List<Tick>> ticks = new HashMap<>();
  private int made;
  private String cook = "ines";

  private Tick tick(Task task, Tick.Kind kind, int minute, String line, Integer minutes) {
    Tick tick =
        new Tick(
            new UUID(3, ++made),
            task.id(),
            kind,
            Optional.ofNullable(line),
            Optional.empty(),
            Optional.ofNullable(minutes),
            Optional.empty(),
            cook,
            at(minute),
            Optional.empty());
    ticks.computeIfAbsent(task.id(), id -> new ArrayList<>()).add(tick);
    return tick;
  }

  private void takeBack(Tick of, int minute) {
    Optional<String> none = Optional.empty();
    ticks
        .get(of.task())
        .add(
            new Tick(
                new UUID(3, ++made),
                of.task(),
                Tick.Kind.UNDO,
                none,
                Optional.empty(),
                Optional.empty(),
                none,
                cook,
                at(minute),
                Optional.of(of.id())));
  }

  private Tick tick(Task task, Tick.Kind kind, int minute) {
    return tick(task, kind, minute, null, null);
  }

  private static Instant at(int minute) {
    return TEN.plus(Duration.ofMinutes(minute));
  }

  private List<Timer> timers() {
    Map<String, TaskProgress> progress = new HashMap<>();
    ticks.forEach((task, all) -> progress.put(task, TaskProgress.fold(all)));
    return Timers.list(SATURDAY.sheet().tasks(), progress);
  }

  private Timer only(Timer.Kind kind) {
    List<Timer> found = timers().stream().filter(timer -> timer.kind() == kind).toList();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  private Optional<Message> refused(Task task, Tick.Kind kind, int minute) {
    Tick tick = tick(task, kind, minute);
    List<Tick> before = ticks.get(task.id());
    before.remove(tick);
    return Holds.refused(
        task, TaskProgress.fold(before), tick, SATURDAY.sheet().before(task), ticks);
  }

  @Test
  void nothingIsTimedBeforeAnybodyHasBegun() {
    assertThat(timers()).isEmpty();
  }

  @Test
  void whatGoesOnByItselfRunsOverItsPlannedTimeUntilItIsDone() {
    tick(COOK, Tick.Kind.START, 0);
    Timer timer = only(Timer.Kind.STANDS);
    assertThat(timer.due()).isEqualTo(at(0).plus(Duration.between(COOK.start(), COOK.end())));
    assertThat(timer.state(at(10))).isEqualTo(Timer.State.RUNS);
    assertThat(timer.state(timer.due())).isEqualTo(Timer.State.RINGS);
    tick(COOK, Tick.Kind.DONE, 46);
    assertThat(timers()).extracting(Timer::kind).doesNotContain(Timer.Kind.STANDS);
  }

  @Test
  void sayingThatItStandsCountsItsOwnTimeFromThen() {
    tick(COOK, Tick.Kind.START, 0);
    tick(COOK, Tick.Kind.TIMED, 12, Timers.STANDS, null);
    assertThat(only(Timer.Kind.STANDS).due()).isEqualTo(at(12).plus(COOK.unattended()));
  }

  @Test
  void whoeverTakesOverFindsTheTimerAsItWas() {
    tick(COOK, Tick.Kind.START, 0);
    Instant due = only(Timer.Kind.STANDS).due();
    cook = "ola";
    tick(COOK, Tick.Kind.START, 20);
    assertThat(only(Timer.Kind.STANDS).due()).isEqualTo(due);
    tick(COOK, Tick.Kind.TIMED, 22, Timers.STANDS, null);
    cook = "ines";
    tick(COOK, Tick.Kind.START, 25);
    assertThat(only(Timer.Kind.STANDS).due()).isEqualTo(at(22).plus(COOK.unattended()));
  }

  @Test
  void whatIsTakenUpAgainAfterAPartStandsAnew() {
    tick(COOK, Tick.Kind.START, 0);
    tick(COOK, Tick.Kind.PART_DONE, 20);
    cook = "ola";
    tick(COOK, Tick.Kind.START, 30);
    Duration whole = Duration.between(COOK.start(), COOK.end());
    assertThat(only(Timer.Kind.STANDS).due()).isEqualTo(at(30).plus(whole));
  }

  @Test
  void aProblemStopsNoTimer() {
    tick(COOK, Tick.Kind.START, 0);
    tick(COOK, Tick.Kind.PROBLEM, 5);
    assertThat(only(Timer.Kind.STANDS).state(at(6))).isEqualTo(Timer.State.RUNS);
    tick(COOK, Tick.Kind.SOLVED, 7);
    tick(COOK, Tick.Kind.DONE, 46);
    tick(COOK, Tick.Kind.PROBLEM, 47);
    tick(BLEND, Tick.Kind.PROBLEM, 48);
    assertThat(only(Timer.Kind.HOLD).due()).isEqualTo(at(76));
  }

  @Test
  void aProblemOnEitherSideMakesNoSafetyLimitLonger() {
    tick(BLEND, Tick.Kind.DONE, 0);
    tick(BLEND, Tick.Kind.PROBLEM, 1);
    assertThat(refused(CHILL, Tick.Kind.START, 31)).isPresent();
    tick(CHILL, Tick.Kind.PROBLEM, 2);
    assertThat(refused(CHILL, Tick.Kind.WEIGHED, 31)).isPresent();
    assertThat(refused(CHILL, Tick.Kind.PART_DONE, 200)).isPresent();
    tick(CHILL, Tick.Kind.SOLVED, 201);
    assertThat(refused(CHILL, Tick.Kind.START, 202)).isPresent();
  }

  @Test
  void noSafetyLimitWinsTimeByTakingBackAndSayingItAgain() {
    takeBack(tick(BLEND, Tick.Kind.DONE, 0), 20);
    assertThat(timers()).as("nothing is done that could wait").isEmpty();
    tick(BLEND, Tick.Kind.DONE, 21);
    assertThat(only(Timer.Kind.HOLD).due()).isEqualTo(at(30));
    assertThat(refused(CHILL, Tick.Kind.START, 31)).isPresent();
  }

  @Test
  void anotherTimeSaidForWhatWasTakenBackCounts() {
    takeBack(tick(BLEND, Tick.Kind.DONE, 0), 25);
    tick(BLEND, Tick.Kind.DONE, 12);
    assertThat(only(Timer.Kind.HOLD).due()).isEqualTo(at(42));
  }

  @Test
  void inPartsALimitCountsFromWhenAllShouldHaveBeenDone() {
    int planned = (int) Duration.between(BLEND.start(), BLEND.end()).toMinutes();
    tick(BLEND, Tick.Kind.START, 0);
    tick(BLEND, Tick.Kind.PART_DONE, 2);
    assertThat(only(Timer.Kind.HOLD).due()).isEqualTo(at(planned + 30));
    assertThat(refused(CHILL, Tick.Kind.START, planned + 30)).isEmpty();
    tick(BLEND, Tick.Kind.DONE, planned + 20);
    assertThat(only(Timer.Kind.HOLD).due())
        .as("the rest took longer: the first part does not wait for it")
        .isEqualTo(at(planned + 30));
    assertThat(refused(CHILL, Tick.Kind.START, planned + 31)).isPresent();
  }

  @Test
  void inPartsALimitCountsFromDoneWhereThatWasSooner() {
    tick(BLEND, Tick.Kind.START, 0);
    tick(BLEND, Tick.Kind.PART_DONE, 1);
    tick(BLEND, Tick.Kind.DONE, 3);
    assertThat(only(Timer.Kind.HOLD).due()).isEqualTo(at(33));
  }

  @Test
  void inPartsALimitCountsFromTheFirstWhereThatCameLate() {
    int planned = (int) Duration.between(BLEND.start(), BLEND.end()).toMinutes();
    tick(BLEND, Tick.Kind.START, 0);
    tick(BLEND, Tick.Kind.PART_DONE, planned + 5);
    tick(BLEND, Tick.Kind.DONE, planned + 25);
    assertThat(only(Timer.Kind.HOLD).due()).isEqualTo(at(planned + 35));
  }

  @Test
  void whatWasHeardIsSilentAndWhatWasPutOffRingsAgain() {
    tick(COOK, Tick.Kind.START, 0);
    Timer due = only(Timer.Kind.STANDS);
    int minute = (int) Duration.between(TEN, due.due()).toMinutes() + 1;
    tick(COOK, Tick.Kind.LATER, minute, due.name(), 5);
    assertThat(only(Timer.Kind.STANDS).isRinging(at(minute + 4))).isFalse();
    assertThat(only(Timer.Kind.STANDS).isRinging(at(minute + 5))).isTrue();
    tick(COOK, Tick.Kind.HEARD, minute + 6, due.name(), null);
    assertThat(only(Timer.Kind.STANDS).state(at(minute + 60))).isEqualTo(Timer.State.OVER);
  }

  @Test
  void hearingATimerBeforeItRingsDoesNotSilenceIt() {
    tick(COOK, Tick.Kind.START, 0);
    Timer timer = only(Timer.Kind.STANDS);
    tick(COOK, Tick.Kind.HEARD, 1, timer.name(), null);
    assertThat(only(Timer.Kind.STANDS).isRinging(timer.due())).isTrue();
  }

  @Test
  void aRestRunsFromDoneUntilWhatItIsForHasBegun() {
    tick(BASE, Tick.Kind.DONE, 0);
    Timer rest = only(Timer.Kind.RESTS);
    assertThat(rest.due()).isEqualTo(at(120));
    assertThat(rest.then()).contains(PIECE);
    SATURDAY.sheet().tasks().stream()
        .filter(task -> task.links().stream().anyMatch(link -> link.task().equals(BASE.id())))
        .forEach(task -> tick(task, Tick.Kind.START, 121));
    assertThat(timers()).extracting(Timer::kind).doesNotContain(Timer.Kind.RESTS);
  }

  @Test
  void aRestIsKnownOnceSomethingHasBegunWithIt() {
    tick(BASE, Tick.Kind.DONE, 0);
    assertThat(only(Timer.Kind.RESTS).then()).contains(PIECE, LATER_PIECE);
    tick(PIECE, Tick.Kind.START, 119);
    assertThat(only(Timer.Kind.RESTS).then()).as("too early").containsExactly(LATER_PIECE);
    tick(LATER_PIECE, Tick.Kind.START, 121);
    assertThat(timers()).extracting(Timer::kind).doesNotContain(Timer.Kind.RESTS);
  }

  @Test
  void aRestThatWasAwaitedRingsNoLongerForWhatComesLater() {
    tick(BASE, Tick.Kind.DONE, 0);
    Tick start = tick(PIECE, Tick.Kind.START, 121);
    assertThat(timers()).extracting(Timer::kind).doesNotContain(Timer.Kind.RESTS);
    ticks.get(PIECE.id()).remove(start);
    assertThat(only(Timer.Kind.RESTS).then()).contains(PIECE);
    tick(PIECE, Tick.Kind.DONE, 125);
    assertThat(timers()).extracting(Timer::kind).doesNotContain(Timer.Kind.RESTS);
  }

  @Test
  void aHoldRingsBeforeItsLimitAndAgainAtIt() {
    tick(COOK, Tick.Kind.DONE, 0);
    Timer hold = only(Timer.Kind.HOLD);
    assertThat(hold.due()).isEqualTo(at(30));
    // A quarter of half an hour is left, when it warns.
    assertThat(hold.rings()).contains(at(30).minus(Duration.ofSeconds(450)));
    tick(COOK, Tick.Kind.HEARD, 24, hold.name(), null);
    assertThat(only(Timer.Kind.HOLD).rings()).contains(at(30));
    assertThat(only(Timer.Kind.HOLD).state(at(31))).isEqualTo(Timer.State.TASTE);
  }

  @Test
  void noTimerIsPutOffPastWhatFollowsFromIt() {
    tick(COOK, Tick.Kind.DONE, 0);
    Timer hold = only(Timer.Kind.HOLD);
    assertThat(hold.laters(at(24), List.of(2, 5, 10))).containsExactly(2, 5);
    tick(COOK, Tick.Kind.LATER, 24, hold.name(), 10);
    assertThat(only(Timer.Kind.HOLD).rings()).contains(at(30));
  }

  @Test
  void pastItsSafetyLimitAHoldIsForTheBinWhoeverHasTasted() {
    tick(BLEND, Tick.Kind.DONE, 0);
    tick(BLEND, Tick.Kind.TASTED, 31);
    Timer hold = only(Timer.Kind.HOLD);
    assertThat(hold.reason().isSafety()).isTrue();
    assertThat(hold.state(at(30))).isNotEqualTo(Timer.State.BIN);
    assertThat(hold.state(at(31))).isEqualTo(Timer.State.BIN);
    assertThat(refused(CHILL, Tick.Kind.START, 30)).isEmpty();
    assertThat(refused(CHILL, Tick.Kind.START, 31))
        .hasValueSatisfying(said -> assertThat(said.key()).isEqualTo("tick.refused.hold-over"));
    assertThat(refused(CHILL, Tick.Kind.FAILED, 31)).isEmpty();
  }

  @Test
  void pastItsBestAHoldIsTastedAfterItsLimitAndThenUsed() {
    tick(COOK, Tick.Kind.DONE, 0);
    tick(COOK, Tick.Kind.TASTED, 20);
    assertThat(refused(BLEND, Tick.Kind.START, 31))
        .hasValueSatisfying(said -> assertThat(said.key()).isEqualTo("tick.refused.hold-taste"));
    tick(COOK, Tick.Kind.TASTED, 32);
    assertThat(refused(BLEND, Tick.Kind.START, 33)).isEmpty();
    assertThat(only(Timer.Kind.HOLD).state(at(33))).isEqualTo(Timer.State.TASTED);
  }

  @Test
  void aTasteCountsForHalfAnHourAndThenItIsTastedAgain() {
    tick(COOK, Tick.Kind.DONE, 0);
    tick(COOK, Tick.Kind.TASTED, 32);
    assertThat(only(Timer.Kind.HOLD).tasted()).contains(new Holds.Taste("ines", at(32), at(62)));
    assertThat(only(Timer.Kind.HOLD).rings()).as("until it ends it is silent").contains(at(62));
    assertThat(only(Timer.Kind.HOLD).isRinging(at(61))).isFalse();
    assertThat(refused(BLEND, Tick.Kind.START, 62)).isEmpty();
    assertThat(refused(BLEND, Tick.Kind.START, 63))
        .contains(Message.of("tick.refused.hold-again", at(32), at(62)));
    assertThat(only(Timer.Kind.HOLD).state(at(63))).isEqualTo(Timer.State.TASTE);
    assertThat(only(Timer.Kind.HOLD).isRinging(at(63))).isTrue();
    tick(COOK, Tick.Kind.TASTED, 70);
    assertThat(refused(BLEND, Tick.Kind.START, 100)).isEmpty();
    assertThat(refused(BLEND, Tick.Kind.START, 101)).isPresent();
    assertThat(only(Timer.Kind.HOLD).state(at(100))).isEqualTo(Timer.State.TASTED);
  }

  @Test
  void aTasteOfWhatWaitsForLessThanThatCountsForAsLongAsItMayWait() {
    tick(BLANCH, Tick.Kind.DONE, 0);
    tick(BLANCH, Tick.Kind.TASTED, 20);
    assertThat(refused(SQUEEZE, Tick.Kind.START, 35)).isEmpty();
    assertThat(refused(SQUEEZE, Tick.Kind.START, 36))
        .hasValueSatisfying(said -> assertThat(said.key()).isEqualTo("tick.refused.hold-again"));
  }

  @Test
  void whatIsSaidDoneAtOnceIsTastedForWhenItWasBegun() {
    tick(COOK, Tick.Kind.DONE, 0);
    tick(COOK, Tick.Kind.TASTED, 32);
    int whole = (int) Duration.between(BLEND.start(), BLEND.end()).toMinutes();
    assertThat(refused(BLEND, Tick.Kind.DONE, 62 + whole)).isEmpty();
    assertThat(refused(BLEND, Tick.Kind.DONE, 63 + whole)).isPresent();
  }

  @Test
  void whatIsSaidDoneAtOnceIsTakenToHaveBegunItsPlannedTimeBefore() {
    tick(BLEND, Tick.Kind.DONE, 0);
    int whole = (int) Duration.between(CHILL.start(), CHILL.end()).toMinutes();
    assertThat(refused(CHILL, Tick.Kind.DONE, 30 + whole)).isEmpty();
    assertThat(refused(CHILL, Tick.Kind.DONE, 31 + whole)).isPresent();
  }

  @Test
  void whatHasBegunInTimeIsNotAskedAgain() {
    tick(BLEND, Tick.Kind.DONE, 0);
    tick(CHILL, Tick.Kind.START, 10);
    assertThat(refused(CHILL, Tick.Kind.DONE, 300)).isEmpty();
  }

  @Test
  void oneThatACookSetsGoesWhenItIsHeardAndMayBeStoppedBefore() {
    Tick set = tick(COOK, Tick.Kind.TIMED, 0, null, 3);
    Timer own = only(Timer.Kind.OWN);
    assertThat(own.due()).isEqualTo(at(3));
    assertThat(own.name()).contains(set.id().toString());
    tick(COOK, Tick.Kind.HEARD, 1, own.name(), null);
    assertThat(timers()).isEmpty();
  }

  @Test
  void whatFailedIsTimedNoMore() {
    tick(COOK, Tick.Kind.START, 0);
    tick(COOK, Tick.Kind.TIMED, 1, null, 3);
    tick(BLEND, Tick.Kind.TIMED, 2, null, 3);
    Tick failed = tick(COOK, Tick.Kind.FAILED, 5);
    assertThat(timers()).isEmpty();
    ticks.get(COOK.id()).remove(failed);
    assertThat(timers()).filteredOn(one -> one.kind() == Timer.Kind.OWN).hasSize(2);
  }

  @Test
  void theOrderOfTheTasksChangesNothing() {
    tick(COOK, Tick.Kind.DONE, 0);
    tick(BASE, Tick.Kind.DONE, 2);
    tick(BLEND, Tick.Kind.START, 4);
    tick(BASE, Tick.Kind.TIMED, 5, null, 8);
    List<Timer> expected = timers();
    assertThat(expected).isNotEmpty();
    Map<String, TaskProgress> progress = new HashMap<>();
    ticks.forEach((task, all) -> progress.put(task, TaskProgress.fold(all)));
    for (int seed = 0; seed < 20; seed++) {
      List<Task> tasks = new ArrayList<>(SATURDAY.sheet().tasks());
      Collections.shuffle(tasks, new Random(seed));
      assertThat(Timers.list(tasks, progress))
          .extracting(Timer::task, Timer::name, Timer::due, Timer::rings)
          .containsExactlyElementsOf(
              expected.stream()
                  .map(
                      one ->
                          org.assertj.core.groups.Tuple.tuple(
                              one.task(), one.name(), one.due(), one.rings()))
                  .toList());
    }
  }
}
