package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Placed;
import halfgram.station.Person;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tasks of the demo's Saturday put by hand. */
class PinTest {
  private static final String DEVICE = "00000000-0000-4000-8000-00000000000d";

  private Site site;
  private CrewInForce crew;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.client().get("/k/TARN/");
    crew = site.wiring().crewPlans().inForce(site.house(), inForce(), "office");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aPinStaysAndComesOffAgain() {
    // The first that can stand a little later: whoever does it may have other work right behind.
    Task task =
        all(one -> one.hands() == 1 && !placed(one).people().isEmpty())
            .sorted(Comparator.comparing(one -> placed(one).start()))
            .filter(one -> pin(one.id(), later(one), List.of()) instanceof CrewPlans.Done)
            .findFirst()
            .orElseThrow();
    Instant later = later(task);
    CrewPlans.Outcome outcome = pin(task.id(), later, List.of());
    assertThat(outcome).isInstanceOf(CrewPlans.Done.class);
    CrewInForce pinned = ((CrewPlans.Done) outcome).crew();
    assertThat(pinned.number()).isEqualTo(2);
    assertThat(pinned.plan().find(task.id()).orElseThrow().start()).isEqualTo(later);
    assertThat(pinned.pins()).containsOnlyKeys(task.id());
    assertThat(((CrewPlans.Done) pin(task.id(), later, List.of())).crew().number()).isEqualTo(2);
    CrewPlans plans = site.wiring().crewPlans();
    CrewPlans.Outcome off = plans.unpin(site.house(), inForce(), task.id(), "office");
    assertThat(((CrewPlans.Done) off).crew().pins()).isEmpty();
    assertThat(((CrewPlans.Done) off).crew().number()).isEqualTo(3);
    assertThat(site.client().get("/k/TARN/log?what=lanes").text())
        .contains("Put by hand", "No longer put by hand");
  }

  @Test
  void whatCannotBeIsRefusedWithItsReason() {
    Task task = some(one -> one.hands() == 1 && one.links().isEmpty() && isFree(one));
    Instant start = placed(task).start();
    List<String> who = placed(task).people();
    assertThat(refused("no-such", start, who)).isEqualTo("no-task");
    assertThat(refused(task.id(), Site.at("08:00"), who)).isEqualTo("past");
    assertThat(refused(task.id(), start.plus(Duration.ofDays(3)), who)).isEqualTo("day");
    assertThat(refused(task.id(), start, List.of("zed"))).isEqualTo("nobody");
    assertThat(refused(task.id(), start, people(task, true).subList(0, 2))).isEqualTo("hands");
    assertThat(refused(task.id(), start, people(task, false).subList(0, 1))).isEqualTo("station");
    assertThat(refused(task.id(), Site.at("09:00").plus(Duration.ofHours(18)), who))
        .isEqualTo("not-there");
    Task waits = some(one -> waitsLong(one));
    assertThat(refused(waits.id(), Site.at("09:00"), List.of())).isEqualTo("waits");
  }

  private boolean waitsLong(Task task) {
    return task.kind() == Task.Kind.STEP
        && task.links().stream()
            .anyMatch(
                link ->
                    crew.plan()
                        .find(link.task())
                        .filter(one -> one.end().isAfter(Site.at("09:30")))
                        .isPresent());
  }

  @Test
  void whatIsPinnedAlreadyDoesNotMakeWay() {
    Task task =
        some(
            one ->
                one.hands() == 1
                    && !one.machines().isEmpty()
                    && isFree(one)
                    && all(inItsPlace(one)).findFirst().isPresent());
    Placed placed = placed(task);
    assertThat(pin(task.id(), placed.start(), List.of())).isInstanceOf(CrewPlans.Done.class);
    String who = placed.people().get(0);
    Task other = some(inItsPlace(task));
    assertThat(refused(other.id(), placed.start(), List.of(who))).isEqualTo("busy");
  }

  @Test
  void whatHasBegunStaysAndWhatIsOverIsOver() {
    Task task = some(one -> one.links().isEmpty() && isFree(one));
    Instant start = placed(task).start();
    site.setClock(start);
    tick("start", task, 1);
    assertThat(refused(task.id(), start.plusSeconds(1800), List.of())).isEqualTo("begun");
    tick("done", task, 2);
    assertThat(refused(task.id(), start.plusSeconds(1800), List.of())).isEqualTo("over");
  }

  @Test
  void aBrokenMachineTakesNothing() {
    Task task = some(one -> !one.machines().isEmpty() && one.links().isEmpty() && isFree(one));
    String machine = task.machines().get(0).equipment();
    int units = inForce().book().equipment().get(machine).units();
    assertThat(
            site.script()
                .post(
                    "crew",
                    ("{'kind': 'broken', 'machine': '%s', 'units': %d, 'device': '%s',"
                            + " 'sequence': 9}")
                        .formatted(machine, units, DEVICE))
                .status())
        .isEqualTo(201);
    assertThat(refused(task.id(), placed(task).start(), placed(task).people())).isEqualTo("broken");
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }

  private Instant later(Task task) {
    return placed(task).start().plus(Duration.ofMinutes(5));
  }

  private Placed placed(Task task) {
    return crew.plan().find(task.id()).orElseThrow();
  }

  /** Somebody does it, and it neither begins the day nor ends it. */
  private boolean isFree(Task task) {
    return !placed(task).people().isEmpty()
        && placed(task).start().isAfter(Site.at("09:30"))
        && placed(task).start().isBefore(Site.at("16:00"));
  }

  /** What whoever does a task could do instead of it, in no more time. */
  private Predicate<Task> inItsPlace(Task task) {
    return one ->
        !one.id().equals(task.id())
            && one.hands() == 1
            && one.links().isEmpty()
            && one.handsOn().compareTo(task.handsOn()) <= 0
            && isFree(one)
            && people(one, true).contains(placed(task).people().get(0));
  }

  private Task some(Predicate<Task> which) {
    return all(which).min(Comparator.comparing(one -> placed(one).start())).orElseThrow();
  }

  private Stream<Task> all(Predicate<Task> which) {
    return inForce().sheet().tasks().stream()
        .filter(one -> crew.plan().find(one.id()).isPresent())
        .filter(which);
  }

  /** Those who work at its station, or those who do not. */
  private List<String> people(Task task, boolean at) {
    return inForce().book().people().stream()
        .filter(one -> one.stations().contains(task.station()) == at)
        .map(Person::code)
        .toList();
  }

  private CrewPlans.Outcome pin(String task, Instant start, List<String> people) {
    return site.wiring()
        .crewPlans()
        .pin(site.house(), inForce(), task, new DayFacts.Pin(start, people), "office");
  }

  private String refused(String task, Instant start, List<String> people) {
    CrewPlans.Outcome outcome = pin(task, start, people);
    assertThat(outcome).isInstanceOf(CrewPlans.Refused.class);
    Message because = ((CrewPlans.Refused) outcome).because();
    return because.key().replace("lanes.refused.", "");
  }

  private void tick(String kind, Task task, int sequence) {
    String cook = placed(task).people().get(0);
    assertThat(
            site.script()
                .post(
                    "ticks",
                    "{'kind': '%s', 'task': '%s', 'cook': '%s', 'device': '%s', 'sequence': %d}"
                        .formatted(kind, task.id(), cook, DEVICE, sequence))
                .status())
        .isEqualTo(201);
  }
}
