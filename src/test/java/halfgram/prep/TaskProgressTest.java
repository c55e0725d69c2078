package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a task comes to by its ticks. */
class TaskProgressTest {
  private static final Instant NOON = Instant.parse("2026-12-05T11:00:00Z");

  /** Ticks that bring a task into a state. */
  private static final Map<TaskState, List<Tick.Kind>> WAYS = new EnumMap<>(TaskState.class);

  static {
    WAYS.put(TaskState.TO_DO, List.of());
    WAYS.put(TaskState.ON_IT, List.of(Tick.Kind.START));
    WAYS.put(TaskState.PART_DONE, List.of(Tick.Kind.START, Tick.Kind.PART_DONE));
    WAYS.put(TaskState.DONE, List.of(Tick.Kind.START, Tick.Kind.DONE));
    WAYS.put(TaskState.PROBLEM, List.of(Tick.Kind.START, Tick.Kind.PROBLEM));
  }

  private int made;

  private Tick tick(Tick.Kind kind, String cook) {
    made++;
    return new Tick(
        new UUID(7, made),
        "broth/supper/1/boil",
        kind,
        kind == Tick.Kind.WEIGHED ? Optional.of("weigh/" + made) : Optional.empty(),
        Optional.empty(),
        kind == Tick.Kind.PROBLEM ? Optional.of("burnt") : Optional.empty(),
        cook,
        NOON.plusSeconds(60L * made),
        Optional.empty());
  }

  private Tick tick(Tick.Kind kind) {
    return tick(kind, "Ada");
  }

  private Tick undo(Tick of) {
    made++;
    return new Tick(
        new UUID(7, made),
        of.task(),
        Tick.Kind.UNDO,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        "Ada",
        NOON.plusSeconds(60L * made),
        Optional.of(of.id()));
  }

  private List<Tick> ticks(Tick.Kind... kinds) {
    List<Tick> ticks = new ArrayList<>();
    for (Tick.Kind kind : kinds) {
      ticks.add(tick(kind));
    }
    return ticks;
  }

  @ParameterizedTest(name = "{0} in {1}: {2}")
  @CsvSource({
    "START, TO_DO, ON_IT",
    "START, ON_IT, ON_IT",
    "START, PART_DONE, ON_IT",
    "START, DONE, tick.refused.done",
    "START, PROBLEM, tick.refused.problem",
    "WEIGHED, TO_DO, ON_IT",
    "WEIGHED, ON_IT, ON_IT",
    "WEIGHED, PART_DONE, ON_IT",
    "WEIGHED, DONE, DONE",
    "WEIGHED, PROBLEM, PROBLEM",
    "PART_DONE, TO_DO, PART_DONE",
    "PART_DONE, ON_IT, PART_DONE",
    "PART_DONE, PART_DONE, PART_DONE",
    "PART_DONE, DONE, tick.refused.done",
    "PART_DONE, PROBLEM, PROBLEM",
    "DONE, TO_DO, DONE",
    "DONE, ON_IT, DONE",
    "DONE, PART_DONE, DONE",
    "DONE, DONE, DONE",
    "DONE, PROBLEM, tick.refused.problem",
    "PROBLEM, TO_DO, PROBLEM",
    "PROBLEM, ON_IT, PROBLEM",
    "PROBLEM, PART_DONE, PROBLEM",
    "PROBLEM, DONE, PROBLEM",
    "PROBLEM, PROBLEM, PROBLEM",
    "SOLVED, TO_DO, tick.refused.no-problem",
    "SOLVED, ON_IT, tick.refused.no-problem",
    "SOLVED, PART_DONE, tick.refused.no-problem",
    "SOLVED, DONE, tick.refused.no-problem",
    "SOLVED, PROBLEM, ON_IT",
  })
  void everyCellOfTheTable(Tick.Kind kind, TaskState in, String expected) {
    List<Tick> before = ticks(WAYS.getOrDefault(in, List.of()).toArray(Tick.Kind[]::new));
    assertThat(TaskProgress.fold(before).state()).isEqualTo(in);
    String came =
        TaskProgress.tick(before, tick(kind))
            .fold(taken -> taken.state().name(), again -> again.state().name(), Message::key);
    assertThat(came).isEqualTo(expected);
  }

  @Test
  void theTableIsWhole() {
    for (Tick.Kind kind : Tick.Kind.values()) {
      for (TaskState state : TaskState.values()) {
        assertThat(TickTable.get(kind, state)).isNotNull();
      }
    }
  }

  @Test
  void undoInEveryStateGoesBackToWhatWasBefore() {
    WAYS.forEach(
        (state, kinds) -> {
          List<Tick> ticks = ticks(kinds.toArray(Tick.Kind[]::new));
          if (ticks.isEmpty()) {
            return;
          }
          TaskProgress before = TaskProgress.fold(ticks.subList(0, ticks.size() - 1));
          ticks.add(undo(ticks.get(ticks.size() - 1)));
          assertThat(TaskProgress.fold(ticks)).isEqualTo(before);
        });
  }

  @Test
  void nothingToUndoIsRefused() {
    Tick other = tick(Tick.Kind.START);
    assertThat(TaskProgress.tick(List.of(), undo(other)))
        .isEqualTo(new TaskProgress.Refused(Message.of("tick.refused.nothing-to-undo")));
  }

  @Test
  void anUndoneStartTakesTheWeighedLineWithItOnlyWhenThatIsUndoneToo() {
    List<Tick> ticks = ticks(Tick.Kind.START, Tick.Kind.WEIGHED);
    ticks.add(undo(ticks.get(0)));
    TaskProgress progress = TaskProgress.fold(ticks);
    assertThat(progress.state()).isEqualTo(TaskState.ON_IT);
    assertThat(progress.weighed()).hasSize(1);
    ticks.add(undo(ticks.get(1)));
    assertThat(TaskProgress.fold(ticks)).isEqualTo(TaskProgress.NONE);
  }

  @Test
  void theLastToStartIsOnItSinceThen() {
    List<Tick> ticks = ticks(Tick.Kind.START, Tick.Kind.START);
    assertThat(TaskProgress.fold(ticks).onIt())
        .contains(new TaskProgress.OnIt("Ada", ticks.get(0).at(), ticks.get(0).at()));
    ticks.add(tick(Tick.Kind.START, "Bo"));
    assertThat(TaskProgress.fold(ticks).onIt())
        .contains(new TaskProgress.OnIt("Bo", ticks.get(2).at(), ticks.get(0).at()));
    ticks.add(tick(Tick.Kind.PART_DONE, "Bo"));
    assertThat(TaskProgress.fold(ticks).onIt()).isEmpty();
  }

  @Test
  void aProblemKeepsWhatIsDoneMeanwhile() {
    List<Tick> ticks = ticks(Tick.Kind.PROBLEM, Tick.Kind.WEIGHED);
    TaskProgress stuck = TaskProgress.fold(ticks);
    assertThat(stuck.problem()).contains("burnt");
    ticks.add(tick(Tick.Kind.SOLVED));
    TaskProgress over = TaskProgress.fold(ticks);
    assertThat(over.state()).isEqualTo(TaskState.ON_IT);
    assertThat(over.problem()).isEmpty();
    assertThat(over.weighed()).hasSize(1);
  }

  @Test
  void whatWasReallyMadeIsWhatTheFirstDoneSays() {
    Tick part = tick(Tick.Kind.PART_DONE);
    Tick done = tick(Tick.Kind.DONE);
    List<Tick> ticks = new ArrayList<>(List.of(with(part, 400)));
    assertThat(TaskProgress.fold(ticks).amount()).contains(Amount.grams(400));
    ticks.add(with(done, 950));
    ticks.add(with(tick(Tick.Kind.DONE), 700));
    TaskProgress progress = TaskProgress.fold(ticks);
    assertThat(progress.amount()).contains(Amount.grams(950));
    assertThat(progress.doneAt()).contains(done.at());
    assertThat(progress.dones()).hasSize(2);
    List<Tick> plain = List.of(with(part, 400), done);
    assertThat(TaskProgress.fold(plain).amount()).isEmpty();
  }

  private static Tick with(Tick tick, long grams) {
    return new Tick(
        tick.id(),
        tick.task(),
        tick.kind(),
        tick.line(),
        Optional.of(Amount.grams(grams)),
        tick.note(),
        tick.cook(),
        tick.at(),
        tick.undoes());
  }

  @Test
  void aRepeatIsHarmless() {
    Seeds.over(
        300,
        seed -> {
          List<Tick> ticks = any(seed);
          TaskProgress once = TaskProgress.fold(ticks);
          for (int prefix = 0; prefix <= ticks.size(); prefix++) {
            List<Tick> twice = new ArrayList<>(ticks.subList(0, prefix));
            twice.addAll(ticks);
            assertThat(TaskProgress.fold(twice)).isEqualTo(once);
            List<Tick> after = new ArrayList<>(ticks);
            after.addAll(ticks.subList(0, prefix));
            assertThat(TaskProgress.fold(after)).isEqualTo(once);
          }
        });
  }

  @Test
  void undoingTheLastGivesWhatWasBefore() {
    Seeds.over(
        300,
        seed -> {
          List<Tick> ticks = any(seed);
          Optional<Tick> last = TaskProgress.fold(ticks).last();
          if (last.isPresent()) {
            List<Tick> without = new ArrayList<>(ticks);
            without.remove(last.get());
            List<Tick> undone = new ArrayList<>(ticks);
            undone.add(undo(last.get()));
            List<Tick> came = new ArrayList<>(ticks);
            came.removeAll(
                TaskProgress.fold(ticks).refused().stream().map(of -> of.tick()).toList());
            assertThat(TaskProgress.tick(came, undone.get(undone.size() - 1)))
                .isInstanceOf(TaskProgress.Taken.class);
            TaskProgress before = TaskProgress.fold(without);
            TaskProgress after = TaskProgress.fold(undone);
            assertThat(after.state()).isEqualTo(before.state());
            assertThat(after.weighed()).isEqualTo(before.weighed());
            assertThat(after.onIt()).isEqualTo(before.onIt());
            assertThat(after.amount()).isEqualTo(before.amount());
            assertThat(after.last()).isEqualTo(before.last());
          }
        });
  }

  private List<Tick> any(long seed) {
    Chance chance = new Chance(seed);
    List<Tick> ticks = new ArrayList<>();
    int count = chance.from(0, 12);
    for (int i = 0; i < count; i++) {
      Tick.Kind kind = chance.of(Tick.Kind.values());
      if (kind != Tick.Kind.UNDO) {
        ticks.add(tick(kind, chance.of("Ada", "Bo")));
      } else if (!ticks.isEmpty()) {
        ticks.add(undo(chance.of(ticks)));
      }
    }
    return ticks;
  }
}
