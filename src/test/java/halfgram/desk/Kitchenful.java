package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Because;
import halfgram.measure.Rounding;
import halfgram.prep.PlanStore;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * A kitchen in which things happen: what hands do, through the API; what eyes see, on the pages;
 * and the laws that must hold whatever happens.
 */
final class Kitchenful {
  private static final String DEVICE = "00000000-0000-4000-8000-00000000000";

  final Site site;
  final Script script;
  final Client client;
  private long sequence = 1;

  Kitchenful(Site site) {
    this.site = site;
    this.client = site.client();
    this.script = site.script();
    client.get("/k/TARN/");
  }

  // ---- what eyes see ----

  String wall(String station) {
    return client.get("/k/TARN/wall/" + station).text();
  }

  String hand(Task task) {
    String id = Client.encoded(task.id());
    return client.get("/k/TARN/wall/" + task.station() + "?task=" + id).text();
  }

  String page(String rest) {
    return client.get("/k/TARN/" + rest).text();
  }

  JsonNode json(String rest) {
    Answer answer = script.get(rest);
    assertThat(answer.status()).as(rest).isEqualTo(200);
    return answer.body();
  }

  LocalDate day() {
    return site.house().day(site.wiring().desk().now());
  }

  InForce inForce() {
    return site.wiring().plans().open(site.house(), day(), "test");
  }

  /** The first task of a formula, in the order of the sheet, that begins so and is still to do. */
  Task task(String prefix) {
    InForce inForce = inForce();
    return inForce.sheet().tasks().stream()
        .filter(task -> task.id().startsWith(prefix))
        .filter(task -> inForce.progress(task).state() == TaskState.TO_DO)
        .findFirst()
        .orElseThrow(() -> new AssertionError("no task " + prefix));
  }

  /** The first task of a formula that begins so, however far it is. */
  Task any(String prefix) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.id().startsWith(prefix))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no task " + prefix));
  }

  TaskState state(Task task) {
    return inForce().progress(task).state();
  }

  // ---- what hands do ----

  Answer tick(Task task, String kind, String cook, String more) {
    String body =
        "{'task':'"
            + task.id()
            + "','kind':'"
            + kind
            + "','cook':'"
            + cook
            + "','device':'"
            + DEVICE
            + "1','sequence':"
            + sequence++
            + more
            + "}";
    return script.post("ticks", body);
  }

  Answer done(String rest, String body) {
    Answer answer = script.post(rest, body);
    assertThat(answer.status()).as("%s %s: %s", rest, body, answer.body()).isBetween(200, 201);
    return answer;
  }

  /** An entry of a device of its own, numbered. */
  Answer entered(String rest, String body) {
    return done(rest, "{" + body + ",'device':'" + DEVICE + "2','sequence':" + sequence++ + "}");
  }

  /** The chef accepts what is offered, when anything is; nothing finished may change by it. */
  void accept() {
    InForce before = inForce();
    long facts = json("today").path("facts").asLong();
    assertThat(script.post("plan", "{'day':'" + day() + "','facts':" + facts + "}").status())
        .isBetween(200, 201);
    unchanged(before, inForce());
  }

  private static void unchanged(InForce before, InForce after) {
    Map<String, Task> now = new HashMap<>();
    after.sheet().begun().forEach(of -> of.tasks().forEach(task -> now.put(task.id(), task)));
    after.sheet().tasks().forEach(task -> now.put(task.id(), task));
    for (Task task : before.sheet().tasks()) {
      if (before.progress(task).state() == TaskState.DONE && now.containsKey(task.id())) {
        Task same = now.get(task.id());
        assertThat(same.start()).as(task.id()).isEqualTo(task.start());
        assertThat(same.weigh()).as(task.id()).isEqualTo(task.weigh());
        assertThat(same.stored()).as(task.id()).isEqualTo(task.stored());
        same(task, after.progress(same).dones(), before.progress(task).dones());
      }
    }
  }

  /**
   * Everybody keeps to the sheet until a moment: what should have started is started, what should
   * be done is done, in the order of the clock. Kit that carries something is washed first.
   */
  void work(String until) {
    Instant end = Site.at(until);
    record Act(Instant at, Task task, String kind) {}
    List<Act> acts = new ArrayList<>();
    InForce inForce = inForce();
    Instant now = site.wiring().desk().now();
    for (Task task : inForce.sheet().tasks()) {
      TaskState state = inForce.progress(task).state();
      Instant start = task.start().isBefore(now) ? now : task.start();
      if (state == TaskState.TO_DO && !start.isAfter(end)) {
        acts.add(new Act(start, task, "start"));
      }
      boolean open = state == TaskState.TO_DO || state == TaskState.ON_IT;
      Instant ready = task.end().isBefore(start) ? start : task.end();
      if (open && !ready.isAfter(end)) {
        acts.add(new Act(ready, task, "done"));
      }
    }
    acts.sort(Comparator.comparing(Act::at));
    // What began late is entered as done at once.
    String sure = ",'sure':true";
    for (Act act : acts) {
      site.setClock(act.at());
      Answer answer = tick(act.task(), act.kind(), "yrsa", sure);
      if (answer.status() == 409 && answer.body().path("said").asText().contains("carries")) {
        wash();
        answer = tick(act.task(), act.kind(), "yrsa", sure);
      }
      if (answer.status() == 409 && answer.body().path("said").asText().contains("not passed")) {
        tasted(act.task(), "yrsa");
        answer = tick(act.task(), act.kind(), "yrsa", sure);
      }
      assertThat(answer.status())
          .as("%s %s: %s", act.kind(), act.task().id(), answer.body())
          .isEqualTo(201);
    }
    site.setClock(end);
  }

  /** Somebody tastes and says go. */
  Answer tasted(Task task, String cook) {
    return script.post(
        "gates",
        "{'task':'"
            + task.id()
            + "','verdict':'go','said':{'taste':'right','texture':'right'},'cook':'"
            + cook
            + "','device':'"
            + DEVICE
            + "3','sequence':"
            + sequence++
            + "}");
  }

  /** Washes everything that carries something. */
  void wash() {
    for (JsonNode thing : json("kit").path("things")) {
      if (!thing.path("carries").isEmpty()) {
        done("kit", "{'thing':'" + thing.path("thing").asText() + "','how':'hot, dried'}");
      }
    }
    site.passTime(java.time.Duration.ofSeconds(1));
  }

  // ---- the laws ----

  /** Every tub is what its rows say, holds no less than nothing, and keeps no more than it has. */
  void ledgerHolds(String when) {
    LotStore lots = new LotStore();
    Map<Tub, List<Movement>> ledger = new LinkedHashMap<>();
    site.wiring()
        .desk()
        .read(
            tx -> {
              lots.listAll(tx, site.house().id())
                  .forEach(tub -> ledger.put(tub, lots.listOf(tx, site.house().id(), tub.id())));
              return null;
            });
    ledger.forEach(
        (tub, rows) -> {
          Replay replay = Replay.of(rows);
          assertThat(tub.lot().left().number())
              .as("%s: %s", when, tub.lot().code())
              .isNotNegative();
          assertThat(replay.left()).as(when).isEqualByComparingTo(tub.lot().left());
          assertThat(replay.kept()).as(when).isEqualTo(Replay.kept(tub.lot()));
          assertThat(tub.lot().kept()).as(when).isLessThanOrEqualTo(tub.lot().left());
          replay.assertStands(tub.lot(), when);
        });
  }

  /**
   * The day again from what was kept of it: every plan from its snapshot and its begun work, every
   * task from its ticks.
   */
  void replays() {
    PlanStore plans = new PlanStore();
    TickStore ticks = new TickStore();
    InForce last = inForce();
    site.wiring()
        .desk()
        .read(
            tx -> {
              for (PlanStore.Accepted plan : plans.list(tx, site.house().id(), day())) {
                Plans.Computation again =
                    site.wiring().plans().recompute(tx, site.house(), plan, Because.NOT_ASKED);
                String json = site.wiring().result(again.book(), again.sheet());
                assertThat(Hash.of(json))
                    .as("plan %s", plan.number())
                    .isEqualTo(plans.result(tx, site.house().id(), plan.id()).hash());
              }
              Set<String> ids = last.progress().keySet();
              Map<String, List<Tick>> all = ticks.listOfTasks(tx, site.house().id(), ids);
              for (Task task : last.sheet().tasks()) {
                TaskProgress own = TaskProgress.fold(all.getOrDefault(task.id(), List.of()));
                TaskProgress shown = last.progress(task);
                same(task, shown.dones(), own.dones());
                same(task, shown.weighed(), own.weighed());
              }
              return null;
            });
  }

  /** The same, amounts by what they are and not by how many noughts are written. */
  private static void same(Task task, Object shown, Object kept) {
    assertThat(shown)
        .as(task.id())
        .usingRecursiveComparison()
        .withComparatorForType(BigDecimal::compareTo, BigDecimal.class)
        .isEqualTo(kept);
  }

  /**
   * What there is at the end, for comparing with another database: what, how much, in what state.
   */
  Map<String, String> stands() {
    Map<String, String> stands = new TreeMap<>();
    for (Tub tub : site.wiring().stock().listAll(site.house())) {
      stands.put(
          "tub " + tub.lot().code(),
          tub.lot().component().formula()
              + " "
              + tub.lot().left().rounded(Rounding.TO_MICROGRAM).number().stripTrailingZeros()
              + " "
              + tub.lot().useBy()
              + " "
              + tub.lot().place());
    }
    InForce inForce = inForce();
    inForce
        .sheet()
        .tasks()
        .forEach(
            task -> stands.put(task.id(), inForce.progress(task).state() + " " + task.start()));
    return stands;
  }
}
