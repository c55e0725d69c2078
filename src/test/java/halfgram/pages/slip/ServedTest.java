package halfgram.pages.slip;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.InForce;
import halfgram.prep.ServiceRun;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a service lacks can be served otherwise: looked at first, done by one press, taken back. */
class ServedTest {
  private static final String DINNER = "/k/TARN/slip/harvest-dinner";
  private static final String TWO = "portion trout-plate yoghurt-spheres 2 piece";

  private Site site;
  private Client client;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
    script = site.script();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aChoiceIsLookedAtThenDoneThenTakenBack() {
    site.setClock(Site.at("17:55"));
    script.post(
        "stock",
        "{'component':'yoghurt-spheres','left':'260 piece','made':'2026-12-05T17:30',"
            + "'useBy':'2026-12-05T21:30','place':'walk-in','sure':true}");
    script.post("slip/harvest-dinner?accept=yes", "{'covers':97}");
    Answer today = client.get("/k/TARN/");
    assertThat(today.text()).contains("Yoghurt spheres for Harvest dinner", "pieces instead of 3");
    String link = today.all("href=\"([^\"]*serve=portion[^\"]*)\"").get(0).replace("&amp;", "&");
    long three = spheres();
    Answer looked = client.get(link);
    assertThat(looked.text())
        .contains("97 covers Cured lake trout, sheep yoghurt, dill: 2 pc of Yoghurt spheres");
    assertThat(spheres()).as("only looked at").isEqualTo(three);
    FilledForm form = FilledForm.of(looked, DINNER).with("do", "force");
    assertThat(client.post(DINNER, form.fields()).status()).isEqualTo(303);
    assertThat(spheres()).isEqualTo(three / 3 * 2);
    Answer page = client.get(DINNER);
    assertThat(page.text()).contains("Served otherwise", "2 pc of Yoghurt spheres");
    FilledForm back =
        FilledForm.of(page, DINNER).with("choose", "menu trout-plate yoghurt-spheres");
    Answer menu = client.post(DINNER, back.fields());
    client.post(DINNER, FilledForm.of(menu, DINNER).with("do", "force").fields());
    assertThat(spheres()).isEqualTo(three);
    assertThat(client.get(DINNER).text()).doesNotContain("Served otherwise");
  }

  @Test
  void someGuestsGetTheOtherDishAndTheRestOfTheSplitStays() {
    int char_ = plates("char-main");
    int celeriac = plates("celeriac-main");
    JsonNode said =
        script
            .post("slip/harvest-dinner?look=yes", "{'serve':'split char-main celeriac-main 10'}")
            .body();
    assertThat(said.path("effects")).isNotEmpty();
    assertThat(plates("char-main")).isEqualTo(char_);
    script.post("slip/harvest-dinner?accept=yes", "{'serve':'split char-main celeriac-main 10'}");
    assertThat(plates("char-main")).isBetween(char_ - 11, char_ - 7);
    assertThat(plates("celeriac-main")).isBetween(celeriac + 7, celeriac + 11);
  }

  @Test
  void anotherPortionGoesWithOtherCoversInOnePress() {
    script.post("slip/harvest-dinner?accept=yes", "{'covers':90,'serve':'" + TWO + "'}");
    ServiceRun run = run();
    assertThat(run.covers()).hasValue(90);
    assertThat(spheres() % 2).isZero();
    assertThat(client.get("/k/TARN/slip/harvest-dinner").text()).contains("Served otherwise");
  }

  @Test
  void whatTheServiceHasNotIsRefusedAndNothingIsStored() {
    assertThat(refused("harvest-dinner", "portion trout-plate parsnip-puree 40 g")).isEqualTo(422);
    assertThat(refused("harvest-dinner", "portion no-dish yoghurt-spheres 2 piece")).isEqualTo(422);
    assertThat(refused("harvest-dinner", "portion trout-plate yoghurt-spheres 2 kg"))
        .isEqualTo(422);
    assertThat(refused("harvest-dinner", "split trout-plate kohlrabi-plate 10")).isEqualTo(422);
    assertThat(refused("harvest-dinner", "menu trout-plate yoghurt-spheres")).isEqualTo(422);
    assertThat(refused("harvest-dinner", "serve less")).isEqualTo(422);
    assertThat(refused("bar.2026-12-05", TWO)).isEqualTo(422);
    assertThat(client.get("/k/TARN/").text()).doesNotContain("Accept");
  }

  private int refused(String run, String serve) {
    return script.post("slip/" + run, "{'serve':'" + serve + "'}").status();
  }

  private ServiceRun run() {
    InForce inForce = site.wiring().plans().find(site.house(), Site.DAY).orElseThrow();
    return inForce.sheet().services().stream()
        .filter(one -> one.id().equals("harvest-dinner"))
        .findFirst()
        .orElseThrow();
  }

  /** Spheres that the plates of the trout take. */
  private long spheres() {
    return run().uses().stream()
        .filter(use -> use.version().formula().equals("yoghurt-spheres"))
        .mapToLong(use -> use.amount().pieces())
        .sum();
  }

  private int plates(String dish) {
    return run().plates().stream()
        .filter(one -> one.dish().code().equals(dish) && one.diets().isEmpty())
        .mapToInt(ServiceRun.Plates::count)
        .sum();
  }
}
