package halfgram.prep;

import halfgram.measure.Message;
import halfgram.station.Container;
import halfgram.station.Equipment;
import halfgram.technique.bath.BathDay;
import halfgram.technique.bath.BathEntry;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The things that food goes through and that go from task to task: machines, the one vessel of its
 * kind, baths.
 *
 * <p>Rules. A machine counts unless the book says that food does not touch it; several alike count
 * as one, since nobody says which was used. A vessel counts when there is one of it: of several a
 * clean one is taken. Each bath of each day is a thing of its own; a test piece goes into the first
 * of its run alone. What is fried in is the fryer's.
 *
 * <p>Ids: {@code machine/blender}, {@code vessel/big-jug}, {@code bath/alginate-bath/2026-12-05/A}.
 */
public final class Things {
  private static final String MACHINE = "machine/";
  private static final String VESSEL = "vessel/";
  private static final String BATH = "bath/";

  private Things() {}

  public static String machine(String code) {
    return MACHINE + code;
  }

  public static String bath(BathEntry.Bath bath) {
    return BATH + bath.formula() + "/" + bath.day() + "/" + bath.label();
  }

  public static boolean isBath(String thing) {
    return thing.startsWith(BATH);
  }

  /** Everything a book names, in its order. */
  public static List<String> list(KitchenBook book) {
    List<String> things = new ArrayList<>();
    book.equipment().values().stream()
        .filter(Equipment::touches)
        .forEach(one -> things.add(machine(one.code())));
    book.containers().values().stream()
        .filter(Things::isOne)
        .forEach(one -> things.add(VESSEL + one.code()));
    return things;
  }

  /** Whether a book has such a thing. */
  public static boolean has(KitchenBook book, String thing) {
    return list(book).contains(thing) || (isBath(thing) && findName(book, thing).isPresent());
  }

  private static boolean isOne(Container container) {
    return container.count().filter(count -> count == 1).isPresent();
  }

  /** What a task uses. */
  public static List<String> of(KitchenBook book, PrepSheet sheet, Task task) {
    return of(book, sheet.baths(), task);
  }

  static List<String> of(KitchenBook book, List<PrepSheet.BathSheet> baths, Task task) {
    Set<String> things = new LinkedHashSet<>();
    task.machines().stream()
        .flatMap(use -> Optional.ofNullable(book.equipment().get(use.equipment())).stream())
        .filter(Equipment::touches)
        .forEach(machine -> things.add(machine(machine.code())));
    task.weigh().stream()
        .flatMap(group -> group.vessel().stream())
        .filter(Things::isOne)
        .forEach(vessel -> things.add(VESSEL + vessel.code()));
    boolean dips =
        task.kind() != Task.Kind.FRESH_BATH
            && task.version()
                .dropping()
                .filter(use -> use.step().equals(task.step().code()))
                .isPresent();
    if (dips) {
      things.addAll(baths(baths, task));
    }
    return List.copyOf(things);
  }

  private static List<String> baths(List<PrepSheet.BathSheet> baths, Task task) {
    List<String> own = new ArrayList<>();
    for (PrepSheet.BathSheet bath : baths) {
      for (BathDay.Use use : bath.answer().uses()) {
        if (use.runs().contains(task.make().id())) {
          own.add(bath(new BathEntry.Bath(bath.formula(), bath.day(), use.label())));
        }
      }
    }
    return task.kind() == Task.Kind.TEST_PIECE && !own.isEmpty() ? own.subList(0, 1) : own;
  }

  /** What a thing is called; empty for one that the book does not know. */
  public static Optional<Object> findName(KitchenBook book, String thing) {
    String code = thing.substring(thing.indexOf('/') + 1);
    if (thing.startsWith(MACHINE)) {
      return Optional.ofNullable(book.equipment().get(code)).map(Equipment::name);
    }
    if (thing.startsWith(VESSEL)) {
      return Optional.ofNullable(book.containers().get(code)).map(Container::name);
    }
    return thing.matches("bath/[a-z0-9-]+/[0-9-]{10}/[A-Z]+")
        ? Optional.of(Message.of("kit.bath", thing.substring(thing.lastIndexOf('/') + 1)))
        : Optional.empty();
  }

  /** As {@link #findName}; a thing that the book no longer has by its id. */
  public static Object name(KitchenBook book, String thing) {
    return findName(book, thing).orElse(thing);
  }
}
