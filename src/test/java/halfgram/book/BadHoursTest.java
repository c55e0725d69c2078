package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What is wrong with hours, places and machines' times is said with what would be right. */
class BadHoursTest extends RefusedBook {
  private static final String SHIFT = "people/ines/shifts/1";
  private static final String DRIP = "formulas/dill-oil/versions/0/steps/drip";
  private static final String DRIP_AT = "formulas/dill-oil/versions/0/steps/1";

  @Test
  void aBreakOutsideItsShiftIsRefusedWithTheHours() {
    book.set(SHIFT + "/breaks", "[{'start': '10:00', 'for': '30 min'}]");
    assertOnly(SHIFT + "/breaks/0/start", "10:00", "not inside the shift from 10:30 to 22:45");
    book.set(SHIFT + "/breaks", "[{'start': '22:30', 'for': '30 min'}]");
    assertOnly(SHIFT + "/breaks/0/start", "22:30", "begins and ends in it");
  }

  @Test
  void aBreakPastMidnightIsInsideAShiftThatEndsThen() {
    book.set(SHIFT + "/end", "'01:30'");
    book.set(SHIFT + "/breaks", "[{'start': '00:30', 'for': '30 min'}]");
    assertThat(problems()).isEmpty();
    book.set(SHIFT + "/breaks", "[{'start': '01:15', 'for': '30 min'}]");
    assertOnly(SHIFT + "/breaks/0/start", "01:15", "not inside the shift from 10:30 to 01:30");
  }

  @Test
  void aShiftPastMidnightThatTakesMostOfADayIsRefused() {
    book.set(SHIFT + "/end", "'09:30'");
    assertOnly(SHIFT + "/end", "09:30", "a shift from 10:30 of 23 h", "an end within 18 h");
  }

  @Test
  void ofATimeThatIsMissingOrNoneNothingElseIsSaid() {
    String dinner = "events/harvest-dinner/services/dinner";
    book.set(dinner + "/courses/main/at", "''");
    assertOnly(dinner + "/courses/main/at", "", "a time");
    book.set(dinner + "/courses/main/at", "'20:05'");
    book.set(dinner + "/start", "'soon'");
    assertOnly(dinner + "/start", "soon", "a time");
    book.set(dinner + "/start", "'18:30'");
    book.set(dinner + "/end", "null");
    assertOnly(dinner + "/end", "", "is missing");
    book.set(dinner + "/end", "'21:30'");
    assertThat(problems()).isEmpty();
  }

  @Test
  void breaksThatOverlapAreRefused() {
    book.set(
        SHIFT + "/breaks",
        "[{'start': '15:00', 'for': '30 min'}, {'start': '15:20', 'for': '10 min'}]");
    assertOnly(SHIFT + "/breaks/1/start", "15:20", "before the break above it is over");
  }

  @Test
  void aBreakOfNoLengthIsRefused() {
    book.set(SHIFT + "/breaks", "[{'start': '15:00', 'for': '0 min'}]");
    assertOnly(SHIFT + "/breaks/0/for", "0 min", "a duration above zero");
    book.set(SHIFT + "/breaks", "[{'start': '15:00'}]");
    assertOnly(SHIFT + "/breaks/0/for", "", "is missing", "a duration above zero");
  }

  @Test
  void ofADurationThatIsTooLongTheMostIsNamed() {
    book.set(SHIFT + "/breaks", "[{'start': '15:00', 'for': '1000 d'}]");
    assertOnly(SHIFT + "/breaks/0/for", "1000 d", "at most 400 d");
  }

  @Test
  void aBlockThatEndsWhenItBeginsIsRefused() {
    book.set("kitchen/blocks/0/end", "'16:30'");
    assertOnly("kitchen/blocks/0/end", "16:30", "is when it begins", "a time after 16:30");
  }

  @Test
  void aBlockOfAStationThatIsNotThereIsRefused() {
    book.set("kitchen/blocks/0/stations", "['hott']");
    assertOnly("kitchen/blocks/0/stations/0", "hott", "no such station", "hot");
  }

  @Test
  void aPlaceListedTwiceIsRefused() {
    book.set("kitchen/places/1/name", "'walk-in'");
    assertOnly("kitchen/places/1/name", "walk-in", "listed twice");
  }

  @Test
  void aMachineIsNotTakenForATimeTheStepDoesNotHave() {
    book.set(DRIP + "/equipment/0/during", "'hands'").remove(DRIP + "/handsOn");
    assertOnly(DRIP_AT + "/equipment/0/during", "hands", "does not have", "handsOn");
    book.set(DRIP + "/equipment/0/during", "'alone'").remove(DRIP + "/unattended");
    assertOnly(DRIP_AT + "/equipment/0/during", "alone", "does not have", "unattended");
  }

  @Test
  void aMachineNeverDriesLongerThanItsWashTakes() {
    book.set("equipment/mixer/drying", "'11 min'");
    assertOnly("equipment/mixer/drying", "11 min", "more than washing and drying", "wash");
  }

  @Test
  void handsAtTheEndNeverTakeMoreThanTheTimeAlone() {
    book.set(DRIP + "/unload", "'10 h'");
    assertOnly(DRIP_AT + "/unload", "10 h", "more than the step stands for sure", "unattended");
  }
}
