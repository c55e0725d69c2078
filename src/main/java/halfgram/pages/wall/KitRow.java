package halfgram.pages.wall;

import halfgram.desk.Kit;
import halfgram.measure.Message;
import halfgram.prep.Carrying;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.prep.Things;
import halfgram.words.Dots;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * A thing that a task uses and that carries something. Washing is asked for where it must not.
 *
 * @param said "blender carries MILK since 13:40 from Sheep-yoghurt base"
 * @param forWhom for whom that must not be; empty when it may
 * @param washed when it was washed last; empty when nobody said
 * @param ids of the two forms
 * @param waiting the tick that was not taken, to go on when the thing is clean, field by field
 */
record KitRow(
    String thing,
    String name,
    String said,
    String forWhom,
    String washed,
    List<String> ids,
    Map<String, String> waiting) {

  public boolean isMix() {
    return !forWhom.isEmpty();
  }

  /** Those of a task that somebody has still to do; what is clean needs no word. */
  static List<KitRow> list(Scene scene, Task task, Kit kit, TickForm rejected) {
    List<KitRow> rows = new ArrayList<>();
    if (scene.isOver(task)) {
      return rows;
    }
    Kit.OfTask of = kit.ofTask(scene.house(), scene.inForce(), task);
    for (Carrying carrying : of.things()) {
      boolean own = carrying.by().values().stream().allMatch(use -> use.task().equals(task.id()));
      if (!carrying.isClean() && !own) {
        rows.add(row(scene, task, carrying, of, rejected));
      }
    }
    return rows;
  }

  private static KitRow row(
      Scene scene, Task task, Carrying carrying, Kit.OfTask of, TickForm rejected) {
    Messages words = scene.words();
    String name = words.say(Message.of("wall.thing", Things.name(scene.book(), carrying.thing())));
    List<String> parts = new ArrayList<>();
    carrying
        .by()
        .forEach(
            (code, use) ->
                parts.add(
                    words.say(
                        "wall.carries",
                        scene.names().allergen(code),
                        scene.time(use.first()),
                        words.text(use.name()))));
    String forWhom =
        of.mixes().stream()
            .filter(mix -> mix.carrying().thing().equals(carrying.thing()))
            .findFirst()
            .map(mix -> words.say(Message.of("wall.not-for", mix.free().diets(mix.breaches()))))
            .orElse("");
    boolean waits =
        rejected.task().equals(task.id()) && scene.progress(task).state() != TaskState.DONE;
    Map<String, String> waiting = new LinkedHashMap<>(waits ? rejected.fields() : Map.of());
    waiting.remove("station");
    waiting.remove("task");
    return new KitRow(
        carrying.thing(),
        name,
        Dots.join(parts),
        forWhom,
        carrying.washed().map(wash -> scene.time(wash.at())).orElse(""),
        List.of(UUID.randomUUID().toString(), UUID.randomUUID().toString()),
        waiting);
  }
}
