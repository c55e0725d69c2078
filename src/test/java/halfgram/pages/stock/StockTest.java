package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Tubs through HTTP: counted, binned, taken back, put in. */
class StockTest {
  private Site site;
  private Client client;
  private String tub;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    tub =
        site.wiring().stock().list(site.house()).stream()
            .filter(one -> one.lot().component().formula().equals("dill-oil"))
            .findFirst()
            .orElseThrow()
            .lot()
            .code();
    client.get("/k/TARN/stock");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aCountSetsTheTubAndTheSameCountAgainChangesNothing() {
    assertThat(count("0.15 kg").status()).isEqualTo(303);
    assertThat(left()).isEqualByComparingTo(Amount.grams(150));
    long before = site.house().stand().change();
    assertThat(count("150g").status()).isEqualTo(303);
    assertThat(site.house().stand().change()).isEqualTo(before);
    assertThat(kinds()).containsExactly(Movement.Kind.BROUGHT, Movement.Kind.COUNTED);
  }

  @Test
  void whatThePlanTakesOfATubLeadsToWhy() {
    client.get("/k/TARN/");
    for (String page : List.of("stock", "stock/" + tub)) {
      Answer list = client.get("/k/TARN/" + page);
      List<String> leads = list.all("class=\"why\" href=\"([^\"]*%2F" + tub + "%2F[^\"]*)\"");
      assertThat(leads).as(page).isNotEmpty();
      for (String lead : leads) {
        Answer why = client.get(lead.replace("&amp;", "&"));
        assertThat(why.status()).as(lead).isEqualTo(200);
        assertThat(why.text()).contains("oil");
      }
    }
  }

  @Test
  void aCountThatIsNoMassComesBackAsTyped() {
    for (String typed : List.of("a lot", "14 piece", "-3 g", "")) {
      Answer wrong = count(typed);
      assertThat(wrong.status()).as(typed).isEqualTo(422);
      assertThat(wrong.body()).contains("value=\"" + typed + "\"");
    }
    assertThat(kinds()).containsExactly(Movement.Kind.BROUGHT);
  }

  @Test
  void aCountOfMoreThanWasEverInATubIsAskedAboutOnce() {
    String slip = "4200 g";
    Answer asked = count(slip);
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("4200 g is more than was ever in it");
    assertThat(asked.body()).contains("value=\"4200 g\"", "name=\"sure\"");
    assertThat(kinds()).containsExactly(Movement.Kind.BROUGHT);
    Answer sure = client.post("/k/TARN/stock/" + tub + "/count", "amount", slip, "sure", "yes");
    assertThat(sure.status()).isEqualTo(303);
    assertThat(count("4100 g").status()).isEqualTo(303);
    takeBack();
    takeBack();
    assertThat(count("4100 g").status()).isEqualTo(422);
  }

  @Test
  void aTubThatWasUsedOfMayBeCountedUpToWhatItWasFilledWith() {
    Amount filled = left();
    assertThat(count("10 g").status()).isEqualTo(303);
    assertThat(count(filled.number().toPlainString() + " g").status()).isEqualTo(303);
    assertThat(left()).isEqualByComparingTo(filled);
  }

  @Test
  void aBinnedTubIsGoneWithItsReasonAndComesBack() {
    Answer without = client.post("/k/TARN/stock/" + tub + "/bin", "reason", "");
    assertThat(without.status()).isEqualTo(422);
    client.post("/k/TARN/stock/" + tub + "/bin", "reason", "", "other", "smells of the fridge");
    assertThat(left().isZero()).isTrue();
    assertThat(client.get("/k/TARN/stock/" + tub).text()).contains("smells of the fridge");
    assertThat(client.get("/k/TARN/stock").body()).doesNotContain("id=\"tub-" + tub + "\"");
    client.post("/k/TARN/stock/" + tub + "/back");
    assertThat(left().isPositive()).isTrue();
  }

  @Test
  void whatWasBinnedAWhileAgoComesBackOnlyWhenSomebodyWasToldWhyAndSaysThatItMay() {
    client.post("/k/TARN/stock/" + tub + "/bin", "reason", "not safe");
    assertThat(client.get("/k/TARN/stock/" + tub).body()).doesNotContain("name=\"sure\"");
    site.passTime(Duration.ofSeconds(11));
    Answer page = client.get("/k/TARN/stock/" + tub);
    assertThat(page.text()).contains("by office: not safe.", "It may be used after all");
    FilledForm back = FilledForm.of(page, tub + "/back");
    Answer asked = client.post("/k/TARN/stock/" + tub + "/back", back.fields());
    assertThat(asked.status()).isEqualTo(422);
    assertThat(asked.text()).contains("by office: not safe.");
    Answer call = client.json("POST", "/k/TARN/api/v1/stock/" + tub + "/back", "{}");
    assertThat(call.status()).isEqualTo(409);
    assertThat(call.body()).contains("\"unsure\"", "by office: not safe.");
    assertThat(left().isZero()).isTrue();

    Staff.join(site, "mara", "cook");
    client = Staff.signedIn(site, "mara");
    page = client.get("/k/TARN/stock/" + tub);
    back = FilledForm.of(page, tub + "/back").with("sure", "yes");
    assertThat(client.post("/k/TARN/stock/" + tub + "/back", back.fields()).status())
        .isEqualTo(303);
    assertThat(left().isPositive()).isTrue();
    assertThat(client.get("/k/TARN/log?kind=stock").text())
        .contains("mara of the test", "not safe");
  }

  @Test
  void aCountMakesTodayProposeAnotherPlan() {
    client.get("/k/TARN/");
    count("0 g");
    assertThat(client.get("/k/TARN/").text()).contains("Since this plan was made");
  }

  @Test
  void unknownTubsAreNotFound() {
    assertThat(client.get("/k/TARN/stock/none").status()).isEqualTo(404);
    assertThat(client.post("/k/TARN/stock/none/count", "amount", "1 kg").status()).isEqualTo(404);
  }

  @Test
  void aTubPutInByHandIsThereOnceHoweverOftenItIsSent() {
    Answer blank = client.get("/k/TARN/stock/new?component=dill-oil");
    FilledForm form = FilledForm.of(blank, "stock/new");
    Answer wrong = send(form.with("left", "much").with("useBy", "2026-12-07T12:00"));
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("value=\"much\"");
    FilledForm right = form.with("left", "250 g").with("useBy", "2026-12-07T12:00");
    int before = site.wiring().stock().list(site.house()).size();
    assertThat(send(right).status()).isEqualTo(303);
    assertThat(send(right).status()).isEqualTo(303);
    assertThat(site.wiring().stock().list(site.house())).hasSize(before + 1);
  }

  /** By the form of the page, which names what it takes back. */
  private void takeBack() {
    FilledForm back = FilledForm.of(client.get("/k/TARN/stock/" + tub), tub + "/back");
    client.post("/k/TARN/stock/" + tub + "/back", back.fields());
  }

  private Answer send(FilledForm form) {
    return client.post("/k/TARN/stock/new", form.fields());
  }

  private Answer count(String typed) {
    return client.post("/k/TARN/stock/" + tub + "/count", "amount", typed);
  }

  private Amount left() {
    return find().lot().left();
  }

  private Tub find() {
    return site.wiring().stock().find(site.house(), tub).orElseThrow().tub();
  }

  private List<Movement.Kind> kinds() {
    return site.wiring().stock().find(site.house(), tub).orElseThrow().movements().stream()
        .map(Movement::kind)
        .toList();
  }
}
