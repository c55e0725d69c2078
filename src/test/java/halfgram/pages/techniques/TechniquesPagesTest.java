package halfgram.pages.techniques;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.testkit.Client;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Techniques worked out on their pages and by the API, and a kitchen's own reference rows. */
class TechniquesPagesTest {
  private Site site;
  private Client client;
  private Script script;

  Site start() {
    return Site.demo();
  }

  @BeforeEach
  void open() {
    site = start();
    client = site.client();
    script = site.script();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void everyTechniqueHasAPageWithItsFormulaAndAWorkedExample() {
    for (Technique technique : Techniques.list()) {
      Client.Answer page = client.get("/k/TARN/techniques/" + technique.name());
      assertThat(page.status()).as(technique.name()).isEqualTo(200);
      assertThat(page.body()).as(technique.name()).contains("<math", "worked example", "<dt");
      assertThat(page.body()).as(technique.name()).doesNotContain("class=\"fault\"");
    }
  }

  @Test
  void theListNamesTheFormulasThatUseATechniqueAndOpensItWithTheirNumbers() {
    assertThat(client.get("/k/TARN/techniques").body())
        .contains("techniques/herb-oil?formula=dill-oil", "techniques/gel?formula=skyr-cream");
    String page = client.get("/k/TARN/techniques/herb-oil?formula=dill-oil").body();
    assertThat(page).contains("450 g", "1000 g", "Dill oil");
    assertThat(client.get("/k/TARN/techniques/sphere-bath?formula=yoghurt-spheres").body())
        .contains("calcium lactate pentahydrate", "98.530806 mg/100 g");
  }

  @Test
  void everyWrongInputIsToldAtItsFieldAndNothingIsWorkedOut() {
    Client.Answer page =
        client.get(
            "/k/TARN/techniques/oil-powder?fat=100&fatShare=200+%25&kind=lard&bulkDensity=x");
    assertThat(page.status()).isEqualTo(422);
    assertThat(page.body())
        .contains("value=\"100\"", "the unit is missing", "units: g, kg, lb, mg, oz")
        .contains("value=\"200 %\"", "is outside the range", "20 to 90 %")
        .contains("is none of the words", "is not a number with its unit")
        .doesNotContain("What it comes to");
  }

  /** A comma could part thousands as well as decimals: 1,000 g must never become one gram. */
  @Test
  void aCommaInANumberIsRefused() {
    Client.Answer page = client.get("/k/TARN/techniques/oil-powder?fat=1,000+g");
    assertThat(page.status()).isEqualTo(422);
    assertThat(page.text()).contains("is not a number with its unit");
  }

  @Test
  void aScriptGetsTheFiguresWithTheirDerivations() {
    Script.Answer answer =
        script.post("techniques/oil-powder", "{'inputs': {'fat': '100 g', 'fatShare': '60 %'}}");
    JsonNode powder = answer.body().at("/figures/powder");
    assertThat(powder.path("value").asDouble())
        .isEqualTo(66.6667, org.assertj.core.data.Offset.offset(1e-4));
    assertThat(powder.path("shown").asText()).isEqualTo("66.67 g");
    assertThat(powder.path("why").asText()).isNotEmpty();
    assertThat(answer.body().at("/inputs/fat/typed").asText()).isEqualTo("100 g");
    Script.Answer wrong =
        script.sent(
            "POST", "techniques/oil-powder", "{\"inputs\": {\"fat\": 100, \"nix\": \"1\"}}");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.problems()).anyMatch(p -> p.contains("$.inputs.fat"));
    assertThat(wrong.problems()).anyMatch(p -> p.contains("$.inputs.nix"));
    assertThat(script.get("techniques").body().path("techniques"))
        .hasSize(Techniques.list().size());
  }

  @Test
  void aKitchensOwnRowCountsFromThenOnAndCanBeTakenBack() {
    String row = "/k/TARN/reference/agents/agar";
    assertThat(client.get(row).text()).contains("set high, °C", "pH low");
    Client.Answer missing = client.post(row, "of-set_high_c", "high", "source", "");
    assertThat(missing.status()).isEqualTo(422);
    assertThat(script.sent("PUT", "reference/agents/agar", wanted("set_low_c", "38")).status())
        .isEqualTo(200);
    assertThat(client.get("/k/TARN/reference/agents").text()).contains("your own");
    assertThat(client.get("/k/TARN/techniques").text()).contains("1 your own");
    JsonNode audit = script.get("audit?kind=reference").body().at("/changes/0");
    assertThat(audit.path("subject").asText()).isEqualTo("agents/agar");
    assertThat(script.delete("reference/agents/agar").status()).isEqualTo(200);
    assertThat(client.get("/k/TARN/techniques").text()).doesNotContain("1 your own");
    assertThat(script.sent("DELETE", "reference/agents/agar", "").status()).isEqualTo(404);
  }

  private static String wanted(String column, String value) {
    return "{\"fields\": {\""
        + column
        + "\": \""
        + value
        + "\"}, \"source\": \"measured on 3 May\"}";
  }

  @Test
  void aKitchensOwnDensityChangesWhatIsPlannedAndIsExported() {
    assertThat(
            script.sent("PUT", "reference/densities/water", wanted("g_per_ml", "1.001")).status())
        .isEqualTo(200);
    assertThat(script.get("book").body().at("/reference/0/fields/g_per_ml").asText())
        .isEqualTo("1.001");
    assertThat(site.house().book().ingredient("water").density().orElseThrow().value().number())
        .isEqualByComparingTo("1.001");
  }

  @Test
  void aLegalLimitIsBroughtDownButNeverUp() {
    JsonNode rows = script.get("reference/nitrite-limits").body().path("rows");
    String code = rows.get(0).path("row").asText();
    double limit = rows.get(0).at("/fields/ppm").asDouble();
    Script.Answer up =
        script.sent(
            "PUT", "reference/nitrite-limits/" + code, wanted("ppm", String.valueOf(limit + 1)));
    assertThat(up.status()).isEqualTo(422);
    assertThat(up.body().toString()).contains("above the published limit");
    assertThat(
            script
                .sent(
                    "PUT",
                    "reference/nitrite-limits/" + code,
                    wanted("ppm", String.valueOf(limit - 1)))
                .status())
        .isEqualTo(200);
  }

  @Test
  void theTaskTellsWhatItsTechniqueReminds() {
    String day = Site.DAY.toString();
    String tasks = script.get("plan?date=" + day).body().toString();
    assertThat(tasks).contains("Hydrate at 40 °C to 60 °C", "Back to the boil within 1 min");
    client.get("/k/TARN/wall/pastry");
    assertThat(client.get("/k/TARN/wall/pastry").text()).isNotEmpty();
  }
}
