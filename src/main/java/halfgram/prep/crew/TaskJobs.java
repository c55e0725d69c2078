package halfgram.prep.crew;

import halfgram.measure.BusinessDay;
import halfgram.prep.Awaited;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.schedule.Between;
import halfgram.prep.schedule.Cook;
import halfgram.prep.schedule.Job;
import halfgram.prep.schedule.Machine;
import halfgram.prep.schedule.Prices;
import halfgram.prep.schedule.Workday;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Makes jobs of tasks. */
final class TaskJobs {
  private final KitchenBook book;
  private final PrepSheet sheet;
  final DayFacts facts;
  final Slots slots;
  final int count;
  private final Cooks cooks;
  final PlatingJobs platings;
  private final Cook.Span closed;
  private final int over;
  private final List<Machine> machines;
  private final Map<String, Integer> machineOf = new HashMap<>();
  private final Room room;
  final Washes washes = new Washes();
  final List<Job> jobs = new ArrayList<>();
  final List<Between> lags = new ArrayList<>();
  private final List<Question.Part> parts = new ArrayList<>();
  final Map<String, Integer> jobOf = new HashMap<>();
  final Map<String, Integer> lastOf = new HashMap<>();

  /** From when a task is over by the clock until its last slot is, by its id; under a few slots. */
  final Map<String, Duration> slack = new HashMap<>();

  TaskJobs(KitchenBook book, PrepSheet sheet, DayFacts facts) {
    this.book = book;
    this.sheet = sheet;
    this.facts = facts;
    BusinessDay clock = book.kitchen().clock();
    slots = Slots.startingAt(first(clock));
    LocalDate last = sheet.request().last();
    Instant end = clock.start(last.plusDays(1));
    over = slots.up(end);
    count = Math.max(over, slots.up(lastEnd(end)));
    Attendance there = new Attendance(book, facts, slots, over);
    cooks = new Cooks(book, there.cooks());
    platings = new PlatingJobs(this, cooks);
    int closes = Math.max(0, slots.up(book.kitchen().open(last).end()));
    closed = new Cook.Span(Math.min(count, closes), count);
    machines = there.machines();
    for (int m = 0; m < machines.size(); m++) {
      machineOf.put(machines.get(m).id(), m);
    }
    room = new Room(book, sheet, slots, count);
  }

  /**
   * When the kitchen opens, or now, if that is earlier; or when the first of what is begun or done
   * was: everything has its slot.
   */
  private Instant first(BusinessDay clock) {
    Instant first = book.kitchen().open(sheet.request().from()).start();
    first = facts.now().isBefore(first) ? facts.now() : first;
    Instant day = clock.start(sheet.request().from());
    first = first.isBefore(day) ? day : first;
    for (Task task : sheet.tasks()) {
      TaskProgress progress = facts.progress().getOrDefault(task.id(), TaskProgress.NONE);
      Instant since = progress.onIt().map(TaskProgress.OnIt::since).orElse(first);
      Instant done = progress.doneAt().orElse(first).minus(Slots.SLOT);
      Instant earlier = since.isBefore(done) ? since : done;
      first = earlier.isBefore(first) ? earlier : first;
    }
    return first;
  }

  /** What stands over night ends on the next day. */
  private Instant lastEnd(Instant over) {
    Instant last = over;
    for (Task task : sheet.tasks()) {
      Instant end = Underway.of(task, facts).map(Underway::end).orElse(task.end());
      last = end.isAfter(last) ? end : last;
    }
    return last;
  }

  /** All of it, with what was added. */
  Question question(List<Cook.Span> rushes) {
    Workday day =
        new Workday(
            count,
            jobs,
            lags,
            cooks.all(),
            machines,
            room.spaces(),
            washes.cleans(),
            rushes,
            Prices.USUAL);
    return new Question(slots, day, List.copyOf(parts), List.copyOf(platings.all()));
  }

  void add(Task task) {
    TaskProgress progress = facts.progress().getOrDefault(task.id(), TaskProgress.NONE);
    switch (progress.state()) {
      case DONE -> done(task, progress);
      case FAILED -> {}
      case ON_IT, PART_DONE, PROBLEM, TO_DO -> {
        Optional<Underway> on = Underway.of(task, facts);
        if (on.isPresent()) {
          onIt(task, on.get(), progress.onIt().orElseThrow().cook());
        } else {
          toDo(task);
        }
      }
    }
  }

  /** Nobody is needed any more; what comes after counts from when it was done. */
  private void done(Task task, TaskProgress progress) {
    Instant at = progress.doneAt().orElse(facts.now());
    int end = slots.up(at);
    Job ghost =
        new Job(
            task.id(),
            0,
            0,
            0,
            1,
            List.of(),
            List.of(),
            List.of(),
            washes.none(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(Job.Spot.of(end - 1, List.of())));
    jobOf.put(task.id(), jobs.size());
    lastOf.put(task.id(), jobs.size());
    slack.put(task.id(), Duration.between(at, slots.at(end)));
    jobs.add(ghost);
  }

  private void onIt(Task task, Underway on, String by) {
    int at = slots.down(on.since());
    boolean still = on.handsOff().isAfter(on.since());
    int hands = still ? slots.up(on.handsOff()) - at : 0;
    Instant out = on.end().minus(unload(task));
    boolean unloads = out.isAfter(facts.now()) && out.isBefore(on.end());
    int alone = slots.up(unloads ? out : on.end()) - at - hands;
    List<Integer> who = still ? cooks.known(List.of(by)) : List.of();
    Duration handsOn = Duration.between(on.since(), on.handsOff());
    Duration stands = Duration.between(on.handsOff(), on.end());
    int unload = unloads ? Slots.up(unload(task)) : 0;
    Size size = new Size(handsOn, stands, hands, Math.max(0, alone), unload, at);
    put(task, size, Optional.of(who), Optional.of(on.since()));
    slack.put(
        task.id(), unloads ? rest(task) : Duration.between(on.end(), slots.at(at + size.slots())));
  }

  private void toDo(Task task) {
    Duration handsOn = handsOn(task).plus(facts.more().getOrDefault(task.id(), Duration.ZERO));
    DayFacts.Pin pin = facts.pins().get(task.id());
    Optional<List<Integer>> who = Optional.empty();
    int at = -1;
    if (pin != null) {
      at = slots.down(pin.start());
      who = Optional.of(cooks.known(pin.people()));
    }
    Duration unload = unload(task);
    int alone = Slots.up(task.unattended().minus(unload));
    Duration stands = task.unattended();
    Size size = new Size(handsOn, stands, Slots.up(handsOn), alone, Slots.up(unload), at);
    put(task, size, who, Optional.empty());
    Duration rest = Slots.length(size.slots()).minus(handsOn.plus(stands));
    slack.put(task.id(), unload.isZero() ? rest : rest(task));
  }

  /**
   * How long a task takes, and where it stays; -1: nowhere in particular.
   *
   * @param unattended how long it stands, hands at the end of it included
   * @param alone slots of it without them
   * @param unload slots of hands at its end
   */
  private record Size(
      Duration handsOn, Duration unattended, int hands, int alone, int unload, int at) {
    /** A task of no length takes a slot. */
    int slots() {
      return Math.max(1, hands + alone) + unload;
    }
  }

  /** What is left of the last slot when it has been taken out. */
  private static Duration rest(Task task) {
    return Slots.length(Slots.up(unload(task))).minus(unload(task));
  }

  /** Hands-on time at the end of what stands, part of it. */
  static Duration unload(Task task) {
    Duration unload = task.kind() == Task.Kind.STEP ? task.step().unload() : Duration.ZERO;
    return unload.compareTo(task.unattended()) <= 0 ? unload : Duration.ZERO;
  }

  /** Spells of long work by hand, the last with what stands after it. */
  private static List<Integer> spells(Task task, Size size) {
    int hands = size.hands();
    boolean whole = !task.machines().isEmpty() || size.at() >= 0 || hands < LONG;
    int count = whole ? 1 : (hands + SPELL - 1) / SPELL;
    List<Integer> spells = new ArrayList<>();
    for (int k = 0; k < count; k++) {
      spells.add(hands * (k + 1) / count - hands * k / count);
    }
    return spells;
  }

  private static final int LONG = Slots.up(Duration.ofMinutes(60));
  private static final int SPELL = Slots.up(Duration.ofMinutes(40));

  /** A spell may wait for the next as long as a break and a line-up take. */
  private static final int PAUSE = Slots.up(Duration.ofMinutes(60));

  private void put(Task task, Size size, Optional<List<Integer>> who, Optional<Instant> begun) {
    boolean own = size.hands() > 0 && !task.isInRun();
    int needed = own && !cooks.isEmpty() ? task.hands() : 0;
    Optional<Job.Spot> fixed = who.map(some -> Job.Spot.of(size.at(), some));
    boolean last = size.unload() == 0;
    List<Integer> spells = spells(task, size);
    List<Integer> made = new ArrayList<>();
    for (int k = 0; k < spells.size(); k++) {
      boolean end = k == spells.size() - 1;
      int hands = spells.get(k);
      int stands = end ? size.alone() : 0;
      made.add(jobs.size());
      jobs.add(
          new Job(
              k == 0 ? task.id() : task.id() + "#" + (k + 1),
              earliest(task),
              needed,
              hands,
              hands + stands == 0 ? 1 : stands,
              needed == 0 ? List.of() : cooks.able(task.station()),
              uses(task),
              end && last ? room.keeps(task) : List.of(),
              washes.of(task),
              end && last ? due(task) : Optional.empty(),
              before(task, k, spells.size()),
              fixed));
      if (k > 0) {
        int index = made.get(k);
        lags.add(new Between(index - 1, index, 0, OptionalInt.of(PAUSE), true, 1));
      }
    }
    int index = made.get(made.size() - 1);
    jobOf.put(task.id(), made.get(0));
    lastOf.put(task.id(), index);
    OptionalInt out = last ? OptionalInt.empty() : OptionalInt.of(jobs.size());
    parts.add(
        new Question.Part(
            task.id(), made, size.handsOn(), size.unattended(), out, unload(task), begun));
    if (!last) {
      unload(task, size.unload(), index);
    }
  }

  /** Hands that take it out, right when its stand is over. */
  private void unload(Task task, int slots, int after) {
    int index = jobs.size();
    int needed = cooks.isEmpty() ? 0 : 1;
    List<Integer> who = new ArrayList<>(cooks.able(task.station()));
    if (this.slots.up(task.end()) > over) {
      who.add(cooks.nextMorning(task.id(), closed));
    }
    jobs.add(
        new Job(
            task.id() + "/unload",
            0,
            needed,
            slots,
            0,
            needed == 0 ? List.of() : who,
            List.of(),
            room.keeps(task),
            washes.none(),
            due(task),
            out(task),
            Optional.empty()));
    int held = Slots.down(unload(task));
    lags.add(new Between(after, index, 0, OptionalInt.of(0), true, 1, held));
    lastOf.put(task.id(), index);
  }

  /** Whoever was to take it out. */
  private Optional<Job.Spot> out(Task task) {
    return Optional.ofNullable(facts.before().get(task.id()))
        .flatMap(Placed::unload)
        .map(
            hands ->
                new Job.Spot(
                    Math.max(0, slots.down(hands.from())), cooks.known(hands.people()), List.of()));
  }

  private static Duration handsOn(Task task) {
    return Duration.between(task.start(), task.handsOff());
  }

  private int earliest(Task task) {
    int first = Math.max(0, slots.up(facts.now()));
    for (Awaited one : sheet.awaited(task)) {
      first = Math.max(first, one.from().map(slots::up).orElse(count));
    }
    return Math.min(first, count);
  }

  private List<Job.Use> uses(Task task) {
    return task.machines().stream()
        .filter(use -> machineOf.containsKey(use.equipment()))
        .map(
            use ->
                new Job.Use(
                    machineOf.getOrDefault(use.equipment(), 0),
                    1,
                    switch (use.during()) {
                      case STEP -> Job.During.WHOLE;
                      case HANDS -> Job.During.HANDS;
                      case ALONE -> Job.During.ALONE;
                    }))
        .toList();
  }

  /** By lags alone it must have ended then; the sooner it is eaten, the fresher it is wanted. */
  private Optional<Job.Due> due(Task task) {
    int at = slots.down(task.end());
    boolean keeps =
        task.stored().stream().anyMatch(one -> one.output().hold().max().compareTo(KEEPS_LONG) > 0);
    OptionalInt fresh = keeps ? OptionalInt.empty() : OptionalInt.of(FRESH);
    return Optional.of(new Job.Due(at, 1, fresh, task.stored().isEmpty() ? 0 : SLACK));
  }

  private static final Duration KEEPS_LONG = Duration.ofHours(36);
  private static final int FRESH = Slots.up(Duration.ofMinutes(30));
  private static final int SLACK = Slots.up(Duration.ofMinutes(15));

  /** Where a spell was; of another number of spells, only the first: the others follow it. */
  private Optional<Job.Spot> before(Task task, int spell, int spells) {
    return Optional.ofNullable(facts.before().get(task.id()))
        .filter(placed -> spell == 0 || placed.spells().size() == spells)
        .map(
            placed -> {
              boolean same = placed.spells().size() == spells;
              Placed.Hands hands =
                  same
                      ? placed.spells().get(spell)
                      : new Placed.Hands(placed.start(), placed.handsOff(), placed.people());
              return new Job.Spot(
                  Math.max(0, slots.down(hands.from())),
                  cooks.known(hands.people()).stream().limit(task.hands()).toList(),
                  placed.machines().stream().map(unit -> unit.number() - 1).toList());
            });
  }
}
