package halfgram.pages.today;

import halfgram.desk.CrewInForce;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.Services;
import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.pages.WhyLink;
import halfgram.prep.Awaited;
import halfgram.prep.KitchenBook;
import halfgram.prep.PastWork;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.crew.Placed;
import halfgram.station.Person;
import halfgram.station.Station;
import halfgram.web.Visit;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import halfgram.words.TaskWords;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;

/**
 * A day that is being shown: its sheet with what has come of it, the moment, the addresses and the
 * names. Everything on the page is put into words from one of these.
 */
final class Shown {
  /** How the day lies to now. */
  enum Phase {
    OVER,
    NOW,
    AHEAD,
    /** A day ahead for which nobody has put a plan in force. */
    PREVIEW
  }

  private final KitchenBook book;
  private final PrepSheet sheet;
  private final Map<String, TaskProgress> progress;
  private final Optional<CrewInForce> crew;
  private final Optional<Plans.Proposal> preview;
  private final String plan;
  private final Phase phase;
  private final Instant now;
  private final String root;
  private final Messages words;
  private final SheetWords names;
  private final TaskWords parts;
  private final List<Awaited> awaited;
  private final Set<String> past;
  private final Set<String> there;
  private final Map<String, Task> byId = new HashMap<>();
  private final Map<String, String> people = new HashMap<>();
  private final SortedMap<String, Duration> loads;

  private Shown(
      KitchenBook book,
      PrepSheet sheet,
      Map<String, TaskProgress> progress,
      Optional<CrewInForce> crew,
      Optional<Plans.Proposal> preview,
      String plan,
      Phase phase,
      List<Awaited> awaited,
      Instant now,
      KitchenBook reads,
      Visit visit) {
    this.book = book;
    this.sheet = sheet;
    this.progress = progress;
    this.crew = crew;
    this.preview = preview;
    this.plan = plan;
    this.phase = phase;
    this.now = now;
    this.root = visit.path("");
    this.words = visit.words().at(reads.kitchen());
    this.names = new SheetWords(book, sheet, words);
    this.parts = new TaskWords(book, words);
    this.awaited = awaited;
    this.past =
        phase == Phase.NOW
            ? PastWork.of(sheet, now, task -> progress(task).state() != TaskState.TO_DO).keySet()
            : Set.of();
    this.there = Services.onDay(reads, sheet.request().from());
    this.loads = sheet.loads(book);
    sheet.begun().forEach(begun -> begun.tasks().forEach(task -> byId.put(task.id(), task)));
    sheet.tasks().forEach(task -> byId.put(task.id(), task));
    book.people().forEach(person -> people.put(person.code(), person.name()));
  }

  /** A plan in force, with the deliveries as they stand now. */
  static Shown of(
      House house, InForce inForce, Optional<CrewInForce> crew, Instant now, Visit visit) {
    LocalDate day = inForce.plan().day();
    LocalDate today = inForce.book().kitchen().clock().of(now);
    Phase phase = day.isBefore(today) ? Phase.OVER : day.equals(today) ? Phase.NOW : Phase.AHEAD;
    String plan = day + "/" + inForce.plan().number();
    List<Awaited> awaited = Awaited.of(house.book(), inForce.sheet());
    return new Shown(
        inForce.book(),
        inForce.sheet(),
        inForce.progress(),
        crew,
        Optional.empty(),
        plan,
        phase,
        awaited,
        now,
        house.book(),
        visit);
  }

  static Shown preview(Plans.Proposal preview, Instant now, Visit visit) {
    String plan = preview.sheet().request().from() + "/" + WhyLink.PREVIEW;
    return new Shown(
        preview.book(),
        preview.sheet(),
        Map.of(),
        Optional.empty(),
        Optional.of(preview),
        plan,
        Phase.PREVIEW,
        preview.sheet().awaited(),
        now,
        preview.book(),
        visit);
  }

  KitchenBook book() {
    return book;
  }

  PrepSheet sheet() {
    return sheet;
  }

  LocalDate day() {
    return sheet.request().from();
  }

  Phase phase() {
    return phase;
  }

  Instant now() {
    return now;
  }

  Messages words() {
    return words;
  }

  SheetWords names() {
    return names;
  }

  TaskWords parts() {
    return parts;
  }

  /** Tasks that weigh what a delivery brings, by the deliveries of now. */
  List<Awaited> awaited() {
    return awaited;
  }

  List<Awaited> awaited(Task task) {
    return awaited.stream().filter(one -> one.task().id().equals(task.id())).toList();
  }

  /** Whether the book still has a service of the sheet, on its day. */
  boolean isThere(ServiceRun run) {
    return !run.date().equals(day()) || there.contains(run.id());
  }

  /** Whether it is still open and all it is for is over. */
  boolean isPast(Task task) {
    TaskState state = progress(task).state();
    return past.contains(task.make().id()) && state != TaskState.DONE && state != TaskState.FAILED;
  }

  Map<String, Task> byId() {
    return byId;
  }

  Map<String, TaskProgress> progress() {
    return progress;
  }

  TaskProgress progress(Task task) {
    return progress.getOrDefault(task.id(), TaskProgress.NONE);
  }

  /** Who does what when, where it was worked out. */
  Optional<CrewInForce> crew() {
    return crew;
  }

  /** Where a task is in the day; nothing once it is over. */
  Optional<Placed> planned(Task task) {
    TaskState state = progress(task).state();
    return state == TaskState.DONE || state == TaskState.FAILED
        ? Optional.empty()
        : crew.flatMap(one -> one.plan().find(task.id()));
  }

  /** What nobody has put in force; empty of a plan in force. */
  Optional<Plans.Proposal> preview() {
    return preview;
  }

  /** When it is planned to start; the latest start where it has no place. */
  Instant start(Task task) {
    return planned(task).map(Placed::start).orElse(task.start());
  }

  /**
   * How long it stands, and to when: as it was begun, else as it is planned; of what is over, not.
   */
  String stands(Task task) {
    TaskProgress of = progress(task);
    if (of.state() == TaskState.DONE || of.state() == TaskState.FAILED) {
      return words.say("wall.unattended", task.unattended());
    }
    Duration whole = Duration.between(task.start(), task.end());
    Instant end =
        of.begun()
            .map(at -> at.plus(whole))
            .or(() -> planned(task).map(Placed::end))
            .orElse(task.end());
    return words.say("sheet.unattended", task.unattended(), time(end));
  }

  Duration load(Station station) {
    return loads.getOrDefault(station.code(), Duration.ZERO);
  }

  BusinessDay clock() {
    return book.kitchen().clock();
  }

  /** What a person is called; somebody the book does not know by the code. */
  String person(String code) {
    return people.getOrDefault(code, code);
  }

  /** Who is on shift and works at a station. */
  List<Person> people(Station station) {
    return book.people().stream()
        .filter(person -> person.stations().contains(station.code()))
        .filter(person -> !person.on(day()).isZero())
        .toList();
  }

  /** A time; with the weekday when it belongs to another day. */
  String time(Instant instant) {
    return clock().of(instant).equals(day()) ? words.time(instant) : words.dayTime(instant);
  }

  String text(Text text) {
    return words.text(text);
  }

  /** Where the why of a number of this plan is said. */
  String why(String path) {
    return WhyLink.of(root, plan, path);
  }

  /** Where the why of a number of what a plan of this day would become is said. */
  String whyProposed(int number, String path) {
    return WhyLink.ofProposed(root, day(), number, path);
  }

  /** Where a task stands on its own. */
  String link(Task task) {
    return root + "task?date=" + day() + "&id=" + Visit.encoded(task.id());
  }

  /** Address of the page of a day. */
  String dayLink(LocalDate other) {
    return root + "?date=" + other;
  }

  /** An address in this kitchen. */
  String address(String rest) {
    return root + rest;
  }
}
