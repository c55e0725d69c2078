package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.InForce;
import halfgram.lot.Lot;
import halfgram.prep.Make;
import halfgram.prep.Task;
import halfgram.prep.Thaw;
import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tubs pulled from the freezer are tasks: planned, ticked, taken back, missed. */
class ThawApiTest {
  static final String TUB = "t-1204-jus";
  static final String JUS = "mushroom-jus";
  static final String LUNCH = "lunch.2026-12-06";
  private static final LocalDate SUNDAY = Site.DAY.plusDays(1);
  private static final Duration DAY = Duration.ofDays(1);

  private Site site;
  private Script script;
  private int sequence;

  Site open() {
    return Site.demo();
  }

  @BeforeEach
  void freeze() {
    site = open();
    script = site.script();
    script.post("stock/" + TUB + "/freeze", "{'until':'2026-12-10','place':'freezer'}");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aFrozenTubIsPulledTonightForTomorrowAndNothingIsMadeInItsPlace() {
    thawing("15 h");
    Task pull = pull();
    assertThat(pull.tonight()).isTrue();
    assertThat(pull.start().plus(Duration.ofHours(15))).isBefore(Site.at("11:45").plus(DAY));
    assertThat(pull.station()).isEqualTo("hot");
    assertThat(madeForLunch(sunday())).as("it will be pulled on Saturday").isEmpty();
    Instant now = site.wiring().desk().now();
    site.setClock(Site.at("09:00").plus(DAY));
    assertThat(madeForLunch(sunday())).as("on Sunday it is too late to pull").isNotEmpty();
    site.setClock(now);
    assertThat(madeForLunch(inForce(Site.DAY).sheet().makes())).isEmpty();
    JsonNode task = sheetTask(pull);
    assertThat(task.path("kind").asText()).isEqualTo("thaw");
    assertThat(task.at("/thaw/tub").asText()).isEqualTo(TUB);
    assertThat(task.at("/thaw/from").asText()).isEqualTo("freezer");
    assertThat(task.at("/thaw/to").asText()).isEqualTo("walk-in");
    assertThat(task.at("/thaw/takes").asText()).isEqualTo("PT15H");
    assertThat(task.at("/stored/0/made/value").asInt()).isEqualTo(900);
    assertThat(task.findValuesAsText("id"))
        .allSatisfy(id -> assertThat(why(id).status()).as(id).isEqualTo(200));
    Client client = site.client();
    assertThat(client.get("/k/TARN/tonight").text())
        .contains("Mushroom jus, out of the freezer", "900 g", "walk-in");
    String wall = client.get("/k/TARN/wall/hot?task=" + pull.id()).text();
    assertThat(wall).contains("out of the freezer (freezer)", TUB);
  }

  @Test
  void whoPullsItSetsItsClockGoingAndItIsReadyOnceThawed() {
    thawing("15 h");
    Task pull = pull();
    Instant at = Site.at("20:00");
    site.setClock(at);
    Instant before = lot().frozen().orElseThrow().useBy(at, site.house().book().kitchen().clock());
    assertThat(tick(pull, "start").status()).isEqualTo(201);
    assertThat(lot().isFrozen()).isFalse();
    assertThat(lot().thawed()).contains(at);
    assertThat(lot().useBy()).isEqualTo(before);
    assertThat(lot().place()).isEqualTo("walk-in");
    assertThat(tick(pull, "done").status()).isEqualTo(201);
    assertThat(lot().thawed()).contains(at);

    site.setClock(Site.at("08:00").plus(DAY));
    InForce sunday = inForce(SUNDAY);
    assertThat(madeForLunch(sunday.sheet().makes())).isEmpty();
    assertThat(sunday.sheet().draws())
        .filteredOn(draw -> draw.lot().code().equals(TUB))
        .isNotEmpty();
    assertThat(script.get("today").body().path("missed").findValuesAsText("missed"))
        .doesNotContain(pull.id());
  }

  @Test
  void whatIsNotThawedInTimeIsNotCountedOn() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("23:00").plus(Duration.ofHours(4)));
    assertThat(tick(pull, "done").status()).isEqualTo(201);
    site.setClock(Site.at("08:00").plus(DAY));
    assertThat(inForce(SUNDAY).sheet().draws())
        .filteredOn(draw -> draw.lot().code().equals(TUB))
        .allMatch(draw -> !draw.need().readyBy().isBefore(Site.at("13:00").plus(DAY)));
    assertThat(madeForLunch(inForce(SUNDAY).sheet().makes())).isNotEmpty();
  }

  @Test
  void thatItIsOutIsTakenBackForHalfAnHour() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("20:00"));
    String id = tick(pull, "done").body().path("tick").asText();
    site.setClock(Site.at("20:20"));
    assertThat(undo(pull, id).status()).isEqualTo(201);
    assertThat(lot().isFrozen()).isTrue();
    assertThat(lot().place()).isEqualTo("freezer");
    String again = tick(pull, "done").body().path("tick").asText();
    site.setClock(Site.at("20:51"));
    Answer late = undo(pull, again);
    assertThat(late.status()).isEqualTo(409);
    assertThat(late.body().path("said").asText()).contains("hide how long it stood");
  }

  @Test
  void whatIsOutAndBackAndOutAgainHasBeenOutAllThatTime() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("20:00"));
    String id = tick(pull, "done").body().path("tick").asText();
    Instant first = lot().useBy();
    site.setClock(Site.at("20:20"));
    undo(pull, id);
    String again = tick(pull, "done").body().path("tick").asText();
    assertThat(lot().useBy()).as("20 minutes out are 20 minutes less").isEqualTo(first);
    assertThat(lot().thawed()).as("it thaws anew").contains(Site.at("20:20"));
    site.setClock(Site.at("20:31"));
    assertThat(undo(pull, again).body().path("said").asText()).contains("hide how long it stood");
  }

  @Test
  void byHandTooWhatWasOutAndBackHasBeenOutAllThatTime() {
    String dill =
        "{'component':'blanched-dill','left':'250 g','made':'2026-12-05T08:00',"
            + "'useBy':'2026-12-05T18:00','place':'walk-in'}";
    String id = "stock?id=00000000-0000-4000-8000-000000000009";
    String tub = "stock/" + script.post(id, dill).body().path("code").asText();
    script.post(tub + "/freeze", "{'until':'2026-12-10','place':'freezer'}");
    site.setClock(Site.at("20:00"));
    Instant first = useBy(script.post(tub + "/thaw", "{}"));
    site.setClock(Site.at("20:20"));
    script.post(tub + "/back", "{}");
    site.setClock(Site.at("21:00"));
    assertThat(useBy(script.post(tub + "/thaw", "{}")))
        .as("40 minutes of the hour it was in the freezer")
        .isEqualTo(first.plus(Duration.ofMinutes(40)));
    site.setClock(Site.at("21:11"));
    assertThat(script.post(tub + "/back", "{}").status()).isEqualTo(409);
  }

  private static Instant useBy(Answer tub) {
    return OffsetDateTime.parse(tub.body().path("useBy").asText()).toInstant();
  }

  @Test
  void whatWasNotPulledIsToldInTheMorningWithWhatIsMadeInstead() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("08:00").plus(DAY));
    JsonNode missed = script.get("today").body().path("missed");
    assertThat(missed.findValuesAsText("missed")).contains(pull.id());
    assertThat(site.client().get("/k/TARN/").text())
        .contains("Tub " + TUB + " is still in the freezer: instead Mushroom jus, ");
  }

  @Test
  void whatIsPulledByHandIsNotMissedAndItsTaskChangesNothingMore() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("20:00"));
    script.post("stock/" + TUB + "/thaw", "{}");
    site.setClock(Site.at("21:30"));
    tick(pull, "done");
    assertThat(lot().thawed()).contains(Site.at("20:00"));
    site.setClock(Site.at("08:00").plus(DAY));
    assertThat(script.get("today").body().path("missed").findValuesAsText("missed"))
        .doesNotContain(pull.id());
  }

  @Test
  void pastTheDateInTheFreezerThereIsOnlyTheBin() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("08:00").plus(Duration.ofDays(6)));
    Answer refused = tick(pull, "start");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body().path("said").asText()).contains("bin it");
    assertThat(lot().isFrozen()).isTrue();
  }

  @Test
  void failedBinsItAndTheSecondGoMakesItAnew() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("20:00"));
    assertThat(tick(pull, "failed").status()).isEqualTo(201);
    assertThat(lot().left().isPositive()).isFalse();
    InForce inForce = inForce(Site.DAY);
    assertThat(madeForLunch(site.wiring().plans().propose(site.house(), inForce).sheet().makes()))
        .isNotEmpty();
  }

  @Test
  void aPullStandsWhenTheDayIsPlannedAgain() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("20:00"));
    tick(pull, "start");
    InForce inForce = inForce(Site.DAY);
    var again = site.wiring().plans().propose(site.house(), inForce);
    assertThat(again.sheet().tasks()).extracting(Task::id).contains(pull.id());
    assertThat(again.difference().withdrawn()).extracting(Task::id).doesNotContain(pull.id());
    assertThat(madeForLunch(again.sheet().makes())).isEmpty();
  }

  @Test
  void withoutAThawTimeThePlanDoesNotCountOnItAndSaysSo() {
    site.client().get("/k/TARN/");
    assertThat(inForce(Site.DAY).sheet().thaws()).isEmpty();
    assertThat(madeForLunch(inForce(Site.DAY).sheet().makes())).isNotEmpty();
    assertThat(script.get("plan?date=2026-12-05").body().path("warnings").toString())
        .contains(TUB, "nobody said how long it thaws");
    assertThat(site.client().get("/k/TARN/").text())
        .contains("tub " + TUB + " of ", "nobody said how long it thaws");
  }

  @Test
  void aTubWhoseClockWouldRunOutIsNotPulled() {
    thawing("40 h");
    assertThat(inForce(Site.DAY).sheet().thaws())
        .as("two days are left: pulled on Saturday it is past on Monday")
        .allMatch(one -> one.make().eaten().isBefore(one.make().useBy(0)));
  }

  @Test
  void whatIsOutBySeveralEntriesGoesBackByNone() {
    thawing("15 h");
    Task pull = pull();
    site.setClock(Site.at("20:00"));
    String start = tick(pull, "start").body().path("tick").asText();
    String done = tick(pull, "done").body().path("tick").asText();
    assertThat(undo(pull, start).status()).as("it is said to be out").isEqualTo(409);
    assertThat(lot().isFrozen()).isFalse();
    assertThat(undo(pull, done).status()).isEqualTo(201);
    assertThat(undo(pull, start).status()).isEqualTo(201);
    assertThat(lot().isFrozen()).isTrue();
  }

  // ---- below their callers ----

  private Task pull() {
    return inForce(Site.DAY).sheet().tasks().stream()
        .filter(task -> task.kind() == Task.Kind.THAW)
        .filter(task -> Thaw.tub(task).equals(TUB))
        .findFirst()
        .orElseThrow();
  }

  private List<Make> sunday() {
    return site.wiring().plans().preview(site.house(), SUNDAY, 1).sheet().makes();
  }

  private static List<String> madeForLunch(List<Make> makes) {
    return makes.stream()
        .filter(make -> make.version().formula().equals(JUS))
        .filter(make -> make.needs().stream().anyMatch(need -> need.user().equals(LUNCH)))
        .map(Make::id)
        .toList();
  }

  private JsonNode sheetTask(Task task) {
    for (JsonNode one : script.get("plan?date=2026-12-05").body().findPath("tasks")) {
      if (one.path("task").asText().equals(task.id())) {
        return one;
      }
    }
    throw new AssertionError(task.id());
  }

  private Answer why(String id) {
    return script.get("why?plan=2026-12-05/1&path=" + id.substring(id.indexOf('/') + 1));
  }

  private Lot lot() {
    return site.wiring().stock().find(site.house(), TUB).orElseThrow().tub().lot();
  }

  private Answer tick(Task task, String kind) {
    return script.post("ticks", entry(task, kind, Optional.empty()));
  }

  private Answer undo(Task task, String undone) {
    return script.post("ticks", entry(task, "undo", Optional.of(undone)));
  }

  private String entry(Task task, String kind, Optional<String> undone) {
    return "{'task':'"
        + task.id()
        + "','kind':'"
        + kind
        + "','cook':'ines','note':'burst',"
        + undone.map(id -> "'undoes':'" + id + "',").orElse("")
        + "'day':'2026-12-05','device':'00000000-0000-4000-8000-000000000001','sequence':"
        + ++sequence
        + "}";
  }

  private InForce inForce(LocalDate day) {
    return site.wiring().plans().open(site.house(), day, "test");
  }

  /** Says how long the jus takes to thaw. */
  private void thawing(String time) {
    String book = site.wiring().desk().find(Site.KITCHEN).orElseThrow().tree().toString();
    ObjectNode tree = (ObjectNode) BookStore.parse(book);
    for (JsonNode formula : tree.withArray("formulas")) {
      if (formula.path("code").asText().equals(JUS)) {
        ArrayNode versions = (ArrayNode) formula.get("versions");
        ObjectNode next = versions.get(versions.size() - 1).deepCopy();
        next.put("version", versions.size() + 1);
        ((ObjectNode) next.path("outputs").get(0)).put("thaw", time);
        versions.add(next);
      }
    }
    site.importBook(tree.toString().getBytes(StandardCharsets.UTF_8));
  }
}
