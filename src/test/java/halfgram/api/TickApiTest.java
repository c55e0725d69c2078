package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Script.Answer;
import org.junit.jupiter.api.Test;

/** Ticks by the API: one, or what a device kept while it had no network. */
class TickApiTest extends OnDemo {
  private static final String FIRST = "00000000-0000-4000-8000-000000000001";
  private static final String SECOND = "00000000-0000-4000-8000-000000000002";

  @Test
  void aQueueTakesBackWhatItHasNotSentYet() {
    String queue = "[" + tick(FIRST, 1, "'kind':'start'") + "," + undo(SECOND, 2, FIRST) + "]";
    Answer sent = script.post("ticks", queue);
    assertThat(sent.body().findValuesAsText("status")).containsExactly("201", "201");
    assertThat(task().path("state").asText()).isEqualTo("to-do");
    Answer again = script.post("ticks", queue);
    assertThat(again.body().findValuesAsText("status")).containsExactly("200", "200");
    assertThat(task().path("state").asText()).isEqualTo("to-do");
  }

  @Test
  void aLineThatTheTaskDoesNotHaveIsNotWeighed() {
    Answer wrong = script.post("ticks", tick(FIRST, 1, "'kind':'weighed','line':'none'"));
    assertThat(wrong.status()).isEqualTo(409);
    assertThat(wrong.body().path("said").asText()).contains("none");
    assertThat(script.post("ticks", tick(SECOND, 2, "'kind':'weighed'")).status()).isEqualTo(409);
    assertThat(task().path("state").asText()).isEqualTo("to-do");
  }

  @Test
  void anIdIsOneTickOnly() {
    assertThat(script.post("ticks", tick(FIRST, 1, "'kind':'start'")).status()).isEqualTo(201);
    Answer other = script.post("ticks", tick(FIRST, 2, "'kind':'problem','note':'no whisk'"));
    assertThat(other.status()).isEqualTo(409);
    assertThat(other.body().path("said").asText()).contains(FIRST);
    assertThat(task().path("state").asText()).isEqualTo("on-it");
  }

  @Test
  void aRefusedTickOfAQueueStopsNoneBehindIt() {
    String queue =
        "["
            + undo(FIRST, 1, SECOND)
            + ",{'task':'none','kind':'start','cook':'ines','device':'"
            + FIRST
            + "','sequence':2},"
            + tick(SECOND, 3, "'kind':'start'")
            + "]";
    Answer sent = script.post("ticks", queue);
    assertThat(sent.body().findValuesAsText("status")).containsExactly("409", "404", "201");
    assertThat(task().path("state").asText()).isEqualTo("on-it");
  }

  @Test
  void whatMayBeSaidTwiceIsThereOnceWhenItIsSentAgain() {
    String note = tick(FIRST, 1, "'kind':'problem','note':'no whisk'");
    Answer sent = script.post("ticks", note);
    Answer again = script.post("ticks", note);
    assertThat(sent.status()).isEqualTo(201);
    assertThat(again.status()).isEqualTo(200);
    assertThat(again.body().path("change")).isEqualTo(sent.body().path("change"));
    assertThat(script.get("log").body().findValuesAsText("tick")).containsOnlyOnce(FIRST);
  }

  @Test
  void whatIsNotKeptTakesNoNumber() {
    Answer sent = script.post("ticks", tick(FIRST, 1, "'kind':'start'"));
    script.post("ticks", undo(SECOND, 2, SECOND));
    script.post("ticks", tick(FIRST, 1, "'kind':'start'"));
    script.post("ticks", tick(FIRST, 3, "'kind':'problem','note':'no whisk'"));
    Answer next = script.post("ticks", tick(SECOND, 4, "'kind':'problem','note':'no whisk'"));
    assertThat(next.body().path("change").asLong())
        .isEqualTo(sent.body().path("change").asLong() + 1);
  }

  private JsonNode task() {
    return script.get("tasks?station=cold").body().get(0);
  }

  private String tick(String id, int sequence, String what) {
    return "{'tick':'"
        + id
        + "','task':'"
        + task().path("id").asText()
        + "',"
        + what
        + ",'cook':'ines','device':'"
        + FIRST
        + "','sequence':"
        + sequence
        + "}";
  }

  private String undo(String id, int sequence, String undone) {
    return tick(id, sequence, "'kind':'undo','undoes':'" + undone + "'");
  }
}
