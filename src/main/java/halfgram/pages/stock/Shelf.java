package halfgram.pages.stock;

import halfgram.book.Moments;
import halfgram.desk.Coming;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.event.RegularService;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Output;
import halfgram.kitchen.Text;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Dated;
import halfgram.pages.WhyLink;
import halfgram.prep.Make;
import halfgram.prep.Paths;
import halfgram.prep.PrepSheet;
import halfgram.prep.Resting;
import halfgram.prep.TaskState;
import halfgram.prep.netting.Draw;
import halfgram.station.Container;
import halfgram.words.Messages;
import halfgram.words.SheetWords;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The house as the pages of stock see it: its names, the moment, and what the plan of today takes
 * from which tub.
 */
final class Shelf {
  private final House house;
  private final Instant now;
  private final String root;
  private final Messages words;
  private final SheetWords names;
  private final Map<String, List<Draw>> draws = new HashMap<>();
  private final Map<String, Amount> free = new HashMap<>();
  private final Optional<InForce> planned;
  private final boolean planless;
  private final Map<String, String> people = new HashMap<>();
  private final Map<String, String> events = new HashMap<>();

  /**
   * @param sheet the plan in force, else what it would be
   * @param planned the plan in force on the day of this moment
   * @param root where the kitchen's addresses begin
   * @param words in whose language names are said
   */
  Shelf(
      House house,
      Instant now,
      PrepSheet sheet,
      Optional<InForce> planned,
      String root,
      Messages words) {
    this.house = house;
    this.now = now;
    this.root = root;
    this.words = words.at(house.book().kitchen());
    this.names = new SheetWords(house.book(), sheet, this.words);
    this.planless = planned.isEmpty();
    this.planned = planned;
    planned.ifPresent(this::take);
    house.book().people().forEach(person -> people.put(person.code(), person.name()));
    house.book().allEvents().forEach(one -> events.put(one.code(), this.words.text(one.name())));
  }

  private void take(InForce inForce) {
    PrepSheet sheet = inForce.sheet();
    Set<Draw> taken = new HashSet<>();
    sheet.tasks().stream()
        .filter(task -> inForce.progress(task).state() == TaskState.DONE)
        .flatMap(task -> task.weigh().stream())
        .flatMap(group -> group.lines().stream())
        .forEach(line -> taken.addAll(line.tubs()));
    sheet.draws().stream()
        .filter(draw -> sheet.findBegun(draw.lot()).isEmpty() && !taken.contains(draw))
        .forEach(
            draw -> draws.computeIfAbsent(draw.lot().code(), code -> new ArrayList<>()).add(draw));
    inForce.book().lots().forEach(lot -> free.put(lot.code(), Amount.zero(lot.left().dimension())));
    sheet.leftTubs(inForce.book()).forEach((lot, amount) -> free.put(lot.code(), amount));
  }

  Messages words() {
    return words;
  }

  /** Names of what a tub carries that its formula no longer does, in the reader's language. */
  List<String> beyondFormula(Lot lot) {
    AllergenTrace trace = new AllergenTrace(formulary(), house.book()::ingredient);
    Contains more = lot.known().beyond(trace.of(formulary().get(lot.component())).contains());
    List<String> said = new ArrayList<>();
    more.allergens().forEach(code -> said.add(names.allergen(code)));
    said.addAll(more.tags());
    return said;
  }

  SheetWords names() {
    return names;
  }

  House house() {
    return house;
  }

  Instant now() {
    return now;
  }

  Formulary formulary() {
    return house.book().formulary();
  }

  BusinessDay clock() {
    return house.book().kitchen().clock();
  }

  LocalDate today() {
    return house.day(now);
  }

  /** What the plan has still to take from a tub, by who takes it. */
  Map<String, Amount> takers(String code) {
    return draws.getOrDefault(code, List.of()).stream()
        .collect(
            Collectors.toMap(
                draw -> draw.need().user(), Draw::amount, Amount::plus, LinkedHashMap::new));
  }

  /** Where the plan says why it takes so much of a tub for somebody. */
  String why(String code, String user) {
    return draws.getOrDefault(code, List.of()).stream()
        .filter(draw -> draw.need().user().equals(user))
        .findFirst()
        .map(Paths::tub)
        .flatMap(
            path -> planned.map(of -> WhyLink.of(root, of.plan().day(), of.plan().number(), path)))
        .orElse("");
  }

  /** From when a tub may be used; empty when it may. */
  Optional<Instant> notBefore(Lot lot) {
    return Resting.notBefore(house.book().formulary(), lot, now);
  }

  /** A date as it is read now: with its year when it is far. */
  String date(Instant moment) {
    return words.moment(moment, now);
  }

  /** The same for a place of a sentence. */
  Dated dated(Instant moment) {
    return Dated.of(moment, now, clock().zone());
  }

  /** When the plan of today pulls a frozen tub, and for whom. */
  Optional<String> pull(Lot lot) {
    return planned.stream()
        .flatMap(of -> of.sheet().thaws().stream())
        .filter(thaw -> thaw.tub().code().equals(lot.code()))
        .map(
            thaw ->
                words.say(
                    "stock.pulled",
                    thaw.pull(),
                    names.amount(thaw.make().needed(0)),
                    names.user(thaw.make().service(), today())))
        .findFirst();
  }

  /** What the plan of today still makes of an output and nobody has begun. */
  Optional<Amount> makes(ComponentRef ref) {
    return planned.map(of -> makes(of, ref));
  }

  private Amount makes(InForce inForce, ComponentRef ref) {
    Output output = output(ref);
    Amount sum = Amount.zero(output.unit());
    for (Make make : inForce.sheet().makes()) {
      boolean begun =
          inForce.sheet().tasks().stream()
              .filter(task -> task.make().id().equals(make.id()))
              .anyMatch(task -> inForce.progress(task).state() != TaskState.TO_DO);
      if (make.version().formula().equals(ref.formula()) && !begun) {
        for (int i = 0; i < make.version().outputs().size(); i++) {
          Output made = make.version().outputs().get(i);
          boolean same = made.code().equals(output.code()) && made.unit() == output.unit();
          sum = same ? sum.plus(make.scaled().output(i)) : sum;
        }
      }
    }
    return sum;
  }

  /** What is on the way today. */
  List<Coming> coming() {
    return planned.map(of -> Coming.list(of, now)).orElse(List.of());
  }

  Optional<InForce> planned() {
    return planned;
  }

  /** Whether today has no plan yet, so that nobody knows what is taken. */
  boolean isPlanless() {
    return planless;
  }

  /** What nothing takes from a tub; empty for one the plan does not know. */
  Optional<Amount> free(String code) {
    return Optional.ofNullable(free.get(code));
  }

  Text placeName(String place) {
    return house.book().placeName(place);
  }

  String person(String code) {
    return code.equals(Movement.CLOCK) ? words.say("log.clock") : people.getOrDefault(code, code);
  }

  String event(String code) {
    return events.getOrDefault(code, code);
  }

  /** Whether a tub is past its date on the day of an event that it is kept for. */
  boolean isKeptInVain(Lot lot, String event) {
    return house.book().isKeptInVain(lot, event);
  }

  /** A service by the id of its run: its event, or the regular one with its date. */
  String run(String id) {
    int dot = id.lastIndexOf('.');
    String before = dot < 0 ? id : id.substring(0, dot);
    RegularService regular = house.book().services().get(before);
    Optional<LocalDate> date =
        Optional.ofNullable(regular).flatMap(of -> Moments.date(id.substring(dot + 1)));
    return date.isPresent() && regular != null
        ? words.text(regular.name()) + ", " + words.date(date.get())
        : events.getOrDefault(id, event(before));
  }

  String container(Optional<String> code) {
    return code.map(
            one ->
                Optional.ofNullable(house.book().containers().get(one))
                    .map(Container::name)
                    .map(words::text)
                    .orElse(one))
        .orElse("");
  }

  String address(String rest) {
    return root + rest;
  }

  /** Whether another tub holds the same, so that they could be put together. */
  boolean isSame(Lot lot, Lot other) {
    return !other.code().equals(lot.code())
        && other.component().formula().equals(lot.component().formula())
        && output(other.component()).code().equals(output(lot.component()).code())
        && other.isFrozen() == lot.isFrozen()
        && other.useBy().isAfter(now);
  }

  /** The output that a tub holds, as its formula says today. */
  Output output(ComponentRef ref) {
    FormulaVersion version =
        house.book().formulary().get(new ComponentRef(ref.formula(), ref.output(), ref.version()));
    return version.outputs().get(version.outputIndex(ref.output()));
  }
}
