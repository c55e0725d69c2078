package halfgram.pages.wall;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** The demo with Ines at the wall of a station. */
abstract class AtWall {
  Site site;
  Client client;
  private final String station;

  AtWall(String station) {
    this.station = station;
  }

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/" + station);
    client.post("/k/TARN/wall/cook", "station", station, "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  InForce inForce() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test");
  }

  void accept() {
    assertThat(
            site.wiring()
                .plans()
                .accept(site.house(), Site.DAY, site.house().stand().facts(), "chef"))
        .isEqualTo(Plans.Accepting.IN_FORCE);
  }

  /** The first task of a formula on the sheet. */
  Task firstOf(String formula) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.version().formula().equals(formula))
        .findFirst()
        .orElseThrow();
  }

  /** How many tubs of those that a task filled have something in them. */
  long fullTubs(Task task) {
    return site.wiring().stock().listAll(site.house()).stream()
        .filter(tub -> tub.task().equals(Optional.of(task.id())))
        .filter(tub -> tub.lot().left().isPositive())
        .count();
  }

  /** The wall of a task's station with the task open. */
  Answer opened(Task task) {
    return client.get("/k/TARN/wall/" + task.station() + "?task=" + Client.encoded(task.id()));
  }

  /**
   * Says something of a task.
   *
   * @param more names and values of further fields by turns
   */
  Answer press(Task task, String kind, String... more) {
    return client.post("/k/TARN/tick", fields(task, "kind", kind, more));
  }

  /** As {@link #press}, at its bath, and looks at the page that comes of it. */
  Answer atBath(Task task, String entry, String... more) {
    return client.postAndFollow("/k/TARN/bath", fields(task, "entry", entry, more));
  }

  private static String[] fields(Task task, String name, String value, String... more) {
    List<String> fields =
        new ArrayList<>(
            List.of(
                "station",
                task.station(),
                "task",
                task.id(),
                name,
                value,
                "sequence",
                String.valueOf(Site.sequence())));
    fields.addAll(List.of(more));
    return fields.toArray(String[]::new);
  }

  /** Takes back what was said of a task last. */
  Answer undo(Task task) {
    String tick = opened(task).all("name=\"undoes\" value=\"([0-9a-f-]{36})\"").get(0);
    return press(task, "UNDO", "undoes", tick);
  }
}
