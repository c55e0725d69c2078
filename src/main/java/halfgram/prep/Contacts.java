package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.prep.netting.Need;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Puts free-from work first on things that are shared on a day.
 *
 * <p>Rules. By the latest starts, work for a diet may come after work that leaves in a thing what
 * the diet goes without. Then it is told an earlier start, before all of that work, when lags
 * permit: what it waits for is done by then at its own latest times, what follows it is not too far
 * off, what it makes still holds, its delivery is here, the kitchen is open. Otherwise it gets its
 * own kit, or the thing is washed before. The latest starts themselves do not move.
 */
final class Contacts {
  private final KitchenBook book;
  private final PlanRequest request;
  private final List<Awaited> awaited;
  private final Map<String, Task> byId = new HashMap<>();
  private final List<Task> tasks;
  private final List<Contact> found = new ArrayList<>();

  private Contacts(KitchenBook book, PlanRequest request, List<Task> tasks, List<Awaited> awaited) {
    this.book = book;
    this.request = request;
    this.tasks = tasks;
    this.awaited = awaited;
    tasks.forEach(task -> byId.put(task.id(), task));
  }

  static List<Contact> of(
      KitchenBook book,
      PlanRequest request,
      List<Task> tasks,
      List<PrepSheet.BathSheet> baths,
      List<Awaited> awaited,
      FreeFrom.Finder finder) {
    Contacts contacts = new Contacts(book, request, tasks, awaited);
    Map<String, List<Task>> byThing = new LinkedHashMap<>();
    for (Task task : tasks) {
      LocalDate day = book.kitchen().clock().of(task.start());
      Things.of(book, baths, task)
          .forEach(
              thing ->
                  byThing.computeIfAbsent(thing + " " + day, key -> new ArrayList<>()).add(task));
    }
    byThing.forEach(
        (key, sharing) -> contacts.thing(key.substring(0, key.indexOf(' ')), sharing, finder));
    contacts.found.sort(
        Comparator.comparing((Contact contact) -> contact.free().start())
            .thenComparing(contact -> contact.free().id())
            .thenComparing(Contact::thing));
    return List.copyOf(contacts.found);
  }

  private void thing(String thing, List<Task> sharing, FreeFrom.Finder finder) {
    for (Task free : sharing) {
      FreeFrom from = finder.of(free.make());
      SortedSet<String> left = new TreeSet<>();
      List<Task> soiling = new ArrayList<>();
      for (Task other : sharing) {
        SortedSet<String> breaches = from.breaches(other.allergens());
        if (!breaches.isEmpty()) {
          left.addAll(breaches);
          soiling.add(other);
        }
      }
      if (!soiling.isEmpty()) {
        found.add(contact(thing, free, soiling, left));
      }
    }
  }

  private Contact contact(
      String thing, Task free, List<Task> soiling, SortedSet<String> allergens) {
    Comparator<Task> byStart = Comparator.comparing(Task::start);
    Optional<Task> before =
        soiling.stream().filter(other -> other.start().isBefore(free.end())).max(byStart);
    Task first = soiling.stream().min(byStart).orElseThrow();
    if (before.isEmpty()) {
      return new Contact(thing, free, first, allergens, Optional.empty());
    }
    Instant start = first.start().minus(Duration.between(free.start(), free.end()));
    return new Contact(
        thing, free, before.get(), allergens, Optional.of(start).filter(at -> permits(free, at)));
  }

  /** Whether lags, holds, deliveries and hours let a task start at an earlier moment. */
  private boolean permits(Task task, Instant start) {
    BusinessDay clock = book.kitchen().clock();
    Window open = book.kitchen().open(clock.of(start));
    Instant handsOff = start.plus(Duration.between(task.start(), task.handsOff()));
    return !start.isBefore(request.asOf())
        && !start.isBefore(open.start())
        && !handsOff.isAfter(open.end())
        && task.links().stream().allMatch(link -> isDoneBy(link, start))
        && tasks.stream().allMatch(other -> isNear(other, task, start))
        && holds(task, start)
        && awaited.stream()
            .filter(one -> one.task().id().equals(task.id()))
            .allMatch(one -> one.from().filter(from -> !from.isAfter(start)).isPresent());
  }

  private boolean isDoneBy(Task.Link link, Instant start) {
    Task earlier = byId.get(link.task());
    return earlier == null || !earlier.end().plus(link.min()).isAfter(start);
  }

  /** Whether what follows a task is still within its longest lag. */
  private static boolean isNear(Task other, Task task, Instant start) {
    Duration moved = Duration.between(start, task.start());
    return other.links().stream()
        .filter(link -> link.task().equals(task.id()))
        .allMatch(
            link ->
                link.max().isEmpty()
                    || !other.start().isAfter(task.end().minus(moved).plus(link.max().get())));
  }

  /** Whether what a last step makes still holds until it is used. */
  private static boolean holds(Task task, Instant start) {
    Make make = task.make();
    FormulaVersion version = make.version();
    boolean last =
        task.step().code().equals(version.steps().get(version.steps().size() - 1).code());
    Duration moved = Duration.between(start, task.start());
    for (Need need : make.served()) {
      Instant useBy = make.useBy(need.output()).minus(moved);
      if (last && need.lastUse().isAfter(useBy)) {
        return false;
      }
    }
    return true;
  }
}
