package halfgram.pages.wall;

import halfgram.formula.FormulaVersion;
import halfgram.menu.Diet;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import halfgram.prep.ServiceRun;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Plates for diets in the day's services: how many, and what they get instead. */
final class Diets {

  /**
   * One diet, or several together.
   *
   * @param all their plates, spares too
   * @param plates those that get something else than the dish as it is
   */
  record Row(String diet, int all, List<Plate> plates) {}

  /** So many plates, and what they get. */
  record Plate(int count, String what) {}

  private final Scene scene;

  Diets(Scene scene) {
    this.scene = scene;
  }

  /**
   * Those that this station has a hand in, the same of several services together; services that are
   * over are left out.
   */
  List<Row> list() {
    Map<String, Map<String, Integer>> byDiet = new LinkedHashMap<>();
    Map<String, Integer> all = new LinkedHashMap<>();
    for (ServiceRun run : scene.inForce().sheet().services()) {
      if (run.window().end().isAfter(scene.now())) {
        for (ServiceRun.Plates plates : run.plates()) {
          if (!plates.diets().isEmpty() && isHere(plates)) {
            String diet = name(plates);
            all.merge(diet, plates.count(), Integer::sum);
            Map<String, Integer> other = byDiet.computeIfAbsent(diet, any -> new LinkedHashMap<>());
            if (plates.variant().isPresent()) {
              other.merge(what(plates), plates.count(), Integer::sum);
            }
          }
        }
      }
    }
    return byDiet.entrySet().stream()
        .map(of -> new Row(of.getKey(), all.getOrDefault(of.getKey(), 0), plates(of.getValue())))
        .toList();
  }

  private static List<Plate> plates(Map<String, Integer> counts) {
    return counts.entrySet().stream().map(of -> new Plate(of.getValue(), of.getKey())).toList();
  }

  private String what(ServiceRun.Plates plates) {
    return scene.words().text(plates.variant().map(Variant::name).orElse(plates.dish().name()));
  }

  private String name(ServiceRun.Plates plates) {
    List<String> names =
        plates.diets().stream()
            .flatMap(code -> Optional.ofNullable(scene.book().diets().get(code)).stream())
            .map(Diet::name)
            .map(scene.words()::text)
            .toList();
    return String.join(" + ", names).toUpperCase(Locale.ROOT);
  }

  /** Whether this station makes or finishes anything on the plate, with the diet or without. */
  private boolean isHere(ServiceRun.Plates plates) {
    List<PlateItem> items = new ArrayList<>(plates.items());
    items.addAll(plates.dish().plate());
    return items.stream()
        .flatMap(item -> item.item().component().stream())
        .map(ref -> scene.book().formulary().get(ref))
        .map(FormulaVersion::steps)
        .flatMap(List::stream)
        .anyMatch(step -> scene.isHere(step.station()) || scene.station().equals("pass"));
  }
}
