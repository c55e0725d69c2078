package halfgram.prep;

import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Message;
import halfgram.menu.Plating;
import java.util.ArrayList;
import java.util.List;

/** The derivations of plating: how many plates and trays, and from when. */
final class PlatingNotes {
  private final KitchenBook book;
  private final Because because;

  PlatingNotes(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  void note(ServiceRun run) {
    for (PlatingLine line : PlatingLine.list(book, run)) {
      because.note(() -> plates(run, line));
      because.note(() -> start(run, line));
      line.trays().ifPresent(trays -> because.note(() -> trays(run, line, trays)));
    }
  }

  private Because.Note plates(ServiceRun run, PlatingLine line) {
    List<Input> inputs = new ArrayList<>();
    for (ServiceRun.Plates plates : run.plates()) {
      boolean here = plates.course().isEmpty() || plates.course().equals(line.fire().code());
      if (here && plates.dish().code().equals(line.dish().code())) {
        inputs.add(Notes.plates(book, run, plates));
      }
    }
    if (!line.fire().share().isOne()) {
      inputs.add(Input.plain(Message.of("why.pick-up-share"), Notes.percent(line.fire().share())));
    }
    return new Because.Note(
        Paths.plating(run, line, "plates"),
        String.valueOf(line.plates()),
        Message.of("why.rule.plating-plates"),
        inputs);
  }

  private Because.Note start(ServiceRun run, PlatingLine line) {
    Plating plating = line.plating();
    Message said = Message.of("why.from-dish", line.dish().code());
    long last = plating.last().stream().mapToLong(Plating.LastStep::seconds).sum();
    return new Because.Note(
        Paths.plating(run, line, "start"),
        Notes.time(book, line.start()),
        Message.of("why.rule.plating-start"),
        List.of(
            Input.plain(Message.of("why.fire"), Notes.time(book, line.fire().at())),
            Input.derived(
                Message.of("why.plates-of", line.dish().name()),
                String.valueOf(line.plates()),
                Paths.plating(run, line, "plates")),
            Input.entered(Message.of("why.plating-people"), String.valueOf(plating.people()), said),
            Input.entered(
                Message.of("why.plating-rate"), plating.platesPerMinute().toPlainString(), said),
            Input.entered(Message.of("why.plating-last"), last + " s", said)));
  }

  private static Because.Note trays(ServiceRun run, PlatingLine line, int trays) {
    return new Because.Note(
        Paths.plating(run, line, "trays"),
        String.valueOf(trays),
        Message.of("why.rule.plating-trays"),
        List.of(
            Input.derived(
                Message.of("why.plates-of", line.dish().name()),
                String.valueOf(line.plates()),
                Paths.plating(run, line, "plates")),
            Input.entered(
                Message.of("why.per-tray"),
                String.valueOf(line.plating().perTray().orElse(0)),
                Message.of("why.from-dish", line.dish().code()))));
  }
}
