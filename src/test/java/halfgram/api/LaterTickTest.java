package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.prep.TaskState;
import halfgram.testkit.Script;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Ticks that say when it was done: what is entered later has the time of then. */
class LaterTickTest {
  private static final String DEVICE = "00000000-0000-4000-8000-0000000000ad";

  private Site site;
  private Script script;
  private int sequence;

  Site opened() {
    return Site.demo();
  }

  @BeforeEach
  void open() {
    site = opened();
    script = site.script();
    site.wiring().plans().open(site.house(), Site.DAY, "test");
    site.setClock(Site.at("17:40"));
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aTubIsAsOldAndKeepsAsLongAsIfItHadBeenEnteredThen() {
    Answer later = enter(base(), "'kind':'done'", "15:20");
    assertThat(later.status()).isEqualTo(201);
    assertThat(Instant.parse(later.body().path("at").asText())).isEqualTo(Site.at("15:20"));
    String tub = later.body().path("tubs").get(0).asText();
    JsonNode made = script.get("stock/" + tub).body();
    try (Site live = opened()) {
      live.wiring().plans().open(live.house(), Site.DAY, "test");
      live.setClock(Site.at("15:20"));
      var there = live.script().post("ticks", tick(base(), "'kind':'done'"));
      String other = there.body().path("tubs").get(0).asText();
      JsonNode then = live.script().get("stock/" + other).body();
      assertThat(made.path("made")).isEqualTo(then.path("made"));
      assertThat(made.path("useBy")).isEqualTo(then.path("useBy"));
      assertThat(made.path("made").isMissingNode()).isFalse();
    }
  }

  @Test
  void theLogSaysWhenItWasDoneAndWhenAndByWhomItWasEntered() {
    enter(base(), "'kind':'start'", "15:20");
    JsonNode entry = script.get("log?what=tick").body().path("entries").get(0);
    assertThat(Instant.parse(entry.path("at").asText())).isEqualTo(Site.at("17:40"));
    assertThat(Instant.parse(entry.at("/detail/doneAt").asText())).isEqualTo(Site.at("15:20"));
    assertThat(entry.at("/detail/enteredBy").asText()).isEqualTo(Site.OFFICE);
    assertThat(site.client().get("/k/TARN/log?what=tick").text())
        .contains("15:20", "entered later, at 17:40, by office");
  }

  @Test
  void whatIsStillToComeIsRefused() {
    assertThat(refused(enter(base(), "'kind':'start'", "17:41")))
        .contains("still to come", "17:40");
    assertThat(enter(base(), "'kind':'start'", "17:40").status()).isEqualTo(201);
  }

  @Test
  void whatIsBeforeTheDayBeganIsRefused() {
    assertThat(refused(enter(base(), "'kind':'start'", "03:59")))
        .contains("before the day began", "04:00");
    assertThat(enter(base(), "'kind':'start'", "04:00").status()).isEqualTo(201);
  }

  @Test
  void halfPastMidnightBelongsToTheDayBefore() {
    Instant midnight = Site.at("23:30").plus(Duration.ofHours(1));
    site.setClock(midnight.plus(Duration.ofMinutes(30)));
    String at = "'kind':'start','at':'" + midnight + "'";
    assertThat(script.post("ticks", tick(base(), at)).status()).isEqualTo(201);
    assertThat(inForce().progress(base()).onIt().orElseThrow().since()).isEqualTo(midnight);
  }

  @Test
  void theDayBeforeIsStillEntered() {
    site.setClock(Site.at("09:00").plus(Duration.ofDays(1)));
    String said = "'kind':'done','day':'2026-12-05','at':'" + Site.at("15:20") + "'";
    assertThat(script.post("ticks", tick(base(), said)).status()).isEqualTo(201);
    assertThat(inForce().progress(base()).doneAt()).contains(Site.at("15:20"));
  }

  @Test
  void nothingIsDoneBeforeItWasStarted() {
    enter(base(), "'kind':'start'", "15:20");
    assertThat(refused(enter(base(), "'kind':'done'", "15:19"))).contains("15:20 or later");
    assertThat(enter(base(), "'kind':'done'", "15:20").status()).isEqualTo(201);
  }

  @Test
  void whatBeganBeforeWhatItWaitsForIsAskedAboutAndTakenWhenTheyAreSure() {
    Task user = waiting();
    Answer asked = enter(user, "'kind':'start'", "15:20");
    assertThat(asked.status()).isEqualTo(409);
    assertThat(asked.kind()).isEqualTo("unsure");
    assertThat(inForce().progress(user).state()).isEqualTo(TaskState.TO_DO);
    assertThat(enter(user, "'kind':'start','sure':true", "15:20").status()).isEqualTo(201);
    assertThat(inForce().progress(user).onIt().orElseThrow().since()).isEqualTo(Site.at("15:20"));
  }

  @Test
  void waitsRestOnTheTimeAtWhichItWasReallyDone() {
    Task user = waiting();
    for (Task.Link link : user.links()) {
      Task before = inForce().findTask(link.task()).orElseThrow();
      enter(before, "'kind':'done','sure':true", "12:00");
    }
    Duration rest =
        user.links().stream().map(Task.Link::min).max(Duration::compareTo).orElseThrow();
    Instant rested = Site.at("12:00").plus(rest);
    String early = "'kind':'start','at':'" + rested.minusSeconds(60) + "'";
    assertThat(script.post("ticks", tick(user, early)).kind()).isEqualTo("unsure");
    String right = "'kind':'start','at':'" + rested + "'";
    assertThat(script.post("ticks", tick(user, right)).status()).isEqualTo(201);
  }

  @Test
  void theSameSentTwiceIsOneAndUndoTakesItBack() {
    String body = tick(base(), "'kind':'done','at':'" + Site.at("15:20") + "'");
    Answer first = script.post("ticks", body);
    assertThat(script.post("ticks", body).status()).isEqualTo(200);
    String undo = "'kind':'undo','undoes':'" + first.body().path("tick").asText() + "'";
    assertThat(refused(enter(base(), undo, "15:30"))).contains("taken back now");
    assertThat(script.post("ticks", tick(base(), undo)).status()).isEqualTo(201);
    assertThat(inForce().progress(base()).state()).isEqualTo(TaskState.TO_DO);
    String tub = first.body().path("tubs").get(0).asText();
    assertThat(script.get("stock/" + tub).body().at("/left/value").asText()).isEqualTo("0");
  }

  @Test
  void aTimeThatIsNoneIsTold() {
    Answer answer = script.post("ticks", tick(base(), "'kind':'start','at':'half past three'"));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.problems()).anyMatch(problem -> problem.contains("$.at"));
  }

  private static String refused(Answer answer) {
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.kind()).isEqualTo("refused");
    return answer.body().path("said").asText();
  }

  private InForce inForce() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
  }

  private Task base() {
    return task("yoghurt-base/harvest-dinner/1/");
  }

  private Task task(String beginning) {
    return inForce().sheet().tasks().stream()
        .filter(task -> task.id().startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  /** A task that has to let an earlier one of the day rest, with no gate between. */
  private Task waiting() {
    InForce inForce = inForce();
    return inForce.sheet().tasks().stream()
        .filter(task -> !task.links().isEmpty())
        .filter(task -> task.version().steps().stream().allMatch(step -> step.gate().isEmpty()))
        .filter(
            task ->
                task.links().stream()
                    .allMatch(
                        link ->
                            inForce
                                .findTask(link.task())
                                .filter(before -> before.links().isEmpty())
                                .isPresent()))
        .filter(task -> task.links().stream().anyMatch(link -> !link.min().isZero()))
        .filter(task -> task.links().stream().allMatch(link -> isShort(link.min())))
        .findFirst()
        .orElseThrow();
  }

  private static boolean isShort(Duration rest) {
    return rest.compareTo(Duration.ofHours(5)) < 0;
  }

  private Answer enter(Task task, String what, String time) {
    return script.post("ticks", tick(task, what + ",'at':'" + Site.at(time) + "'"));
  }

  private String tick(Task task, String what) {
    List<String> parts =
        List.of(
            what,
            "'task':'" + task.id() + "'",
            "'cook':'ines'",
            "'device':'" + DEVICE + "'",
            "'sequence':" + ++sequence);
    return "{" + String.join(",", parts) + "}";
  }
}
