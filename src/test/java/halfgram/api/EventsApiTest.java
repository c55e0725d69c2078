package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Script.Answer;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Events by the API obey the rules of the pages, and say what a change does to the sheets. */
class EventsApiTest extends OnDemo {
  private static final String EVENT = "events/terrace";

  @BeforeEach
  void begin() {
    script.get("today");
  }

  @Test
  void coversAreStoredAndTheAnswerSaysWhatTheyDoToTheSheet() {
    Answer changed = covers("{'final':32}", seen());
    assertThat(changed.status()).isEqualTo(200);
    assertThat(changed.body().at("/event/covers/final").asInt()).isEqualTo(32);
    JsonNode effect = changed.body().at("/effects/0");
    assertThat(effect.path("of").asText()).isEqualTo("today");
    assertThat(effect.at("/difference/services/0/from").asInt()).isEqualTo(26);
    assertThat(effect.at("/difference/services/0/to").asInt()).isEqualTo(32);
    assertThat(site.client().get("/k/TARN/").text()).contains("26 → 32 covers");
  }

  @Test
  void lookingStoresNothing() {
    long before = site.house().stand().change();
    Answer looked = script.put(EVENT + "/covers?look=yes", "{'final':32}");
    assertThat(looked.body().at("/effects/0/difference/services/0/to").asInt()).isEqualTo(32);
    assertThat(looked.body().has("change")).isFalse();
    assertThat(site.house().stand().change()).isEqualTo(before);
  }

  @Test
  void whatIsMoreOftenASlipIsStoredAndTold() {
    ObjectNode event = event();
    event.put("date", "2026-11-05");
    ((ObjectNode) event.path("covers")).put("final", 12000);
    Answer looked = script.sent("PUT", EVENT + "?look=yes", event.toString());
    Answer moved = script.sent("PUT", EVENT + "?seen=" + seen(), event.toString());
    for (Answer answer : List.of(looked, moved)) {
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.body().path("doubts").findValuesAsText("path"))
          .containsExactly("$.date", "$.covers.final");
    }
    assertThat(covers("{'final':11990}", seen()).body().has("doubts")).isFalse();
  }

  @Test
  void nullTakesTheFinalNumberOut() {
    Answer changed = covers("{'final':null,'expected':30}", seen());
    assertThat(changed.body().at("/event/covers").toString()).isEqualTo("{\"expected\":30}");
  }

  @Test
  void coversThatAreNoneChangeNothing() {
    long before = seen();
    Answer wrong = covers("{'final':'many','expected':-1,'guests':3}", before);
    assertThat(wrong.problems()).contains("$.final", "$.expected", "$.guests");
    assertThat(covers("{'final':null,'expected':null}", before).status()).isEqualTo(422);
    assertThat(seen()).isEqualTo(before);
  }

  @Test
  void whatSomebodyElseHasChangedIsStale() {
    long seen = seen();
    assertThat(covers("{'final':32}", seen).status()).isEqualTo(200);
    assertThat(covers("{'final':40}", seen).kind()).isEqualTo("stale");
    assertThat(covers("{'final':32}", seen).status()).as("the same again").isEqualTo(200);
    assertThat(script.delete(EVENT + "?seen=" + seen).kind()).isEqualTo("stale");
    assertThat(script.put("events/none/covers", "{'final':1}").status()).isEqualTo(404);
  }

  @Test
  void anEventIsChangedWholeAndItsPageSaysSo() {
    ObjectNode event = event();
    event.put("name", "Terrace supper");
    Answer changed = script.sent("PUT", EVENT + "?seen=" + seen(), event.toString());
    assertThat(changed.status()).isEqualTo(200);
    assertThat(site.client().get("/k/TARN/" + EVENT).text()).contains("Terrace supper");
  }

  @Test
  void everythingWrongWithAnEventIsSaidAtOnce() {
    long before = seen();
    ObjectNode event = event();
    event.put("code", "other").put("date", "soon").put("mood", "merry");
    ((ObjectNode) event.at("/services/0")).put("start", "noon");
    Answer wrong = script.sent("PUT", EVENT + "?seen=" + before, event.toString());
    assertThat(wrong.problems()).contains("$.code", "$.date", "$.mood", "$.services[0].start");
    assertThat(seen()).isEqualTo(before);
  }

  @Test
  void anEventIsAddedOnceAndATakenCodeGetsANumber() {
    ObjectNode event = event();
    event.put("code", "quiet-evening").put("date", "2026-12-06");
    Answer added = script.sent("POST", "events", event.toString());
    assertThat(added.status()).isEqualTo(201);
    assertThat(added.body().path("effects").findValuesAsText("of")).contains("ahead");
    assertThat(script.sent("POST", "events", event.toString()).status()).isEqualTo(200);
    event.put("date", "2026-12-07");
    assertThat(script.sent("POST", "events", event.toString()).body().path("code").asText())
        .isEqualTo("quiet-evening-2");
    assertThat(site.client().get("/k/TARN/events").body()).contains("events/quiet-evening-2");
    event.remove("services");
    assertThat(script.sent("POST", "events", event.toString()).problems())
        .containsExactly("$.services");
  }

  @Test
  void anEventIsTakenOutAndPutBack() {
    Answer out = script.delete(EVENT + "?seen=" + seen());
    assertThat(out.body().at("/effects/0/difference/withdrawn")).isNotEmpty();
    assertThat(script.get(EVENT).status()).isEqualTo(404);
    assertThat(script.delete(EVENT).status()).as("out already").isEqualTo(200);
    assertThat(site.client().get("/k/TARN/events").text()).contains("Terrace reception");
    assertThat(script.post(EVENT + "/back", "{}").status()).isEqualTo(200);
    assertThat(script.get(EVENT).status()).isEqualTo(200);
    assertThat(script.post("events/none/back", "{}").status()).isEqualTo(404);
  }

  private Answer covers(String body, long seen) {
    return script.put(EVENT + "/covers?seen=" + seen, body);
  }

  private long seen() {
    return script.get(EVENT).body().path("change").asLong();
  }

  private ObjectNode event() {
    return (ObjectNode) script.get(EVENT).body().path("event");
  }
}
