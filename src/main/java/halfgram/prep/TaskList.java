package halfgram.prep;

import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Message;
import halfgram.prep.netting.Draw;
import halfgram.station.Container;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.SphereBath;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The tasks of a plan: every step of every make, the test piece before a run of spheres, every
 * fresh bath, and every tub out of the freezer.
 */
final class TaskList {
  private final KitchenBook book;
  private final PlanRequest request;
  private final Explosion explosion;
  private final Weighings weighings;
  private final Because because;
  private final AllergenTrace trace;
  private final UseBys useBys;
  private final Map<String, List<Draw>> tubs = new HashMap<>();
  private final TaskLinks links;
  private final List<Task> begunTasks = new ArrayList<>();

  private TaskList(KitchenBook book, PlanRequest request, Explosion explosion, Because because) {
    this.book = book;
    this.request = request;
    this.explosion = explosion;
    this.because = because;
    this.useBys = new UseBys(explosion);
    this.weighings = new Weighings(book, because);
    this.trace = new AllergenTrace(book.formulary(), book::ingredient);
    for (Draw draw : explosion.draws()) {
      String key = tubKey(book, draw.need().user(), draw.lot().component());
      tubs.computeIfAbsent(key, user -> new ArrayList<>()).add(draw);
    }
    this.links = new TaskLinks(book, explosion, tubs);
  }

  /** The tasks done in the days of a plan, and those that are already late, by their start. */
  static List<Task> of(
      KitchenBook book, PlanRequest request, Explosion explosion, Because because) {
    return new TaskList(book, request, explosion, because).list();
  }

  /** A user and an output, whichever version it was made by. */
  static String tubKey(KitchenBook book, String user, ComponentRef ref) {
    FormulaVersion version = book.formulary().get(ref);
    String output = ref.output().orElse(version.outputs().get(0).code());
    return user + "/" + ref.formula() + ":" + output;
  }

  private List<Task> list() {
    List<Task> tasks = new ArrayList<>();
    for (Make make : explosion.makes()) {
      for (int i = 0; i < make.timeline().steps().size(); i++) {
        if (isShown(make.timeline().steps().get(i).start())) {
          tasks.addAll(tasks(make, i));
        }
      }
    }
    explosion.begun().forEach(of -> tasks.addAll(begun(of)));
    for (Thaw thaw : explosion.thaws()) {
      thaw.begun().map(this::begun).ifPresent(tasks::addAll);
      if (thaw.begun().isEmpty() && isShown(thaw.pull())) {
        tasks.add(thaw(thaw));
      }
    }
    tasks.addAll(freshBaths());
    tasks.sort(Comparator.comparing(Task::start).thenComparing(Task::end).thenComparing(Task::id));
    if (because.asked()) {
      TaskNotes notes = new TaskNotes(book, because);
      tasks.forEach(notes::note);
      begunTasks.forEach(weighings::note);
    }
    return tasks;
  }

  /**
   * The tasks of a make begun, as they stand: those of the days shown and what is open of earlier
   * ones. A step without a task lay beyond the days of the plan it began in.
   */
  private List<Task> begun(Begun of) {
    List<Task> tasks = new ArrayList<>();
    for (Task task : of.tasks()) {
      LocalDate day = book.kitchen().clock().of(task.start());
      boolean open = !day.isBefore(request.from()) || !(of.hasDone(task) || of.failed());
      if (open && !day.isAfter(request.last()) && !of.isDropped(task)) {
        tasks.add(of.before().isPresent() && !of.hasDone(task) ? larger(of.make(), task) : task);
      }
    }
    begunTasks.addAll(tasks);
    List<Step> steps = of.make().version().steps();
    for (int i = 0; i < steps.size(); i++) {
      if (of.isMissing(steps.get(i)) && isShown(of.make().timeline().steps().get(i).start())) {
        tasks.addAll(tasks(of.make(), i));
      }
    }
    return tasks;
  }

  /** A task as it stands, of a make that has grown: what goes in and what comes out is more. */
  private Task larger(Make make, Task task) {
    int index = make.version().stepIndex(task.step().code());
    Fills.Fill fill = Fills.of(make.scaled(), index);
    return task.larger(
        make,
        fill,
        weighings.of(make, task.step(), fill, tubs),
        task.stored().isEmpty() ? List.of() : stored(make),
        serves(make));
  }

  private boolean isShown(Instant start) {
    LocalDate day = book.kitchen().clock().of(start);
    return !day.isAfter(request.last())
        && (!day.isBefore(request.from()) || start.isBefore(request.asOf()));
  }

  private List<Task> tasks(Make make, int index) {
    Worked worked = explosion.workedOf(make);
    Step step = make.version().steps().get(index);
    Timeline.Span span = make.timeline().steps().get(index);
    if (!worked.isBathStep(step)) {
      return List.of(step(make, index, span.start(), Optional.empty(), links.of(make, index)));
    }
    SphereBath bath = worked.bath.orElseThrow();
    Instant firstDrop = span.start().plus(bath.testPiece());
    Task test = testPiece(make, step, span.start(), firstDrop, links.of(make, index));
    long pieces = make.scaled().formed();
    Message note =
        Message.of(
            "task.drop",
            pieces,
            bath.drops(pieces),
            bath.perDrop(),
            (long) bath.values().number("set"),
            bath.rinses());
    Task.Link afterTest = new Task.Link(test.id(), Duration.ZERO, Optional.empty(), Reason.NONE);
    return List.of(test, step(make, index, firstDrop, Optional.of(note), List.of(afterTest)));
  }

  private Task step(
      Make make, int index, Instant start, Optional<Message> note, List<Task.Link> links) {
    Step step = make.version().steps().get(index);
    Timeline.Span span = make.timeline().steps().get(index);
    Fills.Fill fill = Fills.of(make.scaled(), index);
    boolean last = index == make.version().steps().size() - 1;
    return new Task(
        make.id() + "/" + step.code(),
        Task.Kind.STEP,
        make,
        step,
        note,
        Math.max(step.hands(), explosion.workedOf(make).peopleAt(step)),
        start,
        span.handsOff(),
        span.end(),
        fill,
        step.machines(),
        weighings.of(make, step, fill, tubs),
        last ? stored(make) : List.of(),
        step.cautions(),
        allergens(make, index),
        links,
        serves(make),
        make.firstUse(),
        isTonight(make, start),
        late(start));
  }

  /** Allergens of what is in the vessel by then: lines of this step and of those it follows. */
  private SortedSet<String> allergens(Make make, int index) {
    List<Step> steps = make.version().steps();
    Set<String> upstream = new HashSet<>(Set.of(steps.get(index).code()));
    boolean last = index == steps.size() - 1;
    for (int i = index; i >= 0; i--) {
      if (upstream.contains(steps.get(i).code())) {
        upstream.add(steps.get(i).code());
        steps.get(i).after().forEach(lag -> upstream.add(lag.step()));
      }
    }
    if (last) {
      return trace.of(make.version()).allergenCodes();
    }
    SortedSet<String> codes = new TreeSet<>();
    make.version().lines().stream()
        .filter(line -> upstream.contains(line.step()))
        .forEach(line -> codes.addAll(trace.of(line.item()).allergenCodes()));
    return codes;
  }

  private Task testPiece(Make make, Step step, Instant start, Instant end, List<Task.Link> links) {
    return new Task(
        make.id() + "/" + step.code() + "/test-piece",
        Task.Kind.TEST_PIECE,
        make,
        step,
        Optional.of(Message.of("task.test-piece")),
        1,
        start,
        end,
        end,
        new Fills.Fill(1, halfgram.measure.Mass.ZERO),
        List.of(),
        List.of(),
        List.of(),
        step.cautions(),
        trace.of(make.version()).allergenCodes(),
        links,
        serves(make),
        make.firstUse(),
        isTonight(make, start),
        late(start));
  }

  private List<Task> freshBaths() {
    Map<String, Make> byId = new HashMap<>();
    explosion.makes().forEach(make -> byId.put(make.id(), make));
    List<Task> tasks = new ArrayList<>();
    for (Baths.Day day : explosion.baths()) {
      for (BathDay.Change change : day.answer().changes()) {
        Make make = byId.get(change.run());
        if (make != null && isShown(change.at())) {
          tasks.add(freshBath(make, change));
        }
      }
    }
    return tasks;
  }

  private Task freshBath(Make make, BathDay.Change change) {
    String code = make.version().dropping().orElseThrow().step();
    Step step = make.version().steps().get(make.version().stepIndex(code));
    Worked worked = explosion.workedOf(make);
    double minutes = worked.bath.orElseThrow().values().number("setUp");
    Instant end = change.at().plusSeconds((long) StrictMath.ceil(minutes * 60));
    String key = change.afterDrop() == 0 ? "task.fresh-bath-first" : "task.fresh-bath";
    Task.Link during =
        new Task.Link(
            make.id() + "/" + code + "/test-piece",
            Duration.ZERO,
            Optional.empty(),
            new Reason(Reason.Kind.QUALITY, change.rule().key()));
    return new Task(
        make.id() + "/" + code + "/bath-" + change.fresh(),
        Task.Kind.FRESH_BATH,
        make,
        step,
        Optional.of(
            Message.of(
                key,
                change.fresh(),
                change.old(),
                change.afterDrop(),
                change.pieces(),
                Message.of(change.rule().key()))),
        1,
        change.at(),
        end,
        end,
        new Fills.Fill(1, halfgram.measure.Mass.ZERO),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new TreeSet<>(),
        change.afterDrop() == 0 ? List.of() : List.of(during),
        serves(make),
        make.firstUse(),
        false,
        late(change.at()));
  }

  /** A tub out of the freezer; what it comes to is put away like what is made. */
  private Task thaw(Thaw thaw) {
    Make make = thaw.make();
    Timeline.Span span = make.timeline().steps().get(0);
    return new Task(
        thaw.taskId(),
        Task.Kind.THAW,
        make,
        make.version().steps().get(0),
        Optional.of(Message.of("task.thaw", thaw.tub().code(), book.placeName(thaw.tub().place()))),
        1,
        span.start(),
        span.handsOff(),
        span.end(),
        new Fills.Fill(1, halfgram.measure.Mass.ZERO),
        List.of(),
        List.of(),
        List.of(stored(thaw)),
        List.of(),
        trace.of(book.formulary().get(thaw.tub().component())).allergenCodes(),
        List.of(),
        List.copyOf(thaw.users()),
        make.firstUse(),
        isTonight(make, span.start()),
        late(span.start()));
  }

  private Stored stored(Thaw thaw) {
    return new Stored(
        Paths.store(thaw.make(), thaw.output(), "made"),
        thaw.output(),
        thaw.amount(),
        thaw.make().needed(0),
        thaw.tub().container().map(this::container),
        thaw.tub().container().isEmpty() ? List.of() : List.of(thaw.amount()),
        thaw.make().useBy(0),
        Optional.empty(),
        Optional.empty());
  }

  private Duration late(Instant start) {
    return start.isBefore(request.asOf()) ? Duration.between(start, request.asOf()) : Duration.ZERO;
  }

  private boolean isTonight(Make make, Instant start) {
    LocalDate day = book.kitchen().clock().of(start);
    boolean laterDay = book.kitchen().clock().of(make.firstUse()).isAfter(day);
    if (!laterDay) {
      return false;
    }
    Instant closes = book.kitchen().open(day).end();
    Duration evening = Duration.between(start, closes);
    return make.version().evening() || evening.compareTo(EVENING) <= 0;
  }

  /** What is done so late for another day is tonight's work. */
  private static final Duration EVENING = Duration.ofHours(3);

  private static List<String> serves(Make make) {
    SortedSet<String> users = new TreeSet<>();
    make.served().forEach(need -> users.add(need.user()));
    return List.copyOf(users);
  }

  private List<Stored> stored(Make make) {
    List<Stored> stored = new ArrayList<>();
    for (int i = 0; i < make.version().outputs().size(); i++) {
      Output output = make.version().outputs().get(i);
      Amount made = make.scaled().output(i);
      stored.add(
          new Stored(
              Paths.store(make, output, "made"),
              output,
              made,
              make.needed(i),
              output.container().map(this::container),
              Stored.fills(output, made),
              useBys.of(make, i).useBy(),
              useBys.of(make, i).because(),
              useBys.safe(make, i)));
    }
    return stored;
  }

  private Container container(String code) {
    return java.util.Objects.requireNonNull(book.containers().get(code));
  }
}
