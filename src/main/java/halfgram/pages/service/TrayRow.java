package halfgram.pages.service;

import halfgram.pass.AtPass;
import halfgram.pass.Trays;
import java.util.Optional;

/**
 * A component of a service: how much, and what to take from next.
 *
 * @param tub code of the tub to take next; empty when there is none
 * @param more how many further tubs there are
 */
record TrayRow(
    String item,
    String name,
    String toGo,
    String ready,
    String coming,
    String word,
    String look,
    String tub,
    String amount,
    String useBy,
    boolean kept,
    int more,
    boolean isOut) {

  static TrayRow of(PassScene scene, AtPass service, AtPass.Shelf shelf) {
    boolean over = service.run().isOver(scene.now());
    Optional<Trays.Tray> next = shelf.trays().stream().findFirst();
    return new TrayRow(
        shelf.component().formula(),
        scene.name(shelf.component()),
        scene.names().amount(shelf.toGo()),
        scene.names().amount(shelf.inStock()),
        shelf.coming().isPositive() ? "+" + scene.names().amount(shelf.coming()) : "",
        over ? "" : word(scene, shelf),
        over ? "" : shelf.out().isPresent() ? "out" : shelf.isShort() ? "short" : "",
        next.map(tray -> tray.tub().lot().code()).orElse(""),
        next.map(tray -> scene.names().amount(tray.free())).orElse(""),
        next.map(tray -> scene.time(tray.tub().lot().useBy())).orElse(""),
        next.filter(Trays.Tray::kept).isPresent() && service.run().event().isPresent(),
        Math.max(0, shelf.trays().size() - 1),
        shelf.out().isPresent());
  }

  private static String word(PassScene scene, AtPass.Shelf shelf) {
    if (shelf.out().isPresent()) {
      return scene.words().say("pass.out-word", scene.name(shelf.component()));
    }
    return shelf.isShort()
        ? scene.words().say("pass.short-amount", scene.names().amount(shelf.left().times(-1)))
        : "";
  }
}
