package halfgram.prep.timer;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Message;
import halfgram.prep.Tick;
import java.time.Duration;
import org.junit.jupiter.api.Test;

/** Until when what was done may wait, and what is not begun with any more. */
class HoldsTest extends OnSaturday {

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
}
