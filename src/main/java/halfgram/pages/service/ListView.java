package halfgram.pages.service;

import halfgram.pass.AtPass;
import java.util.List;

/**
 * The services of a day, to choose one.
 *
 * @param day as an address has it; empty for today
 * @param before the day before; empty when nobody opened it
 */
record ListView(String date, String day, String before, List<OutView> outs, List<Door> doors) {

  /**
   * One service.
   *
   * @param toGo plates still to go; empty for a service that counts none
   * @param trouble how many dishes or components are short or out; empty when none
   */
  record Door(String id, String name, String hours, String phase, String toGo, String trouble) {}

  static ListView of(PassScene scene, boolean hasBefore) {
    return new ListView(
        scene.words().date(scene.day()),
        scene.isPast() ? scene.day().toString() : "",
        hasBefore ? scene.day().minusDays(1).toString() : "",
        OutView.list(scene),
        scene.board().services().stream().map(one -> door(scene, one)).toList());
  }

  private static Door door(PassScene scene, AtPass at) {
    int toGo = at.lines().stream().mapToInt(AtPass.Line::toGo).sum();
    boolean over = !at.run().window().end().isAfter(scene.now());
    long trouble = over ? 0 : trouble(at);
    return new Door(
        at.run().id(),
        scene.text(at.run().name()),
        scene.time(at.run().window().start()) + "–" + scene.time(at.run().window().end()),
        scene.phase(at.run()),
        at.lines().isEmpty() || over ? "" : scene.words().say("pass.plates-to-go", toGo),
        trouble == 0 ? "" : scene.words().say("pass.trouble", trouble));
  }

  private static long trouble(AtPass at) {
    return at.lines().isEmpty()
        ? at.shelves().stream().filter(one -> one.isShort() || one.out().isPresent()).count()
        : at.lines().stream().filter(one -> one.shortBy() > 0 || one.out().isPresent()).count();
  }
}
