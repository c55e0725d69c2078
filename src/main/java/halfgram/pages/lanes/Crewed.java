package halfgram.pages.lanes;

import halfgram.desk.CrewInForce;
import halfgram.desk.House;
import halfgram.desk.WhatIf;
import halfgram.kitchen.Kitchen;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.crew.CrewPlan;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Outlook;
import halfgram.prep.crew.Placed;
import halfgram.station.Equipment;
import halfgram.station.Person;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A day on people and machines that is being shown: with the moment, the words and the names. */
final class Crewed {
  private final WhatIf.Day of;
  private final boolean today;
  private final Instant now;
  private final String root;
  private final Messages words;
  private final SheetWords names;
  private final Map<String, Task> byId = new HashMap<>();
  private final Map<String, String> people = new HashMap<>();
  private final List<Bar> bars;
  private final List<Errand> errands;

  /**
   * @param reads in whose units and by whose clock
   * @param today whether it is the day of now
   */
  private Crewed(WhatIf.Day of, Kitchen reads, boolean today, Instant now, Visit visit) {
    this.of = of;
    this.today = today;
    this.now = now;
    this.root = visit.path("");
    this.words = visit.words().at(reads);
    this.names = new SheetWords(book(), sheet(), words);
    sheet().begun().forEach(begun -> begun.tasks().forEach(task -> byId.put(task.id(), task)));
    sheet().tasks().forEach(task -> byId.put(task.id(), task));
    for (Person person : book().people()) {
      people.put(person.code(), person.name());
    }
    this.bars = Bar.list(this);
    this.errands = Errand.list(this);
  }

  static Crewed of(WhatIf.Day of, House house, Instant now, Visit visit) {
    boolean today = of.outlook().sheet().request().from().equals(house.day(now));
    return new Crewed(of, house.book().kitchen(), today, now, visit);
  }

  KitchenBook book() {
    return of.outlook().book();
  }

  PrepSheet sheet() {
    return of.outlook().sheet();
  }

  Outlook outlook() {
    return of.outlook();
  }

  /** Whether a better one is still looked for. */
  boolean isRough() {
    return of.crew().filter(CrewInForce::isRough).isPresent();
  }

  CrewPlan crew() {
    return of.outlook().crew();
  }

  /** Whether it is in force, so that tasks of it can be put elsewhere. */
  boolean canMove() {
    return of.crew().isPresent() && !day().isBefore(clock().of(now));
  }

  DayFacts facts() {
    return of.facts();
  }

  LocalDate day() {
    return sheet().request().from();
  }

  BusinessDay clock() {
    return book().kitchen().clock();
  }

  boolean isToday() {
    return today;
  }

  Instant now() {
    return now;
  }

  Messages words() {
    return words;
  }

  /** What is drawn, in the order of its start. */
  List<Bar> bars() {
    return bars;
  }

  /** What takes hands beside the tasks, in the order it starts. */
  List<Errand> errands() {
    return errands;
  }

  Optional<Bar> bar(String task) {
    return bars.stream().filter(bar -> bar.task().id().equals(task)).findFirst();
  }

  Optional<Task> find(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  TaskProgress progress(Task task) {
    return of.facts().progress().getOrDefault(task.id(), TaskProgress.NONE);
  }

  String title(Task task) {
    return names.title(task);
  }

  SheetWords names() {
    return names;
  }

  /** What somebody is called; whom the book does not know by the code. */
  String person(String code) {
    return people.getOrDefault(code, code);
  }

  /** One of several machines by its number, the only one by its name. */
  String machine(Placed.Unit unit) {
    Equipment equipment = book().equipment().get(unit.equipment());
    if (equipment == null) {
      return unit.equipment();
    }
    String name = words.text(equipment.name());
    return equipment.units() == 1 ? name : words.say("lanes.unit", name, unit.number());
  }

  String station(String code) {
    return words.text(
        Optional.ofNullable(book().stations().get(code))
            .map(halfgram.station.Station::name)
            .orElse(halfgram.kitchen.Text.of(code)));
  }

  /** A time; with the weekday when it belongs to another day. */
  String time(Instant at) {
    return clock().of(at).equals(day()) ? words.time(at) : words.dayTime(at);
  }

  /** A sentence with its moments as times of this day. */
  String say(Message message) {
    return words.say(timed(message));
  }

  private Message timed(Message message) {
    Object[] args =
        message.args().stream()
            .map(
                arg ->
                    arg instanceof Instant at
                        ? time(at)
                        : arg instanceof Message nested ? timed(nested) : arg)
            .toArray();
    return Message.of(message.key(), args);
  }

  /** Where a task stands on its own among the lanes. */
  String link(Task task) {
    return root
        + "lanes/task?"
        + (today ? "" : "date=" + day() + "&")
        + "id="
        + Visit.encoded(task.id());
  }

  /** Where a service of today is run; of another day, its lanes. */
  String service(String run) {
    return today ? root + "service/" + Visit.encoded(run) : address("?date=" + day());
  }

  /** Where the day is printed. */
  String paper() {
    return root + "paper?date=" + day();
  }

  /** An address among the lanes. */
  String address(String rest) {
    return root + "lanes" + rest;
  }
}
