package halfgram.pages.wall;

import halfgram.desk.GateLock;
import halfgram.formula.Gate;
import halfgram.formula.Step;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.Task;
import halfgram.words.Messages;
import java.util.List;
import java.util.Optional;

/**
 * A tasting or a test piece as it is entered from paper, below the row of its task.
 *
 * @param by who has to say go; empty for any cook
 * @param verdicts what can be said
 * @param checks the words of each check, by the name of its field
 * @param items what can have gone in
 */
record TriedRow(
    String title,
    String by,
    List<AtGate.Choice> verdicts,
    List<AtGate.CheckRow> checks,
    List<AtGate.Choice> items) {

  /** The gate that stands at a task, as long as it is asked; of a task of the plan in force. */
  static Optional<TriedRow> find(
      Scene scene, Task task, List<GateEntry> said, PaperForm.Tried typed) {
    GateProgress progress = GateProgress.fold(said);
    boolean over = progress.isPassed() || progress.state() == GateProgress.State.FAILED;
    return GateLock.find(task)
        .filter(at -> !over || typed.isFilled())
        .map(at -> of(scene, task, at.gate(), typed));
  }

  private static TriedRow of(Scene scene, Task task, Gate gate, PaperForm.Tried typed) {
    Messages words = scene.words();
    return new TriedRow(
        words.say(
            gate.kind() == Step.Check.TASTING ? "paper.tried.tasting" : "paper.tried.test-piece"),
        AtGate.by(scene, gate),
        List.of(
            verdict(words.say("gate.go"), GateEntry.Kind.GO, typed),
            verdict(words.say("gate.adjust"), GateEntry.Kind.ADJUST, typed),
            verdict(words.say("gate.fail"), GateEntry.Kind.FAIL, typed)),
        gate.checks().stream().map(check -> check(words, check, typed)).toList(),
        AtGate.items(scene, task.version(), words).stream()
            .map(
                item ->
                    new AtGate.Choice(item.code(), item.name(), item.code().equals(typed.item())))
            .toList());
  }

  private static AtGate.Choice verdict(String name, GateEntry.Kind kind, PaperForm.Tried typed) {
    return new AtGate.Choice(kind.name(), name, kind.name().equals(typed.verdict()));
  }

  private static AtGate.CheckRow check(Messages words, Gate.Check check, PaperForm.Tried typed) {
    return new AtGate.CheckRow(
        check.word(),
        words.say("gate.check." + check.word()),
        check.words().stream()
            .map(
                word ->
                    new AtGate.Choice(
                        word,
                        words.say("gate.word." + word),
                        word.equals(typed.said().get(check.word()))))
            .toList());
  }
}
