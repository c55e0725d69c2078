package halfgram.prep;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.netting.Draw;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.SphereBath;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The scaled, timed prep sheet of some days' work.
 *
 * @param allServices of the whole horizon, by their start
 * @param makes every make the horizon needs, those begun first, then users before what they use
 * @param begun the makes among them that the plan found begun, copied as they stood
 * @param tasks of the days shown, in the order of their start
 * @param draws what tubs give and to whom
 * @param thaws frozen tubs that are pulled for somebody, and those pulled already
 * @param awaited tasks that weigh what comes with a delivery of their day
 * @param contacts work for diets that shares kit with what they go without
 * @param runs runs of spheres of the days shown
 * @param baths what happens to the baths, by day
 * @param misfits what does not fit; empty: it fits by lags
 * @param warnings worth a look, nothing is broken
 * @param pulls ingredients to pull for the tasks, before trim, grams by code
 */
public record PrepSheet(
    PlanRequest request,
    List<ServiceRun> allServices,
    List<Make> makes,
    List<Begun> begun,
    List<Task> tasks,
    List<Draw> draws,
    List<Thaw> thaws,
    List<Awaited> awaited,
    List<Contact> contacts,
    List<BathRun> runs,
    List<BathSheet> baths,
    List<Misfit> misfits,
    List<Message> warnings,
    SortedMap<String, Amount> pulls) {

  /** One day of one bath formula. */
  public record BathSheet(String formula, LocalDate day, BathDay.Answer answer) {}

  /** A sheet of days of which nobody has asked what work they hold. */
  public static PrepSheet none(PlanRequest request) {
    return new PrepSheet(
        request,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new TreeMap<>());
  }

  /** The same without what should have been done before it and has not been done yet. */
  public PrepSheet withoutTasksBefore(Instant moment) {
    List<Task> left = tasks.stream().filter(task -> !task.start().isBefore(moment)).toList();
    if (left.size() == tasks.size()) {
      return this;
    }
    Set<String> ids = left.stream().map(Task::id).collect(Collectors.toSet());
    Set<String> tested =
        left.stream()
            .filter(task -> task.kind() == Task.Kind.TEST_PIECE)
            .map(task -> task.make().id())
            .collect(Collectors.toSet());
    return new PrepSheet(
        request,
        allServices,
        makes,
        begun,
        left,
        draws,
        thaws,
        awaited.stream().filter(one -> ids.contains(one.task().id())).toList(),
        contacts.stream().filter(one -> ids.contains(one.free().id())).toList(),
        runs.stream().filter(run -> tested.contains(run.make().id())).toList(),
        baths,
        misfits,
        warnings,
        Pulls.of(left, services()));
  }

  /** The services of the days shown. */
  public List<ServiceRun> services() {
    return allServices.stream()
        .filter(run -> !run.date().isBefore(request.from()) && !run.date().isAfter(request.last()))
        .toList();
  }

  /** The make begun that is still to fill a tub; empty for a tub in store. */
  public Optional<Begun> findBegun(Lot lot) {
    return begun.stream().filter(of -> of.make().id().equals(lot.code())).findFirst();
  }

  /** The tub that a task pulls from the freezer. */
  public Optional<Thaw> findThaw(Task task) {
    return thaws.stream().filter(one -> one.make().id().equals(task.make().id())).findFirst();
  }

  /** What nothing in the whole horizon takes from a tub, first expired first; none frozen. */
  public Map<Lot, Amount> leftTubs(KitchenBook book) {
    Map<Lot, Amount> left = new LinkedHashMap<>();
    book.lots().stream()
        .filter(lot -> !lot.isFrozen())
        .sorted(Comparator.comparing(Lot::useBy).thenComparing(Lot::code))
        .forEach(lot -> left.put(lot, lot.left()));
    draws.forEach(draw -> left.computeIfPresent(draw.lot(), (l, was) -> was.minus(draw.amount())));
    left.values().removeIf(amount -> !amount.isPositive());
    return left;
  }

  /**
   * A make that sets in a bath.
   *
   * @param allergens that its pieces leave there
   */
  public record BathRun(Make make, SphereBath bath, SortedSet<String> allergens) {

    /** Its numbers by name, with their units. */
    public SortedMap<String, String> numbers() {
      return bath.numbers(make.scaled().formed());
    }
  }

  /** Hands-on time by station code, of the tasks shown. */
  public SortedMap<String, Duration> loads(KitchenBook book) {
    SortedMap<String, Duration> loads = new TreeMap<>();
    book.stations().keySet().forEach(station -> loads.put(station, Duration.ZERO));
    tasks.stream()
        .filter(task -> !task.isInRun())
        .forEach(task -> loads.merge(task.station(), task.handsOn(), Duration::plus));
    return loads;
  }

  /** The tasks of the sheet that a task comes after. */
  public List<Task> before(Task task) {
    Set<String> ids = task.links().stream().map(Task.Link::task).collect(Collectors.toSet());
    return tasks.stream().filter(one -> ids.contains(one.id())).toList();
  }

  /** The deliveries that a task takes from. */
  public List<Awaited> awaited(Task task) {
    return awaited.stream().filter(one -> one.task().id().equals(task.id())).toList();
  }

  /** What a task for a diet shares kit with. */
  public List<Contact> contacts(Task task) {
    return contacts.stream().filter(one -> one.free().id().equals(task.id())).toList();
  }

  public boolean fits() {
    return misfits.isEmpty();
  }

  /** What this evening does for later days. */
  public List<Task> tonight() {
    return tasks.stream().filter(Task::tonight).toList();
  }
}
