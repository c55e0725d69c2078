package halfgram.desk;

import halfgram.db.Tx;
import halfgram.measure.BusinessDay;
import halfgram.measure.Window;
import halfgram.pass.Called;
import halfgram.pass.Entry;
import halfgram.pass.EntryStore;
import halfgram.prep.KitchenBook;
import halfgram.prep.TaskProgress;
import halfgram.prep.crew.DayFacts;
import halfgram.prep.crew.Placed;
import halfgram.prep.crew.Plated;
import halfgram.station.Breakdown;
import halfgram.station.Cook;
import halfgram.station.Crew;
import halfgram.station.CrewStore;
import halfgram.station.Works;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What is known of a day when its work is put on people and machines: what tasks have come to, who
 * is in, what is broken, what is pinned.
 */
final class DayCrew {
  /** What nobody has said the end of lasts beyond the day. */
  static final Duration BEYOND = Duration.ofDays(3);

  private final CrewStore entries = new CrewStore();
  private final EntryStore pass = new EntryStore();

  /** The facts of the day of a plan, at a moment, without pins and without a plan before. */
  DayFacts facts(Tx tx, House house, InForce inForce, Instant now) {
    LocalDate day = inForce.plan().day();
    return said(tx, house, inForce.book(), day, DayFacts.at(now))
        .progressed(inForce.progress())
        .platedAt(plated(tx, house, day));
  }

  /** The facts of a day that has not begun: what is said of its crew. */
  DayFacts ahead(Tx tx, House house, KitchenBook book, LocalDate day) {
    return said(tx, house, book, day, DayFacts.at(book.kitchen().clock().start(day)));
  }

  private DayFacts said(Tx tx, House house, KitchenBook book, LocalDate day, DayFacts facts) {
    BusinessDay clock = house.book().kitchen().clock();
    Crew crew =
        Crew.of(
            day,
            clock,
            book.people(),
            book.equipment().values(),
            entries.list(tx, house.id(), day));
    return facts.with(hours(crew, day), broken(crew, clock.start(day).plus(BEYOND)));
  }

  /** Platings of which somebody said that all is plated. */
  private Map<String, Instant> plated(Tx tx, House house, LocalDate day) {
    Map<String, Instant> plated = new HashMap<>();
    for (Entry entry : Called.of(pass.list(tx, house.id(), day)).standing()) {
      if (entry.kind() == Entry.Kind.DONE) {
        String id = Plated.id(entry.service(), entry.course(), entry.dish());
        plated.putIfAbsent(id, entry.at());
      }
    }
    return plated;
  }

  /** Now to the minute, or the start of a day that has not begun. */
  static Instant moment(House house, LocalDate day, Instant now) {
    Instant start = house.book().kitchen().clock().start(day);
    Instant minute = now.truncatedTo(ChronoUnit.MINUTES);
    return minute.isBefore(start) ? start : minute;
  }

  private static List<DayFacts.Hours> hours(Crew crew, LocalDate day) {
    List<DayFacts.Hours> hours = new ArrayList<>();
    for (Cook cook : crew.cooks()) {
      if (cook.said().isPresent()) {
        hours.add(new DayFacts.Hours(cook.person().code(), day, cook.hours()));
      }
    }
    return hours;
  }

  private static List<DayFacts.Broken> broken(Crew crew, Instant beyond) {
    List<DayFacts.Broken> broken = new ArrayList<>();
    for (Works works : crew.machines()) {
      for (Breakdown one : works.broken()) {
        Instant end = one.end().orElse(beyond.isAfter(one.start()) ? beyond : one.start());
        if (end.isAfter(one.start())) {
          Window window = new Window(one.start(), end);
          broken.add(new DayFacts.Broken(works.machine().code(), one.units(), window));
        }
      }
    }
    return broken;
  }

  /** Of what facts say, but for the moment and the plan before: the same mark, the same facts. */
  static String mark(InForce inForce, DayFacts facts) {
    StringBuilder said = new StringBuilder();
    said.append(inForce.plan().day()).append(' ').append(inForce.plan().number());
    new TreeMap<>(facts.progress())
        .forEach(
            (task, progress) -> {
              if (progress.last().isPresent() || !progress.equals(TaskProgress.NONE)) {
                said.append('\n').append(task).append(' ').append(progress.state());
                said.append(' ').append(progress.onIt()).append(' ').append(progress.doneAt());
              }
            });
    said.append('\n').append(new TreeMap<>(facts.more()));
    said.append('\n').append(facts.hours());
    said.append('\n').append(facts.broken());
    said.append('\n').append(new TreeMap<>(facts.pins()));
    // Marks that are kept from before stay the same.
    if (!facts.plated().isEmpty()) {
      said.append('\n').append(new TreeMap<>(facts.plated()));
    }
    return Hash.of(said.toString());
  }

  /** Chance for a plan by facts: the same facts from now on, the same chance. */
  static long seed(InForce inForce, DayFacts facts) {
    StringBuilder said = new StringBuilder(mark(inForce, fromNowOn(facts))).append(facts.now());
    for (Placed placed : new TreeMap<>(facts.before()).values()) {
      said.append('\n').append(placed);
    }
    return Long.parseUnsignedLong(Hash.of(said.toString()).substring(0, 16), 16);
  }

  /** Without what is over of hours and breakdowns: whoever went home now, or is out, is not in. */
  private static DayFacts fromNowOn(DayFacts facts) {
    List<DayFacts.Hours> hours =
        facts.hours().stream()
            .map(
                of -> {
                  List<Window> left =
                      of.windows().stream()
                          .flatMap(window -> left(window, facts.now()).stream())
                          .toList();
                  return new DayFacts.Hours(of.person(), of.day(), left);
                })
            .sorted(Comparator.comparing(DayFacts.Hours::day).thenComparing(DayFacts.Hours::person))
            .toList();
    List<DayFacts.Broken> broken =
        facts.broken().stream()
            .flatMap(
                of ->
                    left(of.window(), facts.now()).stream()
                        .map(window -> new DayFacts.Broken(of.equipment(), of.units(), window)))
            .sorted(Comparator.comparing(DayFacts.Broken::equipment))
            .toList();
    return facts.with(hours, broken);
  }

  private static Optional<Window> left(Window window, Instant now) {
    Instant start = window.start().isBefore(now) ? now : window.start();
    return window.end().isAfter(now)
        ? Optional.of(new Window(start, window.end()))
        : Optional.empty();
  }
}
