package halfgram.pages.wall;

import halfgram.desk.GateLock;
import halfgram.desk.HeldBack;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Gate;
import halfgram.formula.Line;
import halfgram.prep.GateEntry;
import halfgram.prep.GateProgress;
import halfgram.prep.Task;
import halfgram.station.Person;
import halfgram.words.GateWords;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;
import java.util.stream.Stream;

/**
 * A test piece or a tasting at which a batch stops.
 *
 * @param by who has to say go; empty for any cook
 * @param story what was said so far, oldest first
 * @param open whether anything is still to say
 * @param items what can have gone in, the formula's own first
 * @param which kind of form comes back as typed; empty for none
 * @param last id of what was said last, to be undone; empty for nothing
 */
record AtGate(
    String title,
    String by,
    List<String> story,
    boolean open,
    List<CheckRow> checks,
    List<Choice> items,
    List<AddedRow> rows,
    String note,
    String which,
    String fault,
    String last,
    Sequences sequences) {

  /** A number of its own for every form. */
  record Sequences(long go, long adjust, long fail, long undo) {}

  /** One thing to look at, and the words for it. */
  record CheckRow(String name, String label, List<Choice> words) {}

  /** A code and what it is called. */
  record Choice(String code, String name, boolean chosen) {}

  /** One line of what went in, as typed. */
  record AddedRow(int index, String item, String amount) {}

  /**
   * A part held back to taste.
   *
   * @param date of the plan it belongs to
   */
  record Held(String task, String line, String date, String said, long used, long away) {}

  /** A form of a gate that was not accepted. */
  record Rejected(GateForm form, String fault) {
    static final Rejected NONE = new Rejected(new GateForm(Map.of()), "");
  }

  /** The gate of a task, as long as the task is not over. */
  static Optional<AtGate> find(
      Scene scene,
      Task task,
      Map<String, List<GateEntry>> entries,
      Rejected rejected,
      LongSupplier sequence) {
    return GateLock.find(task)
        .filter(at -> !scene.isOver(task))
        .map(
            at ->
                of(
                    scene,
                    at,
                    task,
                    entries.getOrDefault(task.id(), List.of()),
                    rejected,
                    sequence));
  }

  private static AtGate of(
      Scene scene,
      GateLock.At at,
      Task task,
      List<GateEntry> said,
      Rejected rejected,
      LongSupplier sequence) {
    Messages words = scene.words();
    GateProgress progress = GateProgress.fold(said);
    GateWords told = new GateWords(scene.book(), words);
    GateForm typed = rejected.form();
    String fail = typed.get("verdict").equals("FAIL") ? typed.get("note") : "";
    return new AtGate(
        words.say((progress.isPassed() ? "gate.over." : "gate.title.") + word(at)),
        by(scene, at.gate()),
        GateProgress.live(said).stream()
            .filter(entry -> entry.kind().isVerdict())
            .map(entry -> told.story(entry, scene.person(entry.cook())))
            .toList(),
        !progress.isPassed(),
        at.gate().checks().stream().map(check -> row(words, check, typed)).toList(),
        items(scene, task.version(), words),
        Stream.iterate(0, row -> row + 1)
            .limit(GateForm.ROWS)
            .map(row -> new AddedRow(row, typed.get("item" + row), typed.get("amount" + row)))
            .toList(),
        fail,
        typed.get("verdict"),
        rejected.fault(),
        progress.last().map(entry -> entry.id().toString()).orElse(""),
        new Sequences(
            sequence.getAsLong(),
            sequence.getAsLong(),
            sequence.getAsLong(),
            sequence.getAsLong()));
  }

  private static String word(GateLock.At at) {
    return at.gate().kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** Who has to say go; empty for any cook. */
  static String by(Scene scene, Gate gate) {
    if (gate.by() == Gate.By.COOK) {
      return "";
    }
    List<String> chefs =
        scene.house().book().people().stream().filter(Person::chef).map(Person::name).toList();
    return chefs.isEmpty()
        ? scene.words().say("gate.by-nobody")
        : scene.words().say("gate.by-chef", String.join(", ", chefs));
  }

  private static CheckRow row(Messages words, Gate.Check check, GateForm typed) {
    String name = "said-" + check.word();
    return new CheckRow(
        name,
        words.say("gate.check." + check.word()),
        check.words().stream()
            .map(
                word ->
                    new Choice(word, words.say("gate.word." + word), typed.get(name).equals(word)))
            .toList());
  }

  /** What can have gone in, the formula's own first. */
  static List<Choice> items(Scene scene, FormulaVersion version, Messages words) {
    Set<String> codes = new LinkedHashSet<>();
    version.lines().stream().map(Line::item).forEach(item -> codes.add(item.code()));
    codes.addAll(scene.book().ingredients().keySet());
    GateWords named = new GateWords(scene.book(), words);
    List<Choice> items = new ArrayList<>();
    codes.forEach(code -> items.add(new Choice(code, named.item(code), false)));
    return items;
  }

  /** The parts held back at a station. */
  static List<Held> held(Scene scene, Map<String, List<GateEntry>> entries, LongSupplier sequence) {
    return HeldBack.list(scene.inForce(), entries).stream()
        .filter(part -> scene.isHere(part.task().station()))
        .map(
            part ->
                new Held(
                    part.task().id(),
                    part.line().path(),
                    part.day().toString(),
                    scene
                        .words()
                        .say(
                            "gate.held",
                            scene.words().amount(part.amount()),
                            scene.words().text(part.line().name()),
                            scene.words().text(part.task().version().name())),
                    sequence.getAsLong(),
                    sequence.getAsLong()))
        .toList();
  }
}
