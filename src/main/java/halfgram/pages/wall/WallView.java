package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.desk.Changes;
import halfgram.desk.Services;
import halfgram.kitchen.Kitchen;
import halfgram.pages.MissedLines;
import halfgram.prep.Missed;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.station.Person;
import halfgram.words.Dots;
import halfgram.words.Messages;
import halfgram.words.NightWords;
import halfgram.words.PlatingWords;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * What the wall of a station shows.
 *
 * @param cooks who is on shift
 * @param clock the time, and as milliseconds for a script that keeps it
 * @param led at the pass, services whose pages it is led to
 * @param behind how far behind; empty when on time
 * @param said something to say in place, such as that a task is gone
 * @param missed what last night has left undone here
 * @param outs what there is none of today
 * @param calls courses called about now, and where a chef is wanted
 * @param past what is still open of services that are over
 */
record WallView(
    String station,
    boolean isMany,
    String name,
    String cooks,
    String cook,
    Clock clock,
    Optional<Next> next,
    List<Led> led,
    long done,
    int all,
    String behind,
    String said,
    MissedLines missed,
    Optional<Strip> changed,
    List<String> outs,
    Calls calls,
    TimerRows.Rows timers,
    Optional<After> after,
    Optional<Hand> hand,
    List<String> secondGo,
    Beside beside,
    List<PastRow> past,
    Optional<AtBaths> atBaths,
    Optional<AtBaths.After> bathAfter,
    Optional<AtGate> atGate,
    List<AtGate.Held> held) {

  /** Whether the task in hand waits for a go, so that nobody can say it is done. */
  public boolean isGateOpen() {
    return atGate.filter(AtGate::open).isPresent();
  }

  /** The time, in the kitchen's zone. */
  record Clock(String time, long millis, String zone, boolean halfDay) {
    static Clock of(Scene scene) {
      return new Clock(
          scene.words().time(scene.now()),
          scene.now().toEpochMilli(),
          scene.book().kitchen().clock().zone().getId(),
          scene.words().hours() == Kitchen.Hours.TWELVE);
    }
  }

  /** A service whose page there is a way to, as it runs, or as something of it was not entered. */
  record Led(String id, String said, boolean runs) {}

  /**
   * The next fire of a service that runs, or the next service when that is sooner or none runs; and
   * how long until then.
   *
   * @param said what is counted down to
   */
  record Next(String id, String left, long millis, String said) {}

  /**
   * What was just done, to be undone: the tubs it filled, what came short, and what went in of what
   * is kept for somebody else.
   */
  record After(
      String task,
      String what,
      String tick,
      long sequence,
      List<String> tubs,
      List<String> shorts,
      List<String> taken) {}

  /**
   * What stands beside the task in hand and has nothing to press: rendered again when it is another
   * than before.
   *
   * @param finished what is done of the station's tasks
   * @param readyFor name of the service that things are ready for
   */
  record Beside(
      List<NextRow> next,
      List<Diets.Row> diets,
      List<NextRow> later,
      String readyFor,
      List<Ready.Row> ready,
      List<BathRows.Row> baths,
      List<NextRow> tonight,
      Finished finished) {
    private static final int FEW = 4;

    /** Whether much is done tonight while the day still has its own work. */
    public boolean isTonightFar() {
      return tonight.size() > FEW && !next.isEmpty();
    }
  }

  /** What is done. */
  record Finished(List<NextRow> done) {}

  private static final int NEAR = 7;

  /** For how long a service is just over. */
  private static final Duration JUST_OVER = Duration.ofHours(2);

  static WallView of(Scene scene, List<Changes.Told> told, Parts parts) {
    List<Task> tasks = scene.tasks();
    Optional<ServiceRun> service = service(scene);
    return new WallView(
        scene.station(),
        scene.isMany(),
        scene.stationName(),
        scene.people().stream().map(Person::name).collect(Collectors.joining(Dots.BETWEEN)),
        scene.cook().map(Person::name).orElse(""),
        Clock.of(scene),
        next(scene, service, parts.services().next()),
        led(scene, parts.services().lacking()),
        tasks.stream().filter(scene::isDone).count(),
        toDo(scene, tasks),
        behind(scene, tasks),
        parts.said(),
        missed(scene, parts.missed()),
        Strip.find(scene, told, parts.hand().map(Hand::id).orElse("")),
        parts.outs(),
        parts.calls(),
        parts.timers(),
        parts.after(),
        parts.hand(),
        parts.secondGo(),
        beside(scene, parts, service),
        parts.past(),
        parts.live().atBaths(),
        parts.live().bathAfter(),
        parts.live().atGate(),
        parts.live().held());
  }

  /** What the page has beyond the plan in force. */
  record Parts(
      String said,
      Optional<After> after,
      Optional<Hand> hand,
      List<halfgram.lot.Tub> stock,
      List<Missed> missed,
      List<String> outs,
      List<String> secondGo,
      Live live,
      Calls calls,
      TimerRows.Rows timers,
      Services.OnWalls services,
      List<PastRow> past) {}

  /** What happens at baths and gates. */
  record Live(
      BathBoard board,
      Optional<AtBaths> atBaths,
      Optional<AtBaths.After> bathAfter,
      Optional<AtGate> atGate,
      List<AtGate.Held> held) {}

  /** What last night has left undone at this station. */
  private static MissedLines missed(Scene scene, List<Missed> missed) {
    NightWords words = new NightWords(scene.book(), scene.inForce().sheet(), scene.words());
    List<String> lines =
        missed.stream()
            .filter(one -> scene.isHere(one.now().station()))
            .map(words::missed)
            .toList();
    String station = scene.isMany() ? "" : scene.station();
    return MissedLines.of(lines, scene.day(), station);
  }

  /** The next service to begin, else the one that runs. */
  private static Optional<ServiceRun> service(Scene scene) {
    List<ServiceRun> runs = scene.inForce().sheet().services();
    return runs.stream()
        .filter(run -> run.window().start().isAfter(scene.now()))
        .findFirst()
        .or(
            () ->
                runs.stream()
                    .filter(run -> run.window().end().isAfter(scene.now()))
                    .reduce((one, other) -> other));
  }

  private static Optional<Next> next(
      Scene scene, Optional<ServiceRun> service, Optional<Services.Near> fire) {
    return fire.filter(
            near ->
                service
                    .map(run -> run.window().start())
                    .filter(start -> start.isAfter(scene.now()))
                    .filter(start -> !start.isAfter(near.fire().fire().at()))
                    .isEmpty())
        .map(near -> next(scene, near))
        .or(() -> service.map(run -> next(scene, run)));
  }

  /** Only the pass is led to them: elsewhere there is work on the wall. */
  private static List<Led> led(Scene scene, List<ServiceRun> lacking) {
    List<Led> led = new ArrayList<>();
    if (!scene.station().equals("pass")) {
      return led;
    }
    scene.inForce().sheet().services().stream()
        .filter(run -> !run.window().start().isAfter(scene.now()))
        .filter(run -> !run.isOver(scene.now()))
        .forEach(run -> led.add(led(scene, "wall.run-now", run, true)));
    lacking.stream()
        .filter(run -> run.window().end().isAfter(scene.now().minus(JUST_OVER)))
        .forEach(run -> led.add(led(scene, "wall.run-over", run, false)));
    return led;
  }

  private static Led led(Scene scene, String said, ServiceRun run, boolean runs) {
    Messages words = scene.words();
    return new Led(run.id(), words.say(said, words.text(run.name())), runs);
  }

  private static Next next(Scene scene, ServiceRun run) {
    Messages words = scene.words();
    String name = words.text(run.name());
    return new Next(
        run.id(),
        until(scene, run.window().start()),
        run.window().start().toEpochMilli(),
        run.covers().isPresent()
            ? words.say("wall.to-covers", name, String.valueOf(run.covers().getAsInt()))
            : words.say("wall.to", name));
  }

  private static Next next(Scene scene, Services.Near near) {
    Messages words = scene.words();
    Instant at = near.fire().fire().at();
    String name = words.text(near.run().name());
    String fire = PlatingWords.fire(words, near.fire().fire());
    return new Next(
        near.run().id(),
        until(scene, at),
        at.toEpochMilli(),
        words.say("wall.to-fire", name, fire));
  }

  private static String until(Scene scene, Instant at) {
    Duration left = Duration.between(scene.now(), at);
    return left.isNegative() ? scene.words().say("wall.now") : scene.words().duration(left);
  }

  /** By how much the task that is furthest behind its latest start, or end, is late. */
  private static String behind(Scene scene, List<Task> tasks) {
    Duration most = Duration.ZERO;
    for (Task task : tasks) {
      TaskState state = scene.progress(task).state();
      Instant due = state == TaskState.TO_DO ? task.start() : task.handsOff();
      Duration late = Duration.between(due, scene.now());
      boolean counts = !scene.isOver(task) && !scene.isPast(task);
      most = counts && late.compareTo(most) > 0 ? late : most;
    }
    return most.toMinutes() < 1 ? "" : scene.words().duration(most);
  }

  /** How many there are to do, done ones too; what is lost is not to do. */
  private static int toDo(Scene scene, List<Task> tasks) {
    return (int) tasks.stream().filter(task -> !scene.isFailed(task)).count();
  }

  private static Beside beside(Scene scene, Parts parts, Optional<ServiceRun> service) {
    String hand = parts.hand().map(Hand::id).orElse("");
    List<NextRow> open = new ArrayList<>();
    List<NextRow> tonight = new ArrayList<>();
    List<NextRow> done = new ArrayList<>();
    for (Task task : scene.tasks()) {
      if (task.id().equals(hand) || scene.isPast(task)) {
        continue;
      }
      List<NextRow> into = task.tonight() ? tonight : open;
      (scene.isOver(task) ? done : into).add(NextRow.of(scene, task));
    }
    int near = Math.min(NEAR, open.size());
    return new Beside(
        open.subList(0, near),
        new Diets(scene).list(),
        open.subList(near, open.size()),
        service.map(run -> scene.words().text(run.name())).orElse(""),
        service.map(run -> new Ready(scene, parts.stock()).list(run)).orElse(List.of()),
        new BathRows(scene, parts.live().board()).list(),
        tonight,
        new Finished(done));
  }

  /** Stations to choose from. */
  record Stations(List<Door> doors, Map<String, String> languages, String language) {
    /** One station: how far it is. */
    record Door(String code, String name, long done, int all, String cooks) {}

    static Stations of(
        Scene all, Map<String, String> languages, String many, Predicate<String> shows) {
      List<Door> doors = new ArrayList<>();
      List<String> codes = new ArrayList<>(all.house().book().stations().keySet());
      codes.add(many);
      codes.removeIf(shows.negate());
      for (String code : codes) {
        Scene scene =
            Scene.of(
                all.house(),
                all.inForce(),
                all.crew(),
                all.roll(),
                code,
                all.cook(),
                all.words(),
                all.now());
        List<Task> tasks = scene.tasks();
        doors.add(
            new Door(
                code,
                scene.stationName(),
                tasks.stream().filter(scene::isDone).count(),
                toDo(scene, tasks),
                scene.people().stream()
                    .map(Person::name)
                    .collect(Collectors.joining(Dots.BETWEEN))));
      }
      return new Stations(doors, new TreeMap<>(languages), all.words().language());
    }
  }

  /**
   * Who works here.
   *
   * @param waiting what goes on when somebody is chosen, field by field
   */
  record Who(
      String station, String name, List<One> here, List<One> others, Map<String, String> waiting) {
    /** A person to choose. */
    record One(String code, String name) {}

    static Who of(Scene scene, Map<String, String> waiting) {
      List<Person> here = scene.people();
      List<One> others =
          scene.house().book().people().stream()
              .filter(person -> !here.contains(person))
              .map(person -> new One(person.code(), person.name()))
              .toList();
      return new Who(
          scene.station(),
          scene.stationName(),
          here.stream().map(person -> new One(person.code(), person.name())).toList(),
          others,
          waiting);
    }
  }
}
