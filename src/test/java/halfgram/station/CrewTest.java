package halfgram.station;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.measure.Window;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** What was said of a day's crew and machines, folded. */
class CrewTest {
  private static final BusinessDay CLOCK = new BusinessDay(ZoneOffset.UTC, LocalTime.of(4, 0));
  private static final LocalDate DAY = LocalDate.parse("2026-12-05");
  private static final Person ANA =
      new Person(
          "ana",
          "Ana",
          Set.of("cold"),
          List.of(shift("07:00", "11:00"), shift("15:00", "23:30", "18:00")),
          false);
  private static final Person BO = new Person("bo", "Bo", Set.of("hot"), List.of(), false);
  private static final Equipment OVEN =
      new Equipment(
          "oven",
          Text.of("oven"),
          Optional.empty(),
          2,
          FillLimits.NONE,
          true,
          Duration.ofMinutes(5),
          Duration.ZERO);

  private final List<CrewEntry> said = new ArrayList<>();

  private static Shift shift(String start, String end, String... breaks) {
    return new Shift(
        Set.of(DayOfWeek.SATURDAY),
        LocalTime.parse(start),
        LocalTime.parse(end),
        List.of(breaks).stream()
            .map(one -> new Break(LocalTime.parse(one), Duration.ofMinutes(30)))
            .toList());
  }

  private static Instant at(String time) {
    return CLOCK.at(DAY, LocalTime.parse(time));
  }

  private static Window span(String start, String end) {
    return new Window(at(start), at(end));
  }

  private static Optional<Instant> moment(String time) {
    return time.isEmpty() ? Optional.empty() : Optional.of(at(time));
  }

  private static CrewEntry entry(
      CrewEntry.Kind kind, String whose, int units, String from, String until, UUID other) {
    boolean cook = !whose.equals("oven");
    return new CrewEntry(
        UUID.randomUUID(),
        DAY,
        kind,
        cook ? whose : "",
        cook ? "" : whose,
        units,
        moment(from),
        moment(until),
        Optional.empty(),
        "test",
        at("06:00"),
        Optional.of(other).filter(id -> kind == CrewEntry.Kind.MENDED),
        Optional.of(other).filter(id -> kind == CrewEntry.Kind.UNDO));
  }

  private static CrewEntry cook(CrewEntry.Kind kind, String whose, String from, String until) {
    return entry(kind, whose, 0, from, until, new UUID(0, 0));
  }

  private static CrewEntry broken(int units, String from, String until) {
    return entry(CrewEntry.Kind.BROKEN, "oven", units, from, until, new UUID(0, 0));
  }

  private Crew crew() {
    return Crew.of(DAY, CLOCK, List.of(ANA, BO), List.of(OVEN), said);
  }

  private UUID say(CrewEntry entry) {
    assertThat(crew().refuse(entry)).isEmpty();
    said.add(entry);
    return entry.id();
  }

  private List<Window> hours(String person) {
    return crew().findCook(person).orElseThrow().hours();
  }

  private int ovens(String time) {
    return crew().findMachine("oven").orElseThrow().units(at(time));
  }

  private String refused(CrewEntry entry) {
    return crew().refuse(entry).map(Message::key).orElse("");
  }

  @Test
  void withNothingSaidTheShiftsCount() {
    assertThat(hours("ana")).containsExactly(span("07:00", "11:00"), span("15:00", "23:30"));
    assertThat(hours("bo")).isEmpty();
    assertThat(crew().findCook("ana").orElseThrow().breaks())
        .containsExactly(span("18:00", "18:30"));
  }

  @Test
  void whoComesLateAndGoesHomeEarlyIsInBetween() {
    say(cook(CrewEntry.Kind.IN, "ana", "09:00", ""));
    say(cook(CrewEntry.Kind.IN, "ana", "", "18:15"));
    assertThat(hours("ana")).containsExactly(span("09:00", "11:00"), span("15:00", "18:15"));
    assertThat(crew().findCook("ana").orElseThrow().breaks()).as("not whole any more").isEmpty();
  }

  @Test
  void whoStaysPastMidnightIsInUntilThen() {
    say(cook(CrewEntry.Kind.IN, "ana", "16:00", "01:00"));
    assertThat(hours("ana")).containsExactly(span("16:00", "01:00"));
  }

  @Test
  void notComingLeavesNothingAndComingAfterAllIsTheShiftFromThen() {
    say(cook(CrewEntry.Kind.IN, "ana", "06:00", ""));
    say(cook(CrewEntry.Kind.OUT, "ana", "", ""));
    assertThat(hours("ana")).isEmpty();
    assertThat(refused(cook(CrewEntry.Kind.OUT, "ana", "", ""))).isEqualTo("crew.refused.out");
    say(cook(CrewEntry.Kind.IN, "ana", "16:00", ""));
    assertThat(hours("ana")).containsExactly(span("16:00", "23:30"));
    say(cook(CrewEntry.Kind.BACK, "ana", "", ""));
    assertThat(hours("ana")).containsExactly(span("07:00", "11:00"), span("15:00", "23:30"));
    assertThat(refused(cook(CrewEntry.Kind.BACK, "ana", "", ""))).isEqualTo("crew.refused.back");
  }

  @Test
  void whoHasNoShiftIsInWhenBothTimesAreSaid() {
    assertThat(refused(cook(CrewEntry.Kind.IN, "bo", "09:00", "")))
        .isEqualTo("crew.refused.no-hours");
    say(cook(CrewEntry.Kind.IN, "bo", "09:00", "14:00"));
    assertThat(hours("bo")).containsExactly(span("09:00", "14:00"));
  }

  @Test
  void aMachineIsMissingUntilItsTimeOrUntilMendedWhicheverIsFirst() {
    UUID first = say(broken(1, "09:00", "12:00"));
    UUID second = say(broken(1, "10:00", ""));
    assertThat(List.of(ovens("08:59"), ovens("09:00"), ovens("10:00"), ovens("12:00")))
        .containsExactly(2, 1, 0, 1);
    assertThat(refused(broken(1, "11:00", "11:30"))).isEqualTo("crew.refused.broken");
    assertThat(refused(broken(1, "08:00", ""))).as("meets both").isEqualTo("crew.refused.broken");
    say(entry(CrewEntry.Kind.MENDED, "oven", 0, "11:00", "", first));
    assertThat(ovens("11:00")).isEqualTo(1);
    UUID mended = say(entry(CrewEntry.Kind.MENDED, "oven", 0, "13:00", "", second));
    assertThat(ovens("13:00")).isEqualTo(2);
    assertThat(refused(entry(CrewEntry.Kind.MENDED, "oven", 0, "14:00", "", second)))
        .isEqualTo("crew.refused.mended");
    say(entry(CrewEntry.Kind.UNDO, "oven", 0, "", "", mended));
    assertThat(ovens("13:00")).isEqualTo(1);
    assertThat(refused(entry(CrewEntry.Kind.MENDED, "oven", 0, "09:30", "", second)))
        .isEqualTo("crew.refused.mended-before");
  }

  @Test
  void whatIsTakenBackCountsAsNeverMade() {
    Random random = new Random(20261126);
    List<String> times = List.of("", "05:00", "08:00", "12:00", "16:30", "22:00", "01:30");
    for (int run = 0; run < 400; run++) {
      said.clear();
      for (int i = random.nextInt(6); i > 0; i--) {
        some(random, times).filter(one -> crew().refuse(one).isEmpty()).ifPresent(said::add);
      }
      List<Cook> before = crew().cooks();
      List<Works> machines = crew().machines();
      Optional<CrewEntry> more = some(random, times).filter(one -> crew().refuse(one).isEmpty());
      if (more.isPresent()) {
        UUID id = say(more.get());
        lawful(crew());
        say(entry(CrewEntry.Kind.UNDO, more.get().subject(), 0, "", "", id));
        assertThat(crew().cooks()).isEqualTo(before);
        assertThat(crew().machines()).isEqualTo(machines);
        assertThat(refused(entry(CrewEntry.Kind.UNDO, "ana", 0, "", "", id)))
            .isEqualTo("crew.refused.undo");
      }
    }
  }

  private static final List<CrewEntry.Kind> SAID =
      List.of(CrewEntry.Kind.OUT, CrewEntry.Kind.IN, CrewEntry.Kind.BACK, CrewEntry.Kind.BROKEN);

  private static Optional<CrewEntry> some(Random random, List<String> times) {
    String from = times.get(random.nextInt(times.size()));
    String until = times.get(random.nextInt(times.size()));
    boolean ordered = from.isEmpty() || until.isEmpty() || at(from).isBefore(at(until));
    CrewEntry.Kind kind = SAID.get(random.nextInt(SAID.size()));
    if (!ordered || (kind == CrewEntry.Kind.BROKEN && from.isEmpty())) {
      return Optional.empty();
    }
    return Optional.of(
        kind == CrewEntry.Kind.BROKEN
            ? broken(1 + random.nextInt(2), from, until)
            : cook(kind, random.nextBoolean() ? "ana" : "bo", from, until));
  }

  /** Hours follow one another, breaks lie in them, and no more units are broken than there are. */
  private static void lawful(Crew crew) {
    for (Cook cook : crew.cooks()) {
      for (int i = 1; i < cook.hours().size(); i++) {
        assertThat(cook.hours().get(i).start()).isAfterOrEqualTo(cook.hours().get(i - 1).end());
      }
      for (Window pause : cook.breaks()) {
        assertThat(cook.isIn(pause.start())).isTrue();
        assertThat(cook.isOnBreak(pause.start())).isTrue();
      }
    }
    for (Works works : crew.machines()) {
      for (Breakdown one : works.broken()) {
        int missing =
            works.broken().stream()
                .filter(other -> other.isOn(one.start()))
                .mapToInt(Breakdown::units)
                .sum();
        assertThat(missing).isLessThanOrEqualTo(works.machine().units());
      }
    }
  }
}
