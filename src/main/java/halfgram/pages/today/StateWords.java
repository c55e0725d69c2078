package halfgram.pages.today;

import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Waiting;
import halfgram.words.Messages;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * What a task has come to, in words.
 *
 * @param word the state, plain: TO DO, WAITS, DONE
 * @param detail who, what for, since when; may be empty
 * @param late by how much it is behind; empty when it is not
 * @param tone class of the row: "done", "heed" or "open"
 */
record StateWords(String word, String detail, String late, String tone) {

  static StateWords of(Shown shown, Task task) {
    TaskProgress progress = shown.progress(task);
    Messages words = shown.words();
    return switch (progress.state()) {
      case TO_DO -> open(shown, task);
      case ON_IT ->
          new StateWords(
              words.say("today.on-it"),
              progress
                  .onIt()
                  .map(
                      on ->
                          words.say("today.since", shown.person(on.cook()), shown.time(on.since())))
                  .orElse(""),
              over(shown, task),
              "open");
      case PART_DONE ->
          new StateWords(
              words.say("today.part-done"),
              progress
                  .amount()
                  .map(amount -> words.say("today.so-far", shown.names().amount(amount)))
                  .orElse(""),
              over(shown, task),
              "open");
      case DONE -> new StateWords(words.say("today.done"), done(shown, progress), "", "done");
      case PROBLEM ->
          new StateWords(
              words.say("today.problem"), progress.problem().orElse(""), over(shown, task), "heed");
      case FAILED ->
          new StateWords(words.say("today.failed"), progress.problem().orElse(""), "", "done");
    };
  }

  private static StateWords open(Shown shown, Task task) {
    Messages words = shown.words();
    String late = late(shown, task);
    String tone = late.isEmpty() ? "open" : "heed";
    List<Waiting> waits =
        Waiting.of(task, shown.byId(), shown.progress(), shown.awaited(), shown.now());
    if (waits.isEmpty() || shown.phase() == Shown.Phase.PREVIEW) {
      return new StateWords(words.say("today.to-do"), "", late, tone);
    }
    String first = wait(shown, task, waits.get(0));
    String detail =
        waits.size() == 1 ? first : words.say("today.and-more", first, waits.size() - 1);
    return new StateWords(words.say("today.waits"), detail, late, tone);
  }

  /** What it waits for; a step of the same make by its own name. */
  static String wait(Shown shown, Task task, Waiting waiting) {
    Messages words = shown.words();
    return waiting.fold(
        other -> words.say("today.waits-for", name(shown, task, other.task())),
        until ->
            words.say(
                until.reason().isSafety() ? "today.waits-until-safety" : "today.waits-until",
                shown.time(until.moment()),
                name(shown, task, until.task())),
        delivery -> shown.parts().notBefore(delivery.awaited(), shown::time));
  }

  private static String name(Shown shown, Task task, Task other) {
    boolean own = other.make().id().equals(task.make().id());
    return own && other.kind() == Task.Kind.STEP
        ? shown.words().text(other.step().name())
        : own && other.kind() == Task.Kind.TEST_PIECE
            ? shown.words().say("sheet.test-piece-name")
            : shown.names().title(other);
  }

  private static String done(Shown shown, TaskProgress progress) {
    Messages words = shown.words();
    String at = progress.doneAt().map(shown::time).orElse("");
    return progress
        .amount()
        .map(amount -> words.say("today.done-made", at, shown.names().amount(amount)))
        .orElse(at);
  }

  /** How late a task is that nobody has started. */
  static String late(Shown shown, Task task) {
    return behind(shown, task.start(), "today.late");
  }

  private static String over(Shown shown, Task task) {
    return behind(shown, task.end(), "today.over");
  }

  private static String behind(Shown shown, Instant due, String key) {
    boolean counts = shown.phase() == Shown.Phase.NOW && due.isBefore(shown.now());
    Duration by = Duration.between(due, shown.now());
    return counts && by.toMinutes() > 0
        ? shown.words().say(key, Duration.ofMinutes(by.toMinutes()))
        : "";
  }

  static boolean isDone(Shown shown, Task task) {
    return shown.progress(task).state() == TaskState.DONE;
  }
}
