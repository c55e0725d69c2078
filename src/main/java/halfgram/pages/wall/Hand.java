package halfgram.pages.wall;

import halfgram.measure.Amount;
import halfgram.pages.MethodLine;
import halfgram.prep.Awaited;
import halfgram.prep.Stored;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.words.Dots;
import halfgram.words.Messages;
import halfgram.words.TaskWords;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;
import java.util.function.LongSupplier;

/**
 * The task in hand, open and large.
 *
 * @param look class of its state: "to-do", "waits", "on-it", "part-done", "done", "problem",
 *     "failed"
 * @param shorts what of it, or of what goes into it, came short
 * @param goods deliveries it waits for that can be said to be here
 * @param kit things it uses that carry something
 * @param digits class of the longest weight, so that all points stand in one line
 * @param method what is done before anything is weighed; the rest stands below its lines
 * @param tubs codes of the tubs it has filled
 * @param counts whether it puts something away, so that done asks how much
 * @param last what the last tick was, to be undone; empty without one
 */
record Hand(
    String id,
    String name,
    String step,
    List<String> state,
    String look,
    String contains,
    String serves,
    List<MethodLine> method,
    List<String> notes,
    List<String> cautions,
    List<String> shorts,
    List<String> waits,
    List<Goods> goods,
    List<KitRow> kit,
    String problem,
    List<WeighRows.Group> groups,
    String digits,
    List<String> gives,
    List<String> tubs,
    boolean counts,
    Amounts amounts,
    String last,
    String lastId,
    Said said,
    Sequences sequences) {

  /**
   * What stands in the fields, and what is wrong with it.
   *
   * @param doneSure that it is so, to be pressed for what was asked about; empty where nothing was
   * @param question what that was about, sent along with it
   * @param units that an amount is typed in, for the keys below the field
   */
  record Amounts(
      String done,
      String doneFault,
      String doneSure,
      String part,
      String partFault,
      String partSure,
      String question,
      String note,
      String noteFault,
      String sample,
      String units) {}

  /**
   * What was said about it, and how to say more.
   *
   * @param notes what there is to know
   * @param stands for how long it stands from now on; empty for what needs hands to its end
   * @param over sent along when somebody else is taken off it
   * @param other who else is on it; empty for nobody, or who works here
   * @param note what stands in the field, and what is wrong with it
   */
  record Said(
      List<String> notes,
      String stands,
      String other,
      String over,
      String note,
      String fault,
      long timer,
      long word) {}

  /** A delivery that is still to come. */
  record Goods(String code, String supplier, String entry) {}

  /** A number of its own for every form. */
  record Sequences(long start, long part, long done, long problem, long solved, long undo) {}

  public boolean isOpen() {
    return !look.equals("done") && !isFailed();
  }

  public boolean isFailed() {
    return look.equals("failed");
  }

  public boolean isProblem() {
    return look.equals("problem");
  }

  public boolean isIdle() {
    return look.equals("to-do") || look.equals("waits") || look.equals("part-done");
  }

  /**
   * A form of this task that was not accepted.
   *
   * @param asks whether it would be, were they sure
   */
  record Rejected(TickForm form, String fault, boolean asks) {
    static final Rejected NONE = new Rejected(TickForm.NONE, "");

    Rejected(TickForm form, String fault) {
      this(form, fault, false);
    }

    /** One that is taken when they say that it is so. */
    static Rejected asked(TickForm form, String asks) {
      return new Rejected(form, asks, true);
    }

    private boolean isOf(Task task, Tick.Kind kind) {
      return form.task().equals(task.id()) && form.kind().equals(kind.name());
    }
  }

  /**
   * Opens a task.
   *
   * @param counted the amount that was counted on the way; empty for one that was not
   * @param tub what was said of the tub in the hand
   */
  static Hand of(
      Scene scene,
      Task task,
      List<String> tubs,
      String counted,
      List<KitRow> kit,
      Rejected rejected,
      WeighRows.TubRead tub,
      LongSupplier sequence) {
    return new Builder(scene, task, counted).build(tubs, kit, rejected, tub, sequence);
  }

  /** Puts a task into words. */
  private static final class Builder {
    private final Scene scene;
    private final Messages words;
    private final Task task;
    private final String counted;
    private final TaskProgress progress;
    private final TaskWords parts;

    private Builder(Scene scene, Task task, String counted) {
      this.counted = counted;
      this.scene = scene;
      this.words = scene.words();
      this.task = task;
      this.progress = scene.progress(task);
      this.parts = new TaskWords(scene.book(), words);
    }

    private Hand build(
        List<String> tubs,
        List<KitRow> kit,
        Rejected rejected,
        WeighRows.TubRead tub,
        LongSupplier sequence) {
      WeighRows rows = new WeighRows(scene, task, tub, sequence);
      List<WeighRows.Group> groups = rows.list();
      return new Hand(
          task.id(),
          words.text(task.version().name()),
          scene.step(task),
          state(),
          look(),
          scene.names().contains(task.allergens()),
          serves(),
          rows.first(),
          notes(),
          task.cautions().stream().map(caution -> words.say("caution." + caution)).toList(),
          scene.cameShort(task),
          scene.waitsFor(task),
          goods(),
          kit,
          trouble(),
          groups,
          digits(groups),
          task.stored().stream().map(this::gives).toList(),
          tubs,
          !task.stored().isEmpty() && task.kind() != Task.Kind.THAW,
          amounts(rejected),
          progress.last().map(this::said).orElse(""),
          progress.last().map(tick -> tick.id().toString()).orElse(""),
          said(rejected, sequence),
          new Sequences(
              sequence.getAsLong(),
              sequence.getAsLong(),
              sequence.getAsLong(),
              sequence.getAsLong(),
              sequence.getAsLong(),
              sequence.getAsLong()));
    }

    private List<String> state() {
      List<String> parts = new ArrayList<>();
      String late = scene.late(task);
      if (late.isEmpty() || !scene.canStart(task)) {
        parts.add(scene.state(task));
      }
      parts.add(late);
      progress.onIt().ifPresent(on -> parts.add(scene.person(on.cook())));
      if (progress.state() == TaskState.TO_DO) {
        String time =
            scene
                .place(task)
                .filter(at -> late.isEmpty())
                .map(at -> scene.time(at.start()))
                .orElse("");
        parts.add((time + " " + scene.planned(task)).strip());
      }
      if (progress.state() == TaskState.DONE) {
        progress.dones().stream()
            .findFirst()
            .ifPresent(tick -> parts.add(scene.person(tick.cook())));
        progress.doneAt().ifPresent(at -> parts.add(scene.time(at)));
      } else if (progress.state() != TaskState.FAILED) {
        parts.add(words.say("sheet.by", scene.time(task.handsOff())));
      }
      if (progress.state() != TaskState.FAILED) {
        progress.amount().map(this::soMuch).ifPresent(parts::add);
      }
      parts.removeIf(String::isEmpty);
      return Dots.each(parts);
    }

    /** How much somebody said that there is of it. */
    private String soMuch(Amount amount) {
      String key = progress.state() == TaskState.DONE ? "wall.is-made" : "wall.is-there";
      return words.say(key, words.amount(amount));
    }

    private List<Goods> goods() {
      return scene.awaited().stream()
          .filter(one -> one.task().id().equals(task.id()) && one.stand().isAwaited())
          .filter(one -> progress.state() == TaskState.TO_DO)
          .map(Awaited::delivery)
          .map(of -> new Goods(of.code(), of.supplier(), UUID.randomUUID().toString()))
          .toList();
    }

    private String trouble() {
      boolean troubled =
          progress.state() == TaskState.PROBLEM || progress.state() == TaskState.FAILED;
      return troubled ? progress.problem().orElse("") : "";
    }

    private String look() {
      boolean waits = progress.state() == TaskState.TO_DO && !scene.canStart(task);
      return waits ? "waits" : progress.state().name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private String serves() {
      Set<String> users = new LinkedHashSet<>();
      task.serves().forEach(user -> users.add(scene.names().user(user, scene.day())));
      return words.say("sheet.for", String.join(", ", users), scene.time(task.make().readyBy()));
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
      task.links().forEach(link -> parts.lag(task, link).ifPresent(notes::add));
      scene.inForce().sheet().contacts(task).stream()
          .map(one -> parts.contact(one, scene.names(), scene::time))
          .forEach(notes::add);
      parts.fills(task).ifPresent(notes::add);
      parts.gate(task).ifPresent(notes::add);
      return notes;
    }

    /** The widest number decides the two columns. */
    private static String digits(List<WeighRows.Group> groups) {
      int whole = 1;
      int places = 0;
      for (WeighRows.Group group : groups) {
        for (WeighRows.Row row : group.rows()) {
          whole = Math.max(whole, row.whole().length());
          places = Math.max(places, Math.max(0, row.fraction().length() - 1));
        }
      }
      return "whole-" + Math.min(7, whole) + " places-" + places;
    }

    private String gives(Stored stored) {
      return Dots.join(parts.gives(task, stored, scene.names()));
    }

    private Amounts amounts(Rejected rejected) {
      boolean done = rejected.isOf(task, Tick.Kind.DONE);
      boolean part = rejected.isOf(task, Tick.Kind.PART_DONE);
      boolean trouble = rejected.isOf(task, Tick.Kind.PROBLEM);
      boolean failed = rejected.isOf(task, Tick.Kind.FAILED);
      String planned = counted.isEmpty() ? TickForm.planned(task, words) : counted;
      return new Amounts(
          done ? rejected.form().amount() : planned,
          done ? rejected.fault() : "",
          done && rejected.asks() ? sure("wall.done-sure", rejected.form()) : "",
          part ? rejected.form().amount() : "",
          part ? rejected.fault() : "",
          part && rejected.asks() ? sure("wall.part-sure", rejected.form()) : "",
          TickForm.question(rejected.form().amount(), progress),
          trouble || failed ? rejected.form().note() : "",
          failed ? rejected.fault() : "",
          TickForm.sample(task, words),
          TickForm.units(task, words));
    }

    /** What to press for what was asked about: that it was so much, else that it was they. */
    private String sure(String soMuch, TickForm form) {
      return form.amount().isBlank() || form.isAsPlanned(task)
          ? words.say("wall.over-sure")
          : words.say(soMuch, form.amount());
    }

    private Said said(Rejected rejected, LongSupplier sequence) {
      boolean note = rejected.isOf(task, Tick.Kind.NOTE);
      boolean stands = progress.state() == TaskState.ON_IT && !task.unattended().isZero();
      return new Said(
          progress.words(Tick.Kind.NOTE).stream().map(this::noted).toList(),
          stands ? words.duration(task.unattended()) : "",
          progress
              .onIt()
              .filter(on -> progress.state() == TaskState.ON_IT)
              .filter(on -> scene.cook().filter(me -> !me.code().equals(on.cook())).isPresent())
              .map(on -> scene.person(on.cook()))
              .orElse(""),
          TickForm.question("", progress),
          note ? rejected.form().note() : "",
          note ? rejected.fault() : "",
          sequence.getAsLong(),
          sequence.getAsLong());
    }

    private String noted(Tick word) {
      return words.say(
          "wall.noted", scene.time(word.at()), scene.person(word.cook()), word.note().orElse(""));
    }

    /** What the last tick said. */
    private String said(Tick tick) {
      return switch (tick.kind()) {
        case START -> words.say("wall.last.start");
        case WEIGHED -> words.say("wall.last.weighed", line(tick.line().orElse("")));
        case PART_DONE -> words.say("wall.last.part-done");
        case DONE -> words.say("wall.last.done");
        case PROBLEM -> words.say("wall.last.problem");
        case FAILED -> words.say("wall.last.failed");
        case SOLVED, UNDO, NOTE, CALLED, ANSWERED, TIMED, LATER, HEARD, TASTED ->
            words.say("wall.last.solved");
      };
    }

    private String line(String path) {
      return task.weigh().stream()
          .flatMap(group -> group.lines().stream())
          .filter(line -> line.path().equals(path))
          .map(line -> words.text(line.name()))
          .findFirst()
          .orElse("");
    }
  }
}
