package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.prep.PrepSheet;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
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
  void whatAnEventKeptForItselfIsFreeAfterIt() {
    assertThat(kept("t-1203-oil-1").isPositive()).isTrue();
    morningAfter();
    Tub tub = site.wiring().stock().find(site.house(), "t-1203-oil-1").orElseThrow().tub();
    Amount used =
        Amount.sum(
            all().stream()
                .filter(one -> one.lot().equals(tub.id()))
                .filter(one -> one.kind() == Movement.Kind.ASSUMED)
                .map(Movement::amount)
                .toList());
    assertThat(kept("t-1203-oil-1")).isLessThanOrEqualTo(Amount.grams(360).plus(used));
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
    return Amount.sum(
        saturday.services().stream()
            .filter(run -> run.date().equals(Site.DAY))
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

  private Amount kept(String code) {
    Tub tub = site.wiring().stock().find(site.house(), code).orElseThrow().tub();
    Amount sum = Amount.grams(0);
    for (halfgram.lot.Reservation one : tub.lot().reserved()) {
      sum = sum.plus(one.amount());
    }
    return sum;
  }

  private static Amount zero(Tub tub) {
    return Amount.zero(tub.lot().left().dimension());
  }
}
