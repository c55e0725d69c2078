package halfgram.pages.service;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The service at the pass as people press it. */
class ServiceTest {
  private static final String DINNER = "/k/TARN/service/harvest-dinner";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    site.setClock(Site.at("18:20"));
    client = site.client();
    client.get("/k/TARN/service");
    client.post(DINNER + "/cook", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void everyServiceOfTheDayIsListedRegularOnesTooAndLinkedFromTodayAndTheWall() {
    String list = client.get("/k/TARN/service").text();
    assertThat(list).contains("Lunch", "Staff meal", "Bar evening", "Harvest dinner", "Terrace");
    assertThat(list).contains("Lunch 12:30–14:30 over", "Bar evening 17:00–22:00 running");
    assertThat(client.get("/k/TARN/").body()).contains("/k/TARN/service/bar.2026-12-05\"");
    assertThat(client.get("/k/TARN/wall").body()).contains("href=\"/k/TARN/service\"");
    assertThat(client.get("/k/TARN/wall/cold").body()).contains("href=\"/k/TARN/service/");
    assertThat(client.get("/k/TARN/service/bar.2026-12-05").text())
        .contains("Croquettes, crumbed", "use by");
    assertThat(client.get("/k/TARN/service/none").status()).isEqualTo(404);
  }

  @Test
  void platesSentAreOnePressAndUndoneByTheNext() {
    Answer sent = send(first(client.get(DINNER)), "5");
    assertThat(sent.text()).contains("Sent 5: Cured lake trout", "sent 5 of 71", "to go 66");
    String entry = sent.all("name=\"undoes\" value=\"([^\"]+)\"").get(0);
    Answer undone = enter("kind", "UNDO", "undoes", entry, "sequence", number());
    assertThat(undone.text()).contains("sent 0 of 71").doesNotContain("Sent 5:");
  }

  @Test
  void theSameFormSentTwiceSendsOnce() {
    String sequence = first(client.get(DINNER));
    send(sequence, "5");
    assertThat(send(sequence, "5").text()).contains("sent 5 of 71");
  }

  @Test
  void whoeverIsNotKnownIsAskedFirstAndTheEntryGoesOn() {
    Client other = site.client();
    other.get(DINNER);
    Answer asked = other.post(DINNER, "kind", "FIRE", "course", "first", "sequence", number());
    assertThat(asked.text()).contains("Who is this?");
    Answer done =
        other.postAndFollow(
            DINNER + "/cook",
            "person",
            "ines",
            "kind",
            "FIRE",
            "course",
            "first",
            "sequence",
            number());
    assertThat(done.text()).contains("called 18:20 by Ines");
  }

  @Test
  void whatIs86StandsOnEveryScreenAtOnceAndIsBackOnEvery() {
    long before = site.house().stand().change();
    Answer wrong = enter("kind", "OUT", "dish", "trout-plate", "sequence", number());
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("Say why");
    assertThat(site.house().stand().change()).isEqualTo(before);
    enter("kind", "OUT", "dish", "trout-plate", "note", "the tray fell", "sequence", number());
    assertThat(site.house().stand().change()).as("it is signalled").isGreaterThan(before);
    String said = "86 Cured lake trout, sheep yoghurt, dill: the tray fell";
    for (String page : List.of("", "wall/cold", "wall/hot", "wall/all")) {
      assertThat(site.client().get("/k/TARN/" + page).text()).as(page).contains(said);
    }
    assertThat(site.client().get("/k/TARN/service/terrace").text())
        .contains("86 Cured lake trout", "the tray fell");
    enter("kind", "BACK", "dish", "trout-plate", "sequence", number());
    for (String page : List.of("", "wall/cold", "service", "service/terrace")) {
      assertThat(site.client().get("/k/TARN/" + page).text()).as(page).doesNotContain("fell");
    }
    assertThat(client.get("/k/TARN/log?kind=service").text()).contains("86 Cured lake trout");
  }

  @Test
  void whatIsShortIsSaidInWordsWithWhatItIsShortOf() {
    enter("kind", "OUT", "item", "dill-oil", "note", "split", "sequence", number());
    assertThat(client.get(DINNER).text()).contains("86 Dill oil split");
    enter("kind", "BACK", "item", "dill-oil", "sequence", number());
    for (Tub tub : site.wiring().stock().list(site.house())) {
      if (tub.lot().component().formula().equals("dill-oil")) {
        String code = tub.lot().code();
        client.post("/k/TARN/stock/" + code + "/count", "amount", "1 g");
      }
    }
    String page = client.get(DINNER).text();
    assertThat(page).containsPattern("short \\d+ plates: Dill oil");
  }

  @Test
  void atCloseWhatWasSentIsUsedOfACourseThatWasRecordedAndTheRestAsPlanned() {
    send(first(client.get(DINNER)), "10");
    Amount plannedOil = Amount.grams(4 * 10);
    morningAfter();
    // Oil is on the first course alone: ten plates, and nothing of the 94 that were planned.
    assertThat(assumed("dill-oil", "harvest-dinner")).isEqualByComparingTo(plannedOil);
    // Nobody recorded a dessert: it took what it was planned to, as far as there was any.
    assertThat(assumed("poached-pear", "harvest-dinner").isPositive()).isTrue();
  }

  @Test
  void aCourseCalledTwiceIsRefusedWithWhoCalledIt() {
    enter("kind", "FIRE", "course", "first", "sequence", number());
    Answer again = enter("kind", "FIRE", "course", "first", "sequence", number());
    assertThat(again.status()).isEqualTo(409);
    assertThat(again.text()).contains("called already, by ines");
    assertThat(client.get(DINNER).text()).contains("Next fire Second in 1 h 05 min");
  }

  @Test
  void whatWasEnteredEarlierCanBeTakenBackFromThePage() {
    Answer sent = send(first(client.get(DINNER)), "5");
    String entry = sent.all("name=\"undoes\" value=\"([^\"]+)\"").get(0);
    site.passTime(Duration.ofMinutes(3));
    enter("kind", "FIRE", "course", "first", "sequence", number());
    Answer later = client.get(DINNER);
    assertThat(later.text())
        .contains("Entered last Called: First 18:23 Ines", "Sent 5: Cured lake trout");
    assertThat(later.all("name=\"undoes\" value=\"([^\"]+)\"")).contains(entry);
    Answer back = enter("kind", "UNDO", "undoes", entry, "sequence", number());
    assertThat(back.text()).contains("sent 0 of 71", "Called: First").doesNotContain("Sent 5:");
  }

  @Test
  void morePlatesThanGuestsAreAskedAboutFirst() {
    send(first(client.get(DINNER)), "70");
    String sequence = number();
    Answer asked = send(sequence, "5");
    assertThat(asked.text()).contains("That makes 75 of Cured lake trout", "for 71 guests");
    assertThat(client.get(DINNER).text()).contains("sent 70 of 71");
    Answer sure =
        enter(
            "kind",
            "SENT",
            "course",
            "first",
            "dish",
            "trout-plate",
            "number",
            "5",
            "sure",
            "yes",
            "sequence",
            sequence);
    assertThat(asked.body()).contains("name=\"sure\" value=\"yes\"", sequence);
    assertThat(sure.text()).contains("sent 75, more than the 71").doesNotContain("That makes");
  }

  @Test
  void theServiceOfAnEarlierDayIsThereToReadAndAnAddressWithoutItLeadsThere() {
    send(first(client.get(DINNER)), "5");
    morningAfter();
    assertThat(client.get(DINNER).header("location")).endsWith(DINNER + "?date=2026-12-05");
    Answer wrong = client.get(DINNER + "?date=2026-12-06");
    assertThat(wrong.status()).isEqualTo(404);
    assertThat(wrong.text()).contains("harvest-dinner is on 2026-12-05: add ?date=2026-12-05");
    assertThat(client.get("/k/TARN/service/none").text()).contains("on that day there are: ");
    assertThat(client.get("/k/TARN/service?date=2026-11-01").text()).contains("nobody opened");
    assertThat(client.get("/k/TARN/service").body()).contains("service?date=2026-12-05\"");
    assertThat(client.get("/k/TARN/service?date=2026-12-05").body())
        .contains("/service/harvest-dinner?date=2026-12-05\"");
    Answer page = client.get(DINNER + "?date=2026-12-05");
    assertThat(page.text()).contains("sent 5 of 71", "Entered last Sent 5: Cured lake trout");
    assertThat(page.body()).as("nothing to enter").doesNotContain("<form method=\"post\"");
    assertThat(site.script().get("services/harvest-dinner?date=2026-12-05").status())
        .isEqualTo(200);
    assertThat(site.script().get("services/harvest-dinner").status()).isEqualTo(404);
  }

  @Test
  void whatIsServedNowAndNextLiesOpenTheRestFoldsAndSaysWhatIsLeft() {
    Answer before = client.get(DINNER);
    assertThat(folded(before)).containsExactly("course-second", "course-main", "course-dessert");
    assertThat(before.text()).contains("84 plates to go", "Not for now: ");
    enter("kind", "FIRE", "course", "first", "sequence", number());
    assertThat(folded(client.get(DINNER)))
        .as("what is called and not sent, and what is called next")
        .containsExactly("course-main", "course-dessert");
    site.setClock(Site.at("20:00"));
    assertThat(folded(client.get(DINNER))).as("the main is due").containsExactly("course-dessert");
    site.setClock(Site.at("22:00"));
    assertThat(folded(client.get(DINNER))).as("over").isEmpty();
  }

  @Test
  void aFoldInWhichSomethingWasEnteredOrRefusedStaysOpen() {
    Answer page =
        enter(
            "kind",
            "SENT",
            "course",
            "main",
            "dish",
            "char-main",
            "number",
            "1",
            "sequence",
            number());
    assertThat(opened(page)).containsExactly("course-main");
    assertThat(opened(client.get(DINNER))).as("later").isEmpty();
    Answer refused =
        client.post(DINNER, "kind", "OUT", "dish", "char-main", "note", "", "sequence", number());
    assertThat(refused.status()).isEqualTo(422);
    assertThat(opened(refused)).containsExactly("course-main");
    Answer tray =
        client.post(DINNER, "kind", "OUT", "item", "pear-gel", "note", "", "sequence", number());
    assertThat(tray.status()).isEqualTo(422);
    assertThat(opened(tray)).containsExactly("trays-later");
  }

  @Test
  void aCourseThatIsSentIsNoLongerNextThoughNobodyCalledIt() {
    Map<String, String> guests =
        Map.of("", "71", "dairy-free", "4", "gluten-free", "3", "vegetarian", "6");
    guests.forEach(
        (diets, number) ->
            enter(
                "kind",
                "SENT",
                "course",
                "first",
                "dish",
                "trout-plate",
                "diets",
                diets,
                "number",
                number,
                "sequence",
                number()));
    assertThat(client.get(DINNER).text()).contains("sent 71 of 71", "Sent: 84 plates");
    assertThat(folded(client.get(DINNER)))
        .containsExactly("course-first", "course-main", "course-dessert");
  }

  @Test
  void aNumberThatCannotBeIsSaidAtItsOwnPlatesAlone() {
    site.setClock(Site.at("22:00"));
    client.get(DINNER);
    Answer wrong =
        client.post(
            DINNER,
            "kind",
            "SENT",
            "course",
            "first",
            "dish",
            "trout-plate",
            "diets",
            "dairy-free",
            "number",
            "1e999",
            "sequence",
            number());
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.all("(Send 1 to 200 plates at once)")).hasSize(1);
    assertThat(wrong.body())
        .containsPattern("(?s)DAIRY-FREE(?:(?!<h3>).)*Send 1 to 200(?:(?!<h3>).)*\"1e999\"");
  }

  @Test
  void theNextDropIsOneForThatService() {
    assertThat(client.get(DINNER).text()).contains("Next drop");
    assertThat(client.get("/k/TARN/service/bar.2026-12-05").text()).doesNotContain("Next drop");
  }

  @Test
  void theWallCountsDownToTheNextFireWhileAServiceRuns() {
    assertThat(client.get("/k/TARN/wall/cold").text()).contains("10 min to Harvest dinner, 84");
    site.setClock(Site.at("18:40"));
    assertThat(client.get("/k/TARN/wall/cold").text()).contains("5 min to First, Harvest dinner");
    enter("kind", "FIRE", "course", "first", "sequence", number());
    assertThat(client.get("/k/TARN/wall/cold").text()).contains("45 min to Second, Harvest dinner");
  }

  @Test
  void aWaveSaysWhetherItStartedInTime() {
    site.setClock(Site.at("19:30"));
    assertThat(client.get(DINNER).text()).containsPattern("Kohlrabi, dressed .* not started, ");
    site.setClock(Site.at("23:00"));
    assertThat(client.get(DINNER).text())
        .as("the dinner is over, and nobody knows")
        .containsPattern("Kohlrabi, dressed .* no start entered")
        .doesNotContain("not started");
  }

  // ---- below their callers ----

  /** The courses that lie folded. */
  private static List<String> folded(Answer page) {
    return page.all("<details class=\"fold\" id=\"(course-[^\"]+)\"");
  }

  /** The folds that lie open. */
  private static List<String> opened(Answer page) {
    return page.all("<details class=\"fold\" id=\"([^\"]+)\" open");
  }

  private Answer enter(String... fields) {
    return client.postAndFollow(DINNER, fields);
  }

  /** The number of the form that sends the first dish of the page. */
  private static String first(Answer page) {
    return page.all("(?s)value=\"SENT\".*?name=\"sequence\" value=\"(\\d+)\"").get(0);
  }

  private Answer send(String sequence, String number) {
    return enter(
        "kind",
        "SENT",
        "course",
        "first",
        "dish",
        "trout-plate",
        "number",
        number,
        "sequence",
        sequence);
  }

  private static String number() {
    return String.valueOf(Site.sequence());
  }

  private void morningAfter() {
    site.passTime(Duration.ofHours(13));
    client.get("/k/TARN/");
  }

  /** What a service was assumed to use of a component. */
  private Amount assumed(String formula, String service) {
    Amount sum = Amount.NO_MASS;
    for (Tub tub : site.wiring().stock().listAll(site.house())) {
      if (tub.lot().component().formula().equals(formula)) {
        for (Movement one :
            site.wiring().stock().find(site.house(), tub.lot().code()).orElseThrow().movements()) {
          if (one.kind() == Movement.Kind.ASSUMED
              && one.reason().filter(service::equals).isPresent()) {
            sum = sum.minus(one.amount());
          }
        }
      }
    }
    return sum;
  }
}
