package halfgram.pages.wall;

import halfgram.formula.FormulaVersion;
import halfgram.menu.Diet;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import halfgram.prep.ServiceRun;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Plates for diets in the day's services: how many, and what they get instead. */
final class Diets {

  /**
   * One diet, or several together, in one service.
   *
   * @param all their plates, spares too
   * @param plates of each dish, with what they get instead of the dish as it is
   */
  record Row(String diet, String service, int all, List<Plate> plates) {}

  /** So many plates of a dish. */
  record Plate(int count, String what) {}

  /** Whose plates. */
  private record Whose(String diet, String service) {}

  private final Scene scene;

  Diets(Scene scene) {
    this.scene = scene;
  }

  /**
   * Those that this station has a hand in, the same dish of one service together; services that are
   * over are left out.
   */
  List<Row> list() {
    Map<Whose, Map<String, Integer>> byDiet = new LinkedHashMap<>();
    for (ServiceRun run : scene.inForce().sheet().services()) {
      if (run.window().end().isAfter(scene.now())) {
        for (ServiceRun.Plates plates : run.plates()) {
          if (!plates.diets().isEmpty() && isHere(plates)) {
            Whose whose = new Whose(name(plates), scene.words().text(run.name()));
            byDiet
                .computeIfAbsent(whose, any -> new LinkedHashMap<>())
                .merge(what(plates), plates.count(), Integer::sum);
          }
        }
      }
    }
    return byDiet.entrySet().stream().map(of -> row(of.getKey(), of.getValue())).toList();
  }

  private static Row row(Whose whose, Map<String, Integer> counts) {
    int all = counts.values().stream().mapToInt(Integer::intValue).sum();
    List<Plate> plates =
        counts.entrySet().stream().map(of -> new Plate(of.getValue(), of.getKey())).toList();
    return new Row(whose.diet(), whose.service(), all, plates);
  }

  /** The dish, with what these plates get instead. */
  String what(ServiceRun.Plates plates) {
    String dish = scene.words().text(plates.dish().name());
    return plates
        .variant()
        .map(Variant::name)
        .map(scene.words()::text)
        .map(variant -> scene.words().say("wall.diet-instead", dish, variant))
        .orElse(dish);
  }

  /** The diets of some plates, in capitals. */
  String name(ServiceRun.Plates plates) {
    return name(scene, plates.diets());
  }

  /** Diets, in capitals, those too that the plan in force does not know yet. */
  static String name(Scene scene, Collection<String> diets) {
    List<String> names =
        diets.stream()
            .map(
                code ->
                    Stream.of(scene.house().book(), scene.book())
                        .flatMap(book -> Optional.ofNullable(book.diets().get(code)).stream())
                        .findFirst()
                        .map(Diet::name)
                        .map(scene.words()::text)
                        .orElse(code))
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
