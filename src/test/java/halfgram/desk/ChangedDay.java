package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.lot.Lot;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.ServiceRun;
import halfgram.prep.Task;
import halfgram.prep.TaskProgress;
import halfgram.prep.TaskState;
import halfgram.testkit.Chance;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * A day on which hands work more or less by the sheet while the office changes covers, diets and
 * times, takes events out and puts them back, and accepts what is offered, or not.
 */
final class ChangedDay {
  private static final List<String> EVENTS = List.of("harvest-dinner", "terrace", "naming-day");
  private static final int[] COVERS = {84, 97, 60, 120, 84, 400};
  private static final String PASS = "00000000-0000-4000-8000-000000000009";
  private static final int[] SLIPS = {15, -15, 60, -60, 30};

  final Kitchenful at;
  private final Chance chance;
  private final ChangedDayLaws laws;
  private final List<String> story = new ArrayList<>();
  private int sent;

  ChangedDay(Site site, long seed) {
    this.at = new Kitchenful(site);
    this.chance = new Chance(seed);
    this.laws = new ChangedDayLaws(at, () -> story.toString());
    at.inForce();
  }

  /** From the morning on; after the night comes the next day. */
  void play(int changes) {
    int minute = 9 * 60 + chance.from(0, 240);
    for (int i = 0; i < changes; i++) {
      work(Site.at("00:00").plus(Duration.ofMinutes(minute)));
      story.add(String.format("%02d:%02d", minute / 60, minute % 60));
      change(EVENTS.get(chance.from(0, EVENTS.size() - 1)));
      if (!chance.oneIn(4)) {
        accept();
      }
      laws.hold();
      minute += chance.from(5, 150);
      if (minute % (24 * 60) > 22 * 60 + 30) {
        minute = (minute / (24 * 60) + 1) * 24 * 60 + 8 * 60;
      }
    }
  }

  /** Some of what is due is started, and done, sometimes with less than planned. */
  private void work(Instant end) {
    for (int round = 0; round < 3; round++) {
      InForce inForce = at.inForce();
      for (Task task : inForce.sheet().tasks()) {
        TaskState state = inForce.progress(task).state();
        boolean due = !task.start().isAfter(end.plus(Duration.ofMinutes(20)));
        if (!due || chance.oneIn(6)) {
          continue;
        }
        if (state == TaskState.TO_DO) {
          clock(task.start().isAfter(end) ? end : task.start());
          tick(task, "start", "");
        } else if (state == TaskState.ON_IT && !task.end().isAfter(end)) {
          clock(task.end());
          tick(task, "done", chance.oneIn(8) ? less(task) : "");
        }
      }
    }
    clock(end);
  }

  private void clock(Instant moment) {
    if (moment.isAfter(at.site.wiring().desk().now())) {
      at.site.setClock(moment);
    }
  }

  private static String less(Task task) {
    if (task.stored().isEmpty() || task.stored().get(0).output().isPieces()) {
      return "";
    }
    Amount made = task.stored().get(0).made();
    String grams = made.number().setScale(0, RoundingMode.DOWN).toPlainString();
    return grams.length() > 2 ? ",'amount':'" + grams.substring(0, grams.length() - 1) + " g'" : "";
  }

  private void tick(Task task, String kind, String more) {
    Answer answer = at.tick(task, kind, "yrsa", more + ",'sure':true");
    if (answer.status() == 409 && said(answer).contains("carries")) {
      at.wash();
      answer = at.tick(task, kind, "yrsa", more + ",'sure':true");
    }
    if (answer.status() == 409 && said(answer).contains("not passed")) {
      at.tasted(task, "yrsa");
      answer = at.tick(task, kind, "yrsa", more + ",'sure':true");
    }
    assertThat(answer.status()).as("%s %s %s", story, task.id(), kind).isLessThan(500);
  }

  private static String said(Answer answer) {
    return answer.body().path("said").asText();
  }

  private void change(String event) {
    switch (chance.from(0, 23)) {
      case 0, 1, 2, 3 -> covers(event, COVERS[chance.from(0, COVERS.length - 1)]);
      case 4, 5 -> slip(event);
      case 6 -> out(event);
      case 7, 8 -> upAndDown(event);
      case 9 -> slip("bar." + Site.DAY);
      case 10 -> draft(event);
      case 11 -> diets(event);
      case 12, 13 -> fail();
      case 14, 15 -> undo();
      case 16, 17 -> count();
      case 18 -> bin();
      case 19, 20 -> send();
      case 21 -> freeze();
      case 22 -> thaw();
      default -> pars();
    }
  }

  private boolean isThere(String event) {
    return at.script.get("events/" + event).status() == 200;
  }

  private ObjectNode event(String code) {
    return (ObjectNode) at.json("events/" + code).path("event").deepCopy();
  }

  private void put(String event, ObjectNode body) {
    said("put " + event, at.script.put("events/" + event + seen(event), body.toString()));
  }

  private String seen(String event) {
    return "?seen=" + at.json("events/" + event).path("change").asLong();
  }

  private int said(String what, Answer answer) {
    story.add(what + "=" + answer.status());
    assertThat(answer.status()).as("%s", story).isLessThan(500);
    return answer.status();
  }

  private Answer setCovers(String event, int covers) {
    return at.script.put("events/" + event + "/covers" + seen(event), "{'final':" + covers + "}");
  }

  /** What the form shows that it would do is what is offered then. */
  private void covers(String event, int covers) {
    if (!isThere(event)) {
      return;
    }
    InForce inForce = at.inForce();
    House house = at.site.house();
    ObjectNode tree = house.tree().deepCopy();
    for (JsonNode one : tree.path("events")) {
      if (one.path("code").asText().equals(event)) {
        ((ObjectNode) one).withObject("/covers").put("final", covers);
      }
    }
    House after =
        new House(
            house.stand(), at.site.wiring().desk().check(tree).standing().orElseThrow(), tree);
    List<SheetEffects.Effect> shown = at.site.wiring().effects().list(house, after, event);
    if (said("covers " + event + " " + covers, setCovers(event, covers)) == 200) {
      Plans.Proposal offered = at.site.wiring().plans().propose(at.site.house(), inForce);
      shown.stream()
          .filter(effect -> effect.of() == SheetEffects.Of.TODAY)
          .forEach(
              effect ->
                  assertThat(ChangedDayLaws.lines(offered.sheet()))
                      .as("%s: as shown", story)
                      .isEqualTo(ChangedDayLaws.lines(effect.sheet())));
    }
  }

  private void slip(String run) {
    int by = SLIPS[chance.from(0, SLIPS.length - 1)];
    said("slip " + run + " " + by, at.script.post("slip/" + run, "{'minutes':" + by + "}"));
  }

  private void out(String event) {
    Answer answer =
        isThere(event)
            ? at.script.delete("events/" + event + seen(event))
            : at.script.post("events/" + event + "/back", "{}");
    said("out or back " + event, answer);
  }

  private void draft(String event) {
    if (isThere(event)) {
      ObjectNode body = event(event);
      body.put("draft", !body.path("draft").asBoolean());
      put(event, body);
    }
  }

  private void diets(String event) {
    if (isThere(event) && !event(event).path("diets").isEmpty()) {
      ObjectNode body = event(event);
      ObjectNode diet = (ObjectNode) body.path("diets").get(0);
      diet.put("count", Math.max(0, diet.path("count").asInt() + chance.from(-3, 5)));
      put(event, body);
    }
  }

  private Task any(Predicate<TaskProgress> which) {
    InForce inForce = at.inForce();
    List<Task> tasks =
        inForce.sheet().tasks().stream()
            .filter(task -> which.test(inForce.progress(task)))
            .toList();
    return tasks.isEmpty() ? inForce.sheet().tasks().get(0) : chance.of(tasks);
  }

  private void fail() {
    Task task = any(of -> of.state() == TaskState.ON_IT);
    said("failed " + task.id(), at.tick(task, "failed", "yrsa", ",'note':'split','sure':true"));
  }

  private void undo() {
    Task task = any(of -> of.last().isPresent());
    at.inForce()
        .progress(task)
        .last()
        .ifPresent(
            last -> {
              String more = ",'undoes':'" + last.id() + "'";
              said("undo " + last.kind() + " " + task.id(), at.tick(task, "undo", "yrsa", more));
            });
  }

  private Optional<Lot> tub() {
    List<Tub> tubs = at.site.wiring().stock().list(at.site.house());
    return tubs.isEmpty() ? Optional.empty() : Optional.of(chance.of(tubs).lot());
  }

  private void count() {
    tub()
        .ifPresent(
            lot -> {
              BigDecimal share = BigDecimal.valueOf(chance.from(0, 110)).movePointLeft(2);
              BigDecimal much = lot.left().number().multiply(share).setScale(0, RoundingMode.DOWN);
              String unit = lot.left().dimension() == Dimension.COUNT ? " pc" : " g";
              String amount = much.toPlainString() + unit;
              String counted = "{'amount':'" + amount + "','cook':'ines','sure':true}";
              said(
                  "count " + lot.code() + " " + amount,
                  at.script.post("stock/" + lot.code() + "/count", counted));
            });
  }

  private void bin() {
    tub()
        .ifPresent(
            lot ->
                said(
                    "bin " + lot.code(),
                    at.script.post(
                        "stock/" + lot.code() + "/bin",
                        "{'reason':'dropped','note':'dropped','cook':'ines','sure':true}")));
  }

  /** Plates go, of any dish of any service of the day, in time or not. */
  private void send() {
    List<ServiceRun> runs = at.inForce().sheet().services();
    if (runs.isEmpty() || runs.get(0).plates().isEmpty()) {
      return;
    }
    ServiceRun run = chance.of(runs);
    if (run.plates().isEmpty()) {
      return;
    }
    ServiceRun.Plates plates = chance.of(run.plates());
    String what = "'dish':'" + plates.dish().code() + "','number':" + chance.from(1, 40);
    String course = plates.course().isEmpty() ? "" : ",'course':'" + plates.course() + "'";
    String body =
        "{'kind':'sent'," + what + course + ",'who':'ines','device':'" + PASS + "','sequence':";
    said(
        "sent " + run.id() + " " + what,
        at.script.post("services/" + run.id() + "/entries", body + ++sent + "}"));
  }

  private void freeze() {
    String body = "{'until':'2027-02-01','place':'freezer'}";
    tub()
        .ifPresent(
            lot ->
                said(
                    "freeze " + lot.code(),
                    at.script.post("stock/" + lot.code() + "/freeze", body)));
  }

  private void thaw() {
    at.site.wiring().stock().list(at.site.house()).stream()
        .map(Tub::lot)
        .filter(Lot::isFrozen)
        .findFirst()
        .ifPresent(
            lot ->
                said("thaw " + lot.code(), at.script.post("stock/" + lot.code() + "/thaw", "{}")));
  }

  private void pars() {
    JsonNode seen = at.json("pars").path("pars");
    JsonNode wanted = seen.deepCopy();
    ObjectNode row = (ObjectNode) wanted.get(chance.from(0, wanted.size() - 1));
    ObjectNode amounts = (ObjectNode) row.path("amounts");
    String was = amounts.path("sat").asText("");
    if (was.endsWith("g")) {
      amounts.put("sat", chance.from(1, 4) + (was.endsWith("kg") ? " kg" : "00 g"));
    }
    said("par " + row, at.script.put("pars", "{\"seen\":" + seen + ",\"pars\":" + wanted + "}"));
  }

  /** Guests more and as many fewer, before anybody accepts: as if nothing had been. */
  private void upAndDown(String event) {
    int was = isThere(event) ? event(event).path("covers").path("final").asInt(-1) : -1;
    if (was < 0) {
      return;
    }
    InForce inForce = at.inForce();
    List<String> before =
        ChangedDayLaws.lines(at.site.wiring().plans().propose(at.site.house(), inForce).sheet());
    said("up " + event, setCovers(event, was + 13));
    said("down " + event, setCovers(event, was));
    assertThat(
            ChangedDayLaws.lines(
                at.site.wiring().plans().propose(at.site.house(), inForce).sheet()))
        .as("%s", story)
        .isEqualTo(before);
  }

  private void accept() {
    InForce before = at.inForce();
    Plans.Proposal shown = at.site.wiring().plans().propose(at.site.house(), before);
    at.accept();
    InForce after = at.inForce();
    if (after.plan().number() > before.plan().number()) {
      story.add("accepted");
      laws.accepted(shown, after);
    }
  }
}
