package halfgram.pages.today;

import halfgram.desk.CrewInForce;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.crew.Placed;
import java.util.List;
import java.util.Optional;

/**
 * Where a task can be put by hand.
 *
 * @param start when, as typed, or as it is planned
 * @param wrong why what was typed cannot be; empty at first
 * @param pinned whether it was put there by hand
 */
record PinBox(
    String day, String task, String start, List<One> people, String wrong, boolean pinned) {

  /** Somebody who works at the station. */
  record One(String code, String name, boolean chosen) {}

  /** Nothing for what has begun, and where nobody worked out who does what when. */
  static Optional<PinBox> of(Shown shown, Task task, Optional<PinForm> typed, String wrong) {
    TaskState state = shown.progress(task).state();
    boolean open = state != TaskState.DONE && state != TaskState.FAILED;
    if (!open || shown.progress(task).onIt().isPresent() || shown.phase() == Shown.Phase.OVER) {
      return Optional.empty();
    }
    return shown.crew().map(crew -> of(shown, crew, task, typed, wrong));
  }

  private static PinBox of(
      Shown shown, CrewInForce crew, Task task, Optional<PinForm> typed, String wrong) {
    Optional<Placed> placed = shown.planned(task);
    List<String> chosen =
        typed.map(PinForm::people).orElse(placed.map(Placed::people).orElse(List.of()));
    List<One> people =
        shown.book().people().stream()
            .filter(one -> one.stations().contains(task.station()))
            .map(one -> new One(one.code(), one.name(), chosen.contains(one.code())))
            .toList();
    return new PinBox(
        shown.day().toString(),
        task.id(),
        typed.map(PinForm::start).orElse(shown.words().time(shown.start(task))),
        people,
        wrong,
        crew.pins().containsKey(task.id()));
  }
}
