package halfgram.pages.service;

import halfgram.pass.Outage;
import java.util.List;

/**
 * Something that is 86.
 *
 * @param who who said so, and when
 */
record OutView(String dish, String item, String name, String because, String who) {

  static List<OutView> list(PassScene scene) {
    return scene.board().called().outages().stream().map(one -> of(scene, one)).toList();
  }

  private static OutView of(PassScene scene, Outage out) {
    return new OutView(
        out.what().dish(),
        out.what().item(),
        scene.name(out.what()),
        out.because(),
        scene.person(out.who()) + " " + scene.time(out.since()));
  }
}
