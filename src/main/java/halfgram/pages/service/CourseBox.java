package halfgram.pages.service;

import halfgram.pages.PlatingRow;
import halfgram.pass.AtPass;
import halfgram.pass.Entry;
import halfgram.prep.Fire;
import halfgram.words.PlatingWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * A course with its dishes, or all dishes of a service of pick-ups; a pick-up has no dishes of its
 * own.
 *
 * @param code to call it by; empty where there is nothing to call
 * @param at when it is to be called, and how long until then
 * @param ready which stations have their part
 * @param go when the pass said go
 * @param plating what is plated for it
 * @param called when and by whom; empty until then
 */
record CourseBox(
    String code,
    String name,
    String at,
    String until,
    String called,
    List<String> ready,
    String go,
    List<PlatingRow> plating,
    List<DishRow> dishes) {

  static List<CourseBox> list(PassScene scene, AtPass service, LongSupplier numbers) {
    List<CourseBox> boxes = new ArrayList<>();
    for (AtPass.FireNow one : service.fires()) {
      List<DishRow> dishes =
          service.lines().stream()
              .filter(line -> line.key().course().equals(one.fire().code()))
              .map(line -> DishRow.of(scene, service, line))
              .toList();
      boxes.add(box(scene, service, one, dishes, numbers));
    }
    List<DishRow> others =
        service.lines().stream()
            .filter(line -> line.key().course().isEmpty())
            .map(line -> DishRow.of(scene, service, line))
            .toList();
    if (!others.isEmpty()) {
      boxes.add(
          new CourseBox(
              "", scene.words().say("pass.dishes"), "", "", "", List.of(), "", List.of(), others));
    }
    return boxes;
  }

  private static CourseBox box(
      PassScene scene,
      AtPass service,
      AtPass.FireNow one,
      List<DishRow> dishes,
      LongSupplier numbers) {
    Fire fire = one.fire();
    Optional<Entry> called = one.called();
    return new CourseBox(
        fire.code(),
        PlatingWords.fire(scene.words(), fire),
        scene.time(fire.at()),
        called.isPresent() || service.run().isOver(scene.now()) ? "" : scene.until(fire.at()),
        called.map(by -> said(scene, by)).orElse(""),
        one.ready().values().stream()
            .map(
                by ->
                    scene
                        .words()
                        .say("pass.ready-said", scene.station(by.station()), scene.time(by.at())))
            .toList(),
        one.go().map(by -> scene.words().say("pass.go-said", scene.time(by.at()))).orElse(""),
        scene.board().plating(service.run()).stream()
            .filter(now -> now.line().fire().equals(fire))
            .map(now -> PlatingRow.of(scene.words(), scene::person, now, numbers))
            .toList(),
        dishes);
  }

  private static String said(PassScene scene, Entry entry) {
    return scene.words().say("pass.called", scene.time(entry.at()), scene.person(entry.who()));
  }
}
