package halfgram.prep.crew;

import halfgram.kitchen.Text;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.prep.KitchenBook;
import halfgram.station.Block;
import halfgram.station.Person;
import halfgram.station.Shift;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * When somebody is there on a business day, and what keeps them from prep meanwhile.
 *
 * @param hours what was said of the day, else their shifts
 * @param gaps breaks and fixed blocks, as the book has them; some may lie outside the hours
 */
public record Present(Person person, List<Window> hours, List<Gap> gaps) {
  public Present {
    hours = List.copyOf(hours);
    gaps = List.copyOf(gaps);
  }

  /**
   * A time in which nobody does prep.
   *
   * @param name of the fixed block; empty for a break
   */
  public record Gap(Window window, Optional<Text> name) {}

  /** Everybody of the book, in its order. */
  public static List<Present> list(KitchenBook book, DayFacts facts, LocalDate day) {
    return book.people().stream().map(person -> of(book, facts, person, day)).toList();
  }

  static Present of(KitchenBook book, DayFacts facts, Person person, LocalDate day) {
    BusinessDay clock = book.kitchen().clock();
    List<Shift> shifts =
        person.shifts().stream()
            .filter(shift -> shift.days().contains(day.getDayOfWeek()))
            .toList();
    List<Window> hours =
        facts.hours().stream()
            .filter(one -> one.person().equals(person.code()) && one.day().equals(day))
            .findFirst()
            .map(DayFacts.Hours::windows)
            .orElseGet(() -> shifts.stream().map(shift -> shift.on(day, clock)).toList());
    List<Gap> gaps = new ArrayList<>();
    for (Shift shift : shifts) {
      shift.breaksOn(day, clock).forEach(pause -> gaps.add(new Gap(pause, Optional.empty())));
    }
    for (Block block : book.blocks()) {
      if (block.takes(person)) {
        block.on(day, clock).ifPresent(at -> gaps.add(new Gap(at, Optional.of(block.name()))));
      }
    }
    return new Present(person, hours, gaps);
  }

  public boolean isThere() {
    return !hours.isEmpty();
  }
}
