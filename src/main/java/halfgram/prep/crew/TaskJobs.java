package halfgram.prep.crew;

import halfgram.measure.BusinessDay;
import halfgram.prep.Awaited;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlatingLine;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.schedule.Between;
import halfgram.prep.schedule.Cook;
import halfgram.prep.schedule.Job;
import halfgram.prep.schedule.Machine;
import halfgram.prep.schedule.Prices;
import halfgram.prep.schedule.Workday;
import halfgram.station.Person;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/** Makes jobs of tasks and of plating lines. */
final class TaskJobs {
  private final KitchenBook book;
  private final PrepSheet sheet;
  final DayFacts facts;
  final Slots slots;
  final int count;
  private final List<Cook> cooks;
  private final List<Machine> machines;
  private final Map<String, Integer> cookOf = new HashMap<>();
  private final Map<String, Integer> machineOf = new HashMap<>();
  private final Room room;
  final Washes washes = new Washes();
  final List<Job> jobs = new ArrayList<>();
  final List<Between> lags = new ArrayList<>();
  private final List<Question.Part> parts = new ArrayList<>();
  final Map<String, Integer> jobOf = new HashMap<>();
  final Map<String, Integer> lastOf = new HashMap<>();

  TaskJobs(KitchenBook book, PrepSheet sheet, DayFacts facts) {
    this.book = book;
    this.sheet = sheet;
    this.facts = facts;
    BusinessDay clock = book.kitchen().clock();
    Instant start = book.kitchen().open(sheet.request().from()).start();
    start = facts.now().isBefore(start) ? facts.now() : start;
    Instant first = clock.start(sheet.request().from());
    slots = Slots.startingAt(start.isBefore(first) ? first : start);
    count = slots.up(clock.start(sheet.request().last().plusDays(1)));
    Attendance there = new Attendance(book, facts, slots, count);
    cooks = there.cooks();
    machines = there.machines();
    for (int c = 0; c < cooks.size(); c++) {
      cookOf.put(cooks.get(c).id(), c);
    }
    for (int m = 0; m < machines.size(); m++) {
      machineOf.put(machines.get(m).id(), m);
    }
    room = new Room(book, sheet, slots, count);
  }

  /** All of it, with what was added. */
  Question question(List<Cook.Span> rushes) {
    Workday day =
        new Workday(
            count,
            jobs,
            lags,
            cooks,
            machines,
            room.spaces(),
            washes.cleans(),
            rushes,
            Prices.USUAL);
    return new Question(slots, day, List.copyOf(parts));
  }

  void add(Task task) {
    TaskProgress progress = facts.progress().getOrDefault(task.id(), TaskProgress.NONE);
    switch (progress.state()) {
      case DONE -> done(task, progress);
      case FAILED -> {}
      case ON_IT, PART_DONE, PROBLEM, TO_DO -> {
        if (progress.onIt().isPresent()) {
          onIt(task, progress.onIt().get());
        } else {
          toDo(task);
        }
      }
    }
  }

  /** Nobody is needed any more; what comes after counts from when it was done. */
  private void done(Task task, TaskProgress progress) {
    int end = slots.up(progress.doneAt().orElse(facts.now()));
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
    jobs.add(ghost);
  }

  private void onIt(Task task, TaskProgress.OnIt on) {
    Duration more = facts.more().getOrDefault(task.id(), Duration.ZERO);
    Duration handsOn = handsOn(task).plus(more);
    Instant start = on.since();
    Duration until = Duration.between(start, facts.now());
    boolean still = !handsOn.isZero();
    if (still && handsOn.compareTo(until) <= 0) {
      handsOn = until.plus(Slots.SLOT);
    }
    int at = slots.down(start);
    int hands = Slots.up(handsOn.plus(Duration.between(slots.at(at), start)));
    Optional<Integer> cook = Optional.ofNullable(cookOf.get(on.cook()));
    List<Integer> who = still ? cook.map(List::of).orElse(List.of()) : List.of();
    put(task, new Size(handsOn, hands, at), Optional.of(who), Optional.of(start));
  }

  private void toDo(Task task) {
    Duration handsOn = handsOn(task).plus(facts.more().getOrDefault(task.id(), Duration.ZERO));
    DayFacts.Pin pin = facts.pins().get(task.id());
    Optional<List<Integer>> who = Optional.empty();
    int at = -1;
    if (pin != null) {
      at = slots.down(pin.start());
      who =
          Optional.of(pin.people().stream().filter(cookOf::containsKey).map(cookOf::get).toList());
    }
    put(task, new Size(handsOn, Slots.up(handsOn), at), who, Optional.empty());
  }

  /** How long a task takes, and where it stays; -1: nowhere in particular. */
  private record Size(Duration handsOn, int hands, int at) {}

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
    Duration unload =
        task.kind() == Task.Kind.STEP && task.step().unload().compareTo(task.unattended()) <= 0
            ? task.step().unload()
            : Duration.ZERO;
    int alone = Slots.up(task.unattended().minus(unload));
    int needed = size.hands() == 0 || cooks.isEmpty() ? 0 : task.hands();
    Optional<Job.Spot> fixed = who.map(some -> Job.Spot.of(size.at(), some));
    boolean last = unload.isZero();
    List<Integer> spells = spells(task, size);
    List<Integer> made = new ArrayList<>();
    for (int k = 0; k < spells.size(); k++) {
      boolean end = k == spells.size() - 1;
      int hands = spells.get(k);
      int stands = end ? alone : 0;
      made.add(jobs.size());
      jobs.add(
          new Job(
              k == 0 ? task.id() : task.id() + "#" + (k + 1),
              earliest(task),
              needed,
              hands,
              hands + stands == 0 ? 1 : stands,
              needed == 0 ? List.of() : able(task.station()),
              uses(task),
              end && last ? room.keeps(task) : List.of(),
              washes.of(task),
              end && last ? due(task) : Optional.empty(),
              before(task, k),
              fixed));
      if (k > 0) {
        int index = made.get(k);
        lags.add(new Between(index - 1, index, 0, OptionalInt.of(PAUSE), true, 1));
      }
    }
    int index = made.get(made.size() - 1);
    jobOf.put(task.id(), made.get(0));
    lastOf.put(task.id(), index);
    parts.add(new Question.Part(task.id(), made, size.handsOn(), task.unattended(), begun));
    if (!last) {
      unload(task, unload, index, begun.isPresent());
    }
  }

  /** Hands that take it out, right when its stand is over. */
  private void unload(Task task, Duration unload, int after, boolean begun) {
    int index = jobs.size();
    int needed = cooks.isEmpty() ? 0 : 1;
    jobs.add(
        new Job(
            task.id() + "/unload",
            0,
            needed,
            Slots.up(unload),
            0,
            needed == 0 ? List.of() : able(task.station()),
            List.of(),
            room.keeps(task),
            washes.none(),
            due(task),
            Optional.empty(),
            Optional.empty()));
    lags.add(new Between(after, index, 0, OptionalInt.of(begun ? UNLOAD_LATE : 0), true, 1));
    lastOf.put(task.id(), index);
  }

  /** What stands already may wait a little for the hands that take it out. */
  private static final int UNLOAD_LATE = 2;

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

  private List<Integer> able(String station) {
    List<Integer> able = new ArrayList<>();
    for (int c = 0; c < cooks.size(); c++) {
      Person person = book.people().get(c);
      if (person.stations().contains(station)) {
        able.add(c);
      }
    }
    return able;
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

  /** The first spell where the task was; the others follow it. */
  private Optional<Job.Spot> before(Task task, int spell) {
    return spell > 0
        ? Optional.empty()
        : Optional.ofNullable(facts.before().get(task.id()))
            .map(
                placed ->
                    new Job.Spot(
                        Math.max(0, slots.down(placed.start())),
                        placed.people().stream()
                            .filter(cookOf::containsKey)
                            .map(cookOf::get)
                            .limit(task.hands())
                            .toList(),
                        placed.machines().stream().map(unit -> unit.number() - 1).toList()));
  }

  /** Plating holds its people until the fire. */
  void add(ServiceRun run, PlatingLine line) {
    int from = slots.down(line.start());
    int to = slots.up(line.fire().at());
    Optional<String> station = line.plating().station();
    if (cooks.isEmpty() || from < 0 || to <= from || station.isEmpty()) {
      return;
    }
    jobs.add(
        new Job(
            "plating/" + run.id() + "/" + line.fire().code() + "/" + line.dish().code(),
            from,
            line.plating().people(),
            to - from,
            0,
            able(station.get()),
            List.of(),
            List.of(),
            washes.none(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(Job.Spot.of(from, List.of()))));
  }
}
