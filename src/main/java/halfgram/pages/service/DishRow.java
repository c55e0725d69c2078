package halfgram.pages.service;

import halfgram.menu.Dish;
import halfgram.menu.Swap;
import halfgram.pass.AtPass;
import halfgram.pass.Component;
import halfgram.prep.Components;
import halfgram.prep.Fire;
import java.util.List;
import java.util.OptionalLong;

/**
 * Plates of one dish at the pass.
 *
 * @param id for the page: where its forms stand
 * @param missing plates not entered as sent of a service that is over; empty when none
 * @param ready plates there is food for; a dash when nothing on it is kept in tubs
 * @param word what has to be said about it: short, out, waiting; empty when all is well
 * @param swapped what stands in for what
 * @param canSwap whether the dish lists anything that may stand in
 * @param look how that is shown, beside being said
 */
record DishRow(
    String id,
    String course,
    String dish,
    String dietCodes,
    String diets,
    String name,
    int toGo,
    String missing,
    String sent,
    String ready,
    String coming,
    String left,
    String word,
    String look,
    boolean isOut,
    List<String> swapped,
    boolean canSwap) {

  static DishRow of(PassScene scene, AtPass service, AtPass.Line line) {
    boolean over = service.run().isOver(scene.now());
    return new DishRow(
        line.key().word().replaceAll("[^a-z0-9]+", "-"),
        line.key().course(),
        line.key().dish(),
        EntryForm.written(line.key().diets()),
        scene.diets(line.key().diets()),
        scene.name(line.plates()),
        line.toGo(),
        over && line.toGo() > 0 ? scene.words().say("pass.not-sent", line.toGo()) : "",
        sent(scene, line, over),
        shown(line.ready()),
        line.coming().orElse(0) == 0 ? "" : "+" + line.coming().getAsLong(),
        line.left().isPresent()
            ? shown(OptionalLong.of(Math.max(0, line.left().getAsLong())))
            : "–",
        over ? "" : word(scene, line),
        over ? "" : look(line),
        line.out().isPresent(),
        swapped(scene, service, line),
        !line.plates().dish().swaps().isEmpty());
  }

  /** What stands in for what on these plates. */
  private static List<String> swapped(PassScene scene, AtPass service, AtPass.Line line) {
    Dish dish = scene.book().dishes().get(line.key().dish());
    if (dish == null) {
      return List.of();
    }
    return Fire.findService(scene.book(), service.run()).stream()
        .flatMap(one -> one.swaps().stream())
        .filter(one -> one.dish().equals(dish.code()))
        .filter(one -> line.plates().items().contains(one.swap().with()))
        .filter(one -> one.swap().applies(dish.plate()))
        .map(one -> said(scene, dish, one.swap()))
        .toList();
  }

  private static String said(PassScene scene, Dish dish, Swap swap) {
    String item =
        dish.plate().stream()
            .filter(one -> one.item().code().equals(swap.item()))
            .findFirst()
            .map(one -> scene.text(Components.name(scene.book(), one.item())))
            .orElse(swap.item());
    String with = scene.text(Components.name(scene.book(), swap.with().item()));
    return scene.words().say("pass.swapped", with, item);
  }

  private static String shown(OptionalLong number) {
    return number.isPresent() ? String.valueOf(number.getAsLong()) : "–";
  }

  private static String sent(PassScene scene, AtPass.Line line, boolean over) {
    if (line.among().isPresent() && !over && line.sent() <= line.planned()) {
      return scene
          .words()
          .say("pass.sent-choice", line.sent(), line.planned(), line.among().getAsInt());
    }
    return line.sent() > line.planned()
        ? scene.words().say("pass.sent-more", line.sent(), line.planned())
        : scene.words().say("pass.sent-of", line.sent(), line.planned());
  }

  private static String word(PassScene scene, AtPass.Line line) {
    String scarcest = line.scarcest().map(scene::name).orElse("");
    if (line.out().isPresent()) {
      return scene.words().say("pass.out-word", scene.name(line.out().get().what()));
    }
    if (line.shortBy() > 0) {
      return line.shortBy() == 1
          ? scene.words().say("pass.short-one", scarcest)
          : scene.words().say("pass.short", line.shortBy(), scarcest);
    }
    if (line.isWaiting()) {
      return scene
          .words()
          .say("pass.waits", line.toGo() - line.ready().orElse(0), scarcest(scene, line));
    }
    return "";
  }

  /** What is scarcest now, whatever is on its way. */
  private static String scarcest(PassScene scene, AtPass.Line line) {
    return line.scarcestNow().map((Component one) -> scene.name(one)).orElse("");
  }

  private static String look(AtPass.Line line) {
    if (line.out().isPresent()) {
      return "out";
    }
    return line.shortBy() > 0 ? "short" : line.toGo() == 0 ? "done" : "";
  }
}
