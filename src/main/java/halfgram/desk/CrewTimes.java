package halfgram.desk;

import halfgram.book.Moments;
import halfgram.input.Problem;
import halfgram.measure.BusinessDay;
import halfgram.measure.Message;
import halfgram.measure.Window;
import halfgram.station.Breakdown;
import halfgram.station.Cook;
import halfgram.station.Crew;
import halfgram.station.CrewEntry;
import halfgram.station.Works;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Reads an entry about the crew or a machine from what was typed, with everything that is wrong.
 *
 * <p>Rules. A time of the clock is one of the business day; an end that is not after its start is
 * of the morning after, so long as nobody is in for more than 16 hours. A breakdown begins now when
 * nothing is said, on another day than today at its first moment.
 */
final class CrewTimes {
  private static final Duration LONGEST = Duration.ofHours(16);

  private final Crew crew;
  private final LocalDate day;
  private final BusinessDay clock;
  private final Instant now;
  private final List<Problem> problems = new ArrayList<>();

  CrewTimes(RollCall.Board board, Instant now) {
    this.crew = board.crew();
    this.day = board.day();
    this.clock = board.house().book().kitchen().clock();
    this.now = now;
  }

  List<Problem> problems() {
    return List.copyOf(problems);
  }

  /** The entry; empty when something is wrong. */
  Optional<CrewEntry> read(RollCall.Asked asked) {
    CrewEntry entry =
        switch (asked.kind()) {
          case OUT, BACK -> ofCook(asked, Optional.empty(), Optional.empty());
          case IN -> in(asked);
          case BROKEN -> broken(asked);
          case MENDED -> mended(asked);
          case UNDO -> undo(asked);
        };
    return problems.isEmpty() ? Optional.of(entry) : Optional.empty();
  }

  private void wrong(String field, String value, String key, Object... args) {
    problems.add(new Problem(field, value, Message.of(key, args)));
  }

  // ---- cooks ----

  private CrewEntry ofCook(RollCall.Asked asked, Optional<Instant> from, Optional<Instant> until) {
    if (crew.findCook(asked.person()).isEmpty()) {
      List<String> known = crew.cooks().stream().map(cook -> cook.person().code()).toList();
      wrong("person", asked.person(), "crew.wrong.person", String.join(", ", known));
    }
    return entry(asked, day, asked.person(), "", 0, from, until);
  }

  private CrewEntry in(RollCall.Asked asked) {
    Optional<Cook> cook = crew.findCook(asked.person());
    Optional<Instant> from = time("from", asked.from());
    Optional<Instant> shown =
        cook.flatMap(one -> one.hours().stream().map(Window::start).findFirst());
    Optional<Instant> start = from.or(() -> shown);
    Optional<Instant> until = after(start, asked.until(), time("until", asked.until()));
    boolean rested =
        cook.filter(one -> !one.isIn() && one.person().on(day.getDayOfWeek()).isEmpty())
            .isPresent();
    if (asked.from().isEmpty() && (asked.until().isEmpty() || rested)) {
      wrong("from", "", rested ? "crew.wrong.both" : "crew.wrong.neither");
    }
    if (asked.until().isEmpty() && rested) {
      wrong("until", "", "crew.wrong.both");
    }
    boolean backwards =
        start.isPresent() && until.isPresent() && !start.get().isBefore(until.get());
    if (backwards) {
      wrong("until", asked.until(), "crew.wrong.until", start.get());
    } else if (start.isPresent()
        && until.isPresent()
        && Duration.between(start.get(), until.get()).compareTo(LONGEST) > 0) {
      wrong("until", asked.until(), "crew.wrong.long", LONGEST.toHours());
    }
    return ofCook(asked, from, until);
  }

  /** A time of the clock that is not after the start, where the morning after is meant. */
  private Optional<Instant> after(Optional<Instant> start, String typed, Optional<Instant> read) {
    if (start.isEmpty() || read.isEmpty() || clockTime(typed).isEmpty()) {
      return read;
    }
    Instant morning =
        read.get()
            .atZone(clock.zone())
            .toLocalDateTime()
            .plusDays(1)
            .atZone(clock.zone())
            .toInstant();
    boolean meant =
        !start.get().isBefore(read.get())
            && Duration.between(start.get(), morning).compareTo(LONGEST) <= 0;
    return meant ? Optional.of(morning) : read;
  }

  // ---- machines ----

  private CrewEntry broken(RollCall.Asked asked) {
    Optional<Works> works = crew.findMachine(asked.machine());
    if (works.isEmpty()) {
      List<String> known = crew.machines().stream().map(one -> one.machine().code()).toList();
      wrong("machine", asked.machine(), "crew.wrong.machine", String.join(", ", known));
    }
    int most = works.map(one -> one.machine().units()).orElse(1);
    int units = units(asked.units(), most);
    Optional<Instant> typed = time("from", asked.from());
    Instant from = typed.orElse(clock.of(now).equals(day) ? now : clock.start(day));
    Optional<Instant> until = time("until", asked.until());
    if (until.isPresent() && !from.isBefore(until.get())) {
      wrong("until", asked.until(), "crew.wrong.until", from);
    }
    LocalDate on = clock.of(from);
    return entry(asked, on, "", asked.machine(), units, Optional.of(from), until);
  }

  private int units(String typed, int most) {
    String said = typed.isEmpty() ? "1" : typed;
    boolean number = said.matches("[1-9]\\d{0,2}") && Integer.parseInt(said) <= most;
    if (!number) {
      wrong("units", typed, "crew.wrong.units", most);
    }
    return number ? Integer.parseInt(said) : 1;
  }

  private CrewEntry mended(RollCall.Asked asked) {
    Optional<Breakdown> broken =
        crew.machines().stream()
            .flatMap(works -> works.broken().stream())
            .filter(one -> asked.ends().filter(one.said().id()::equals).isPresent())
            .findFirst();
    if (asked.ends().isEmpty()) {
      wrong("ends", "", "crew.wrong.ends");
    }
    Instant from = time("from", asked.from()).orElse(now);
    String machine = broken.map(one -> one.said().machine()).orElse("");
    return entry(asked, clock.of(from), "", machine, 0, Optional.of(from), Optional.empty());
  }

  private CrewEntry undo(RollCall.Asked asked) {
    if (asked.undoes().isEmpty()) {
      wrong("undoes", "", "crew.wrong.ends");
    }
    Optional<CrewEntry> undone = asked.undoes().flatMap(crew::find);
    return entry(
        asked,
        undone.map(CrewEntry::day).orElse(day),
        undone.map(CrewEntry::person).orElse(""),
        undone.map(CrewEntry::machine).orElse(""),
        0,
        Optional.empty(),
        Optional.empty());
  }

  // ---- both ----

  /** "15:30" of the business day, or a moment of the clock on the wall. */
  private Optional<Instant> time(String field, String typed) {
    if (typed.isEmpty()) {
      return Optional.empty();
    }
    Optional<Instant> read =
        clockTime(typed)
            .map(time -> clock.at(day, time))
            .or(() -> Moments.moment(typed).map(moment -> moment.atZone(clock.zone()).toInstant()));
    if (read.isEmpty()) {
      wrong(field, typed, "crew.wrong.time", day.toString());
    }
    return read;
  }

  private CrewEntry entry(
      RollCall.Asked asked,
      LocalDate on,
      String person,
      String machine,
      int units,
      Optional<Instant> from,
      Optional<Instant> until) {
    return new CrewEntry(
        asked.id().orElseGet(UUID::randomUUID),
        on,
        asked.kind(),
        person,
        machine,
        units,
        from,
        until,
        asked.note(),
        asked.who(),
        now,
        asked.ends().filter(id -> asked.kind() == CrewEntry.Kind.MENDED),
        asked.undoes().filter(id -> asked.kind() == CrewEntry.Kind.UNDO));
  }

  private static Optional<LocalTime> clockTime(String text) {
    return text.matches("([01]\\d|2[0-3]):[0-5]\\d")
        ? Optional.of(LocalTime.parse(text))
        : Optional.empty();
  }
}
