package halfgram.prep.crew;

import halfgram.prep.KitchenBook;
import halfgram.prep.schedule.Cook;
import halfgram.prep.schedule.Machine;
import halfgram.station.Person;
import java.time.Instant;
import java.util.List;

/** How many minutes people and machines have in a stretch, counted from its start. */
final class Supply {
  private final KitchenBook book;
  private final CrewPlan plan;
  private final Slots slots;
  private final Instant start;
  private final List<Cook> cooks;
  private final List<Machine> machines;

  Supply(KitchenBook book, CrewPlan plan, Slots slots, Instant start, Attendance there) {
    this.book = book;
    this.plan = plan;
    this.slots = slots;
    this.start = start;
    this.cooks = there.cooks();
    this.machines = there.machines();
  }

  int units(String machine) {
    return machines.stream()
        .filter(one -> one.id().equals(machine))
        .mapToInt(Machine::units)
        .findFirst()
        .orElse(0);
  }

  /** Minutes of a machine that work in a stretch, of all its units. */
  int machine(String machine, int from, int to) {
    int minutes = 0;
    for (Machine one : machines) {
      if (one.id().equals(machine)) {
        minutes += one.units() * (to - from);
        for (Machine.Out out : one.out()) {
          int first = Math.max(from, offset(out.span().from()));
          int last = Math.min(to, offset(out.span().to()));
          minutes -= out.units() * Math.max(0, last - first);
        }
      }
    }
    return minutes;
  }

  /** Minutes of those who work a station and do not plate then. */
  int hands(String station, int from, int to) {
    int minutes = 0;
    for (int c = 0; c < cooks.size(); c++) {
      Person person = book.people().get(c);
      if (person.stations().contains(station)) {
        for (Cook.Span span : cooks.get(c).here()) {
          int first = Math.max(from, offset(span.from()));
          int last = Math.min(to, offset(span.to()));
          minutes += Math.max(0, last - first) - plates(person.code(), first, last);
        }
      }
    }
    return minutes;
  }

  /** Minutes in which somebody plates. */
  private int plates(String person, int from, int to) {
    int minutes = 0;
    for (Plated line : plan.platings()) {
      if (line.people().contains(person)) {
        int first = Math.max(from, (int) Reasons.minutes(start, line.from()));
        int last = Math.min(to, (int) Reasons.minutes(start, line.to()));
        minutes += Math.max(0, last - first);
      }
    }
    return minutes;
  }

  /** A slot's start in minutes from now. */
  private int offset(int slot) {
    return (int) Reasons.minutes(start, slots.at(slot));
  }
}
