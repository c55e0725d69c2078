package halfgram.pages.wall;

import halfgram.desk.InForce;
import halfgram.lot.Lot;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;

/** The form in which what was done on paper is entered, at twenty to six on the demo's Saturday. */
abstract class OnPaper {
  static final String PAGE = "/k/TARN/paper/entry";

  Site site;
  Client client;

  Site opened() {
    return Site.demo();
  }

  @BeforeEach
  final void atTwentyToSix() {
    site = opened();
    client = site.client();
    site.wiring().plans().open(site.house(), Site.DAY, "test");
    site.setClock(Site.at("17:40"));
  }

  @AfterEach
  final void close() {
    site.close();
  }

  // ---- the form ----

  FilledForm form(String station) {
    return FilledForm.of(client.get(PAGE + "?station=" + station), "paper/entry");
  }

  Answer send(FilledForm form) {
    return client.post(PAGE, form.fields());
  }

  /** A row of the form with these fields filled. */
  static FilledForm row(FilledForm form, Task task, String... namesAndValues) {
    FilledForm filled = form;
    for (int i = 0; i < namesAndValues.length; i += 2) {
      filled = filled.with(name(form, task, namesAndValues[i]), namesAndValues[i + 1]);
    }
    return filled;
  }

  static String name(FilledForm form, Task task, String field) {
    String[] all = form.fields();
    for (int i = 0; i < all.length; i += 2) {
      if (all[i].startsWith("task-") && all[i + 1].equals(task.id())) {
        return field + all[i].substring("task".length());
      }
    }
    throw new AssertionError("no row of " + task.id());
  }

  List<Task> rows(String station) {
    List<Task> rows = new ArrayList<>();
    String[] all = form(station).fields();
    for (int i = 0; i < all.length; i += 2) {
      if (all[i].startsWith("task-")) {
        inForce().findTask(all[i + 1]).ifPresent(rows::add);
      }
    }
    return rows;
  }

  // ---- the day ----

  InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }

  TaskState state(Task task) {
    return inForce().progress(task).state();
  }

  List<Lot> tubs(Task task) {
    return site.wiring().stock().listOfTask(site.house(), task.id()).stream()
        .map(code -> site.wiring().stock().find(site.house(), code).orElseThrow().tub().lot())
        .toList();
  }

  Task base() {
    return task("yoghurt-base/harvest-dinner/", "shear");
  }

  Task task(String beginning, String step) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.id().startsWith(beginning) && task.id().endsWith("/" + step))
        .findFirst()
        .orElseThrow();
  }

  static String time(Instant at) {
    return at.atZone(java.time.ZoneId.of("Europe/Copenhagen")).toLocalTime().toString();
  }
}
