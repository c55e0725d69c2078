package halfgram.station;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Hours of a business day by the clock on the wall, past midnight and over a clock change. */
class ShiftTest {
  private static final BusinessDay CLOCK =
      new BusinessDay(ZoneId.of("Europe/Copenhagen"), LocalTime.of(4, 0));
  private static final LocalDate SATURDAY = LocalDate.parse("2026-12-05");
  private static final Set<DayOfWeek> SAT = Set.of(DayOfWeek.SATURDAY);

  private static Shift shift(String start, String end, Break... breaks) {
    return new Shift(SAT, LocalTime.parse(start), LocalTime.parse(end), List.of(breaks));
  }

  private static Break pause(String start, int minutes) {
    return new Break(LocalTime.parse(start), Duration.ofMinutes(minutes));
  }

  private static Window window(String start, String end) {
    return new Window(Instant.parse(start), Instant.parse(end));
  }

  @Test
  void aShiftOverMidnightIsOfTheDayItBeganOn() {
    Shift late = shift("16:00", "01:30", pause("00:15", 20), pause("20:00", 30));
    assertThat(late.on(SATURDAY, CLOCK))
        .isEqualTo(window("2026-12-05T15:00:00Z", "2026-12-06T00:30:00Z"));
    assertThat(late.breaksOn(SATURDAY, CLOCK))
        .containsExactly(
            window("2026-12-05T19:00:00Z", "2026-12-05T19:30:00Z"),
            window("2026-12-05T23:15:00Z", "2026-12-05T23:35:00Z"));
  }

  @Test
  void aShiftThroughTheWholeNightEndsAfterTheNextDayHasBegun() {
    assertThat(shift("22:00", "06:00").on(SATURDAY, CLOCK))
        .isEqualTo(window("2026-12-05T21:00:00Z", "2026-12-06T05:00:00Z"));
  }

  @Test
  void aShiftOverTheClockChangeEndsByTheClockOnTheWall() {
    assertThat(shift("20:00", "03:30").on(LocalDate.parse("2026-10-24"), CLOCK))
        .isEqualTo(window("2026-10-24T18:00:00Z", "2026-10-25T02:30:00Z"));
  }

  @Test
  void aBlockIsOnItsDaysAlone() {
    Block clean =
        new Block(Text.of("clean"), SAT, LocalTime.of(23, 30), LocalTime.of(0, 15), Set.of("cold"));
    assertThat(clean.on(SATURDAY, CLOCK))
        .contains(window("2026-12-05T22:30:00Z", "2026-12-05T23:15:00Z"));
    assertThat(clean.on(SATURDAY.plusDays(1), CLOCK)).isEmpty();
  }

  @Test
  void aBlockOfSomeStationsTakesWhoWorksThem() {
    Block clean =
        new Block(Text.of("clean"), SAT, LocalTime.of(22, 0), LocalTime.of(23, 0), Set.of("cold"));
    Block meal =
        new Block(Text.of("meal"), SAT, LocalTime.of(16, 0), LocalTime.of(17, 0), Set.of());
    Person cold = new Person("a", "A", Set.of("cold", "hot"), List.of(), false);
    Person hot = new Person("b", "B", Set.of("hot"), List.of(), false);
    assertThat(List.of(clean.takes(cold), clean.takes(hot), meal.takes(hot)))
        .containsExactly(true, false, true);
  }
}
