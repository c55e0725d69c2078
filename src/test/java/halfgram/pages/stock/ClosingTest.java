package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.PrepSheet;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The morning after: what services used is assumed, shown as that, and put right by a count. */
class ClosingTest {
  private static final String TROUT = "cured-trout";

  private Site site;
  private Client client;
  private PrepSheet saturday;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
    saturday = site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().sheet();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void whatServicesWerePlannedToUseIsAssumedUsedOnce() {
    Amount before = left(TROUT);
    Amount planned = planned(TROUT);
    assertThat(planned.isPositive()).isTrue();
    morningAfter();
    assertThat(assumed(TROUT)).isEqualByComparingTo(planned.atMost(before));
    assertThat(left(TROUT)).isEqualByComparingTo(before.minus(planned.atMost(before)));
    int movements = movements();
    client.get("/k/TARN/");
    client.get("/k/TARN/wall/cold");
    assertThat(movements()).isEqualTo(movements);
    assertThat(client.get("/k/TARN/log?kind=stock").text()).contains("used, assumed");
  }

  @Test
  void nothingIsAssumedWhileTheDayLastsOrOfServicesToCome() {
    site.passTime(Duration.ofHours(16));
    client.get("/k/TARN/");
    assertThat(tubs()).noneMatch(Tub::assumed);
    site.passTime(Duration.ofHours(6));
    client.get("/k/TARN/");
    List<Movement> all = all();
    assertThat(all).anyMatch(one -> one.kind() == Movement.Kind.ASSUMED);
    assertThat(all)
        .filteredOn(one -> one.kind() == Movement.Kind.ASSUMED)
        .allMatch(one -> one.at().isBefore(Site.at("04:00").plus(Duration.ofDays(1))));
  }

  @Test
  void nothingButWhatThePlanDrewIsAssumedOfATubWhoseDateEndedMeanwhile() {
    site.setClock(Site.at("17:10"));
    client.withCookie("session", site.session());
    String ended = bring("2026-12-05T19:20");
    String lasting = bring("2026-12-05T23:00");
    morningAfter();
    assertThat(lifeOf(ended)).extracting(Movement::kind).containsExactly(Movement.Kind.BROUGHT);
    assertThat(lifeOf(lasting)).extracting(Movement::kind).contains(Movement.Kind.ASSUMED);
    assertThat(client.get("/k/TARN/stock").body()).contains("id=\"tub-" + ended + "\"");
  }

  @Test
  void whatIsAssumedIsSignedByTheKitchensClock() {
    morningAfter();
    Movement assumed =
        all().stream().filter(one -> one.kind() == Movement.Kind.ASSUMED).findFirst().orElseThrow();
    assertThat(assumed.who()).isEqualTo(Movement.CLOCK);
    String code =
        tubs().stream()
            .filter(tub -> tub.id().equals(assumed.lot()))
            .findFirst()
            .orElseThrow()
            .lot()
            .code();
    assertThat(client.get("/k/TARN/stock/" + code).all("<td>(the kitchen&#39;s clock)</td>"))
        .isNotEmpty();
    assertThat(client.get("/k/TARN/log?kind=stock").text()).contains("the kitchen's clock");
  }

  private String bring(String useBy) {
    String spheres =
        "{'component':'yoghurt-spheres','left':'40 piece','made':'2026-12-05T17:00','useBy':'"
            + useBy
            + "','sure':true}";
    return site.script().post("stock", spheres).body().path("code").asText();
  }

  private List<Movement> lifeOf(String code) {
    return site.wiring().stock().find(site.house(), code).orElseThrow().movements();
  }

  @Test
  void allThatIsPastItsDateIsBinnedAtOnceWhenSomebodySaysSoAndComesBackTubByTub() {
    assertThat(client.get("/k/TARN/stock").body()).doesNotContain("/k/TARN/stock/past");
    assertThat(client.get("/k/TARN/stock/past").text()).contains("Nothing on hand is past");
    morningAfter();
    assertThat(client.get("/k/TARN/stock").body()).contains("href=\"/k/TARN/stock/past\"");
    Answer asked = client.get("/k/TARN/stock/past");
    List<String> past = asked.all("name=\"tub\" value=\"([^\"]+)\" checked");
    assertThat(past).hasSizeGreaterThan(5);
    assertThat(asked.text()).contains(past.size() + " tubs are past their date");
    FilledForm form = FilledForm.of(asked, "stock/past");
    Answer none = post(form.fields(), "tub");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.text()).contains("Choose at least one.");
    Answer noReason = client.post("/k/TARN/stock/past", form.with("reason", "").fields());
    assertThat(noReason.status()).isEqualTo(422);
    assertThat(noReason.all("name=\"tub\" value=\"([^\"]+)\" checked"))
        .containsExactlyElementsOf(past);
    Answer done = client.postAndFollow("/k/TARN/stock/past", form.fields());
    assertThat(done.text()).contains("Binned just now", "Nothing on hand is past its date.");
    assertThat(done.all("href=\"/k/TARN/stock/([^\"]+)\">")).containsAll(past);
    assertThat(client.get("/k/TARN/stock").text()).doesNotContain("past the date");
    String one = past.get(0);
    assertThat(lifeOf(one)).extracting(Movement::kind).contains(Movement.Kind.BINNED);
    client.post("/k/TARN/stock/" + one + "/back");
    assertThat(client.get("/k/TARN/stock").text()).contains("1 past the date: bin.");
  }

  @Test
  void whatWasBinnedAtOnceComesBackAtOnceButForWhatWasMovedSince() {
    morningAfter();
    FilledForm form = FilledForm.of(client.get("/k/TARN/stock/past"), "stock/past");
    Answer done = client.postAndFollow("/k/TARN/stock/past", form.fields());
    List<String> back = done.all("name=\"back\" value=\"([^\"]+)\"");
    assertThat(back).hasSizeGreaterThan(5);
    String first = back.get(0).substring(0, back.get(0).indexOf(' '));
    client.post("/k/TARN/stock/" + first + "/back");
    FilledForm undo = FilledForm.of(done, "stock/past");
    Answer undone = client.postAndFollow("/k/TARN/stock/past", undo.fields());
    assertThat(undone.text()).contains(back.size() + " tubs are past their date");
    client.postAndFollow("/k/TARN/stock/past", undo.fields());
    assertThat(client.get("/k/TARN/stock").text()).contains(back.size() + " past the date: bin.");
    assertThat(client.post("/k/TARN/stock/past", "back", "all of it").status()).isEqualTo(400);
  }

  @Test
  void whatWasBinnedAtOnceIsAskedAboutOneByOneALittleLater() {
    morningAfter();
    FilledForm form = FilledForm.of(client.get("/k/TARN/stock/past"), "stock/past");
    Answer done = client.postAndFollow("/k/TARN/stock/past", form.fields());
    FilledForm undo = FilledForm.of(done, "stock/past");
    site.passTime(Duration.ofSeconds(11));
    Answer asked = client.post("/k/TARN/stock/past", undo.fields());
    assertThat(asked.status()).isEqualTo(409);
    String first = done.all("name=\"back\" value=\"([^ ]+) ").get(0);
    assertThat(asked.text()).contains(first + " stays in the bin: say on its page");
    assertThat(asked.body())
        .contains("href=\"/k/TARN/stock/" + first + "\"")
        .doesNotContain("name=\"back\"");
    assertThat(asked.text()).contains("Nothing on hand is past its date.");
  }

  @Test
  void whatIsStillInDateIsNotBinnedWithTheRest() {
    String oil = "t-1203-oil-1";
    client.get("/k/TARN/stock/past");
    client.post("/k/TARN/stock/past", "tub", oil, "reason", "past its date");
    assertThat(lifeOf(oil)).extracting(Movement::kind).doesNotContain(Movement.Kind.BINNED);
  }

  private Answer post(String[] fields, String without) {
    List<String> rest = new ArrayList<>();
    for (int i = 0; i < fields.length; i += 2) {
      if (!fields[i].equals(without)) {
        rest.addAll(List.of(fields[i], fields[i + 1]));
      }
    }
    return client.post("/k/TARN/stock/past", rest.toArray(String[]::new));
  }

  @Test
  void noTubGivesMoreThanItHasAndNoPlanIsRefusedForIt() {
    morningAfter();
    assertThat(tubs()).allMatch(tub -> tub.lot().left().compareTo(zero(tub)) >= 0);
    assertThat(client.get("/k/TARN/").status()).isEqualTo(200);
    assertThat(site.wiring().plans().find(site.house(), Site.DAY.plusDays(1))).isPresent();
  }

  @Test
  void aCountOfTheStationPutsItRight() {
    morningAfter();
    String links = client.get("/k/TARN/stock").body();
    assertThat(links).contains("assumed: nobody has counted it since");
    Tub tub = tubs().stream().filter(Tub::assumed).findFirst().orElseThrow();
    String station = CountView.station(site.house(), tub);
    assertThat(links).contains("/k/TARN/count/" + station);
    String code = tub.lot().code();
    assertThat(client.get("/k/TARN/count/" + station).body()).contains("count-" + code);
    Answer counted =
        client.postAndFollow(
            "/k/TARN/stock/" + code + "/count",
            "amount",
            tub.lot().left().dimension() == Dimension.COUNT ? "3 piece" : "33 g",
            "back",
            "count/" + station);
    assertThat(counted.text()).startsWith("Count ");
    Tub after = site.wiring().stock().find(site.house(), code).orElseThrow().tub();
    assertThat(after.assumed()).isFalse();
    assertThat(after.lot().left().number().intValueExact()).isIn(3, 33);
    assertThat(client.get("/k/TARN/count/nowhere").status()).isEqualTo(404);
    Answer astray =
        client.post(
            "/k/TARN/stock/" + code + "/count", "amount", "1 g", "back", "//elsewhere.example");
    assertThat(astray.header("location")).doesNotContain("elsewhere");
  }

  @Test
  void aServiceThatIsOverIsClosedByTheNextPlanOfTheSameDayAndNotAgain() {
    site.passTime(Duration.ofHours(7));
    Amount before = left(TROUT);
    Amount lunch = planned(TROUT, "lunch");
    assertThat(lunch.isPositive()).isTrue();
    accept();
    assertThat(assumed(TROUT)).isEqualByComparingTo(lunch);
    assertThat(left(TROUT)).isEqualByComparingTo(before.minus(lunch));
    accept();
    assertThat(assumed(TROUT)).isEqualByComparingTo(lunch);
    site.passTime(Duration.ofHours(16));
    client.get("/k/TARN/");
    assertThat(assumed(TROUT)).isEqualByComparingTo(planned(TROUT).atMost(before));
  }

  @Test
  void whatIsProposedAfterAServiceIsWhatIsThenAccepted() {
    site.passTime(Duration.ofHours(7));
    House house = site.house();
    Plans plans = site.wiring().plans();
    InForce inForce = plans.find(house, Site.DAY).orElseThrow();
    List<String> proposed = said(plans.propose(house, inForce).sheet());
    accept();
    assertThat(said(plans.find(site.house(), Site.DAY).orElseThrow().sheet())).isEqualTo(proposed);
  }

  @Test
  void whatAnEventTookOfWhatItKeptIsKeptNoLonger() {
    Tub before = oil();
    Amount kept = before.lot().keptFor(Optional.of("harvest-dinner"));
    assertThat(kept.isPositive()).isTrue();
    morningAfter();
    Amount used =
        Amount.sum(
            site
                .wiring()
                .stock()
                .find(site.house(), before.lot().code())
                .orElseThrow()
                .movements()
                .stream()
                .filter(one -> one.kind() == Movement.Kind.ASSUMED)
                .filter(one -> one.event().equals(Optional.of("harvest-dinner")))
                .map(one -> one.amount().times(-1))
                .toList());
    assertThat(used.isPositive()).isTrue();
    Amount after = oil().lot().keptFor(Optional.of("harvest-dinner"));
    assertThat(after)
        .isEqualByComparingTo(kept.minus(used.atMost(kept)).atMost(oil().lot().left()));
  }

  // ---- below their callers ----

  private void morningAfter() {
    site.passTime(Duration.ofHours(23));
    client.get("/k/TARN/");
  }

  private List<Tub> tubs() {
    return site.wiring().stock().listAll(site.house());
  }

  private List<Movement> all() {
    return tubs().stream()
        .flatMap(
            tub ->
                site
                    .wiring()
                    .stock()
                    .find(site.house(), tub.lot().code())
                    .orElseThrow()
                    .movements()
                    .stream())
        .toList();
  }

  private int movements() {
    return all().size();
  }

  private Amount left(String formula) {
    return Amount.sum(
        tubs().stream()
            .filter(tub -> tub.lot().component().formula().equals(formula))
            .map(tub -> tub.lot().left())
            .toList());
  }

  private Amount planned(String formula) {
    return planned(formula, "");
  }

  /** What the services of Saturday whose ids begin so were planned to use. */
  private Amount planned(String formula, String beginning) {
    return Amount.sum(
        saturday.services().stream()
            .filter(run -> run.date().equals(Site.DAY) && run.id().startsWith(beginning))
            .flatMap(run -> run.uses().stream())
            .filter(use -> use.version().formula().equals(formula))
            .map(use -> use.amount())
            .toList());
  }

  private Amount assumed(String formula) {
    List<java.util.UUID> ids =
        tubs().stream()
            .filter(tub -> tub.lot().component().formula().equals(formula))
            .map(Tub::id)
            .toList();
    return Amount.sum(
        all().stream()
            .filter(one -> one.kind() == Movement.Kind.ASSUMED && ids.contains(one.lot()))
            .map(one -> one.amount().times(-1))
            .toList());
  }

  private Tub oil() {
    return site.wiring().stock().find(site.house(), "t-1203-oil-1").orElseThrow().tub();
  }

  private void accept() {
    assertThat(
            site.wiring()
                .plans()
                .accept(site.house(), Site.DAY, site.house().stand().facts(), "chef"))
        .isEqualTo(Plans.Accepting.IN_FORCE);
  }

  /** What a sheet comes to: its tasks with their times, and what is taken from which tub. */
  private static List<String> said(PrepSheet sheet) {
    List<String> said = new ArrayList<>();
    sheet.tasks().forEach(task -> said.add(task.id() + " " + task.start()));
    sheet
        .draws()
        .forEach(
            draw ->
                said.add(
                    draw.need().user()
                        + " "
                        + draw.lot().code()
                        + " "
                        + draw.amount().number().stripTrailingZeros().toPlainString()));
    return said;
  }

  private static Amount zero(Tub tub) {
    return Amount.zero(tub.lot().left().dimension());
  }
}
