package halfgram.pages.wall;

import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Services;
import halfgram.pages.OutWords;
import halfgram.pages.StationNames;
import halfgram.prep.Awaited;
import halfgram.prep.KitchenBook;
import halfgram.prep.PastWork;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Waiting;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.Placed;
import halfgram.station.Crew;
import halfgram.station.Person;
import halfgram.station.Station;
import halfgram.web.Visit;
import halfgram.words.Dots;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import halfgram.words.TurnWords;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A station at a moment: the plan in force there, in the words of the device.
 *
 * @param station code of the station, of several "cold.pastry", or {@link #ALL}
 * @param cook who works on the device
 * @param awaited tasks that weigh what a delivery brings, by the deliveries of now
 * @param crew who does what when; empty where nobody worked it out
 * @param roll who is in and which machines work, by what was said
 * @param past makes all of whose services are over, with those
 */
record Scene(
    House house,
    InForce inForce,
    Optional<CrewPlan> crew,
    Crew roll,
    String station,
    Optional<Person> cook,
    Messages words,
    SheetWords names,
    Map<String, Task> byId,
    List<Awaited> awaited,
    Map<String, List<ServiceRun>> past,
    Instant now) {
  /** Every station at once. */
  static final String ALL = StationNames.ALL;

  static Scene of(
      House house,
      InForce inForce,
      Optional<CrewPlan> crew,
      Crew roll,
      String station,
      Optional<Person> cook,
      Messages spoken,
      Instant now) {
    Messages words = spoken.at(house.book().kitchen());
    SheetWords names = new SheetWords(inForce.book(), inForce.sheet(), words);
    List<Awaited> awaited = Awaited.of(house.book(), inForce.sheet());
    return new Scene(
        house,
        inForce,
        crew,
        roll,
        station,
        cook,
        words,
        names,
        inForce.byId(),
        awaited,
        PastWork.of(
            inForce.sheet(), now, task -> inForce.progress(task).state() != TaskState.TO_DO),
        now);
  }

  /** The same with this cook at the device. */
  Scene by(Person person) {
    return new Scene(
        house,
        inForce,
        crew,
        roll,
        station,
        Optional.of(person),
        words,
        names,
        byId,
        awaited,
        past,
        now);
  }

  /** The same under another plan of the day, of which nobody knows any more who does what. */
  Scene under(InForce other) {
    return of(house, other, Optional.empty(), roll, station, cook, words, now);
  }

  KitchenBook book() {
    return inForce.book();
  }

  LocalDate day() {
    return inForce.plan().day();
  }

  /** Whether it is more than one station. */
  boolean isMany() {
    return StationNames.isMany(station);
  }

  boolean isHere(String code) {
    return station.equals(ALL) || StationNames.list(station).contains(code);
  }

  /** The station's tasks in the order of their planned start. */
  List<Task> tasks() {
    return inForce.sheet().tasks().stream()
        .filter(task -> isHere(task.station()))
        .sorted(Comparator.comparing(this::start).thenComparing(Task::start))
        .toList();
  }

  /** Where a task is in the day, when it has a place. */
  Optional<Placed> place(Task task) {
    return crew.flatMap(plan -> plan.find(task.id()));
  }

  /** When it is planned to start; the latest start where it has no place. */
  Instant start(Task task) {
    return place(task).map(Placed::start).orElse(task.start());
  }

  /** Since when a task should be begun that nobody has begun; empty for any other. */
  String late(Task task) {
    boolean late = progress(task).state() == TaskState.TO_DO && task.start().isBefore(now);
    return late ? words.say("wall.late", time(task.start())) : "";
  }

  /**
   * When a task will stand no longer: as it was begun, else as it is planned; empty for one that
   * should be begun and is not.
   */
  Optional<Instant> end(Task task) {
    Duration whole = Duration.between(task.start(), task.end());
    TaskProgress of = progress(task);
    if (of.begun().isPresent()) {
      return of.begun().map(at -> at.plus(whole));
    }
    return late(task).isEmpty() ? Optional.of(start(task).plus(whole)) : Optional.empty();
  }

  /** How long it stands by itself, and to when where that is known. */
  String stands(Task task) {
    return end(task)
        .map(end -> words.say("sheet.unattended", task.unattended(), time(end)))
        .orElseGet(() -> words.say("wall.unattended", task.unattended()));
  }

  /** Who is to do it, or that the plan has no place for it; empty where nobody said. */
  String planned(Task task) {
    return place(task)
        .map(placed -> TurnWords.said(words, placed, this::person, this::time))
        .orElseGet(() -> hasNoPlace(task) ? noPlace(task) : "");
  }

  private String noPlace(Task task) {
    return late(task).isEmpty()
        ? words.say("wall.no-place-by", time(task.start()))
        : words.say("wall.no-place");
  }

  /** Whether who does what was worked out, and it was left over. */
  boolean hasNoPlace(Task task) {
    return crew.filter(plan -> plan.leftOut().contains(task.id())).isPresent();
  }

  /** Where the station's wall is. */
  String wall() {
    return "wall/" + Visit.encoded(station);
  }

  /** What a task has come to, by its id. */
  TaskProgress progress(String task) {
    return inForce.progress().getOrDefault(task, TaskProgress.NONE);
  }

  TaskProgress progress(Task task) {
    return inForce.progress(task);
  }

  boolean isDone(Task task) {
    return progress(task).state() == TaskState.DONE;
  }

  boolean isFailed(Task task) {
    return progress(task).state() == TaskState.FAILED;
  }

  /** What of a task, or of what is still to go into it, came short, and who goes without. */
  List<String> cameShort(Task task) {
    return inForce.listShort(now).stream()
        .filter(
            of -> isOver(task) ? of.task().equals(task) : of.without().contains(task.make().id()))
        .map(names::cameShort)
        .toList();
  }

  /** Whether there is nothing more to do about it. */
  boolean isOver(Task task) {
    return isDone(task) || isFailed(task);
  }

  /** Whether it is still open and all it is for is over. */
  boolean isPast(Task task) {
    return past.containsKey(task.make().id()) && !isOver(task);
  }

  List<Waiting> waits(Task task) {
    return Waiting.of(task, byId, inForce.progress(), awaited, now);
  }

  String stationName() {
    return StationNames.list(station).stream()
        .map(this::stationName)
        .collect(Collectors.joining(", "));
  }

  String stationName(String code) {
    Station found = house.book().stations().get(code);
    return found == null ? words.say("wall.all-stations") : words.text(found.name());
  }

  /** A time; with its weekday when it is on another day. */
  String time(Instant at) {
    return book().kitchen().clock().of(at).equals(day()) ? words.time(at) : words.dayTime(at);
  }

  /** What is done in a task, without what it is done to. */
  String step(Task task) {
    String title = names.title(task);
    String name = words.text(task.version().name()) + ", ";
    return title.startsWith(name) ? title.substring(name.length()) : title;
  }

  /** What somebody is called. */
  String person(String code) {
    return house.book().personName(code);
  }

  /** Who is on shift here today, the station's own people. */
  List<Person> people() {
    return house.book().people().stream()
        .filter(of -> station.equals(ALL) || of.stations().stream().anyMatch(this::isHere))
        .filter(person -> !person.on(day()).isZero())
        .toList();
  }

  /** The word for what a task has come to; one that nobody started may wait, with a problem too. */
  String state(Task task) {
    boolean waits = progress(task).beneath() == TaskState.TO_DO && !canStart(task);
    return switch (progress(task).state()) {
      case TO_DO -> waits ? words.say("wall.state.waits") : words.say("wall.state.to-do");
      case ON_IT -> words.say("wall.state.on-it");
      case PART_DONE -> words.say("wall.state.part-done");
      case DONE -> words.say("wall.state.done");
      case PROBLEM ->
          waits
              ? Dots.join(List.of(words.say("wall.state.problem"), words.say("wall.state.waits")))
              : words.say("wall.state.problem");
      case FAILED -> words.say("wall.state.failed");
    };
  }

  /** Whether nothing that has to come first is lacking, and no machine. */
  boolean canStart(Task task) {
    return waits(task).isEmpty() && new Lacking(this, task).isReady();
  }

  /** What a task waits for and what it lacks, in words. */
  List<String> waitsFor(Task task) {
    List<String> said = new ArrayList<>(new Lacking(this, task).list());
    waits(task).stream()
        .map(
            wait ->
                wait.<String>fold(
                    of -> waitsFor(task, of.task()),
                    until ->
                        words.say(
                            "wall.waits-until", names.title(until.task()), time(until.moment())),
                    delivery -> waitsFor(delivery.awaited())))
        .forEach(said::add);
    return said;
  }

  /** Of the same make the step says it all. */
  private String waitsFor(Task task, Task other) {
    return other.make().id().equals(task.make().id())
        ? words.say("wall.waits-step", step(other))
        : words.say("wall.waits-for", names.title(other));
  }

  /** The name of an event, as long as it is there. */
  String event(String code) {
    return house.book().findEvent(code).map(event -> words.text(event.name())).orElse(code);
  }

  /** "WAITS for delivery of sea trout (Nordsund): 14:10". */
  private String waitsFor(Awaited wait) {
    List<String> names =
        wait.ingredients().stream()
            .map(code -> words.text(book().ingredient(code).name()))
            .toList();
    String supplier = wait.delivery().supplier();
    return wait.from()
        .map(
            from ->
                words.say(
                    wait.stand().isHere() ? "wall.waits-check-in" : "wall.waits-delivery",
                    names,
                    supplier,
                    time(from)))
        .orElseGet(() -> words.say("wall.waits-turned-away", names, supplier));
  }

  /** What there is none of today, at the services that show on walls. */
  List<String> outs(Services.OnWalls services) {
    OutWords said = new OutWords(house().book(), words());
    return services.outages().stream().map(said::said).toList();
  }
}
