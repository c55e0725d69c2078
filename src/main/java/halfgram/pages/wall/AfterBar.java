package halfgram.pages.wall;

import halfgram.desk.Desk;
import halfgram.desk.Dipped;
import halfgram.desk.Stock;
import halfgram.desk.Withdrawn;
import halfgram.pages.Sequence;
import halfgram.prep.Task;
import halfgram.prep.Tick;
import halfgram.web.Visit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** The bar that says what was just done, and lets it be undone. */
final class AfterBar {
  private final Desk desk;
  private final Stock stock;
  private final Withdrawn withdrawn;
  private final Sequence numbers;

  /**
   * A bar.
   *
   * @param numbers the same that every other form of the wall counts by
   */
  AfterBar(Desk desk, Stock stock, Withdrawn withdrawn, Sequence numbers) {
    this.desk = desk;
    this.stock = stock;
    this.withdrawn = withdrawn;
    this.numbers = numbers;
  }

  /** What was just done, while nobody has undone it. */
  Optional<WallView.After> find(Visit visit, Scene scene) {
    String tick = visit.query("tick");
    String done = visit.query("done");
    if (done.isEmpty() || !tick.matches("[0-9a-f-]{36}")) {
      return Optional.empty();
    }
    return Opened.find(scene, done, withdrawn)
        .flatMap(opened -> opened.task().flatMap(task -> find(opened.scene(), task, tick)));
  }

  private Optional<WallView.After> find(Scene scene, Task task, String tick) {
    return scene.progress(task).dones().stream()
        .map(Tick::id)
        .map(UUID::toString)
        .filter(tick::equals)
        .findFirst()
        .map(
            id ->
                new WallView.After(
                    task.id(),
                    scene.names().title(task),
                    id,
                    numbers.next(),
                    stock.listOfTask(scene.house(), task.id()),
                    scene.cameShort(task),
                    taken(scene, UUID.fromString(id))));
  }

  /** What a tick took of what is kept for somebody else. */
  private List<String> taken(Scene scene, UUID tick) {
    return new Dipped(desk)
        .listOfTick(scene.house(), tick).stream()
            .map(
                dip ->
                    scene
                        .words()
                        .say(
                            "wall.took",
                            scene.names().amount(dip.amount()),
                            scene.event(dip.event())))
            .toList();
  }
}
