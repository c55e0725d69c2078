package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What hands do to a tub, by the forms of its page. */
class HandlingTest {
  private static final String OIL = "t-1203-oil-1";
  private static final String CRISP = "t-1203-crisp-1";

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

  // ---- lost ----

  @Test
  void whatBrokeIsOutOfTheTubOnceHoweverOftenItIsSentAndComesBack() {
    Amount before = lot(CRISP).left();
    FilledForm form =
        form(CRISP, "broke").with("amount", "2 piece").with("reason", "broke in handling");
    assertThat(send(CRISP, "broke", form).status()).isEqualTo(303);
    assertThat(send(CRISP, "broke", form).status()).isEqualTo(303);
    assertThat(lot(CRISP).left()).isEqualByComparingTo(before.minus(Amount.pieces(2)));
    assertThat(page(CRISP).text()).contains("broke").contains("broke in handling");
    takeBack(CRISP);
    assertThat(lot(CRISP).left()).isEqualByComparingTo(before);
  }

  @Test
  void moreThanIsThereIsNotLostAndTheFormComesBackAsTyped() {
    FilledForm form = form(OIL, "waste").with("amount", "421 g").with("reason", "not safe");
    Answer answer = send(OIL, "waste", form);
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.body()).contains("value=\"421 g\"").contains("There is 420 g in it");
    assertThat(answer.all("<option value=\"not safe\" (selected)")).hasSize(1);
    Answer none = send(OIL, "waste", form.with("amount", "some").with("reason", ""));
    assertThat(none.text()).contains("A number and a unit").contains("Choose a reason");
    assertThat(lot(OIL).left()).isEqualByComparingTo(Amount.grams(420));
  }

  @Test
  void whatIsLostHasItsCostOrSaysForWhatThereIsNoPrice() {
    send(OIL, "waste", form(OIL, "waste").with("amount", "50 g").with("reason", "not safe"));
    Movement lost = movements(OIL).stream().filter(one -> one.kind().loses()).findFirst().get();
    assertThat(lost.loss()).isPresent();
    if (lost.loss().get().isKnown()) {
      assertThat(lost.loss().get().cost().number()).isPositive();
      assertThat(page(OIL).text()).contains(" EUR");
    } else {
      assertThat(lost.loss().get().unpriced()).isNotEmpty();
      assertThat(page(OIL).text()).contains("no price for " + lost.loss().get().unpriced().get(0));
    }
    assertThat(client.get("/k/TARN/log").text()).contains("Thrown away").contains("50 g");
  }

  // ---- moved ----

  @Test
  void aTubStandsWhereItWasMovedToUntilThatIsTakenBack() {
    String before = lot(OIL).place();
    send(OIL, "move", form(OIL, "move").with("place", "pass fridge"));
    assertThat(lot(OIL).place()).isEqualTo("pass fridge");
    assertThat(client.get("/k/TARN/stock").text()).contains("pass fridge");
    Answer nowhere = send(OIL, "move", form(OIL, "move").with("place", "  "));
    assertThat(nowhere.status()).isEqualTo(422);
    takeBack(OIL);
    assertThat(lot(OIL).place()).isEqualTo(before);
  }

  // ---- frozen and thawed ----

  @Test
  void theClockStandsInTheFreezerAndNeverWinsADay() {
    // Use by Sunday 23:59: on Saturday at nine one day of it is left, the day of thawing.
    assertThat(lot(OIL).useBy()).isEqualTo(at("2026-12-06T23:59"));
    freeze(OIL, "2027-03-01");
    Lot frozen = lot(OIL);
    assertThat(frozen.isFrozen()).isTrue();
    assertThat(frozen.useBy()).isEqualTo(at("2027-03-01T23:59"));
    assertThat(page(OIL).text())
        .contains("The kitchen keeps it frozen until")
        .contains("its clock stands");
    site.passTime(Duration.ofDays(20));
    client.withCookie("session", site.session());
    send(OIL, "thaw", form(OIL, "thaw"));
    Lot thawed = lot(OIL);
    assertThat(thawed.isFrozen()).isFalse();
    assertThat(thawed.useBy()).isEqualTo(at("2026-12-25T23:59"));
  }

  @Test
  void aSpanGoesOnToTheMinute() {
    // Use by Tuesday noon: 75 hours are left on Saturday at nine.
    freeze(CRISP, "2027-03-01");
    site.passTime(Duration.ofHours(100));
    send(CRISP, "thaw", form(CRISP, "thaw"));
    Instant thawed = Site.at("09:00").plus(Duration.ofHours(100));
    assertThat(Duration.between(thawed, lot(CRISP).useBy())).isEqualTo(Duration.ofHours(75));
  }

  @Test
  void whatWasThawedIsNotFrozenAgainAlsoNotInPartsOfIt() {
    String tub = bring("2026-12-05T08:00", "2026-12-08T23:59");
    freeze(tub, "2027-03-01");
    send(tub, "thaw", form(tub, "thaw"));
    Answer again = freeze(tub, "2027-03-02");
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text()).contains("what was thawed is not frozen again");
    assertThat(again.body()).contains("value=\"2027-03-02\"");
    send(tub, "split", form(tub, "split").with("amount", "100 g"));
    String part = filled(tub);
    assertThat(freeze(part, "2027-03-01").status()).isEqualTo(409);
    assertThat(lot(part).useBy()).isEqualTo(lot(tub).useBy());
  }

  @Test
  void whatIsPastItsDateOrOnItsLastDayDoesNotGoIn() {
    site.setClock(at("2026-12-06T10:00"));
    Answer last = freeze(OIL, "2027-03-01");
    assertThat(last.status()).isEqualTo(409);
    assertThat(last.text()).contains("there is no day left");
    site.setClock(at("2026-12-07T10:00"));
    assertThat(freeze(OIL, "2027-03-01").text()).contains("past its date");
    assertThat(lot(OIL).isFrozen()).isFalse();
  }

  @Test
  void aDateInTheFreezerIsAskedForAndLiesAhead() {
    assertThat(freeze(OIL, "").status()).isEqualTo(422);
    assertThat(freeze(OIL, "2026-12-01").text()).contains("Accepted: a day after");
    assertThat(freeze(OIL, "2106-12-01").text()).contains("no later than");
    assertThat(lot(OIL).isFrozen()).isFalse();
  }

  @Test
  void noPlanCountsOnAFrozenTubOfNoThawTimeAndThePageSaysToPullIt() {
    freeze(OIL, "2027-03-01");
    accept();
    assertThat(site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().sheet().draws())
        .noneMatch(draw -> draw.lot().code().equals(OIL));
    assertThat(page(OIL).text())
        .contains("frozen: the plan does not pull it")
        .contains("pull it to thaw, then plan again");
    send(OIL, "thaw", form(OIL, "thaw"));
    accept();
    assertThat(site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().sheet().draws())
        .anyMatch(draw -> draw.lot().code().equals(OIL));
  }

  @Test
  void thatItWasThawedIsNotTakenBackWhenItHasStoodOut() {
    freeze(OIL, "2027-03-01");
    send(OIL, "thaw", form(OIL, "thaw"));
    takeBack(OIL);
    assertThat(lot(OIL).isFrozen()).isTrue();
    send(OIL, "thaw", form(OIL, "thaw"));
    site.passTime(Duration.ofMinutes(31));
    assertThat(takeBack(OIL).status()).isEqualTo(409);
    assertThat(lot(OIL).isFrozen()).isFalse();
  }

  // ---- split and combined ----

  @Test
  void aSplitMovesWhatItSaysToTheMicrogramAndKeepsWhatIsKept() {
    FilledForm form =
        form(OIL, "split").with("amount", "33.333333 g").with("tubs", "3").with("place", "pass");
    send(OIL, "split", form);
    send(OIL, "split", form);
    List<Tub> parts =
        of("dill-oil").stream().filter(tub -> tub.lot().code().startsWith("1205-")).toList();
    assertThat(parts).hasSize(3).allMatch(tub -> tub.lot().place().equals("pass"));
    assertThat(Amount.sum(of("dill-oil").stream().map(tub -> tub.lot().left()).toList()))
        .isEqualByComparingTo(Amount.grams(1240));
    assertThat(Amount.sum(of("dill-oil").stream().map(tub -> tub.lot().kept()).toList()))
        .isEqualByComparingTo(Amount.grams(360));
    assertThat(lot(OIL).kept()).isEqualByComparingTo(lot(OIL).left());
    Answer label = client.get("/k/TARN/label?tub=" + parts.get(0).lot().code());
    assertThat(label.text()).contains(parts.get(0).lot().code()).contains("33.3");
    takeBack(OIL);
    assertThat(of("dill-oil")).hasSize(4);
    assertThat(lot(OIL).left()).isEqualByComparingTo(Amount.grams(420));
    assertThat(lot(OIL).kept()).isEqualByComparingTo(Amount.grams(360));
  }

  @Test
  void whatIsKeptGoesAlongWhenSomebodySaysSo() {
    send(OIL, "split", form(OIL, "split").with("amount", "200 g").with("kept", "goes"));
    String part = filled(OIL);
    assertThat(lot(part).kept()).isEqualByComparingTo(Amount.grams(200));
    assertThat(lot(OIL).kept()).isEqualByComparingTo(Amount.grams(160));
    count(part, "150 g");
    assertThat(takeBack(OIL).status()).as("a part has moved on").isEqualTo(409);
  }

  @Test
  void combinedTubsGoByTheEarliestDateAndKeepAllTheyKept() {
    String other = bring("2026-12-04T08:00", "2026-12-05T23:00");
    FilledForm form = form(OIL, "combine").with("with", other);
    Answer answer = send(OIL, "combine", form);
    assertThat(send(OIL, "combine", form).header("location")).isEqualTo(answer.header("location"));
    String code = answer.header("location").replaceAll(".*/", "");
    Lot lot = lot(code);
    assertThat(lot.left()).isEqualByComparingTo(Amount.grams(670));
    assertThat(lot.kept()).isEqualByComparingTo(Amount.grams(360));
    assertThat(lot.useBy()).isEqualTo(at("2026-12-05T23:00"));
    assertThat(lot.made()).isEqualTo(at("2026-12-03T07:40"));
    assertThat(lot(OIL).left().isZero()).isTrue();
    takeBack(code);
    assertThat(lot(OIL).left()).isEqualByComparingTo(Amount.grams(420));
    assertThat(lot(OIL).kept()).isEqualByComparingTo(Amount.grams(360));
    assertThat(lot(other).left()).isEqualByComparingTo(Amount.grams(250));
    assertThat(lot(code).left().isZero()).isTrue();
  }

  @Test
  void whatIsNotTheSameOrFrozenOrPastIsNotCombined() {
    String frozen = bring("2026-12-05T08:00", "2026-12-08T23:59");
    String past = bring("2026-12-04T08:00", "2026-12-05T08:30");
    freeze(frozen, "2027-03-01");
    FilledForm form = form(OIL, "combine", bring("2026-12-05T08:00", "2026-12-08T23:59"));
    assertThat(send(OIL, "combine", form.with("with", frozen)).text()).contains("is frozen");
    assertThat(send(OIL, "combine", form.with("with", past)).text()).contains("past its date");
    assertThat(send(OIL, "combine", form.with("with", CRISP)).text())
        .contains("does not hold the same");
    assertThat(send(OIL, "combine", form.with("with", "none")).status()).isEqualTo(422);
    assertThat(lot(OIL).left()).isEqualByComparingTo(Amount.grams(420));
  }

  // ---- taken back ----

  @Test
  void whatWasDoneIsTakenBackOneByOneAndTheSameFormTwiceIsOnce() {
    count(OIL, "400 g");
    send(OIL, "move", form(OIL, "move").with("place", "pass"));
    FilledForm back = FilledForm.of(page(OIL), "/back");
    client.post("/k/TARN/stock/" + OIL + "/back", back.fields());
    client.post("/k/TARN/stock/" + OIL + "/back", back.fields());
    assertThat(lot(OIL).left()).isEqualByComparingTo(Amount.grams(400));
    assertThat(lot(OIL).place()).isEqualTo("walk-in");
    takeBack(OIL);
    assertThat(lot(OIL).left()).isEqualByComparingTo(Amount.grams(420));
    assertThat(page(OIL).body()).doesNotContain("/" + OIL + "/back\"");
  }

  // ---- what is kept for an event ----

  @Test
  void whatIsTakenOfWhatIsKeptIsSaidUntilItIsAcceptedOrSeenOrFoundAgain() {
    count(OIL, "100 g");
    String said = "260 g of what is kept for ";
    assertThat(page(OIL).text()).contains(said).contains("a count found less");
    assertThat(client.get("/k/TARN/stock").text()).contains(said);
    assertThat(client.get("/k/TARN/").text()).contains(said).contains("Since this plan was made");
    count(OIL, "300 g");
    assertThat(page(OIL).text()).contains("60 g of what is kept for ");
    assertThat(lot(OIL).kept()).isEqualByComparingTo(Amount.grams(300));
    accept();
    assertThat(client.get("/k/TARN/stock").text()).doesNotContain("of what is kept for ");
    count(OIL, "200 g");
    Answer list = client.get("/k/TARN/stock");
    assertThat(list.text()).contains("100 g of what is kept for ");
    client.post("/k/TARN/kept/seen", FilledForm.of(list, "kept/seen").fields());
    assertThat(client.get("/k/TARN/stock").text()).doesNotContain("of what is kept for ");
  }

  @Test
  void whatIsThrownAwayByEnterIsLoggedAsThrownAway() {
    FilledForm form = form(OIL, "waste").with("amount", "50 g").with("reason", "not safe");
    String enter = page(OIL).all("<form class=\"act\" method=\"post\" action=\"([^\"]+)\"").get(0);
    assertThat(client.post(enter, form.fields()).status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/log?kind=stock").text())
        .contains("some thrown away")
        .doesNotContain("broke,");
  }

  // ---- below their callers ----

  private void accept() {
    site.wiring().plans().accept(site.house(), Site.DAY, site.house().stand().facts(), "chef");
  }

  private Answer page(String tub) {
    return client.get("/k/TARN/stock/" + tub);
  }

  private FilledForm form(String tub, String deed) {
    String action = deed.equals("broke") ? "waste" : deed;
    return FilledForm.of(page(tub), "/" + tub + "/" + action);
  }

  /** The form of a page that has another tub to be combined with. */
  private FilledForm form(String tub, String deed, String other) {
    assertThat(page(tub).body()).contains("value=\"" + other + "\"");
    return form(tub, deed);
  }

  private Answer send(String tub, String deed, FilledForm form) {
    return client.post("/k/TARN/stock/" + tub + "/" + deed, form.fields());
  }

  private Answer freeze(String tub, String until) {
    String id = "00000000-0000-4000-8000-000000000001";
    return client.post("/k/TARN/stock/" + tub + "/freeze", "id", id, "until", until);
  }

  private void count(String tub, String amount) {
    client.post("/k/TARN/stock/" + tub + "/count", "amount", amount);
  }

  private Answer takeBack(String tub) {
    return client.post(
        "/k/TARN/stock/" + tub + "/back", FilledForm.of(page(tub), "/back").fields());
  }

  /** A further tub of dill oil. */
  private String bring(String made, String useBy) {
    FilledForm form =
        FilledForm.of(client.get("/k/TARN/stock/new?component=dill-oil"), "stock/new");
    return client
        .post(
            "/k/TARN/stock/new",
            form.with("left", "250 g")
                .with("made", made)
                .with("useBy", useBy)
                .with("place", "walk-in")
                .fields())
        .header("location")
        .replaceAll(".*/", "");
  }

  /** The tub that was filled out of another. */
  private String filled(String from) {
    return of("dill-oil").stream()
        .map(tub -> tub.lot().code())
        .filter(
            code ->
                movements(code).stream().anyMatch(one -> one.reason().equals(Optional.of(from))))
        .findFirst()
        .orElseThrow();
  }

  private List<Tub> of(String formula) {
    return site.wiring().stock().list(site.house()).stream()
        .filter(tub -> tub.lot().component().formula().equals(formula))
        .toList();
  }

  private Lot lot(String code) {
    return site.wiring().stock().find(site.house(), code).orElseThrow().tub().lot();
  }

  private List<Movement> movements(String code) {
    return site.wiring().stock().find(site.house(), code).orElseThrow().movements();
  }

  private Instant at(String moment) {
    return java.time.LocalDateTime.parse(moment)
        .atZone(site.house().book().kitchen().clock().zone())
        .toInstant();
  }
}
