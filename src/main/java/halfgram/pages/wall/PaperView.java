package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.prep.Task;
import halfgram.station.Person;
import halfgram.station.Station;
import halfgram.web.Visit;
import halfgram.web.Words;
import halfgram.words.Dots;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The prep sheet as it is printed: the day, then each station.
 *
 * @param head what stands on top of every page beside the station
 * @param size of the paper, when somebody chose one: a style sheet's name
 * @param entry where what was done on it is entered, within the kitchen; empty for a day ahead
 */
record PaperView(
    String date,
    String head,
    String size,
    List<Choice> stations,
    List<Choice> sizes,
    Map<String, String> languages,
    String language,
    String entry,
    PaperDay day,
    List<Sheet> sheets) {

  /** Something to choose; an empty address for what is chosen. */
  record Choice(String name, String href) {}

  /**
   * The pages of one station.
   *
   * @param cooks who is on shift
   * @param over what was done or lost when it was printed
   */
  record Sheet(String name, String cooks, List<PaperTask> tasks, List<String> over) {}

  /**
   * What was asked for.
   *
   * @param station its code, or {@link Scene#ALL}
   * @param date as asked; empty for today
   * @param size "a4", "letter", or empty for whatever the printer has
   */
  record Asked(String station, String date, String size) {
    static final List<String> SIZES = List.of("", "a4", "letter");

    static Asked of(Visit visit) {
      String station = visit.query("station");
      String size = visit.query("size");
      return new Asked(
          station.isEmpty() ? Scene.ALL : station,
          visit.query("date"),
          SIZES.contains(size) ? size : "");
    }

    /** The address of the same with another station or paper, within the kitchen. */
    private String href(String page, String of, String paper) {
      List<String> asks = new ArrayList<>();
      if (!of.equals(Scene.ALL)) {
        asks.add("station=" + Visit.encoded(of));
      }
      if (!date.isEmpty()) {
        asks.add("date=" + Visit.encoded(date));
      }
      if (!paper.isEmpty()) {
        asks.add("size=" + paper);
      }
      return page + (asks.isEmpty() ? "" : "?" + String.join("&", asks));
    }
  }

  /**
   * Prints.
   *
   * @param scenes one for each station that is printed, in order
   * @param others one for each that could be
   * @param address of this server, to which printed codes lead
   */
  static PaperView of(
      Scene whole,
      BathBoard board,
      Asked asked,
      List<Scene> scenes,
      List<Scene> others,
      String address) {
    Messages words = whole.words();
    String date = words.date(whole.day());
    return new PaperView(
        date,
        head(whole),
        asked.size().isEmpty() ? "" : "css/paper-" + asked.size() + ".css",
        stations(whole, asked, others),
        Asked.SIZES.stream()
            .map(
                size ->
                    new Choice(
                        size(words, size),
                        size.equals(asked.size())
                            ? ""
                            : asked.href("paper", asked.station(), size)))
            .toList(),
        Words.LANGUAGES,
        words.language(),
        whole.inForce().isAccepted() ? asked.href("paper/entry", asked.station(), "") : "",
        PaperDay.of(whole, board),
        scenes.stream().map(scene -> sheet(scene, board, address)).toList());
  }

  private static String head(Scene whole) {
    Messages words = whole.words();
    String at = words.moment(whole.now());
    return whole.inForce().isAccepted()
        ? words.say("paper.head", whole.inForce().plan().number(), at)
        : words.say("paper.head-ahead", at);
  }

  private static String size(Messages words, String size) {
    return switch (size) {
      case "a4" -> words.say("paper.size-a4");
      case "letter" -> words.say("paper.size-letter");
      default -> words.say("paper.size-any");
    };
  }

  private static List<Choice> stations(Scene whole, Asked asked, List<Scene> others) {
    List<Choice> choices = new ArrayList<>();
    boolean all = asked.station().equals(Scene.ALL);
    choices.add(
        new Choice(
            whole.words().say("wall.all-stations"),
            all ? "" : asked.href("paper", Scene.ALL, asked.size())));
    for (Scene one : others) {
      boolean here = one.station().equals(asked.station());
      choices.add(
          new Choice(
              one.stationName(), here ? "" : asked.href("paper", one.station(), asked.size())));
    }
    return choices;
  }

  private static Sheet sheet(Scene scene, BathBoard board, String address) {
    List<Task> tasks = scene.tasks();
    return new Sheet(
        scene.stationName(),
        scene.people().stream().map(Person::name).collect(Collectors.joining(Dots.BETWEEN)),
        tasks.stream()
            .filter(task -> !scene.isOver(task))
            .map(task -> PaperTask.of(scene, board, task, address))
            .toList(),
        tasks.stream().filter(scene::isOver).map(task -> over(scene, task)).toList());
  }

  private static String over(Scene scene, Task task) {
    Optional<String> at = scene.progress(task).doneAt().map(scene::time);
    String what = scene.names().title(task);
    return scene.isFailed(task)
        ? scene.words().say("paper.lost", what)
        : scene.words().say("paper.done-at", what, at.orElse(""));
  }

  /** The stations that have anything to do, as the book lists them. */
  static List<String> stationsOf(Scene whole) {
    return whole.house().book().stations().values().stream()
        .map(Station::code)
        .filter(code -> whole.tasks().stream().anyMatch(task -> task.station().equals(code)))
        .toList();
  }
}
