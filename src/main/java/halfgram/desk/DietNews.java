package halfgram.desk;

import halfgram.event.DietCount;
import halfgram.event.Event;
import halfgram.prep.KitchenBook;
import halfgram.prep.ServiceRun;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/** Guests with a diet, where an event has others by a later book than by an earlier. */
final class DietNews {
  private static final Comparator<SortedSet<String>> BY_CODES =
      Comparator.comparing(diets -> String.join(" ", diets));

  private DietNews() {}

  /** Of the events of some services; of one that either book does not have on its date, nothing. */
  static List<Summary.Diet> between(
      KitchenBook before, KitchenBook after, Stream<ServiceRun> runs) {
    Map<String, ServiceRun> events = new LinkedHashMap<>();
    runs.forEach(run -> run.event().ifPresent(event -> events.putIfAbsent(event, run)));
    List<Summary.Diet> news = new ArrayList<>();
    for (ServiceRun run : events.values()) {
      Optional<Event> from = find(before, run);
      Optional<Event> to = find(after, run);
      if (from.isPresent() && to.isPresent()) {
        news.addAll(between(from.get(), to.get()));
      }
    }
    return news;
  }

  private static Optional<Event> find(KitchenBook book, ServiceRun run) {
    return book.events().stream()
        .filter(event -> run.event().filter(event.code()::equals).isPresent())
        .filter(event -> event.date().equals(run.date()))
        .findFirst();
  }

  private static List<Summary.Diet> between(Event from, Event to) {
    SortedMap<SortedSet<String>, Integer> before = guests(from);
    SortedMap<SortedSet<String>, Integer> after = guests(to);
    SortedSet<SortedSet<String>> all = new TreeSet<>(BY_CODES);
    all.addAll(before.keySet());
    all.addAll(after.keySet());
    return all.stream()
        .map(
            diets ->
                new Summary.Diet(
                    to.name(), diets, before.getOrDefault(diets, 0), after.getOrDefault(diets, 0)))
        .filter(one -> one.from() != one.to())
        .toList();
  }

  private static SortedMap<SortedSet<String>, Integer> guests(Event event) {
    SortedMap<SortedSet<String>, Integer> guests = new TreeMap<>(BY_CODES);
    for (DietCount diet : event.diets()) {
      guests.merge(diet.diets(), diet.count(), Integer::sum);
    }
    return guests;
  }
}
