package halfgram.prep.crew;

import halfgram.measure.Window;
import halfgram.prep.KitchenBook;
import halfgram.prep.PrepSheet;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.schedule.Prices;
import halfgram.station.Equipment;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How much of the time people are there is hands-on work: by station and hour, and by person.
 *
 * <p>Rules. Minutes are counted where somebody is there, outside breaks and fixed blocks. Who works
 * several stations is there for each of them, less what they do at the others. Work that one hands
 * over to another is shared between them evenly. The last two hours before a service are tight from
 * 70 % on, a shift is full from 80 % on: what then comes up has no room.
 */
public record Load(List<OfStation> stations, List<OfPerson> people) {
  /** How long before a service time is short. */
  public static final Duration RUSH = Duration.ofHours(2);

  public Load {
    stations = List.copyOf(stations);
    people = List.copyOf(people);
  }

  /** What to say of a share. */
  public enum Mark {
    NONE,
    /** Of the hours before a service, more than is left free. */
    TIGHT,
    /** Of a shift, more than is planned. */
    FULL,
    /** There is work, and nobody for it. */
    NOBODY
  }

  /** Minutes of hands-on work, and minutes that those who can do it are there for it. */
  public record Share(int work, int there) {
    /** Of a time in which nobody is there, 0. */
    public int percent() {
      return there == 0 ? 0 : (int) Math.round(100.0 * work / there);
    }

    private Mark mark(int from, Mark then) {
      if (work > 0 && there == 0) {
        return Mark.NOBODY;
      }
      return there > 0 && percent() >= from ? then : Mark.NONE;
    }
  }

  /** One hour of a station. */
  public record Hour(Instant from, Share share, boolean rush) {
    public Mark mark() {
      return share.mark(rush ? Prices.USUAL.rushPercent() : NEVER, Mark.TIGHT);
    }
  }

  /** More than there is: nothing is marked outside the hours before a service. */
  private static final int NEVER = Integer.MAX_VALUE;

  /**
   * A station over the day.
   *
   * @param hours one after another without a hole, the same for all stations
   */
  public record OfStation(String station, Share day, List<Hour> hours) {
    public OfStation {
      hours = List.copyOf(hours);
    }

    public Mark mark() {
      return day.mark(Prices.USUAL.shiftPercent(), Mark.FULL);
    }
  }

  /**
   * Somebody who is there.
   *
   * @param rush of the last two hours before services
   */
  public record OfPerson(String person, Share shift, Share rush) {
    public Mark mark() {
      Mark full = shift.mark(Prices.USUAL.shiftPercent(), Mark.FULL);
      return full == Mark.NONE ? rush.mark(Prices.USUAL.rushPercent(), Mark.TIGHT) : full;
    }
  }

  /** Of a crew plan. */
  public static Load of(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan crew) {
    return new Counting(book, sheet, facts, crew).count();
  }

  private static final class Counting {
    private final KitchenBook book;
    private final List<Present> present;
    private final Map<String, Task> tasks = new HashMap<>();
    private final Map<String, Placed> placed;
    private final List<Washed> washes;
    private final List<Plated> platings;
    private final Instant from;
    private final int minutes;
    private final boolean[] rush;
    private final Map<String, boolean[]> here = new LinkedHashMap<>();

    /** By person and station, hundredths of a minute in each minute. */
    private final Map<String, Map<String, int[]>> work = new HashMap<>();

    Counting(KitchenBook book, PrepSheet sheet, DayFacts facts, CrewPlan crew) {
      this.book = book;
      this.present =
          Present.list(book, facts, sheet.request().from()).stream()
              .filter(Present::isThere)
              .toList();
      this.placed = crew.placed();
      this.washes = crew.washes();
      this.platings = crew.platings();
      sheet.tasks().forEach(task -> tasks.put(task.id(), task));
      Window open = book.kitchen().open(sheet.request().from());
      Instant first = open.start();
      Instant last = open.end();
      for (Present one : present) {
        for (Window window : one.hours()) {
          first = window.start().isBefore(first) ? window.start() : first;
          last = window.end().isAfter(last) ? window.end() : last;
        }
      }
      from = first.truncatedTo(ChronoUnit.HOURS);
      minutes = (int) Math.ceil(Duration.between(from, last).toMinutes() / 60.0) * 60;
      rush = new boolean[minutes];
      for (ServiceRun run : sheet.services()) {
        Instant start = run.window().start();
        mark(rush, new Window(start.minus(RUSH), start), true);
      }
    }

    private Load count() {
      for (Present one : present) {
        boolean[] there = new boolean[minutes];
        one.hours().forEach(window -> mark(there, window, true));
        one.gaps().forEach(gap -> mark(there, gap.window(), false));
        here.put(one.person().code(), there);
        work.put(one.person().code(), new HashMap<>());
      }
      placed.values().forEach(this::work);
      washes.forEach(this::wash);
      platings.forEach(this::plate);
      return new Load(
          book.stations().keySet().stream().map(this::station).toList(),
          present.stream().map(this::person).toList());
    }

    private void mark(boolean[] line, Window window, boolean value) {
      int end = Math.min(minutes, minute(window.end()));
      for (int m = Math.max(0, minute(window.start())); m < end; m++) {
        line[m] = value;
      }
    }

    private int minute(Instant at) {
      return (int) Math.max(-1, Math.min(minutes, Duration.between(from, at).toMinutes()));
    }

    private void work(Placed one) {
      Task task = tasks.get(one.task());
      if (task == null || task.isInRun()) {
        return;
      }
      one.turns().forEach(turn -> work(turn, task.station(), task.hands()));
      one.unload().ifPresent(out -> work(out, task.station(), 1));
    }

    /** A wash is work where the machine stands; of one that is shared, where it is needed next. */
    private void wash(Washed one) {
      Equipment machine = book.equipment().get(one.unit().equipment());
      Task next = tasks.get(one.before());
      Optional<String> where = Optional.ofNullable(machine).flatMap(Equipment::station);
      where
          .or(() -> Optional.ofNullable(next).map(Task::station))
          .ifPresent(
              station ->
                  work(new Placed.Hands(one.from(), one.to(), List.of(one.person())), station, 1));
    }

    /** Plating without a station is work at the first of whoever does it. */
    private void plate(Plated line) {
      for (String code : line.people()) {
        book.findPerson(code)
            .flatMap(
                person -> line.station().or(() -> person.stations().stream().sorted().findFirst()))
            .ifPresent(
                station ->
                    work(new Placed.Hands(line.from(), line.to(), List.of(code)), station, 1));
      }
    }

    /** Work of so many hands at a station, shared evenly between those who have it. */
    private void work(Placed.Hands one, String station, int hands) {
      for (String person : one.people()) {
        int each = 100 * Math.min(hands, one.people().size()) / one.people().size();
        boolean[] there = here.get(person);
        if (there == null) {
          continue;
        }
        int[] line =
            work.getOrDefault(person, new HashMap<>())
                .computeIfAbsent(station, any -> new int[minutes]);
        int end = Math.min(minutes, minute(one.to()));
        for (int m = Math.max(0, minute(one.from())); m < end; m++) {
          line[m] += there[m] ? each : 0;
        }
      }
    }

    private OfPerson person(Present one) {
      String code = one.person().code();
      boolean[] there = here.getOrDefault(code, new boolean[minutes]);
      int[] sums = new int[4];
      for (int m = 0; m < minutes; m++) {
        int at = m;
        int hands = work.getOrDefault(code, Map.of()).values().stream().mapToInt(l -> l[at]).sum();
        sums[0] += hands;
        sums[1] += there[m] ? 1 : 0;
        sums[2] += rush[m] ? hands : 0;
        sums[3] += rush[m] && there[m] ? 1 : 0;
      }
      return new OfPerson(code, share(sums[0], sums[1]), share(sums[2], sums[3]));
    }

    private OfStation station(String code) {
      List<Hour> hours = new ArrayList<>();
      int allWork = 0;
      int allThere = 0;
      for (int hour = 0; hour < minutes; hour += 60) {
        int hands = 0;
        int there = 0;
        boolean before = false;
        for (int m = hour; m < hour + 60; m++) {
          hands += hands(code, m);
          there += there(code, m);
          before |= rush[m];
        }
        allWork += hands;
        allThere += there;
        Instant start = from.plus(Duration.ofMinutes(hour));
        hours.add(new Hour(start, share(hands, there / 100), before));
      }
      return new OfStation(code, share(allWork, allThere / 100), hours);
    }

    private int hands(String station, int minute) {
      int sum = 0;
      for (Map<String, int[]> one : work.values()) {
        int[] line = one.get(station);
        sum += line == null ? 0 : line[minute];
      }
      return sum;
    }

    /** Hundredths of a minute that those who work a station are there and nowhere else. */
    private int there(String station, int minute) {
      int sum = 0;
      for (Present one : present) {
        String code = one.person().code();
        boolean can = one.person().stations().contains(station);
        if (!can || !here.getOrDefault(code, new boolean[minutes])[minute]) {
          continue;
        }
        int elsewhere = 0;
        for (Map.Entry<String, int[]> of : work.getOrDefault(code, Map.of()).entrySet()) {
          elsewhere += of.getKey().equals(station) ? 0 : of.getValue()[minute];
        }
        sum += Math.max(0, 100 - elsewhere);
      }
      return sum;
    }

    private static Share share(int hundredths, int there) {
      return new Share(Math.round(hundredths / 100f), there);
    }
  }
}
