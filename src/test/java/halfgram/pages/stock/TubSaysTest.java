package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Lot;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a tub says of itself on its page, in the list and on its label. */
class TubSaysTest {
  private static final String OIL = "t-1203-oil-1";
  private static final String CRISP = "t-1203-crisp-1";
  private static final String CHAR = "t-1204-char-1";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatRestsForSafetySaysFromWhenItMayBeUsedWhileThatIsAhead() {
    site.setClock(Site.at("08:00"));
    client.withCookie("session", site.session());
    String said = "not before Sat 5 Dec 09:15";
    assertThat(page(CHAR).text()).contains(said);
    assertThat(client.get("/k/TARN/stock").all("(not before Sat 5 Dec 09:15)")).hasSize(4);
    Answer label = client.get("/k/TARN/label?tub=" + CHAR + "," + OIL);
    assertThat(label.all("<dt>(not before)</dt><dd class=\"use-by\">Sat 5 Dec 09:15<")).hasSize(1);
    assertThat(label.all("(class=\"label\")")).hasSize(2);
    assertThat(site.script().get("stock/" + CHAR).body().path("notBefore").asText())
        .isEqualTo("2026-12-05T09:15:00+01:00");
    site.setClock(Site.at("09:15"));
    assertThat(page(CHAR).text()).doesNotContain("not before");
    assertThat(client.get("/k/TARN/label?tub=" + CHAR).text()).doesNotContain("not before");
    assertThat(site.script().get("stock/" + CHAR).body().has("notBefore")).isFalse();
  }

  @Test
  void aPlanTakesOfWhatRestsForSafetyOnlyWhenItHasRested() {
    for (int i = 1; i <= 4; i++) {
      client.post("/k/TARN/stock/t-1204-char-" + i + "/bin", "reason", "dropped");
    }
    String put = "{'component':'char-thawed','left':'9 kg','made':'2026-12-05T09:00'}";
    String code = site.script().post("stock", put).body().path("code").asText();
    long facts = site.house().stand().facts();
    site.wiring().plans().accept(site.house(), Site.DAY, facts, "chef");
    assertThat(site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().sheet().draws())
        .filteredOn(draw -> draw.lot().code().equals(code))
        .isNotEmpty()
        .noneMatch(draw -> draw.need().readyBy().isBefore(Site.at("21:00")));
  }

  @Test
  void aDateThatIsFarHasItsYear() {
    freeze(OIL, "2029-08-01");
    assertThat(page(OIL).text()).contains("frozen until Wed 1 Aug 2029 23:59");
    assertThat(client.get("/k/TARN/stock").text()).contains("Wed 1 Aug 2029 23:59");
    assertThat(client.get("/k/TARN/label?tub=" + OIL).text()).contains("Wed 1 Aug 2029 23:59");
    assertThat(client.get("/k/TARN/log?kind=stock").text()).contains("Wed 1 Aug 2029 23:59");
    Answer far = freeze(CRISP, "2031-01-01");
    assertThat(far.text()).contains("no later than Fri 31 Aug 2029 10:00");
    assertThat(page(CRISP).text()).contains("Use by Tue 8 Dec 12:00");
  }

  @Test
  void whatIsPulledToThawStandsWhereItsFormulaKeepsIt() {
    send(OIL, "freeze", form(OIL, "freeze").with("until", "2027-03-01").with("place", "freezer"));
    assertThat(lot(OIL).place()).isEqualTo("freezer");
    send(OIL, "thaw", form(OIL, "thaw"));
    assertThat(lot(OIL).place()).isEqualTo("walk-in");
    send(CRISP, "freeze", form(CRISP, "freeze").with("until", "2027-03-01"));
    send(CRISP, "thaw", form(CRISP, "thaw").with("place", "pass"));
    assertThat(lot(CRISP).place()).isEqualTo("pass");
  }

  @Test
  void aSplitNamesWhatItFilledWithTheWayToTheLabelsAndTheNewTubsWhereTheyCameFrom() {
    FilledForm form = form(OIL, "split").with("amount", "20 g").with("tubs", "2");
    Answer old = client.get(send(OIL, "split", form).header("location"));
    assertThat(old.text()).contains("Filled out of it 1205-1 1205-2 Their labels");
    assertThat(old.all("<a href=\"/k/TARN/stock/(1205-[12])\">")).hasSize(4);
    String labels = old.all("href=\"(/k/TARN/label\\?tub=1205[^\"]+)\"").get(0);
    assertThat(client.get(labels).all("<p class=\"code\">([^<]+)<"))
        .containsExactly("1205-1", "1205-2");
    assertThat(page("1205-1").all("<td> <a href=\"/k/TARN/stock/([^\"]+)\"")).containsExactly(OIL);
    assertThat(
            site.script().get("stock/" + OIL).body().at("/movements").findValues("into").toString())
        .isEqualTo("[[\"1205-1\",\"1205-2\"]]");
    client.post("/k/TARN/stock/" + OIL + "/count", "amount", "300 g");
    assertThat(page(OIL).text()).doesNotContain("Filled out of it").contains("1205-1 1205-2");
  }

  private Lot lot(String code) {
    return site.wiring().stock().find(site.house(), code).orElseThrow().tub().lot();
  }

  private Answer page(String tub) {
    return client.get("/k/TARN/stock/" + tub);
  }

  private FilledForm form(String tub, String deed) {
    return FilledForm.of(page(tub), "/" + tub + "/" + deed);
  }

  private Answer send(String tub, String deed, FilledForm form) {
    return client.post("/k/TARN/stock/" + tub + "/" + deed, form.fields());
  }

  private Answer freeze(String tub, String until) {
    return send(tub, "freeze", form(tub, "freeze").with("until", until));
  }
}
