package halfgram.pages.wall;

import halfgram.desk.EnteringLater;
import halfgram.desk.House;
import halfgram.desk.Said;
import halfgram.desk.Ticking;
import halfgram.kitchen.Kitchen;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedMoment;
import halfgram.pages.TypedTime;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.words.Messages;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

/**
 * What was typed from paper as ticks, or everything that is wrong with it, each at its field.
 *
 * <p>Rules. Only rows in which something stands are entered. A row that does not say who is of whom
 * the row above it said; the first, of whoever works at the device. A time is one of the business
 * day. What was made, and what it came to, want the time at which it was; a problem wants a note. A
 * note alone is of its time, else of now. What was said at a gate comes before what its task came
 * to at the same time, and what went in before the go.
 */
final class PaperEntries {

  /**
   * Where it comes from.
   *
   * @param cook who works at the device, if somebody does
   * @param by who types it
   */
  record From(UUID device, Optional<String> cook, String by, Instant now) {}

  /**
   * What is wrong with a row.
   *
   * @param fields what is wrong, by field
   * @param asks what speaks against it, to be confirmed
   */
  record Faults(Map<String, String> fields, List<String> asks) {
    static final Faults NONE = new Faults(Map.of(), List.of());

    String of(String field) {
      return fields.getOrDefault(field, "");
    }
  }

  /** A line with the row and the field it was typed in. */
  private record Typed(int row, String field, EnteringLater.Line line) {}

  private final House house;
  private final LocalDate day;
  private final Messages words;
  private final From from;
  private final Function<String, Optional<Task>> tasks;
  private final List<Typed> typed = new ArrayList<>();
  private final Map<Integer, Map<String, String>> faults = new HashMap<>();
  private final Map<Integer, List<String>> asks = new HashMap<>();

  /**
   * Entries of a day.
   *
   * @param words in the kitchen's zone
   * @param tasks of the day by id, also those that a later plan has withdrawn
   */
  PaperEntries(
      House house,
      LocalDate day,
      Messages words,
      From from,
      Function<String, Optional<Task>> tasks) {
    this.house = house;
    this.day = day;
    this.words = words;
    this.from = from;
    this.tasks = tasks;
  }

  /**
   * Enters what was typed, all of it or nothing.
   *
   * @return what is wrong, by the place of the row; empty when all is in
   */
  Map<Integer, Faults> enter(PaperForm form, EnteringLater entering) {
    Optional<String> who = from.cook().filter(this::isPerson);
    for (int i = 0; i < form.rows().size(); i++) {
      PaperForm.Row row = form.rows().get(i);
      if (row.isFilled()) {
        who = row.who().isEmpty() ? who : Optional.of(row.who());
        read(i, row, who);
      }
    }
    if (faults.isEmpty() && asks.isEmpty()) {
      List<EnteringLater.Line> lines = typed.stream().map(Typed::line).toList();
      entering.enter(house, day, lines).forEach(this::note);
    }
    Map<Integer, Faults> all = new HashMap<>();
    faults.forEach((row, of) -> all.put(row, new Faults(of, asks.getOrDefault(row, List.of()))));
    asks.forEach((row, of) -> all.putIfAbsent(row, new Faults(Map.of(), of)));
    return all;
  }

  private void note(EnteringLater.Answer answer) {
    Typed of = typed.get(answer.index());
    answer.because().ifPresent(because -> fault(of.row(), of.field(), because));
    if (!answer.asks().isEmpty()) {
      ask(of.row(), answer.asks());
    }
  }

  private void ask(int row, List<Message> about) {
    asks.computeIfAbsent(row, any -> new ArrayList<>())
        .addAll(about.stream().map(words::say).toList());
  }

  private void fault(int row, String field, Message because) {
    faults
        .computeIfAbsent(row, any -> new HashMap<>())
        .merge(field, words.say(because), (one, other) -> one + "; " + other);
  }

  private boolean isPerson(String code) {
    return house.book().people().stream().anyMatch(person -> person.code().equals(code));
  }

  private void read(int at, PaperForm.Row row, Optional<String> who) {
    Optional<Task> task = tasks.apply(row.task());
    if (task.isEmpty()) {
      fault(at, "done", Message.of("web.not-found", row.task()));
      return;
    }
    if (who.filter(this::isPerson).isEmpty()) {
      fault(at, "who", Message.of("paper.fault-who"));
    }
    Optional<Instant> started = time(at, "started", row.started());
    Optional<Instant> done = time(at, "done", row.done());
    Optional<Amount> made = made(at, row, task.get());
    Optional<Instant> tried = tried(at, row);
    boolean ends = !row.done().isEmpty() || row.came() != PaperForm.Came.DONE;
    boolean told = row.came() == PaperForm.Came.PROBLEM || row.came() == PaperForm.Came.NOTE;
    if (told && row.note().isEmpty()) {
      boolean note = row.came() == PaperForm.Came.NOTE;
      fault(at, "note", Message.of(note ? "paper.fault-no-note" : "paper.fault-note"));
    }
    boolean untimed = row.done().isEmpty() && (!row.made().isEmpty() || row.started().isEmpty());
    boolean part = row.done().isEmpty() && row.came() == PaperForm.Came.PART_DONE;
    if (row.isMoved() && (untimed || part)) {
      fault(at, "done", Message.of("paper.fault-when"));
    }
    if (started.isPresent() && done.filter(started.get()::isAfter).isPresent()) {
      fault(at, "done", Message.of("paper.fault-order", words.time(started.get())));
    }
    if (started.isPresent() && tried.filter(started.get()::isAfter).isPresent()) {
      fault(at, "tried", Message.of("paper.fault-order", words.time(started.get())));
    }
    if (faults.containsKey(at)) {
      return;
    }
    Optional<String> note = EntryFields.note(row.note());
    String cook = who.orElseThrow();
    if (row.isMoved() && started.isPresent()) {
      // A note stands once: with what it came to, else with the start.
      Optional<String> own = note.filter(text -> !ends);
      Ticking.Entry start =
          entry(row, 0, Tick.Kind.START, Optional.empty(), own, cook, started.get());
      typed.add(new Typed(at, "started", new EnteringLater.OfTask(start)));
    }
    tried.ifPresent(
        when ->
            new PaperGate(row, cook, from)
                .entries(note)
                .forEach(
                    entry ->
                        typed.add(
                            new Typed(
                                at,
                                "verdict",
                                new EnteringLater.AtGate(entry.saying(said(row, when)))))));
    if (row.isMoved() && ends) {
      Instant when = done.or(() -> started).orElseThrow();
      Ticking.Entry end = entry(row, 1, kind(row), made, note, cook, when);
      typed.add(new Typed(at, "done", new EnteringLater.OfTask(end)));
    } else if (!row.isMoved() && tried.isEmpty()) {
      Instant when = done.or(() -> started).orElse(from.now());
      Ticking.Entry word = entry(row, 1, Tick.Kind.NOTE, Optional.empty(), note, cook, when);
      typed.add(new Typed(at, "note", new EnteringLater.OfTask(word)));
    }
  }

  /** When something was said at its gate; empty where nothing was. */
  private Optional<Instant> tried(int at, PaperForm.Row row) {
    if (!row.gate().isFilled()) {
      return Optional.empty();
    }
    Optional<Instant> when = time(at, "tried", row.gate().tried());
    if (row.gate().tried().isEmpty()) {
      fault(at, "tried", Message.of("paper.fault-when"));
    }
    PaperGate.fault(row).forEach((field, because) -> fault(at, field, because));
    return when;
  }

  /** What a row says of its task. */
  static Tick.Kind kind(PaperForm.Row row) {
    return switch (row.came()) {
      case DONE -> Tick.Kind.DONE;
      case PART_DONE -> Tick.Kind.PART_DONE;
      case PROBLEM -> Tick.Kind.PROBLEM;
      case NOTE -> Tick.Kind.NOTE;
    };
  }

  private Optional<Instant> time(int at, String field, String text) {
    if (text.isEmpty()) {
      return Optional.empty();
    }
    boolean half = house.book().kitchen().hours() == Kitchen.Hours.TWELVE;
    if (half && TypedTime.isEither(text)) {
      fault(at, field, Message.of("paper.fault-half-day"));
      return Optional.empty();
    }
    Optional<Instant> time = TypedMoment.on(day, text, house.book().kitchen().clock());
    if (time.isEmpty()) {
      fault(at, field, Message.of(half ? "paper.fault-half-day" : "paper.fault-time"));
    }
    return time;
  }

  /** As planned says nothing new. */
  private Optional<Amount> made(int at, PaperForm.Row row, Task task) {
    boolean asPlanned =
        row.came() == PaperForm.Came.DONE && row.made().equals(TickForm.planned(task, words));
    if (row.made().isEmpty() || asPlanned || row.came() == PaperForm.Came.PROBLEM) {
      return Optional.empty();
    }
    Optional<Amount> made = halfgram.pages.TypedAmount.read(row.made(), TickForm.dimension(task));
    if (made.isEmpty()) {
      fault(at, "made", Message.of("wall.amount-fault", TickForm.sample(task, words)));
    } else if (!task.canGive(made.get())) {
      fault(at, "made", Message.of("tick.refused.amount"));
    } else if (row.came() == PaperForm.Came.DONE && task.isFarFrom(made.get()) && !row.sure()) {
      String planned = TickForm.planned(task, words);
      ask(at, List.of(Message.of("paper.amount-ask", row.made(), planned)));
    }
    return made;
  }

  private Ticking.Entry entry(
      PaperForm.Row row,
      int number,
      Tick.Kind kind,
      Optional<Amount> made,
      Optional<String> note,
      String cook,
      Instant when) {
    Ticking.Entry entry =
        new Ticking.Entry(
            Optional.empty(),
            row.task(),
            kind,
            Optional.empty(),
            made,
            note,
            cook,
            Optional.empty(),
            new TickStore.Origin(from.device(), row.sequences().get(number), from.now(), 0));
    return entry.saying(said(row, when));
  }

  private Said said(PaperForm.Row row, Instant when) {
    return new Said(when, from.by(), row.sure());
  }
}
