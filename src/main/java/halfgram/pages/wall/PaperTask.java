package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.desk.GateLock;
import halfgram.formula.Gate;
import halfgram.pages.MethodLine;
import halfgram.pages.Qr;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskCode;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.crew.Placed;
import halfgram.technique.bath.BathDay;
import halfgram.words.Dots;
import halfgram.words.Messages;
import halfgram.words.TaskWords;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A task as it is printed: all that hands must know when no screen tells them, and room for what
 * they did.
 *
 * @param start planned
 * @param by until when hands must be off it
 * @param who the crew plan gives it, and since when it is late
 * @param standing what it had come to when it was printed; empty for nothing
 * @param method what is done before anything is weighed; the rest stands below its lines
 * @param waits what has to be done before, with the times between
 * @param drops one for each drop of a run through baths
 * @param gate what is tried before it goes on: none or one
 * @param made the amount planned, beside which the real one is written; empty where nothing is put
 *     away
 * @param code what stands below the dots, for fingers
 */
record PaperTask(
    String id,
    String start,
    String by,
    String who,
    String name,
    String step,
    String serves,
    String standing,
    String contains,
    List<String> cautions,
    List<MethodLine> method,
    List<String> notes,
    List<Wait> waits,
    List<WeighRows.Group> groups,
    List<Drop> drops,
    List<Tried> gate,
    List<String> gives,
    String made,
    String code,
    Qr qr) {

  /** One thing to wait for; ticked when it was there already. */
  record Wait(String said, boolean there) {}

  /**
   * One drop.
   *
   * @param bath its bath
   * @param fresh whether the bath is fresh with it
   * @param entered whether it was in when the sheet was printed
   */
  record Drop(int number, String bath, boolean fresh, boolean entered) {}

  /** A tasting or a test piece. */
  record Tried(String title, String by, List<Check> checks) {}

  /** One thing to look at, and the words to ring one of. */
  record Check(String label, List<String> words) {}

  /**
   * Prints a task.
   *
   * @param address of this server, to which printed codes lead
   */
  static PaperTask of(Scene scene, BathBoard board, Task task, String address) {
    return new Builder(scene, board, task).build(address);
  }

  /** That, with every code of a tub in it on one line: a hyphen at a digit is no place to break. */
  private static String whole(String said) {
    return said.replaceAll("(?<=[0-9])-(?=\\S)|(?<=\\S)-(?=[0-9])", "-\u2060");
  }

  /** Puts a task into words. */
  private static final class Builder {
    private final Scene scene;
    private final BathBoard board;
    private final Messages words;
    private final Task task;
    private final TaskProgress progress;
    private final TaskWords parts;

    private Builder(Scene scene, BathBoard board, Task task) {
      this.scene = scene;
      this.board = board;
      this.words = scene.words();
      this.task = task;
      this.progress = scene.progress(task);
      this.parts = new TaskWords(scene.book(), words);
    }

    private PaperTask build(String address) {
      WeighRows rows = new WeighRows(scene, task, WeighRows.TubRead.NOTHING, () -> 0);
      String code = TaskCode.of(scene.day(), task.id());
      String name = words.text(task.version().name());
      return new PaperTask(
          task.id(),
          scene.time(scene.start(task)),
          words.say("sheet.by", scene.time(task.handsOff())),
          who(),
          name,
          scene.step(task),
          serves(),
          standing(),
          scene.names().contains(task.allergens()),
          task.cautions().stream().map(caution -> words.say("caution." + caution)).toList(),
          rows.first(),
          notes().stream().map(PaperTask::whole).toList(),
          waits(),
          rows.list(),
          drops(),
          GateLock.find(task).map(this::tried).stream().toList(),
          task.stored().stream()
              .map(stored -> Dots.join(parts.gives(task, stored, scene.names())))
              .map(PaperTask::whole)
              .toList(),
          task.stored().isEmpty() || task.kind() == Task.Kind.THAW
              ? ""
              : scene.names().amount(task.stored().get(0).made()),
          code,
          Qr.of(address + code));
    }

    /** Who is to do it, and that it is late. */
    private String who() {
      return Stream.of(scene.planned(task), scene.late(task))
          .filter(said -> !said.isEmpty())
          .collect(Collectors.joining(Dots.BETWEEN));
    }

    private String serves() {
      Set<String> users = new LinkedHashSet<>();
      task.serves().forEach(user -> users.add(scene.names().user(user, scene.day())));
      String ready = scene.time(task.make().readyBy());
      return words.say("sheet.for", String.join(", ", users), ready);
    }

    private String standing() {
      if (progress.state() == TaskState.TO_DO) {
        return scene.isPast(task) ? words.say("wall.past-note") : "";
      }
      List<String> said = new ArrayList<>(List.of(scene.state(task)));
      progress.onIt().map(TaskProgress.OnIt::cook).map(scene::person).ifPresent(said::add);
      progress.amount().map(scene.names()::amount).ifPresent(said::add);
      progress.problem().ifPresent(said::add);
      return Dots.join(said);
    }

    private List<String> notes() {
      List<String> notes = new ArrayList<>();
      task.note().ifPresent(note -> notes.add(words.say(note)));
      task.reminders().forEach(reminder -> notes.add(words.say(reminder)));
      if (task.hands() > 1) {
        notes.add(words.say("sheet.hands", task.hands()));
      }
      if (!task.handsOff().equals(task.end())) {
        notes.add(scene.stands(task));
      }
      notes.addAll(parts.wants(task));
      scene.inForce().sheet().contacts(task).stream()
          .map(one -> parts.contact(one, scene.names(), scene::time))
          .forEach(notes::add);
      parts.fills(task).ifPresent(notes::add);
      progress.words().stream()
          .filter(word -> word.kind() == Tick.Kind.NOTE)
          .forEach(
              word ->
                  word.note()
                      .map(note -> scene.person(word.cook()) + ": " + note)
                      .ifPresent(notes::add));
      return notes;
    }

    private List<Wait> waits() {
      List<Wait> waits = new ArrayList<>();
      for (Task.Link link : task.links()) {
        Optional.ofNullable(scene.byId().get(link.task()))
            .ifPresent(before -> waits.add(wait(before, link)));
      }
      scene.awaited().stream()
          .filter(one -> one.task().id().equals(task.id()))
          .forEach(
              one ->
                  waits.add(new Wait(parts.notBefore(one, scene::time), !one.stand().isAwaited())));
      return waits;
    }

    /** "after Dill oil, strain; rest 30 min: from 14:10; at most 4 h: by 18:10". */
    private Wait wait(Task before, Task.Link link) {
      Instant end =
          scene
              .progress(before)
              .doneAt()
              .or(() -> scene.place(before).map(Placed::end))
              .orElse(before.end());
      List<String> said = new ArrayList<>();
      said.add(words.say("paper.after", scene.names().title(before), scene.time(end)));
      if (!link.min().isZero()) {
        said.add(words.say("paper.least", link.min(), scene.time(end.plus(link.min()))));
      }
      String safety = link.reason().isSafety() ? words.say("sheet.safety") : "";
      link.max()
          .ifPresent(
              max -> said.add(words.say("paper.most", max, scene.time(end.plus(max))) + safety));
      return new Wait(String.join("; ", said), scene.isDone(before));
    }

    private List<Drop> drops() {
      for (PrepSheet.BathSheet sheet : scene.inForce().sheet().baths()) {
        for (PrepSheet.BathRun run : scene.inForce().sheet().runs()) {
          if (BathBoard.task(run).equals(task.id()) && isListed(sheet.answer(), run)) {
            return drops(sheet.answer(), run);
          }
        }
      }
      return List.of();
    }

    private static boolean isListed(BathDay.Answer answer, PrepSheet.BathRun run) {
      return answer.uses().stream().anyMatch(use -> use.runs().contains(run.make().id()));
    }

    private List<Drop> drops(BathDay.Answer answer, PrepSheet.BathRun run) {
      String id = run.make().id();
      int in = board.findOfRun(id).map(basin -> basin.live().dropsOf(id).size()).orElse(0);
      Set<String> seen = new HashSet<>(answer.begin(id, (int) run.bath().values().number("baths")));
      List<Drop> drops = new ArrayList<>();
      for (String bath : BathRows.turns(answer, run)) {
        boolean fresh = seen.add(bath);
        drops.add(new Drop(drops.size() + 1, bath, fresh, drops.size() < in));
      }
      return drops;
    }

    private Tried tried(GateLock.At at) {
      Gate gate = at.gate();
      return new Tried(
          words.say(
              gate.kind() == halfgram.formula.Step.Check.TASTING
                  ? "gate.title.tasting"
                  : "gate.title.test-piece"),
          AtGate.by(scene, gate),
          gate.checks().stream()
              .map(
                  check ->
                      new Check(
                          words.say("gate.check." + check.word()),
                          check.words().stream()
                              .map(word -> words.say("gate.word." + word))
                              .toList()))
              .toList());
    }
  }
}
