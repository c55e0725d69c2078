package halfgram.pages.service;

import halfgram.pages.PlatingRow;
import halfgram.pass.AtPass;
import halfgram.pass.Entry;
import halfgram.pass.PlatingNow;
import halfgram.prep.Fire;
import halfgram.words.Dots;
import halfgram.words.PlatingWords;
import java.time.Duration;
import java.time.Instant;
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
 * @param folded what is said of its dishes while they lie folded, as what is served now and next
 *     has to be in sight; empty where they do not
 * @param open whether the fold lies open, as something was just entered in it
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
    List<DishRow> dishes,
    String folded,
    boolean open) {
  /** A course that fires or is plated this soon lies open. */
  private static final Duration SOON = Duration.ofMinutes(15);

  static List<CourseBox> list(
      PassScene scene, AtPass service, Touched touched, LongSupplier numbers) {
    List<CourseBox> boxes = new ArrayList<>();
    boolean nextIsOpen = false;
    for (AtPass.FireNow one : service.fires()) {
      List<AtPass.Line> lines =
          service.lines().stream()
              .filter(line -> line.key().course().equals(one.fire().code()))
              .toList();
      boolean toGo = lines.stream().anyMatch(line -> line.toGo() > 0);
      boolean next = toGo && one.called().isEmpty() && !nextIsOpen;
      nextIsOpen |= next;
      boolean atHand = next || lines.isEmpty() || isAtHand(scene, service, one, toGo);
      String folded = atHand ? "" : folded(scene, lines);
      boxes.add(box(scene, service, one, lines, folded, touched.isOnOneOf(lines), numbers));
    }
    List<DishRow> others =
        service.lines().stream()
            .filter(line -> line.key().course().isEmpty())
            .map(line -> DishRow.of(scene, service, line))
            .toList();
    if (!others.isEmpty()) {
      boxes.add(
          new CourseBox(
              "",
              scene.words().say("pass.dishes"),
              "",
              "",
              "",
              List.of(),
              "",
              List.of(),
              others,
              "",
              false));
    }
    return boxes;
  }

  /** Whether it is served or plated now, or soon; all of an earlier day or a service over is. */
  private static boolean isAtHand(
      PassScene scene, AtPass service, AtPass.FireNow one, boolean toGo) {
    if (scene.isPast() || service.run().isOver(scene.now())) {
      return true;
    }
    if (!toGo) {
      return false;
    }
    Instant soon = scene.now().plus(SOON);
    return one.called().isPresent()
        || !one.fire().at().isAfter(soon)
        || plating(scene, service, one).stream()
            .anyMatch(now -> now.isBegun() || !now.line().start().isAfter(soon));
  }

  private static String folded(PassScene scene, List<AtPass.Line> lines) {
    int toGo = AtPass.toGo(lines);
    if (toGo == 0) {
      return scene
          .words()
          .say("pass.folded-sent", lines.stream().mapToInt(AtPass.Line::sent).sum());
    }
    long trouble =
        lines.stream().filter(line -> line.shortBy() > 0 || line.out().isPresent()).count();
    String said = scene.words().say("pass.plates-to-go", toGo);
    return trouble == 0 ? said : said + Dots.BETWEEN + scene.words().say("pass.trouble", trouble);
  }

  /** What is plated for it; nothing any more of a service that is over. */
  private static List<PlatingNow> plating(PassScene scene, AtPass service, AtPass.FireNow one) {
    if (service.run().isOver(scene.now())) {
      return List.of();
    }
    return scene.board().plating(service.run()).stream()
        .filter(now -> now.line().fire().equals(one.fire()))
        .toList();
  }

  private static CourseBox box(
      PassScene scene,
      AtPass service,
      AtPass.FireNow one,
      List<AtPass.Line> lines,
      String folded,
      boolean open,
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
        plating(scene, service, one).stream()
            .map(now -> PlatingRow.of(scene.words(), scene::person, now, numbers))
            .toList(),
        lines.stream().map(line -> DishRow.of(scene, service, line)).toList(),
        folded,
        open);
  }

  private static String said(PassScene scene, Entry entry) {
    return scene.words().say("pass.called", scene.time(entry.at()), scene.person(entry.who()));
  }
}
