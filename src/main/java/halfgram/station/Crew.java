package halfgram.station;

import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.measure.Window;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Who is in on a business day and which machines work: the shifts and the equipment of the book,
 * changed by what was said.
 *
 * <p>Rules. Of what was said of a cook and not taken back, the last word on the start and the last
 * word on the end count; not coming, and being in as the shift says, leave nothing of what was said
 * before. A time outside the shift makes it longer. Units of a machine are missing from when they
 * broke until the time given for it, or until somebody said that they are mended, whichever is
 * earlier. An entry that is taken back counts as never made.
 */
public final class Crew {
  private final LocalDate day;
  private final BusinessDay clock;
  private final List<CrewEntry> counting;
  private final List<Cook> cooks;
  private final List<Works> machines;

  private Crew(
      LocalDate day,
      BusinessDay clock,
      List<Person> people,
      Collection<Equipment> equipment,
      List<CrewEntry> entries) {
    this.day = day;
    this.clock = clock;
    this.counting = counting(entries);
    this.cooks = people.stream().map(this::cook).toList();
    this.machines = equipment.stream().map(this::works).toList();
  }

  /**
   * The fold of what was said.
   *
   * @param entries in the order they were said: of cooks those of the day, of machines all
   */
  public static Crew of(
      LocalDate day,
      BusinessDay clock,
      List<Person> people,
      Collection<Equipment> equipment,
      List<CrewEntry> entries) {
    return new Crew(day, clock, people, equipment, entries);
  }

  /** Everybody of the book, in its order, in or not. */
  public List<Cook> cooks() {
    return cooks;
  }

  /** Every machine of the book, in its order. */
  public List<Works> machines() {
    return machines;
  }

  public Optional<Cook> findCook(String code) {
    return cooks.stream().filter(one -> one.person().code().equals(code)).findFirst();
  }

  public Optional<Works> findMachine(String code) {
    return machines.stream().filter(one -> one.machine().code().equals(code)).findFirst();
  }

  /** Whether an entry counts: it was made and not taken back. */
  public boolean counts(UUID id) {
    return find(id).isPresent();
  }

  /** An entry that counts. */
  public Optional<CrewEntry> find(UUID id) {
    return counting.stream().filter(one -> one.id().equals(id)).findFirst();
  }

  private static List<CrewEntry> counting(List<CrewEntry> entries) {
    Set<UUID> undone = new HashSet<>();
    entries.forEach(entry -> entry.undoes().ifPresent(undone::add));
    return entries.stream()
        .filter(entry -> entry.undoes().isEmpty() && !undone.contains(entry.id()))
        .toList();
  }

  // ---- cooks ----

  /** What was said of one cook. */
  private record Told(Optional<CrewEntry> last, Optional<Instant> from, Optional<Instant> until) {
    private static final Told NOTHING =
        new Told(Optional.empty(), Optional.empty(), Optional.empty());

    private Told and(CrewEntry entry) {
      return switch (entry.kind()) {
        case OUT -> new Told(Optional.of(entry), Optional.empty(), Optional.empty());
        case IN -> new Told(Optional.of(entry), entry.from().or(() -> from), or(entry));
        case BACK, BROKEN, MENDED, UNDO -> NOTHING;
      };
    }

    private Optional<Instant> or(CrewEntry entry) {
      return entry.until().or(() -> until);
    }

    private boolean isOut() {
      return last.filter(entry -> entry.kind() == CrewEntry.Kind.OUT).isPresent();
    }
  }

  private Cook cook(Person person) {
    return cook(person, told(person.code()));
  }

  private Told told(String person) {
    Told told = Told.NOTHING;
    for (CrewEntry entry : counting) {
      told = entry.person().equals(person) && entry.day().equals(day) ? told.and(entry) : told;
    }
    return told;
  }

  private Cook cook(Person person, Told told) {
    List<Window> hours = told.isOut() ? List.of() : hours(shifts(person), told);
    List<Window> breaks =
        person.on(day.getDayOfWeek()).stream()
            .flatMap(shift -> shift.breaksOn(day, clock).stream())
            .filter(pause -> hours.stream().anyMatch(window -> isInside(pause, window)))
            .toList();
    return new Cook(person, hours, breaks, told.last());
  }

  /** Their shifts on this day, the first first. */
  private List<Window> shifts(Person person) {
    return person.on(day.getDayOfWeek()).stream()
        .map(shift -> shift.on(day, clock))
        .sorted(Comparator.comparing(Window::start))
        .toList();
  }

  private static List<Window> hours(List<Window> shifts, Told told) {
    Optional<Instant> from = told.from().or(() -> shifts.stream().map(Window::start).findFirst());
    Optional<Instant> until =
        told.until().or(() -> shifts.stream().map(Window::end).max(Comparator.naturalOrder()));
    if (from.isEmpty() || until.isEmpty() || !from.get().isBefore(until.get())) {
      return List.of();
    }
    Instant start = from.get();
    Instant end = until.get();
    List<Window> hours = new ArrayList<>();
    for (Window shift : shifts) {
      if (shift.start().isBefore(end) && start.isBefore(shift.end())) {
        hours.add(shift);
      }
    }
    if (hours.isEmpty()) {
      return List.of(new Window(start, end));
    }
    hours.set(0, new Window(start, hours.get(0).end()));
    int last = hours.size() - 1;
    hours.set(last, new Window(hours.get(last).start(), end));
    return hours;
  }

  private static boolean isInside(Window inner, Window outer) {
    return !inner.start().isBefore(outer.start()) && !inner.end().isAfter(outer.end());
  }

  // ---- machines ----

  private Works works(Equipment machine) {
    List<Breakdown> broken = new ArrayList<>();
    for (CrewEntry entry : counting) {
      if (entry.kind() == CrewEntry.Kind.BROKEN && entry.machine().equals(machine.code())) {
        broken.add(breakdown(entry));
      }
    }
    broken.sort(Comparator.comparing(Breakdown::start));
    return new Works(machine, broken);
  }

  private Breakdown breakdown(CrewEntry entry) {
    Optional<Instant> mended =
        counting.stream()
            .filter(one -> one.ends().filter(entry.id()::equals).isPresent())
            .flatMap(one -> one.from().stream())
            .min(Comparator.naturalOrder());
    Optional<Instant> end =
        mended.filter(when -> entry.until().map(when::isBefore).orElse(true)).or(entry::until);
    return new Breakdown(entry, entry.from().orElse(entry.at()), end, mended.isPresent());
  }

  // ---- what is refused ----

  /** Why an entry is not taken; empty when it is. */
  public Optional<Message> refuse(CrewEntry entry) {
    return switch (entry.kind()) {
      case OUT, IN, BACK -> findCook(entry.person()).flatMap(cook -> refuse(entry, cook));
      case BROKEN -> findMachine(entry.machine()).flatMap(works -> refuse(entry, works));
      case MENDED -> refuseMended(entry);
      case UNDO ->
          counts(entry.undoes().orElseThrow())
              ? Optional.empty()
              : Optional.of(Message.of("crew.refused.undo"));
    };
  }

  private Optional<Message> refuse(CrewEntry entry, Cook cook) {
    String name = cook.person().name();
    Told told = told(cook.person().code());
    if (entry.kind() == CrewEntry.Kind.BACK && told.last().isEmpty()) {
      return Optional.of(Message.of("crew.refused.back", name));
    }
    if (entry.kind() == CrewEntry.Kind.OUT && !cook.isIn()) {
      return Optional.of(Message.of("crew.refused.out", name));
    }
    if (entry.kind() == CrewEntry.Kind.IN && !cook(cook.person(), told.and(entry)).isIn()) {
      return Optional.of(Message.of("crew.refused.no-hours", name));
    }
    return Optional.empty();
  }

  private static Optional<Message> refuse(CrewEntry entry, Works works) {
    Instant from = entry.from().orElse(entry.at());
    int fewest = works.units(from);
    for (Breakdown other : works.broken()) {
      if (other.meets(from, entry.until())) {
        fewest = Math.min(fewest, works.units(other.start().isAfter(from) ? other.start() : from));
      }
    }
    return entry.units() <= fewest
        ? Optional.empty()
        : Optional.of(Message.of("crew.refused.broken", works.machine().name(), fewest));
  }

  private Optional<Message> refuseMended(CrewEntry entry) {
    Optional<Breakdown> broken =
        machines.stream()
            .flatMap(works -> works.broken().stream())
            .filter(one -> entry.ends().filter(one.said().id()::equals).isPresent())
            .findFirst();
    Instant when = entry.from().orElse(entry.at());
    if (broken.isEmpty() || broken.get().mended()) {
      return Optional.of(Message.of("crew.refused.mended"));
    }
    return when.isBefore(broken.get().start())
        ? Optional.of(Message.of("crew.refused.mended-before", broken.get().start()))
        : Optional.empty();
  }
}
