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
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Ticks of the demo's Saturday, the timers that follow and what is refused for them. */
abstract class OnSaturday {
  static final DemoDay SATURDAY = DemoDay.saturdayMorning();
  static final Task COOK = SATURDAY.task("parsnip-puree/lunch.2026-12-05/1/cook");
  static final Task BLEND = SATURDAY.task("parsnip-puree/lunch.2026-12-05/1/blend");
  static final Task CHILL = SATURDAY.task("parsnip-puree/lunch.2026-12-05/1/chill");
  static final Task BLANCH = dill("/blanch");
  static final Task SQUEEZE = dill("/squeeze");
  static final Task BASE = SATURDAY.task("yoghurt-base/harvest-dinner/1/shear");
  static final Task PIECE = SATURDAY.task("yoghurt-spheres/harvest-dinner/1/drop/test-piece");
  static final Task LATER_PIECE = SATURDAY.task("yoghurt-spheres/terrace/1/drop/test-piece");
  static final Instant TEN = Instant.parse("2026-12-05T09:00:00Z");

  /** A step of the dill, which may wait a quarter of an hour between them. */
  static Task dill(String step) {
    return SATURDAY.sheet().tasks().stream()
        .filter(one -> one.id().startsWith("blanched-dill/") && one.id().endsWith(step))
        .findFirst()
        .orElseThrow();
  }

  final Map<String, List<Tick>> ticks = new HashMap<>();
  private int made;
  String cook = "ines";

  Tick tick(Task task, Tick.Kind kind, int minute, String line, Integer minutes) {
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

  void takeBack(Tick of, int minute) {
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

  Tick tick(Task task, Tick.Kind kind, int minute) {
    return tick(task, kind, minute, null, null);
  }

  static Instant at(int minute) {
    return TEN.plus(Duration.ofMinutes(minute));
  }

  List<Timer> timers() {
    Map<String, TaskProgress> progress = new HashMap<>();
    ticks.forEach((task, all) -> progress.put(task, TaskProgress.fold(all)));
    return Timers.list(SATURDAY.sheet().tasks(), progress);
  }

  Timer only(Timer.Kind kind) {
    List<Timer> found = timers().stream().filter(timer -> timer.kind() == kind).toList();
    assertThat(found).hasSize(1);
    return found.get(0);
  }

  Optional<Message> refused(Task task, Tick.Kind kind, int minute) {
    Tick tick = tick(task, kind, minute);
    List<Tick> before = ticks.get(task.id());
    before.remove(tick);
    return Holds.refused(
        task, TaskProgress.fold(before), tick, SATURDAY.sheet().before(task), ticks);
  }
}
