package halfgram.pages.settings;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** How a kitchen reads, set on a page or by a call. */
class SettingsTest {
  private static final String PAGE = "/k/TARN/settings";
  private static final String WALL = "/k/TARN/wall/cold";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get(WALL);
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatIsSetIsShownAtOnceOnThePlanInForceAndComesBackOutOfTheBook() {
    JsonNode before = site.house().tree().path("kitchen");
    assertThat(client.get(WALL).text()).contains("09:00", "6098 g");
    FilledForm form = form().with("units", "us").with("clock", "12").with("language", "fr");
    Answer saved = client.postAndFollow(PAGE, form.fields());
    assertThat(saved.text()).contains("It is set");
    assertThat(saved.body()).containsPattern("value=\"us\" checked").contains("value=\"fr\"");
    JsonNode after = site.house().tree().path("kitchen");
    assertThat(after.path("units").asText()).isEqualTo("us");
    assertThat(after.path("clock").isNumber()).isTrue();
    assertThat(after.path("clock").asInt()).isEqualTo(12);
    assertThat(after.path("language").asText()).isEqualTo("fr");
    before
        .properties()
        .forEach(one -> assertThat(after.get(one.getKey())).isEqualTo(one.getValue()));
    Answer wall = site.client().get(WALL);
    assertThat(wall.text()).contains("9:00 am", "13 lb 7,11 oz");
    assertThat(wall.body()).contains("lang=\"fr\"");
  }

  @Test
  void aDeviceThatHasChosenALanguageKeepsIt() {
    client.post(PAGE, form().with("language", "fr").fields());
    assertThat(site.client().withCookie("language", "es").get(WALL).body()).contains("lang=\"es\"");
    assertThat(site.client().get(WALL).body()).contains("lang=\"fr\"");
    assertThat(site.client().get(PAGE).body()).as("the office").contains("lang=\"en\"");
    client.post(PAGE, form().with("language", "").fields());
    assertThat(site.client().get(WALL).body()).contains("lang=\"en\"");
    assertThat(site.house().tree().path("kitchen").has("language")).isFalse();
  }

  @Test
  void whatThereIsNotIsRefusedAtItsQuestionAndNothingIsSet() {
    Answer wrong = client.post(PAGE, form().with("units", "us").with("clock", "13").fields());
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("\"13\" is not accepted; accepted: 12 or 24");
    assertThat(wrong.body()).containsPattern("value=\"us\" checked");
    assertThat(site.house().tree().path("kitchen").has("units")).isFalse();
  }

  @Test
  void whoComesSecondIsToldAndTheirsIsShown() {
    FilledForm late = form().with("clock", "12");
    client.post(PAGE, form().with("units", "both").fields());
    Answer stale = client.post(PAGE, late.fields());
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.text()).contains("Somebody else has set it meanwhile");
    assertThat(stale.body()).containsPattern("value=\"12\" checked");
    FilledForm again = FilledForm.of(stale, "/settings").with("units", "both");
    assertThat(client.post(PAGE, again.fields()).status()).isEqualTo(303);
    assertThat(site.house().book().kitchen().hours().number()).isEqualTo(12);
    assertThat(site.house().book().kitchen().units().word()).isEqualTo("both");
  }

  @Test
  void settingItAgainAsItIsChangesNothing() {
    long change = site.house().stand().change();
    assertThat(client.post(PAGE, form().fields()).status()).isEqualTo(303);
    assertThat(site.house().stand().change()).isEqualTo(change);
  }

  @Test
  void theAuditSaysWhoSetWhat() {
    client.post(PAGE, form().with("clock", "12").fields());
    assertThat(client.get("/k/TARN/audit").text()).contains("settings", "clock", "24", "12");
  }

  @Test
  void aScriptSetsOneOfThemAndTheRestStays() {
    Script script = site.script();
    client.post(PAGE, form().with("units", "both").fields());
    Script.Answer set = script.put("settings", "{'clock': 12, 'language': 'es'}");
    assertThat(set.status()).isEqualTo(200);
    assertThat(set.body().toString())
        .isEqualTo("{\"units\":\"both\",\"clock\":12,\"language\":\"es\"}");
    assertThat(script.put("settings", "{'language': null}").body().path("language").isNull())
        .isTrue();
    Script.Answer wrong = script.put("settings", "{'units': 'imperial'}");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body().toString()).contains("units", "metric, us, both");
    assertThat(script.get("settings").body().path("units").asText()).isEqualTo("both");
  }

  @Test
  void noPlanChangesByIt() {
    String plan = site.script().get("plan").body().path("tasks").toString();
    client.post(PAGE, form().with("units", "us").with("clock", "12").fields());
    assertThat(site.script().get("plan").body().path("tasks").toString()).isEqualTo(plan);
  }

  private FilledForm form() {
    return FilledForm.of(client.get(PAGE), "/settings");
  }
}
