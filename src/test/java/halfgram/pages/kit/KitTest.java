package halfgram.pages.kit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Allergens by contact through HTTP: the blender takes a base of milk, then the purée that guests
 * who go without milk eat too.
 */
class KitTest {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String PUREE = "parsnip-puree/harvest-dinner/1/blend";
  private static final String CREAM = "mushroom-cream/bar.2026-12-05/1/blend";
  private static final String HERE = "/k/TARN/wall/cold?task=" + Client.encoded(PUREE);

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aMixIsRefusedWithTheThingWhatItCarriesFromWhatAndWhatIsAccepted() {
    assertThat(tick(PUREE, "START").status()).isEqualTo(303);
    soil();
    for (String kind : new String[] {"WEIGHED", "PART_DONE", "DONE"}) {
      String line = kind.equals("WEIGHED") ? line() : "";
      String amount = kind.equals("WEIGHED") ? "" : "9 kg";
      Answer refused = tick(PUREE, kind, "line", line, "amount", amount);
      assertThat(refused.status()).as(kind).isEqualTo(409);
      assertThat(refused.text())
          .contains("thermo blender carries", "milk", "Sheep-yoghurt base", "dairy-free")
          .contains("log that it was washed", "which other kit")
          .doesNotContain("for dairy-free, gluten-free");
    }
    assertThat(tick(BASE, "DONE").status()).as("who eats milk").isEqualTo(303);
  }

  @Test
  void aWashOnTheWallLetsItGoOnWithWhatWasTyped() {
    soil();
    Answer refused = tick(PUREE, "DONE", "amount", "4.2 kg");
    assertThat(refused.status()).isEqualTo(409);
    assertThat(refused.body()).contains("value=\"4.2 kg\"");
    assertThat(refused.text()).contains("carries MILK since", "Washed and dried: go on");
    FilledForm form = FilledForm.of(refused, "wall/kit");
    assertThat(form.value("amount")).isEqualTo("4.2 kg");
    site.passTime(Duration.ofMinutes(1));
    Answer asked = client.post("/k/TARN/wall/kit", form.fields());
    assertThat(asked.status()).as("washed, and what it takes is not done").isEqualTo(409);
    assertThat(asked.text()).contains("is not entered as done", "Done: it was 4.2 kg");
    Answer done =
        client.post(
            "/k/TARN/tick", FilledForm.sending(asked, "DONE").with("amount", "4.2 kg").fields());
    assertThat(done.status()).isEqualTo(303);
    assertThat(done.header("Location")).contains("done=");
    assertThat(client.get("/k/TARN/").text()).contains("4200 g");
  }

  @Test
  void anotherKitIsAcceptedUnlessItCarriesTheSame() {
    soil();
    Answer refused = tick(PUREE, "START");
    FilledForm form = FilledForm.of(refused, "wall/kit").with("do", "instead");
    client.post("/k/TARN/wall/kit", form.with("how", "stick-blender").fields());
    assertThat(tick(PUREE, "START").status()).isEqualTo(303);
    // It goes through that one now, and leaves there what it has.
    soil("pea-spread/bar.2026-12-05/1/blend");
    assertThat(client.get("/k/TARN/kit").text()).contains("done with stick blender");
  }

  @Test
  void aWashThatIsUndoneCountsAsNeverMade() {
    soil();
    site.passTime(Duration.ofMinutes(1));
    assertThat(wash("machine/blender", "washed and dried").status()).isEqualTo(303);
    Answer page = client.get("/k/TARN/kit");
    assertThat(page.text()).contains("washed Sat 09:01, office: washed and dried");
    client.post("/k/TARN/kit/undo", FilledForm.of(page, "kit/undo").fields());
    assertThat(client.get("/k/TARN/kit").text())
        .contains("MILK since Sat 09:00 from Sheep-yoghurt base", "undone: thermo blender");
    assertThat(tick(PUREE, "START").status()).isEqualTo(409);
  }

  @Test
  void whatGoesOnAfterAWashLeavesItAgain() {
    tick(BASE, "START");
    site.passTime(Duration.ofMinutes(1));
    wash("machine/blender", "washed and dried");
    assertThat(tick(PUREE, "START").status()).isEqualTo(303);
    site.passTime(Duration.ofMinutes(1));
    tick(BASE, "DONE");
    assertThat(tick(PUREE, "DONE", "amount", "4 kg").status()).isEqualTo(409);
  }

  @Test
  void anUndoneUseLeavesNothing() {
    tick(BASE, "START");
    Answer wall = client.get("/k/TARN/wall/cold?task=" + Client.encoded(BASE));
    String undoes = wall.all("name=\"undoes\" value=\"([0-9a-f-]+)\"").get(0);
    assertThat(tick(PUREE, "START").status()).isEqualTo(409);
    tick(BASE, "UNDO", "undoes", undoes);
    assertThat(tick(PUREE, "START").status()).isEqualTo(303);
  }

  @Test
  void aWashWithoutAWordComesBackAsTyped() {
    Answer wrong = wash("machine/blender", " ");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("say how it was washed");
    assertThat(wash("machine/hob", "washed").text()).contains("no thing of this kitchen's kit");
  }

  @Test
  void aTestPieceSoilsTheFirstBathOfItsRunAlone() {
    soil("yoghurt-spheres/harvest-dinner/1/drop/test-piece");
    assertThat(client.get("/k/TARN/kit").text())
        .contains("bath A MILK since Sat 09:00 from Yoghurt spheres")
        .doesNotContain("bath B", "bath C");
  }

  @Test
  void washingIsAskedForWhereItIsNeededAlone() {
    soil();
    String milk = HERE.replace(Client.encoded(PUREE), Client.encoded(CREAM));
    assertThat(client.get(milk).text())
        .contains("carries MILK since")
        .doesNotContain("Washed and dried");
    assertThat(client.get(HERE).text()).contains("carries MILK since", "Washed and dried");
  }

  @Test
  void whatIsNotKnownIsNotCalledClean() {
    assertThat(client.get("/k/TARN/kit").text())
        .contains("nothing is known before", "Sat 28 Nov 09:00");
    assertThat(site.script().get("kit").body().path("knownSince").asText())
        .startsWith("2026-11-28T09:00");
  }

  @Test
  void theApiSaysTheSameAndTwiceIsOnce() {
    soil();
    site.passTime(Duration.ofMinutes(1));
    Script script = site.script();
    JsonNode carries = blender(script).at("/carries/0");
    assertThat(carries.path("allergen").asText()).isEqualTo("milk");
    assertThat(carries.path("task").asText()).isEqualTo(BASE);
    String id = UUID.randomUUID().toString();
    String wash = "{'said':'" + id + "','thing':'machine/blender','how':'washed'}";
    assertThat(script.post("kit", wash).status()).isEqualTo(201);
    long change = site.house().stand().change();
    assertThat(script.post("kit", wash).status()).isEqualTo(200);
    assertThat(site.house().stand().change()).isEqualTo(change);
    assertThat(blender(script).at("/carries")).isEmpty();
    assertThat(script.post("kit", "{'undoes':'" + id + "'}").status()).isEqualTo(201);
    assertThat(script.post("kit", "{'undoes':'" + id + "'}").status()).isEqualTo(409);
    assertThat(script.post("kit", "{'how':'washed'}").problems()).containsExactly("$.thing");
    String other = "{'thing':'machine/blender','task':'" + PUREE + "','with':'stick-blender'}";
    assertThat(script.post("kit", other).status()).isEqualTo(201);
    assertThat(tick(PUREE, "START").status()).isEqualTo(303);
  }

  private static JsonNode blender(Script script) {
    for (JsonNode thing : script.get("kit").body().path("things")) {
      if (thing.path("thing").asText().equals("machine/blender")) {
        return thing;
      }
    }
    throw new AssertionError("no blender");
  }

  private void soil() {
    soil(BASE);
  }

  private void soil(String task) {
    assertThat(tick(task, "START").status()).isEqualTo(303);
  }

  /** Path of the first line of the purée. */
  private String line() {
    return client.get(HERE).all("name=\"line\" value=\"([^\"]+)\"").get(0);
  }

  private Answer wash(String thing, String how) {
    String id = UUID.randomUUID().toString();
    return client.post("/k/TARN/kit/wash", "thing", thing, "how", how, "id", id);
  }

  private Answer tick(String task, String kind, String... more) {
    String[] fields = new String[8 + more.length];
    String[] own = {
      "station", "cold", "task", task, "kind", kind, "sequence", String.valueOf(Site.sequence())
    };
    System.arraycopy(own, 0, fields, 0, own.length);
    System.arraycopy(more, 0, fields, own.length, more.length);
    return client.post("/k/TARN/tick", fields);
  }
}
