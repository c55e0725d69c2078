package halfgram.pages.deliveries;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Deliveries through HTTP, as the office and the cooks use them. */
class DeliveryPagesTest {
  private static final String CODE = "elm-farm-2026-12-05";
  private static final String ONE = "/k/TARN/deliveries/" + CODE;
  private static final String SHAVE =
      "/k/TARN/wall/cold?task=kohlrabi-ribbons%2Fharvest-dinner%2F1%2Fshave";

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
  void aDeliveryIsPutInAndStandsOnTheDayAndOnTheWallOfWhatWaits() {
    assertThat(add("14:00", "6 kg").status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/deliveries").text())
        .contains("Elm Farm", "kohlrabi 6 kg", "EXPECTED 14:00", "last moment 18:00");
    assertThat(client.get("/k/TARN/").text()).contains("Elm Farm", "not before 14:10: kohlrabi");
    assertThat(client.get(SHAVE).text())
        .contains("WAITS", "waits for delivery: kohlrabi from Elm Farm, 14:10");
    assertThat(client.get("/k/TARN/log?kind=delivery").text()).contains("Elm Farm", "new");
  }

  @Test
  void aFormWithFaultsComesBackAsTypedWithEachAtItsField() {
    Answer wrong = add("noon", "a box");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("value=\"noon\"", "value=\"a box\"");
    assertThat(wrong.body()).contains("id=\"expected-fault\"", "id=\"amount-0-fault\"");
    assertThat(client.get("/k/TARN/deliveries").text()).contains("No delivery is expected");
    Answer more = client.post("/k/TARN/deliveries/new", with("noon", "6 kg", "do", "more"));
    assertThat(more.body()).contains("value=\"noon\"", "name=\"ingredient-3\"");
  }

  @Test
  void aDeliveryOfNobodyIsAskedForItsSupplierByName() {
    Answer wrong =
        client.post(
            "/k/TARN/deliveries/new",
            "date",
            "2026-12-05",
            "expected",
            "14:00",
            "ingredient-0",
            "kohlrabi",
            "amount-0",
            "6 kg");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("Supplier Give a text").doesNotContain("language");
  }

  @Test
  void whatToPressStandsBeforeWhatItHoldsUp() {
    add("14:00", "6 kg");
    String page = client.get(ONE).text();
    assertThat(page.indexOf("It still works when")).isPositive();
    assertThat(page.indexOf("It is here")).isGreaterThan(page.indexOf("It still works when"));
    assertThat(page.indexOf("Work that waits for it")).isGreaterThan(page.indexOf("Say so"));
    assertThat(page.indexOf("What it brings")).isGreaterThan(page.indexOf("Say so"));
  }

  @Test
  void anAmountOfNothingChosenIsAskedForItsIngredient() {
    Answer wrong =
        client.post(
            "/k/TARN/deliveries/new",
            "supplier",
            "Elm Farm",
            "date",
            "2026-12-05",
            "expected",
            "14:00",
            "ingredient-0",
            "",
            "amount-0",
            "6 kg");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("Choose an ingredient").doesNotContain("hyphens");
  }

  @Test
  void lateUntilAnotherDayIsSaidWithItsDayAndADayBeforeComesBackAsTyped() {
    add("14:00", "6 kg");
    String[] late = {"kind", "late", "expected", "0800", "day", "2026-12-04"};
    Answer wrong = client.post(ONE + "/enter", late);
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("value=\"2026-12-04\"", "id=\"late-day-fault\"");
    assertThat(wrong.text()).contains("is before the delivery is due");
    late[5] = "2026-12-06";
    assertThat(client.post(ONE + "/enter", late).status()).isEqualTo(303);
    assertThat(client.get(ONE).text()).contains("LATE, Sun 08:00", "not before Sun 08:10");
  }

  @Test
  void lateChangesWhatWaitsAndCanBeUndone() {
    add("14:00", "6 kg");
    Answer wrong = client.post(ONE + "/enter", "kind", "late", "expected", "soon");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("value=\"soon\"", "id=\"late-expected-fault\"");
    assertThat(client.post(ONE + "/enter", "kind", "late", "expected", "1830").status())
        .isEqualTo(303);
    String page = client.get(ONE).text();
    assertThat(page)
        .contains("LATE, 18:30", "Too late by 30 min", "last moment was 18:00", "late, expected");
    assertThat(page).contains("Work to pull forward meanwhile", "Harvest dinner");
    assertThat(client.get("/k/TARN/").text()).contains("too late by 30 min");
    String undoes = client.get(ONE).all("name=\"undoes\" value=\"([0-9a-f-]+)\"").get(0);
    client.post(ONE + "/enter", "kind", "undo", "undoes", undoes);
    assertThat(client.get(ONE).text()).contains("EXPECTED 14:00", "undone: late");
    Answer twice = client.post(ONE + "/enter", "kind", "undo", "undoes", undoes);
    assertThat(twice.status()).isEqualTo(409);
    assertThat(twice.text()).contains("an entry can be undone once");
  }

  @Test
  void whenItIsHereTheTaskWaitsForTheCheckInAndThenNoMore() {
    add("14:00", "6 kg");
    site.setClock(Site.at("14:20"));
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    assertThat(client.get(SHAVE).text()).contains("Elm Farm is here");
    Answer here = client.post("/k/TARN/wall/goods", "delivery", CODE, "station", "cold", "id", ID);
    assertThat(here.header("Location")).endsWith("/k/TARN/wall/cold");
    assertThat(client.get(SHAVE).text()).contains("is checked in until 14:30");
    site.setClock(Site.at("14:31"));
    assertThat(client.get(SHAVE).text()).doesNotContain("Elm Farm");
    assertThat(client.get(ONE).text()).contains("HERE since 14:20, Ines");
  }

  private static final String ID = "0b8c7a3e-52f1-4c7d-9a16-3d2f5e6b7a80";

  @Test
  void lessAndTurnedAwayTellTheirPlates() {
    add("14:00", "6 kg");
    client.post(ONE + "/enter", "kind", "short", "ingredient", "kohlrabi", "came", "1 kg");
    assertThat(client.get(ONE).text()).contains("1000 g of 6 kg", "plates, short by");
    client.post(ONE + "/enter", "kind", "arrived");
    Answer why = client.post(ONE + "/enter", "kind", "rejected", "ingredient", "kohlrabi");
    assertThat(why.status()).isEqualTo(422);
    assertThat(why.body()).contains("id=\"rejected-reason-fault\"");
    client.post(
        ONE + "/enter",
        "kind",
        "rejected",
        "ingredient",
        "kohlrabi",
        "reason",
        "frozen",
        "reading",
        "-2 °C");
    assertThat(client.get(ONE).text()).contains("turned away: frozen", "read -2 °C by hand");
    assertThat(client.get(SHAVE).text()).contains("was turned away");
  }

  @Test
  void callingOffAsksFirstAndHoldsUpNothing() {
    add("14:00", "6 kg");
    assertThat(client.get(ONE + "/cancel").text())
        .contains("Call off the delivery of Elm Farm?", "Kohlrabi ribbons, shave");
    client.post(ONE + "/enter", "kind", "cancelled");
    assertThat(client.get(ONE).text()).contains("CALLED OFF");
    assertThat(client.get(SHAVE).text()).doesNotContain("Elm Farm");
  }

  @Test
  void twoWhoEditAtOnceAreBothTold() {
    add("14:00", "6 kg");
    String seen = client.get(ONE + "/edit").all("name=\"seen\" value=\"(\\d+)\"").get(0);
    assertThat(edit("15:00", seen).status()).isEqualTo(303);
    Answer stale = edit("16:00", seen);
    assertThat(stale.status()).isEqualTo(409);
    assertThat(stale.body()).contains("value=\"16:00\"");
    assertThat(client.get(ONE).text()).contains("EXPECTED 15:00");
  }

  private Answer edit(String at, String seen) {
    return client.post(ONE + "/edit", with(at, "6 kg", "seen", seen));
  }

  private Answer add(String at, String amount) {
    return client.post("/k/TARN/deliveries/new", with(at, amount, "do", "save"));
  }

  private static String[] with(String at, String amount, String key, String value) {
    return new String[] {
      "supplier",
      "Elm Farm",
      "date",
      "2026-12-05",
      "expected",
      at,
      "ingredient-0",
      "kohlrabi",
      "amount-0",
      amount,
      key,
      value
    };
  }
}
