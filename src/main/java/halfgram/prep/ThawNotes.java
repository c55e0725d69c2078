package halfgram.prep;

import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Message;
import java.util.List;

/** The derivations of a tub that is pulled from the freezer: how much, and until when it keeps. */
final class ThawNotes {
  private final KitchenBook book;
  private final Because because;

  ThawNotes(KitchenBook book, Because because) {
    this.book = book;
    this.because = because;
  }

  void note(Thaw thaw) {
    Make make = thaw.make();
    note(
        Paths.make(make, "basis"),
        Notes.grams(make.scaled().basis()),
        "why.rule.thaw.amount",
        List.of());
    note(Paths.make(make, "wanted"), Notes.grams(make.wanted()), "why.rule.thaw.amount", List.of());
    note(
        Paths.make(make, "ready-by"),
        Notes.time(book, make.readyBy()),
        "why.rule.thaw.ready-by",
        users(thaw));
    String made = Paths.store(make, thaw.output(), "made");
    Input tub =
        Input.entered(
            Message.of("why.left-in-tub", thaw.tub().code()),
            Notes.amount(thaw.tub().left()),
            Message.of("why.use-by", Notes.time(book, thaw.tub().useBy())));
    note(made, Notes.amount(thaw.amount()), "why.rule.thaw.amount", List.of(tub));
    note(
        Paths.store(make, thaw.output(), "needed"),
        Notes.amount(make.needed(0)),
        "why.rule.thaw.needed",
        users(thaw));
    note(
        Paths.store(make, thaw.output(), "fill-1"),
        Notes.amount(thaw.amount()),
        "why.rule.thaw.amount",
        List.of(tub));
    note(
        Paths.store(make, thaw.output(), "use-by"),
        Notes.time(book, make.useBy(0)),
        "why.rule.thaw.use-by",
        clock(thaw));
  }

  private void note(String path, String value, String rule, List<Input> inputs) {
    because.note(() -> new Because.Note(path, value, Message.of(rule), inputs));
  }

  private static List<Input> users(Thaw thaw) {
    return thaw.make().needs().stream()
        .map(
            need ->
                Input.plain(Message.of("why.needed-by", need.user()), Notes.amount(need.amount())))
        .toList();
  }

  /** When the clock stood still, and when it goes on. */
  private List<Input> clock(Thaw thaw) {
    Input out = Input.plain(Message.of("why.pulled"), Notes.time(book, thaw.pull()));
    return thaw.tub()
        .frozen()
        .map(
            ice ->
                List.of(
                    Input.plain(Message.of("why.frozen"), Notes.time(book, ice.since())),
                    Input.plain(Message.of("why.life-left"), Notes.minutes(ice.life())),
                    out))
        .orElse(List.of(out));
  }
}
