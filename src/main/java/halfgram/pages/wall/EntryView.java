package halfgram.pages.wall;

import halfgram.prep.GateEntry;
import halfgram.prep.GateStore;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.station.Person;
import halfgram.web.Visit;
import halfgram.web.Words;
import halfgram.words.GateWords;
import halfgram.words.Messages;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What was done on paper, to be entered: one row for each task that is not over.
 *
 * @param date of the paper, in words
 * @param station its code; empty for all
 * @param day its date, so that what was begun before the day has turned is sent for it
 * @param entered how many ticks have just come in; empty for none
 * @param faulty whether something was wrong, so that nothing is in
 * @param first who works at the device: the first row is theirs when it does not say
 * @param sample a time as one types it
 * @param later what was entered later and can be taken back
 */
record EntryView(
    String date,
    String name,
    String station,
    String day,
    String entered,
    boolean faulty,
    String first,
    String sample,
    List<PaperView.Choice> stations,
    Map<String, String> languages,
    String language,
    List<Choice> people,
    List<Row> rows,
    List<Later> later,
    String paper,
    String wall) {

  private static final LocalTime SAMPLE = LocalTime.of(14, 30);

  /** A code and what it is called. */
  record Choice(String code, String name) {}

  /**
   * One task.
   *
   * @param href its wall, where a gate is said go; empty for a day or a task that no wall shows
   * @param planned the amount planned; empty where nothing is put away
   * @param gone whether the plan in force no longer has it
   * @param typed what stands in its fields
   * @param tried its gate, as long as it is asked
   */
  record Row(
      int index,
      String start,
      String name,
      String step,
      String sub,
      String state,
      String href,
      boolean gone,
      String planned,
      PaperForm.Row typed,
      PaperEntries.Faults faults,
      String sequences,
      Optional<TriedRow> tried) {

    public String fault(String field) {
      return faults.of(field);
    }

    public boolean isFaulty() {
      return !faults.fields().isEmpty() || !faults.asks().isEmpty();
    }
  }

  /**
   * Something that was entered later.
   *
   * @param id of the tick, or of what was said at a gate
   */
  record Later(String said, String task, String id, boolean isAtGate, long sequence) {}

  /** What there is of a day: tasks that are no longer planned, what was said, entered later. */
  record Day(
      List<Task> withdrawn,
      Map<String, List<GateEntry>> gates,
      List<TickStore.Entered> later,
      List<GateStore.Entered> laterAtGates) {}

  /** What came back, with what is wrong by the place of the row. */
  record Rejected(PaperForm form, Map<Integer, PaperEntries.Faults> faults) {
    static final Rejected NONE = new Rejected(PaperForm.NONE, Map.of());

    /** Whether something stands in a row: it stays, though its task may be over by now. */
    private boolean isAt(@Nullable Integer place) {
      return place != null && form.rows().get(place).isFilled();
    }

    private Map<String, Integer> places() {
      Map<String, Integer> places = new HashMap<>();
      for (int i = 0; i < form.rows().size(); i++) {
        places.put(form.rows().get(i).task(), i);
      }
      return places;
    }
  }

  /** Where it is shown: the addresses are within the kitchen. */
  record Frame(String entered, List<PaperView.Choice> stations, String paper, String wall) {}

  static EntryView of(Scene scene, Day day, Frame frame, Rejected rejected, LongSupplier numbers) {
    boolean all = scene.station().equals(Scene.ALL);
    return new EntryView(
        scene.words().date(scene.day()),
        scene.stationName(),
        all ? "" : scene.station(),
        scene.day().toString(),
        frame.entered(),
        !rejected.faults().isEmpty(),
        scene.cook().map(Person::name).orElse(""),
        scene.words().time(SAMPLE),
        frame.stations(),
        Words.LANGUAGES,
        scene.words().language(),
        scene.house().book().people().stream()
            .map(person -> new Choice(person.code(), person.name()))
            .toList(),
        rows(scene, day, rejected, numbers),
        later(scene, day, numbers),
        frame.paper(),
        frame.wall());
  }

  private static List<Row> rows(Scene scene, Day day, Rejected rejected, LongSupplier numbers) {
    Map<String, Integer> places = rejected.places();
    List<Row> rows = new ArrayList<>();
    Stream.concat(
            scene.tasks().stream()
                .filter(task -> !scene.isOver(task) || rejected.isAt(places.get(task.id()))),
            day.withdrawn().stream().filter(task -> scene.isHere(task.station())))
        .forEach(
            task -> {
              Optional<Integer> place = Optional.ofNullable(places.get(task.id()));
              List<GateEntry> said = day.gates().getOrDefault(task.id(), List.of());
              rows.add(row(scene, task, said, rows.size(), place, rejected, numbers));
            });
    return rows;
  }

  private static Row row(
      Scene scene,
      Task task,
      List<GateEntry> said,
      int index,
      Optional<Integer> place,
      Rejected rejected,
      LongSupplier numbers) {
    Messages words = scene.words();
    String name = words.text(task.version().name());
    boolean gone = !scene.byId().containsKey(task.id());
    var station = scene.house().book().stations().get(task.station());
    String sub =
        scene.station().equals(Scene.ALL) && station != null ? words.text(station.name()) : "";
    PaperForm.Row blank =
        new PaperForm.Row(
            task.id(),
            "",
            "",
            PaperForm.Came.DONE,
            "",
            "",
            "",
            false,
            List.of(),
            PaperForm.Tried.NONE);
    PaperForm.Row typed = place.map(rejected.form().rows()::get).orElse(blank);
    return new Row(
        index,
        scene.time(scene.start(task)),
        name,
        scene.step(task),
        sub,
        gone ? words.say("paper.no-longer") : scene.state(task),
        gone || !scene.house().day(scene.now()).equals(scene.day()) ? "" : wall(task),
        gone,
        TickForm.planned(task, words),
        typed,
        place
            .map(at -> rejected.faults().getOrDefault(at, PaperEntries.Faults.NONE))
            .orElse(PaperEntries.Faults.NONE),
        sequences(typed, numbers),
        gone ? Optional.empty() : TriedRow.find(scene, task, said, typed.gate()));
  }

  private static String sequences(PaperForm.Row typed, LongSupplier numbers) {
    Stream<Long> own =
        typed.sequences().isEmpty()
            ? LongStream.generate(numbers).limit(PaperForm.NUMBERS).boxed()
            : typed.sequences().stream();
    return own.map(String::valueOf).collect(Collectors.joining(" "));
  }

  private static String wall(Task task) {
    return "wall/" + Visit.encoded(task.station()) + "?task=" + Visit.encoded(task.id());
  }

  private static List<Later> later(Scene scene, Day day, LongSupplier numbers) {
    List<Later> later = new ArrayList<>();
    for (TickStore.Entered one : day.later()) {
      find(scene, day, one.tick().task())
          .ifPresent(
              task ->
                  later.add(
                      new Later(
                          said(scene, task, one),
                          task.id(),
                          one.tick().id().toString(),
                          false,
                          numbers.getAsLong())));
    }
    for (GateStore.Entered one : day.laterAtGates()) {
      find(scene, day, one.entry().of().task())
          .ifPresent(
              task ->
                  later.add(
                      new Later(
                          said(scene, task, one),
                          task.id(),
                          one.entry().id().toString(),
                          true,
                          numbers.getAsLong())));
    }
    return later;
  }

  private static Optional<Task> find(Scene scene, Day day, String id) {
    return Stream.concat(scene.byId().values().stream(), day.withdrawn().stream())
        .filter(task -> task.id().equals(id) && scene.isHere(task.station()))
        .findFirst();
  }

  /** "15:10 go: Yoghurt base, shear, taste: right, Ines (entered at 17:40 by Office)". */
  private static String said(Scene scene, Task task, GateStore.Entered entered) {
    Messages words = scene.words();
    GateEntry entry = entered.entry();
    GateWords named = new GateWords(scene.book(), words);
    List<String> parts = new ArrayList<>();
    parts.add(scene.names().title(task));
    Stream.of(named.added(entry), named.said(entry))
        .filter(of -> !of.isEmpty())
        .forEach(parts::add);
    entry.note().ifPresent(parts::add);
    parts.add(scene.person(entry.cook()));
    TickStore.Later later = entered.later().orElseThrow();
    return words.say(
        "paper.entered-later",
        scene.time(entry.at()),
        words.say(entry.kind().key()),
        String.join(", ", parts),
        scene.time(later.came()),
        scene.person(later.by()));
  }

  /** "15:20 Done: Dill oil, strain, 950 g, Ines; entered at 17:40 by Office". */
  private static String said(Scene scene, Task task, TickStore.Entered entered) {
    Messages words = scene.words();
    Tick tick = entered.tick();
    List<String> parts = new ArrayList<>();
    parts.add(scene.names().title(task));
    tick.amount().map(scene.names()::amount).ifPresent(parts::add);
    tick.note().ifPresent(parts::add);
    parts.add(scene.person(tick.cook()));
    TickStore.Later later = entered.later().orElseThrow();
    return words.say(
        "paper.entered-later",
        scene.time(tick.at()),
        what(words, tick.kind()),
        String.join(", ", parts),
        scene.time(later.came()),
        scene.person(later.by()));
  }

  private static String what(Messages words, Tick.Kind kind) {
    return switch (kind) {
      case START -> words.say("wall.last.start");
      case PART_DONE -> words.say("wall.last.part-done");
      case DONE -> words.say("wall.last.done");
      case FAILED -> words.say("wall.last.failed");
      case PROBLEM -> words.say("wall.last.problem");
      case NOTE -> words.say("paper.note");
      default -> kind.name();
    };
  }
}
