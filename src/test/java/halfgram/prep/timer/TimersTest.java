package halfgram.prep.timer;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Timers as they follow from the ticks of the demo's Saturday. */
class TimersTest extends OnSaturday {

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
