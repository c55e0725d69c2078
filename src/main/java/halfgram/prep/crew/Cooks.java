package halfgram.prep.crew;

import halfgram.prep.KitchenBook;
import halfgram.prep.schedule.Cook;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Who can be asked to do something, by index: the people of the book, then nobody of today. */
final class Cooks {
  /** Begins the id of whoever takes out what is left standing over night: nobody of today. */
  private static final String NIGHT = "night/";

  /** Asked after everybody else. */
  private static final int LAST = 99;

  private final KitchenBook book;
  private final List<Cook> all;
  private final int people;
  private final Map<String, Integer> indices = new HashMap<>();

  Cooks(KitchenBook book, List<Cook> there) {
    this.book = book;
    all = new ArrayList<>(there);
    people = there.size();
    for (int c = 0; c < people; c++) {
      indices.put(there.get(c).id(), c);
    }
  }

  static boolean isPerson(Cook cook) {
    return !cook.id().startsWith(NIGHT);
  }

  List<Cook> all() {
    return all;
  }

  boolean isEmpty() {
    return people == 0;
  }

  Optional<Integer> find(String code) {
    return Optional.ofNullable(indices.get(code));
  }

  /** Those of some codes that the book knows. */
  List<Integer> known(List<String> codes) {
    return codes.stream().flatMap(code -> find(code).stream()).toList();
  }

  /** People who work a station. */
  List<Integer> able(String station) {
    List<Integer> able = new ArrayList<>();
    for (int c = 0; c < people; c++) {
      if (book.people().get(c).stations().contains(station)) {
        able.add(c);
      }
    }
    return able;
  }

  List<Integer> everybody() {
    return IntStream.range(0, people).boxed().toList();
  }

  /** Whoever takes a task out on the morning after. */
  int nextMorning(String task, Cook.Span closed) {
    all.add(new Cook(NIGHT + task, List.of(closed), LAST));
    return all.size() - 1;
  }
}
