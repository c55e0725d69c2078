package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The units a kitchen reads, on the pages of its office. */
class UnitsInOfficeTest {
  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("15:30"));
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  private void set(String units) {
    FilledForm form = FilledForm.of(client.get("/k/TARN/settings"), "/k/TARN/settings");
    client.post("/k/TARN/settings", form.with("units", units).fields());
  }

  @Test
  void noTubIsToldInGramsWhereTheKitchenReadsPoundsAndOunces() {
    String tub = "stock/" + site.wiring().stock().list(site.house()).get(0).lot().code();
    assertThat(client.get("/k/TARN/stock").text()).containsPattern("\\d{3,} g\\b");
    set("us");
    for (String page : List.of("stock", tub, "count/cold")) {
      String told = client.get("/k/TARN/" + page).text();
      assertThat(told).as(page).containsPattern("\\d lb |\\d oz\\b");
      assertThat(told.replaceAll("\\([^)]*\\)", ""))
          .as(page)
          .doesNotContainPattern("\\b[3-9]\\d g\\b|\\b\\d{3,} g\\b");
    }
    assertThat(client.get("/k/TARN/paper?station=cold").text())
        .as("of a plan made before")
        .containsPattern("planned \\d+ lb")
        .containsPattern("rapeseed oil \\d+\\.\\d+ oz 0\\.1 g scale")
        .doesNotContainPattern("planned \\d+ g");
    assertThat(client.get("/k/TARN/").text())
        .contains(", 39.2 °F (4 °C)")
        .doesNotContain("walk-in, 4 °C");
  }

  @Test
  void noFieldAsksForGramsOrMillimetresWhereTheKitchenReadsPoundsAndInches() {
    List<String> pages =
        List.of(
            "book/kitchen/TARN",
            "book/ingredients/dill",
            "book/dishes/trout-plate",
            "book/containers/bath-pan",
            "book/scales/new",
            "pars",
            "deliveries/new",
            "stock/new",
            "techniques/brine",
            "formulas/new");
    String metric = "(such as|placeholder=.)\\W*[0-9.,]+ (kg|mm|L|°C|[1-9]\\d+ g)\\b";
    for (String page : pages) {
      assertThat(client.get("/k/TARN/" + page).body())
          .as(page)
          .doesNotContainPattern("\\{&quot;\\d");
    }
    assertThat(client.get("/k/TARN/book/containers/bath-pan").text()).contains("such as 300 mm");
    set("us");
    for (String page : pages) {
      assertThat(client.get("/k/TARN/" + page).body()).as(page).doesNotContainPattern(metric);
    }
    assertThat(client.get("/k/TARN/book/containers/bath-pan").text())
        .contains("such as 1.1 quart", "such as 4.2 oz", "such as 12 in");
    assertThat(client.get("/k/TARN/deliveries/new").body()).contains("placeholder=\"18 lb\"");
    assertThat(client.get("/k/TARN/pars").text()).contains("such as 7.1 lb or 45 pieces");
  }

  @Test
  void whatAPageAsksForInInchesIsTaken() {
    set("us");
    String pan = "/k/TARN/book/containers/bath-pan";
    FilledForm form = FilledForm.of(client.get(pan), pan).with("act", "save");
    form = form.with("inside.length", "12 in").with("volume", "1.1 quart").with("tare", "4.2 oz");
    assertThat(client.post(pan, form.with("inside.width", "394 in").fields()).status())
        .as("a pan of ten metres")
        .isEqualTo(422);
    assertThat(client.post(pan, form.fields()).status()).isEqualTo(303);
    assertThat(client.get(pan).body()).contains("value=\"12 in\"");
    assertThat(site.house().book().containers().get("bath-pan").inside().orElseThrow().lengthMm())
        .isEqualByComparingTo("304.8");
  }

  @Test
  void whatAPageShowsCanBeTypedIntoItsForms() {
    set("us");
    FilledForm form = FilledForm.of(client.get("/k/TARN/stock/new"), "/k/TARN/stock/new");
    form = form.with("component", "dill-oil").with("left", "1 lb 8 oz").with("place", "walk-in");
    form = form.with("made", "2026-12-05T15:00").with("sure", "yes");
    Client.Answer put = client.postAndFollow("/k/TARN/stock/new", form.fields());
    assertThat(put.text()).contains("1 lb 8 oz", "1205-1");
  }
}
