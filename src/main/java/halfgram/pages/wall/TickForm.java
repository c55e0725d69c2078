package halfgram.pages.wall;

import halfgram.desk.Ticking;
import halfgram.kitchen.Kitchen;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.pages.EntryFields;
import halfgram.pages.TypedAmount;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Pattern;

/**
 * A tick as sent by a form, as typed.
 *
 * @param station where the form stood, to come back to
 * @param tub "read" when the name on the tub was read
 * @param sure what was asked about and is so ({@link #question}); empty before it was
 * @param shown the task that lay open there, when that is another
 */
record TickForm(
    String station,
    String task,
    String kind,
    String line,
    String amount,
    String note,
    String undoes,
    String sequence,
    String minutes,
    String shown,
    String tub,
    String sure) {
  private static final Pattern KIND = Pattern.compile("[A-Z_]{1,12}");

  /** Nothing typed yet. */
  static final TickForm NONE = new TickForm("", "", "", "", "", "", "", "", "", "", "", "");

  /** As sent; a press on "later" is that kind, and says by how much. */
  static TickForm of(UnaryOperator<String> field) {
    String later = field.apply("later");
    return new TickForm(
        field.apply("station"),
        field.apply("task"),
        later.isEmpty() ? field.apply("kind") : Tick.Kind.LATER.name(),
        field.apply("line"),
        field.apply("amount"),
        field.apply("note"),
        field.apply("undoes"),
        field.apply("sequence"),
        later.isEmpty() ? field.apply("minutes") : later,
        field.apply("shown"),
        field.apply("tub"),
        field.apply("sure"));
  }

  boolean isEmpty() {
    return kind.isEmpty();
  }

  /** Its fields, to be carried along by another form. */
  Map<String, String> fields() {
    Map<String, String> fields = new LinkedHashMap<>();
    fields.put("station", station);
    fields.put("task", task);
    fields.put("kind", kind);
    fields.put("line", line);
    fields.put("amount", amount);
    fields.put("note", note);
    fields.put("undoes", undoes);
    fields.put("sequence", sequence);
    fields.put("minutes", minutes);
    fields.put("shown", shown);
    fields.put("tub", tub);
    fields.put("sure", sure);
    fields.values().removeIf(String::isEmpty);
    return fields;
  }

  /** Whether it could come from a page of ours; what a cook types is looked at afterwards. */
  boolean isReadable() {
    return KIND.matcher(kind).matches()
        && java.util.Arrays.stream(Tick.Kind.values()).anyMatch(one -> one.name().equals(kind))
        && EntryFields.isSequence(sequence)
        && minutes.matches("\\d{0,6}")
        && (!kind.equals(Tick.Kind.UNDO.name()) || EntryFields.isId(undoes));
  }

  Tick.Kind tickKind() {
    return Tick.Kind.valueOf(kind);
  }

  private Optional<UUID> undone() {
    return tickKind() == Tick.Kind.UNDO ? Optional.of(UUID.fromString(undoes)) : Optional.empty();
  }

  /** What an amount is counted in for a task; mass for one that puts nothing away. */
  static Dimension dimension(Task task) {
    return task.stored().isEmpty() ? Dimension.MASS : task.stored().get(0).output().unit();
  }

  /** The planned amount as the field shows it; empty for a task that puts nothing away. */
  static String planned(Task task, Messages words) {
    return task.stored().isEmpty() ? "" : words.typed(task.stored().get(0).made());
  }

  /** Whether the planned amount stands in the field as it was shown, in whatever language. */
  boolean isAsPlanned(Task task) {
    if (tickKind() != Tick.Kind.DONE || task.stored().isEmpty()) {
      return false;
    }
    Amount made = task.stored().get(0).made();
    return TypedAmount.read(amount, made).filter(made::equals).isPresent();
  }

  /** What would be accepted. */
  static String sample(Task task, Messages words) {
    String planned = planned(task, words);
    return planned.isEmpty() ? words.say("wall.amount-sample") : planned;
  }

  /** What an amount is typed in, apart by spaces. */
  static String units(Task task, Messages words) {
    return switch (dimension(task)) {
      case MASS -> words.figures().units() == Kitchen.Units.US ? "oz lb g" : "g kg";
      case VOLUME -> "ml l";
      case COUNT -> "";
    };
  }

  /** Whether there is an amount to read; the planned one left as it was says nothing new. */
  boolean saysAmount(Task task) {
    boolean asked = tickKind() == Tick.Kind.DONE || tickKind() == Tick.Kind.PART_DONE;
    return asked && !amount.isBlank() && !isAsPlanned(task);
  }

  /** The amount typed; empty when it is none, or one of another sort than the task gives. */
  Optional<Amount> amount(Task task) {
    return TypedAmount.read(amount, dimension(task));
  }

  /** What a question is about: who is on the task and how much is typed, as it was then. */
  static String question(String amount, TaskProgress progress) {
    return amount + "/" + progress.onIt().map(TaskProgress.OnIt::cook).orElse("");
  }

  /** Whether they were asked, and nothing has changed since. */
  boolean isSure(TaskProgress progress) {
    return sure.equals(question(amount, progress));
  }

  /** What is wrong with it; empty when nothing is. */
  String fault(Task task, Messages words) {
    return lacksReason() ? words.say("wall.reason-fault") : amountFault(task, words);
  }

  /** What is wrong with the amount; empty when nothing is, or none is said. */
  private String amountFault(Task task, Messages words) {
    if (!saysAmount(task)) {
      return "";
    }
    Optional<Amount> said = amount(task);
    if (said.isEmpty()) {
      return words.say("wall.amount-fault", sample(task, words));
    }
    return task.canGive(said.get()) ? "" : words.say("tick.refused.amount");
  }

  /** What is asked of the amount before it is taken; empty for one that is near the plan. */
  Optional<Message> asks(Task task, Messages words) {
    return asksAmount(task)
        ? Optional.of(Message.of("wall.amount-ask", amount, planned(task, words)))
        : Optional.empty();
  }

  /** Whether so much is asked about before it is taken for all that came. */
  private boolean asksAmount(Task task) {
    return tickKind() == Tick.Kind.DONE
        && amount(task).filter(said -> task.canGive(said) && task.isFarFrom(said)).isPresent();
  }

  private boolean takesNote() {
    return switch (tickKind()) {
      case PROBLEM, FAILED, NOTE, CALLED, TIMED -> true;
      default -> false;
    };
  }

  /** Whether it does not say what it has to: why something failed, what there is to know. */
  boolean lacksReason() {
    return note.isBlank() && (tickKind() == Tick.Kind.FAILED || tickKind() == Tick.Kind.NOTE);
  }

  /** Whether it weighs from a tub that looks like another and that nobody has read. */
  boolean lacksTub(Task of) {
    return tickKind() == Tick.Kind.WEIGHED
        && !tub.equals("read")
        && of.weigh().stream()
            .flatMap(group -> group.lines().stream())
            .anyMatch(one -> one.path().equals(line) && !one.lookAlikes().isEmpty());
  }

  /** The task that lies open afterwards. */
  String opens() {
    return shown.isEmpty() ? task : shown;
  }

  /**
   * The tick to enter.
   *
   * @param told whether they know what speaks against it
   */
  Ticking.Entry entry(Optional<Amount> said, String cook, UUID device, Instant now, boolean told) {
    return new Ticking.Entry(
        Optional.empty(),
        task,
        tickKind(),
        Optional.of(line).filter(path -> !path.isEmpty()).filter(path -> takesLine()),
        said,
        Optional.of(minutes).filter(text -> !text.isEmpty()).map(Integer::valueOf),
        EntryFields.note(note).filter(text -> takesNote()),
        cook,
        undone(),
        new TickStore.Origin(device, Long.parseLong(sequence), now, 0),
        Optional.empty(),
        told);
  }

  private boolean takesLine() {
    return tickKind() == Tick.Kind.WEIGHED || tickKind().isWord();
  }

  /** Whether the line it weighs is one of the task's. */
  boolean namesLineOf(Task of) {
    return of.weigh().stream()
        .flatMap(group -> group.lines().stream())
        .anyMatch(one -> one.path().equals(line));
  }

  /** Where it leads from a wall: what is done makes room for what is next. */
  String leadsTo(String wall, Ticking.Taken taken) {
    String of = Visit.encoded(opens());
    return taken.tick().kind() == Tick.Kind.DONE
        ? wall + "?done=" + of + "&tick=" + taken.tick().id()
        : wall + "?task=" + of;
  }
}
