package halfgram.prep.crew;

import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.schedule.Cook;
import halfgram.prep.schedule.project.Network;
import halfgram.station.Equipment;
import halfgram.station.Person;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * The stretch in which each task must lie, by lags, and what is too much for a stretch: work of a
 * station for its people, and of machines for their units. Only work that lies wholly inside a
 * stretch counts, so what is told is true; it is not all there may be to tell.
 */
final class Stretches {
  private static final int NAMED = 4;

  /** So many minutes later a service is looked at, in such steps. */
  private static final int MOST_LATER = 600;

  private static final int LATER_STEP = 5;

  /** Work that needs something from its first possible start to its last possible end. */
  record Load(Task task, int head, int tail, int work) {}

  private final KitchenBook book;
  private final TaskTimes net;
  private final Set<String> explained;
  private final int[] head;
  private final int[] tail;
  private final Slots slots;
  private final List<Cook> cooks;
  private final Supply supply;

  Stretches(
      KitchenBook book,
      PrepSheet sheet,
      DayFacts facts,
      CrewPlan plan,
      Map<String, Integer> lateBy,
      Network.Times times,
      TaskTimes net,
      Set<String> explained) {
    this.book = book;
    this.net = net;
    this.explained = explained;
    head = times.all();
    tail = tails(lateBy);
    slots = Slots.startingAt(net.start());
    int count =
        Math.max(1, slots.up(book.kitchen().clock().start(sheet.request().last().plusDays(1))));
    Attendance there = new Attendance(book, facts, slots, count);
    cooks = there.cooks();
    supply = new Supply(book, plan, slots, net.start(), there);
  }

  /** Last possible ends, in minutes, by node. */
  private int[] tails(Map<String, Integer> lateBy) {
    int[] last = new int[net.tasks.size() + 1];
    for (Task task : net.tasks) {
      last[net.node(task)] =
          (int) Reasons.minutes(net.start(), task.end()) + lateBy.getOrDefault(task.id(), 0);
    }
    for (int round = 0; round < net.tasks.size(); round++) {
      boolean moved = false;
      for (Task task : net.tasks) {
        int start = last[net.node(task)] - TaskTimes.minutes(TaskTimes.whole(task));
        for (Task.Link link : task.links()) {
          for (Task other : net.tasks) {
            int most = start - TaskTimes.minutes(link.min());
            if (other.id().equals(link.task()) && most < last[net.node(other)]) {
              last[net.node(other)] = most;
              moved = true;
            }
          }
        }
      }
      if (!moved) {
        break;
      }
    }
    for (Task task : net.tasks) {
      int node = net.node(task);
      last[node] = Math.max(last[node], head[node] + TaskTimes.minutes(TaskTimes.whole(task)));
    }
    return last;
  }

  private static int hands(Task task) {
    return TaskTimes.minutes(Duration.between(task.start(), task.handsOff()));
  }

  /** The window of a task's hands: it may start then, and they must be off by then. */
  private Load handsOf(Task task) {
    int node = net.node(task);
    int alone = TaskTimes.minutes(task.unattended());
    return new Load(task, head[node], tail[node] - alone, hands(task) * task.hands());
  }

  /** The window in which it is taken out at its end. */
  private Load unloadOf(Task task) {
    int node = net.node(task);
    int out = TaskTimes.minutes(TaskJobs.unload(task));
    int stands = TaskTimes.minutes(TaskTimes.whole(task)) - out;
    return new Load(task, head[node] + stands, tail[node], out);
  }

  private static boolean isTakenOut(Task task) {
    return !TaskJobs.unload(task).isZero();
  }

  /** Nobody works at a station: who of those there works at none is told beside it. */
  private Message nobodyAt(Object station, Task task) {
    List<String> idle =
        book.people().stream()
            .filter(person -> person.stations().isEmpty())
            .map(Person::name)
            .toList();
    return idle.isEmpty()
        ? Message.of("nofit.nobody", TaskTimes.name(task), station)
        : Message.of("nofit.nobody-idle", TaskTimes.name(task), station, String.join(", ", idle));
  }

  /** Nobody can work the station, or none of them is there long enough in its stretch. */
  Optional<NoFit> nobody(Task task, Levers levers) {
    boolean begins = hands(task) > 0;
    boolean none = !begins && !isTakenOut(task);
    if (explained.contains(task.id()) || cooks.isEmpty() || none) {
      return Optional.empty();
    }
    Load load = begins ? handsOf(task) : unloadOf(task);
    int needed = begins ? task.hands() : 1;
    int spell = begins ? spell(task) : Slots.up(TaskJobs.unload(task));
    Instant from = net.moment(load.head());
    Instant to = net.moment(load.tail());
    int there = 0;
    boolean any = false;
    for (int c = 0; c < cooks.size(); c++) {
      if (book.people().get(c).stations().contains(task.station())) {
        any = true;
        there += longest(cooks.get(c), from, to) >= spell ? 1 : 0;
      }
    }
    if (there >= needed) {
      return Optional.empty();
    }
    Object station = levers.station(task.station());
    Message what =
        any
            ? Message.of("nofit.nobody-then", TaskTimes.name(task), station, from, to, needed)
            : nobodyAt(station, task);
    Duration missing = Duration.ofMinutes(load.work());
    return Optional.of(
        new NoFit(
            NoFit.Kind.NOBODY,
            what,
            missing,
            List.of(),
            levers.hands(task.station(), from, to, missing),
            List.of(task.id())));
  }

  /** Slots that somebody has to be there for without a break. */
  private static int spell(Task task) {
    int hands = Slots.up(Duration.between(task.start(), task.handsOff()));
    return task.machines().isEmpty() ? Math.min(hands, Slots.up(Duration.ofMinutes(40))) : hands;
  }

  private int longest(Cook cook, Instant from, Instant to) {
    int first = Math.max(0, slots.down(from));
    int last = slots.up(to);
    return cook.here().stream()
        .mapToInt(span -> Math.min(last, span.to()) - Math.max(first, span.from()))
        .max()
        .orElse(0);
  }

  /** Pairs of tasks for the only unit of a machine whose lags leave room for neither order. */
  List<NoFit> bothAtOnce(Levers levers) {
    List<NoFit> found = new ArrayList<>();
    for (Map.Entry<String, List<Load>> entry : byMachine().entrySet()) {
      if (supply.units(entry.getKey()) != 1) {
        continue;
      }
      List<Load> loads = entry.getValue();
      for (int i = 0; i < loads.size(); i++) {
        for (int k = i + 1; k < loads.size(); k++) {
          int short1 = shortBy(loads.get(i), loads.get(k));
          int short2 = shortBy(loads.get(k), loads.get(i));
          if (short1 > 0 && short2 > 0) {
            found.add(
                pair(entry.getKey(), loads.get(i), loads.get(k), Math.min(short1, short2), levers));
          }
        }
      }
    }
    return found;
  }

  private NoFit pair(String machine, Load one, Load other, int missing, Levers levers) {
    Duration shortBy = Duration.ofMinutes(missing);
    List<Message> help = new ArrayList<>();
    help.add(Message.of("lever.unit", name(machine)));
    boolean otherFirst = shortBy(other, one) <= shortBy(one, other);
    Load first = otherFirst ? other : one;
    Load second = otherFirst ? one : other;
    Optional<Message> less = later(machine, first, second, levers);
    less.ifPresent(help::add);
    if (less.isEmpty() || !levers.service(one.task()).equals(levers.service(other.task()))) {
      later(machine, second, first, levers).ifPresent(help::add);
    }
    return new NoFit(
        NoFit.Kind.BOTH_AT_ONCE,
        Message.of(
            "nofit.both",
            TaskTimes.name(one.task()),
            TaskTimes.name(other.task()),
            name(machine),
            shortBy),
        shortBy,
        List.of(stretch(one), stretch(other)),
        help,
        List.of(one.task().id(), other.task().id()));
  }

  /** The later service of the second of two, where the machine then has time for both. */
  private Optional<Message> later(String machine, Load first, Load second, Levers levers) {
    int by = shortBy(first, second);
    return supply.machine(machine, first.head(), second.tail() + by) < first.work() + second.work()
        ? Optional.empty()
        : levers.later(second.task(), Duration.ofMinutes(by));
  }

  private Message stretch(Load load) {
    return Message.of(
        "nofit.stretch",
        TaskTimes.name(load.task()),
        Duration.ofMinutes(load.work()),
        net.moment(load.head()),
        net.moment(load.tail()));
  }

  /** Minutes that are missing to do one before the other. */
  private static int shortBy(Load first, Load second) {
    return first.head() + first.work() + second.work() - second.tail();
  }

  /** The worst stretch of each machine and each station. */
  List<NoFit> tooMuch(Levers levers) {
    List<NoFit> found = new ArrayList<>();
    byMachine()
        .forEach(
            (machine, loads) ->
                Worst.of(loads, (from, to) -> supply.machine(machine, from, to))
                    .ifPresent(worst -> found.add(ofMachine(machine, worst, levers))));
    byStation()
        .forEach(
            (station, loads) ->
                Worst.of(loads, (from, to) -> supply.hands(station, from, to))
                    .ifPresent(worst -> found.add(ofStation(station, worst, levers))));
    found.sort(Comparator.comparing(NoFit::shortBy).reversed());
    return found;
  }

  private NoFit ofMachine(String machine, Worst worst, Levers levers) {
    List<Message> help = new ArrayList<>();
    help.add(Message.of("lever.unit", name(machine)));
    largest(worst)
        .flatMap(
            load ->
                later(load.task(), worst, (from, to) -> supply.machine(machine, from, to), levers))
        .ifPresent(help::add);
    return tooMuch("nofit.too-much-machine", name(machine), worst, help);
  }

  private NoFit ofStation(String station, Worst worst, Levers levers) {
    Duration missing = Duration.ofMinutes((long) worst.needed() - worst.there());
    List<Message> help =
        new ArrayList<>(
            levers.hands(station, net.moment(worst.from()), net.moment(worst.to()), missing));
    largest(worst)
        .flatMap(
            load ->
                later(load.task(), worst, (from, to) -> supply.hands(station, from, to), levers))
        .ifPresent(help::add);
    return tooMuch("nofit.too-much-hands", levers.station(station), worst, help);
  }

  private static Optional<Load> largest(Worst worst) {
    return worst.loads().stream().max(Comparator.comparingInt(Load::work));
  }

  /**
   * The service of a task as much later as removes what is too much: what is for others must have
   * room as it is, and all of it in the longer stretch.
   */
  private static Optional<Message> later(
      Task task, Worst worst, Worst.Capacity capacity, Levers levers) {
    int others =
        worst.loads().stream()
            .filter(load -> !levers.service(load.task()).equals(levers.service(task)))
            .mapToInt(Load::work)
            .sum();
    if (others > worst.there()) {
      return Optional.empty();
    }
    for (int by = worst.needed() - worst.there(); by <= MOST_LATER; by += LATER_STEP) {
      if (capacity.minutes(worst.from(), worst.to() + by) >= worst.needed()) {
        return levers.later(task, Duration.ofMinutes(by));
      }
    }
    return Optional.empty();
  }

  private NoFit tooMuch(String key, Object of, Worst worst, List<Message> help) {
    Duration missing = Duration.ofMinutes((long) worst.needed() - worst.there());
    List<Load> largest =
        worst.loads().stream()
            .sorted(Comparator.comparingInt(Load::work).reversed())
            .limit(NAMED)
            .toList();
    return new NoFit(
        NoFit.Kind.TOO_MUCH,
        Message.of(
            key,
            of,
            Duration.ofMinutes(worst.needed()),
            net.moment(worst.from()),
            net.moment(worst.to()),
            Duration.ofMinutes(worst.there())),
        missing,
        largest.stream().map(this::stretch).toList(),
        help,
        worst.loads().stream().map(load -> load.task().id()).distinct().toList());
  }

  /** Those of which nothing was told yet: the stretch of one that was is not its own. */
  private List<Task> open() {
    return net.tasks.stream().filter(task -> !explained.contains(task.id())).toList();
  }

  private Map<String, List<Load>> byMachine() {
    Map<String, List<Load>> loads = new TreeMap<>();
    for (Task task : open()) {
      int node = net.node(task);
      task.machines()
          .forEach(
              use -> {
                int work =
                    switch (use.during()) {
                      case STEP -> TaskTimes.minutes(TaskTimes.whole(task));
                      case HANDS -> hands(task);
                      case ALONE -> TaskTimes.minutes(task.unattended());
                    };
                loads
                    .computeIfAbsent(use.equipment(), any -> new ArrayList<>())
                    .add(new Load(task, head[node], tail[node], work));
              });
    }
    return loads;
  }

  private Map<String, List<Load>> byStation() {
    Map<String, List<Load>> loads = new TreeMap<>();
    if (cooks.isEmpty()) {
      return loads;
    }
    for (Task task : open()) {
      if (hands(task) > 0) {
        loads.computeIfAbsent(task.station(), any -> new ArrayList<>()).add(handsOf(task));
      }
      if (isTakenOut(task)) {
        loads.computeIfAbsent(task.station(), any -> new ArrayList<>()).add(unloadOf(task));
      }
    }
    return loads;
  }

  private Object name(String machine) {
    Equipment equipment = book.equipment().get(machine);
    return equipment == null ? machine : equipment.name();
  }
}
