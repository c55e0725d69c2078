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

  /** One diet, or several together. */
  record Row(String diet, List<Plate> plates) {}

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
    for (ServiceRun run : scene.inForce().sheet().services()) {
      if (run.window().end().isAfter(scene.now())) {
        for (ServiceRun.Plates plates : run.plates()) {
          if (!plates.diets().isEmpty() && isHere(plates)) {
            byDiet
                .computeIfAbsent(name(plates), diet -> new LinkedHashMap<>())
                .merge(what(plates), plates.count(), Integer::sum);
          }
        }
      }
    }
    return byDiet.entrySet().stream()
        .map(of -> new Row(of.getKey(), plates(of.getValue())))
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
