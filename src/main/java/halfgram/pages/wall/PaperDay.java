package halfgram.pages.wall;

import halfgram.desk.BathBoard;
import halfgram.prep.Plated;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What everybody has to know of the day, on a sheet of its own: who eats what, baths, tonight. */
record PaperDay(List<Served> services, List<BathRows.Row> baths, List<Night> tonight) {

  /**
   * A service.
   *
   * @param covers counted, and what is made; empty for one by pars
   */
  record Served(String time, String name, String covers, List<Plate> plates) {}

  /** So many plates of a kind; those for a diet are named by it. */
  record Plate(int count, String what, String diet, String contains) {}

  /** Something that is done tonight for another day. */
  record Night(String start, String what, String amount, String station) {}

  public boolean isEmpty() {
    return services.isEmpty() && baths.isEmpty() && tonight.isEmpty();
  }

  static PaperDay of(Scene scene, BathBoard board) {
    return new PaperDay(
        scene.inForce().sheet().services().stream().map(run -> served(scene, run)).toList(),
        new BathRows(scene, board).list(),
        scene.inForce().sheet().tonight().stream()
            .filter(task -> scene.isHere(task.station()) && !scene.isOver(task))
            .sorted(Comparator.comparing(scene::start))
            .map(task -> night(scene, task))
            .toList());
  }

  private static Served served(Scene scene, ServiceRun run) {
    Messages words = scene.words();
    String covers =
        run.covers().isEmpty()
            ? ""
            : run.prepared().isEmpty()
                ? words.say("paper.covers", run.covers().getAsInt())
                : words.say(
                    "paper.covers-made", run.covers().getAsInt(), run.prepared().getAsInt());
    return new Served(
        scene.time(run.window().start()) + "–" + words.time(run.window().end()),
        words.text(run.name()),
        covers,
        plates(scene, run));
  }

  /** The same plates of several courses together. */
  private static List<Plate> plates(Scene scene, ServiceRun run) {
    Diets diets = new Diets(scene);
    Map<List<String>, Integer> counts = new LinkedHashMap<>();
    for (ServiceRun.Plates plates : run.plates()) {
      String contains = scene.names().contains(Plated.allergens(scene.book(), plates.items()));
      String diet = plates.diets().isEmpty() ? "" : diets.name(plates);
      counts.merge(List.of(diets.what(plates), diet, contains), plates.count(), Integer::sum);
    }
    List<Plate> all = new ArrayList<>();
    counts.forEach((of, count) -> all.add(new Plate(count, of.get(0), of.get(1), of.get(2))));
    return all;
  }

  private static Night night(Scene scene, Task task) {
    var station = scene.book().stations().get(task.station());
    return new Night(
        scene.time(scene.start(task)),
        scene.names().title(task),
        task.stored().stream()
            .map(stored -> scene.names().amount(stored.made()))
            .collect(Collectors.joining(", ")),
        station == null ? task.station() : scene.words().text(station.name()));
  }
}
