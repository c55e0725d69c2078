package halfgram.pages.wall;

import halfgram.desk.Plans;
import halfgram.prep.Task;
import halfgram.words.SecondGoWords;
import java.util.List;
import java.util.Optional;

/** What a second go takes when the task in hand has failed. */
final class SecondGo {
  private SecondGo() {}

  static List<String> list(Plans plans, Scene scene, Optional<Task> inHand) {
    return inHand
        .filter(scene::isFailed)
        .flatMap(
            task ->
                plans
                    .findProposal(scene.house(), scene.inForce())
                    .map(
                        one ->
                            new SecondGoWords(one.book(), one.sheet(), scene.words()).list(task)))
        .orElse(List.of());
  }
}
