package halfgram.pages.today;

import halfgram.prep.Paths;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.station.Person;
import halfgram.station.Station;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The tasks of a part of the prep sheet: of a station, of a service, of the whole day.
 *
 * @param key of the group, for its place on the page
 * @param detail who is on shift, when the service starts
 */
record Group(
    String key, String title, String detail, String load, String loadWhy, List<Fold> folds) {

  /** How the sheet is sorted. */
  enum By {
    STATION,
    START,
    SERVICE;

    String word() {
      return name().toLowerCase(java.util.Locale.ROOT);
    }

    static java.util.Optional<By> find(String word) {
      return java.util.Arrays.stream(values()).filter(by -> by.word().equals(word)).findFirst();
    }
  }

  static List<Group> of(Shown shown, By by) {
    Rows rows = new Rows(shown);
    List<Task> past = shown.sheet().tasks().stream().filter(shown::isPast).toList();
    List<Task> now =
        shown.sheet().tasks().stream()
            .filter(task -> !task.tonight() && !shown.isPast(task))
            .toList();
    List<Group> groups =
        new ArrayList<>(
            switch (by) {
              case STATION -> byStation(shown, rows, now);
              case START -> byStart(shown, rows, now);
              case SERVICE -> byService(shown, rows, now);
            });
    if (!past.isEmpty()) {
      String title = shown.words().say("wall.past");
      String how = shown.words().say("today.past-how");
      groups.add(new Group("past", title, how, "", "", Fold.of(shown, rows, past, "past", true)));
    }
    List<Task> tonight =
        shown.sheet().tonight().stream().filter(task -> !shown.isPast(task)).toList();
    if (!tonight.isEmpty()) {
      groups.add(
          new Group(
              "tonight",
              shown.words().say("today.tonight"),
              "",
              "",
              "",
              Fold.of(shown, rows, tonight, "tonight", true)));
    }
    return groups;
  }

  private static List<Group> byStation(Shown shown, Rows rows, List<Task> tasks) {
    Messages words = shown.words();
    List<Group> groups = new ArrayList<>();
    for (Station station : shown.book().stations().values()) {
      List<Task> own =
          tasks.stream().filter(task -> task.station().equals(station.code())).toList();
      if (!own.isEmpty()) {
        List<String> people = shown.people(station).stream().map(Person::name).toList();
        String key = "at-" + station.code();
        groups.add(
            new Group(
                key,
                shown.text(station.name()),
                people.isEmpty() ? words.say("today.nobody") : String.join(", ", people),
                words.say("today.hands-on", shown.load(station)),
                shown.why(Paths.load(station.code())),
                Fold.of(shown, rows, own, key, false)));
      }
    }
    return groups;
  }

  private static List<Group> byStart(Shown shown, Rows rows, List<Task> tasks) {
    return tasks.isEmpty()
        ? List.of()
        : List.of(
            new Group(
                "by-start",
                shown.words().say("today.in-order"),
                "",
                "",
                "",
                Fold.of(shown, rows, tasks, "by-start", true)));
  }

  private static List<Group> byService(Shown shown, Rows rows, List<Task> tasks) {
    Map<String, List<Task>> byService = new LinkedHashMap<>();
    List<ServiceRun> runs =
        shown.sheet().allServices().stream()
            .sorted(Comparator.comparing((ServiceRun run) -> run.window().start()))
            .toList();
    runs.forEach(run -> byService.put(run.id(), new ArrayList<>()));
    tasks.forEach(
        task ->
            byService.computeIfAbsent(task.make().service(), id -> new ArrayList<>()).add(task));
    Map<String, String> times = new LinkedHashMap<>();
    runs.forEach(run -> times.put(run.id(), shown.time(run.window().start())));
    List<Group> groups = new ArrayList<>();
    byService.forEach(
        (service, own) -> {
          if (!own.isEmpty()) {
            String key = "for-" + groups.size();
            groups.add(
                new Group(
                    key,
                    shown.names().user(service, shown.day()),
                    times.getOrDefault(service, ""),
                    "",
                    "",
                    Fold.of(shown, rows, own, key, true)));
          }
        });
    return groups;
  }
}
