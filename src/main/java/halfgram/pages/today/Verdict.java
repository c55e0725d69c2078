package halfgram.pages.today;

import halfgram.desk.Withdrawn;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.prep.Behind;
import halfgram.prep.Misfit;
import halfgram.prep.ShortBatch;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.station.Station;
import halfgram.web.Visit;
import halfgram.words.Messages;
import java.math.BigDecimal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Whether the day fits, what comes next, where it is tightest.
 *
 * @param fits "It fits", or for how many reasons not
 * @param crew what has no place, or comes late, by people and machines; empty where nobody knows
 * @param next what to start next, and when
 * @param tightest the station with the most work for its people
 * @param count how many tasks there are and how many are done
 * @param misfits what does not fit, each with its chain
 * @param problems what cooks have reported, what is in work and will be late, what came short
 * @param warnings worth a look
 */
record Verdict(
    String fits,
    String crew,
    String next,
    String tightest,
    String count,
    List<Trouble> misfits,
    List<Trouble> problems,
    List<String> warnings) {

  /** Something wrong: what, where more is said, and the way it came. */
  record Trouble(String said, String href, List<String> chain) {}

  static Verdict of(
      Shown shown,
      String crew,
      List<Withdrawn.Told> withdrawn,
      List<Behind> behind,
      List<ShortBatch> shorts) {
    Messages words = shown.words();
    return new Verdict(
        fits(shown),
        crew,
        next(shown),
        tightest(shown),
        count(shown),
        shown.sheet().misfits().stream().map(misfit -> trouble(shown, misfit)).toList(),
        Stream.of(
                problems(shown, withdrawn).stream(),
                behind.stream().map(one -> behind(shown, one)),
                shorts.stream().map(one -> shorter(shown, one)))
            .flatMap(told -> told)
            .toList(),
        shown.sheet().warnings().stream().map(words::say).toList());
  }

  /** That it fitted when it was planned says little of a day that runs late. */
  private static String fits(Shown shown) {
    Messages words = shown.words();
    if (shown.phase() == Shown.Phase.OVER) {
      return words.say("today.was");
    }
    int reasons = shown.sheet().misfits().size();
    if (reasons > 0) {
      return reasons == 1 ? words.say("today.misfit") : words.say("today.misfits", reasons);
    }
    long late =
        shown.sheet().tasks().stream()
            .filter(task -> shown.progress(task).state() == TaskState.TO_DO)
            .filter(task -> !shown.isPast(task))
            .filter(task -> !StateWords.late(shown, task).isEmpty())
            .count();
    if (late > 0) {
      return late == 1 ? words.say("today.late-one") : words.say("today.late-many", late);
    }
    return words.say(shown.sheet().tasks().isEmpty() ? "today.idle" : "today.fits");
  }

  private static boolean isOver(Shown shown, Task task) {
    TaskState state = shown.progress(task).state();
    return state == TaskState.DONE || state == TaskState.FAILED;
  }

  /** A batch that will be late as it goes, with the way to the task it is at. */
  private static Trouble behind(Shown shown, Behind late) {
    String link =
        shown.sheet().tasks().stream()
            .filter(task -> task.make().id().equals(late.make().id()) && !isOver(shown, task))
            .findFirst()
            .map(shown::link)
            .orElse("");
    Object user = shown.names().user(late.need().user());
    return new Trouble(shown.words().say(late.said(user)), link, List.of());
  }

  private static Trouble shorter(Shown shown, ShortBatch batch) {
    return new Trouble(shown.names().cameShort(batch), shown.link(batch.task()), List.of());
  }

  static Trouble trouble(Shown shown, Misfit misfit) {
    return new Trouble(
        shown.words().say(misfit.what()), shown.why(misfit.path()), chain(shown, misfit.chain()));
  }

  static List<String> chain(Shown shown, List<Message> chain) {
    return chain.stream().map(shown.words()::say).toList();
  }

  /** Where a chef is wanted, then what cooks have reported. */
  private static List<Trouble> problems(Shown shown, List<Withdrawn.Told> withdrawn) {
    List<Withdrawn.Told> all = new ArrayList<>();
    shown.sheet().tasks().stream()
        .map(task -> new Withdrawn.Told(task, shown.progress(task)))
        .forEach(all::add);
    all.addAll(withdrawn);
    Stream<Trouble> calls =
        all.stream()
            .flatMap(
                one ->
                    one.progress().call().stream()
                        .map(call -> trouble(shown, one.task(), called(shown, one.task(), call))));
    return Stream.concat(calls, reported(shown, all)).toList();
  }

  /** With the way to the task, which stands on the wall alone when the sheet does without it. */
  private static Trouble trouble(Shown shown, Task task, String said) {
    String link =
        shown.byId().containsKey(task.id())
            ? shown.link(task)
            : shown.address(
                "wall/" + Visit.encoded(task.station()) + "?task=" + Visit.encoded(task.id()));
    return new Trouble(said, link, List.of());
  }

  private static String called(Shown shown, Task task, Tick call) {
    Station station = shown.book().stations().get(task.station());
    String where = station == null ? task.station() : shown.words().text(station.name());
    String said = shown.words().say("wall.called", where) + ": " + shown.names().title(task);
    return said
        + call.note().map(note -> ": " + note).orElse("")
        + " ("
        + shown.words().time(call.at())
        + ")";
  }

  private static Stream<Trouble> reported(Shown shown, List<Withdrawn.Told> all) {
    return all.stream()
        .filter(one -> one.progress().state() == TaskState.PROBLEM)
        .map(
            one ->
                trouble(
                    shown,
                    one.task(),
                    shown
                        .words()
                        .say(
                            "today.problem-with",
                            shown.names().title(one.task()),
                            one.progress().problem().orElse(""))));
  }

  private static String next(Shown shown) {
    Messages words = shown.words();
    if (shown.sheet().tasks().isEmpty()) {
      return "";
    }
    if (shown.phase() == Shown.Phase.OVER) {
      return "";
    }
    Optional<Task> next =
        shown.sheet().tasks().stream()
            .filter(task -> shown.progress(task).state() == TaskState.TO_DO)
            .filter(task -> !shown.isPast(task))
            .min(Comparator.comparing(shown::start));
    if (next.isEmpty()) {
      return words.say("today.nothing-next");
    }
    String late = StateWords.late(shown, next.get());
    String at = shown.time(shown.start(next.get()));
    return words.say(
        "today.next", shown.names().title(next.get()), late.isEmpty() ? at : at + ", " + late);
  }

  private static String tightest(Shown shown) {
    Optional<Station> tightest =
        shown.book().stations().values().stream()
            .filter(station -> !shown.load(station).isZero())
            .max(Comparator.comparing((Station station) -> share(shown, station)));
    return tightest
        .map(station -> shown.words().say("today.tightest", station.name(), load(shown, station)))
        .orElse("");
  }

  /** Hands-on time of a station against the hours of the people on shift who work there. */
  static String load(Shown shown, Station station) {
    Duration hours = hours(shown, station);
    Duration handsOn = shown.load(station);
    return hours.isZero()
        ? shown.words().say("today.load-nobody", handsOn)
        : shown.words().say("today.load", handsOn, hours, percent(share(shown, station)));
  }

  static Duration hours(Shown shown, Station station) {
    return shown.people(station).stream()
        .map(person -> person.on(shown.day()))
        .reduce(Duration.ZERO, Duration::plus);
  }

  /** Nobody there is tighter than anything. */
  private static Ratio share(Shown shown, Station station) {
    Duration hours = hours(shown, station);
    BigDecimal handsOn = BigDecimal.valueOf(shown.load(station).toMinutes());
    return hours.isZero()
        ? new Ratio(BigDecimal.valueOf(1000))
        : new Ratio(handsOn).dividedBy(new Ratio(BigDecimal.valueOf(hours.toMinutes())));
  }

  private static String percent(Ratio share) {
    return halfgram.measure.Exact.plain(share.percent(), 0);
  }

  private static String count(Shown shown) {
    int all = shown.sheet().tasks().size();
    long done =
        shown.sheet().tasks().stream().filter(task -> StateWords.isDone(shown, task)).count();
    if (all == 0) {
      return "";
    }
    return shown.phase() == Shown.Phase.PREVIEW
        ? shown.words().say("today.tasks", all)
        : shown.words().say("today.tasks-done", done, all);
  }
}
