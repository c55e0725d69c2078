package halfgram.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** Times as people type them. */
class TypedTimeTest {
  @Test
  void aTimeIsReadAsItIsTyped() {
    Map.of(
            "9.30", "09:30",
            "930", "09:30",
            "8", "08:00",
            "16", "16:00",
            "16h", "16:00",
            "0", "00:00",
            "4 pm", "16:00",
            "12 am", "00:00",
            "23:05", "23:05")
        .forEach((typed, time) -> assertThat(TypedTime.of(typed)).as(typed).isEqualTo(time));
  }

  @Test
  void whatIsNoTimeStaysAsItWasTyped() {
    for (String typed : new String[] {"noon", "24", "99", "", "8 o", "soon"}) {
      assertThat(TypedTime.of(typed)).as(typed).isEqualTo(typed);
    }
  }

  @Test
  void anHourThatAClockOfTwelveShowsTwiceADayIsEither() {
    assertThat(TypedTime.isEither("4:05")).isTrue();
    assertThat(TypedTime.isEither("8")).isTrue();
    assertThat(TypedTime.isEither("16")).isFalse();
    assertThat(TypedTime.isEither("4 pm")).isFalse();
    assertThat(TypedTime.isEither("0:30")).isFalse();
  }
}
