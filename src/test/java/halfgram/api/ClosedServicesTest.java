package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What services have used leaves the tubs once, whatever slips and whoever counts. */
class ClosedServicesTest {
  private static final String DINNER = "harvest-dinner";
  private static final String OIL = "dill-oil";

  private Site site;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    script = site.script();
    site.setClock(Site.at("18:00"));
    script.get("today");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aServiceThatSlipsIsOverWhenTheBookSaysSoAndIsClosedOnce() {
    slip(60);
    site.setClock(Site.at("22:00"));
    accept();
    assertThat(assumed()).as("it runs until 22:30").isEmpty();
    site.setClock(Site.at("22:40"));
    accept();
    List<Movement> closed = assumed();
    assertThat(closed).isNotEmpty();
    accept();
    morningAfter();
    assertThat(assumed()).isEqualTo(closed);
  }

  @Test
  void aServiceThatComesEarlierIsClosedByTheNextPlanThoughTheLastHadItRunning() {
    site.setClock(Site.at("16:00"));
    slip(-60);
    site.setClock(Site.at("20:45"));
    accept();
    List<Movement> closed = assumed();
    assertThat(closed).isNotEmpty();
    morningAfter();
    assertThat(assumed()).isEqualTo(closed);
  }

  @Test
  void aServiceThatGoesOnAfterItWasClosedTakesOnlyWhatItHasNotTakenYet() {
    site.setClock(Site.at("21:35"));
    send(10, 1);
    accept();
    assertThat(oilAssumed()).isEqualTo(40);
    slip(60);
    send(5, 2);
    assertThat(oilAtPass()).as("the ten are out of the ledger already").isEqualTo(left(OIL) - 20);
    site.setClock(Site.at("22:40"));
    accept();
    assertThat(oilAssumed()).isEqualTo(60);
  }

  @Test
  void whatWasCountedAfterTheServiceIsNotTakenAgain() {
    site.setClock(Site.at("23:50"));
    countOil("50 g");
    double counted = left(OIL);
    site.passTime(Duration.ofMinutes(1));
    assertThat(planned()).as("the next plan has what was counted").isEqualTo(counted);
    morningAfter();
    assertThat(left(OIL)).isEqualTo(counted);
    assertThat(oilAssumed()).isZero();
  }

  @Test
  void aPlanThatComesWhileAServiceRunsHasNothingOfWhatThatUsed() {
    accept();
    double before = planned();
    site.setClock(Site.at("18:50"));
    double ledger = left(OIL);
    // The first course, at 18:45, took 4 g a plate: 94 plates were made for, nobody recorded one.
    // The bar has taken some as well.
    double first = 94 * 4;
    assertThat(planned()).isBetween(before - first - 50, before - first);
    assertThat(left(OIL)).as("nothing was taken yet").isEqualTo(ledger);
  }

  // ---- below their callers ----

  private void slip(int minutes) {
    assertThat(script.post("slip/" + DINNER, "{'minutes':" + minutes + "}").status())
        .isLessThan(300);
  }

  private void accept() {
    String body = "{'facts':" + site.house().stand().facts() + "}";
    assertThat(script.post("plan", body).status()).isEqualTo(201);
  }

  /** How much oil the plan that is put in force now starts from. */
  private double planned() {
    accept();
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().book().lots().stream()
        .filter(lot -> lot.component().formula().equals(OIL))
        .map(Lot::left)
        .mapToDouble(left -> left.number().doubleValue())
        .sum();
  }

  private void send(int plates, int sequence) {
    String body =
        "{'kind':'sent','course':'first','dish':'trout-plate','number':"
            + plates
            + ",'who':'ines','device':'00000000-0000-4000-8000-000000000001','sequence':"
            + sequence
            + "}";
    assertThat(script.post("services/" + DINNER + "/entries", body).status()).isEqualTo(201);
  }

  private double oilAtPass() {
    for (JsonNode one : script.get("services/" + DINNER).body().path("components")) {
      if (one.path("component").asText().equals(OIL)) {
        return one.at("/ready/value").asDouble();
      }
    }
    throw new AssertionError("no oil");
  }

  private void countOil(String amount) {
    for (Tub tub : site.wiring().stock().list(site.house())) {
      if (tub.lot().component().formula().equals(OIL)) {
        script.post("stock/" + tub.lot().code() + "/count", "{'amount':'" + amount + "'}");
      }
    }
  }

  private void morningAfter() {
    site.setClock(Site.at("09:00").plus(Duration.ofDays(1)));
    script.get("today");
  }

  private double left(String formula) {
    return site.wiring().stock().list(site.house()).stream()
        .filter(tub -> tub.lot().component().formula().equals(formula))
        .mapToDouble(tub -> tub.lot().left().number().doubleValue())
        .sum();
  }

  private double oilAssumed() {
    return movements(OIL).stream()
        .map(Movement::amount)
        .reduce(Amount.NO_MASS, Amount::minus)
        .number()
        .doubleValue();
  }

  private List<Movement> assumed() {
    return movements("");
  }

  /** What the dinner was assumed to use, of one formula or of all. */
  private List<Movement> movements(String formula) {
    return site.wiring().stock().listAll(site.house()).stream()
        .filter(tub -> formula.isEmpty() || tub.lot().component().formula().equals(formula))
        .flatMap(
            tub ->
                site
                    .wiring()
                    .stock()
                    .find(site.house(), tub.lot().code())
                    .orElseThrow()
                    .movements()
                    .stream())
        .filter(one -> one.kind() == Movement.Kind.ASSUMED)
        .filter(one -> one.reason().filter(DINNER::equals).isPresent())
        .toList();
  }
}
