package halfgram.prep.crew;

import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.prep.KitchenBook;
import halfgram.prep.schedule.Cook;
import halfgram.prep.schedule.Machine;
import halfgram.station.Equipment;
import halfgram.station.Person;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Who is there when, and what works when, in the slots of a day. */
final class Attendance {
  private final KitchenBook book;
  private final DayFacts facts;
  private final Slots slots;
  private final int count;

  Attendance(KitchenBook book, DayFacts facts, Slots slots, int count) {
    this.book = book;
    this.facts = facts;
    this.slots = slots;
    this.count = count;
  }

  /** Everybody of the book, those without a shift too, in the book's order. */
  List<Cook> cooks() {
    return book.people().stream().map(this::cook).toList();
  }

  private Cook cook(Person person) {
    boolean[] here = new boolean[count];
    BusinessDay clock = book.kitchen().clock();
    LocalDate first = clock.of(slots.from()).minusDays(1);
    LocalDate last = clock.of(slots.at(count));
    List<Present> days = new ArrayList<>();
    for (LocalDate day = first; !day.isAfter(last); day = day.plusDays(1)) {
      days.add(Present.of(book, facts, person, day));
    }
    days.forEach(one -> one.hours().forEach(window -> mark(here, window, true)));
    days.forEach(one -> one.gaps().forEach(gap -> mark(here, gap.window(), false)));
    return new Cook(person.code(), spans(here), Math.max(1, person.stations().size()));
  }

  /** What is there is there for whole slots; what is not takes the slots it touches. */
  private void mark(boolean[] here, Window window, boolean there) {
    int from = there ? slots.up(window.start()) : slots.down(window.start());
    int to = there ? slots.down(window.end()) : slots.up(window.end());
    for (int t = Math.max(0, from); t < Math.min(count, to); t++) {
      here[t] = there;
    }
  }

  private static List<Cook.Span> spans(boolean[] here) {
    List<Cook.Span> spans = new ArrayList<>();
    int from = -1;
    for (int t = 0; t <= here.length; t++) {
      boolean there = t < here.length && here[t];
      if (there && from < 0) {
        from = t;
      } else if (!there && from >= 0) {
        spans.add(new Cook.Span(from, t));
        from = -1;
      }
    }
    return spans;
  }

  List<Machine> machines() {
    return book.equipment().values().stream().map(this::machine).toList();
  }

  private Machine machine(Equipment equipment) {
    List<Machine.Out> out =
        facts.broken().stream()
            .filter(one -> one.equipment().equals(equipment.code()))
            .map(
                one ->
                    new Machine.Out(
                        Math.min(one.units(), equipment.units()),
                        new Cook.Span(
                            Math.max(0, slots.down(one.window().start())),
                            Math.max(0, slots.up(one.window().end())))))
            .toList();
    int scrub = equipment.touches() ? Slots.up(equipment.scrub()) : 0;
    int wash = equipment.touches() ? Math.max(scrub, Slots.up(equipment.wash())) : 0;
    List<Integer> who = washers(equipment);
    return new Machine(equipment.code(), equipment.units(), wash, scrub, who, out);
  }

  /** Whoever works where it stands; everybody, where nobody does. */
  private List<Integer> washers(Equipment equipment) {
    List<Person> people = book.people();
    List<Integer> there =
        IntStream.range(0, people.size())
            .filter(c -> equipment.station().filter(people.get(c).stations()::contains).isPresent())
            .boxed()
            .toList();
    return there.isEmpty() ? IntStream.range(0, people.size()).boxed().toList() : there;
  }
}
