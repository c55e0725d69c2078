package halfgram.pages.events;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.desk.InForce;
import halfgram.desk.Plans;
import halfgram.desk.WhatIf;
import halfgram.prep.Difference;
import halfgram.prep.Planning;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.SheetLines;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** An event that is only an enquiry: in no sheet, looked at on the lanes, confirmed, taken back. */
class DraftTest extends OnEnquiry {
  private static final String LANES = ROOT + "lanes/what-if";

  @Test
  void theListAndItsOwnPageNameItByAWord() {
    assertThat(client.get(ROOT + "events").text()).contains("Choir supper " + WORD);
    Answer page = client.get(PAGE);
    assertThat(page.text()).contains(WORD, "What it would do to the sheet", "made for 18");
    assertThat(page.text()).contains("Set yoghurt cream, lingonberries");
    assertThat(page.body()).doesNotContain("why?plan");
    assertThat(client.get(ROOT + "events/terrace").text()).doesNotContain(WORD);
  }

  @Test
  void noOtherPageAndNoPlanKnowsOfIt() {
    for (String page :
        List.of(
            "",
            "tonight",
            "service",
            "lanes",
            "lanes?date=2026-12-06",
            "stock",
            "deliveries",
            "kit",
            "wall/hot",
            "wall/pass",
            "paper",
            "crew",
            "pars")) {
      Answer answer = client.get(ROOT + page);
      assertThat(answer.status()).as(page).isEqualTo(200);
      assertThat(answer.text()).as(page).doesNotContain("Choir supper");
    }
    for (String call : List.of("plan?date=2026-12-05", "today", "tasks", "services", "load")) {
      Script.Answer answer = script.get(call);
      assertThat(answer.status()).as(call).isEqualTo(200);
      assertThat(answer.body().toString()).as(call).doesNotContain("choir");
    }
    assertThat(client.get(ROOT + "service/choir-supper").status()).isEqualTo(404);
    assertThat(script.get("slip/choir-supper").status()).isEqualTo(404);
  }

  @Test
  void writingADraftDownOffersNoOtherPlan() {
    ObjectNode event = body("terrace");
    event.put("code", "late-guests").put("draft", true);
    Script.Answer added = script.sent("POST", "events", event.toString());
    assertThat(added.status()).isEqualTo(201);
    assertThat(added.body().at("/event/draft").asBoolean()).isTrue();
    assertThat(added.body().path("effects")).isEmpty();
    assertThat(client.get(ROOT).text()).doesNotContain("Accept");
    assertThat(client.get(ROOT + "events/late-guests").text()).contains("added as an enquiry, 26");
    assertThat(client.get(ROOT + "log").text()).contains("an enquiry, 0 → 26 covers");
  }

  @Test
  void confirmingLooksFirstAndThenItIsAnEventLikeAnyOther() {
    long before = site.house().stand().change();
    Answer looked = client.get(PAGE + "/edit?confirm=yes");
    assertThat(looked.status()).isEqualTo(200);
    assertThat(looked.text()).contains("Confirm Choir supper", "Choir supper: 0 → 16 covers");
    assertThat(site.house().stand().change()).isEqualTo(before);

    FilledForm form = FilledForm.of(looked, "/edit").with("do", "save");
    assertThat(client.post(PAGE + "/edit", form.fields()).status()).isEqualTo(303);
    assertThat(client.post(PAGE + "/edit", form.fields()).status()).isEqualTo(303);
    assertThat(body("choir-supper").has("draft")).isFalse();
    assertThat(client.get(PAGE).text()).doesNotContain(WORD).contains("confirmed");
    assertThat(client.get(ROOT).text()).contains("Choir supper comes: 0 → 16 covers");
    assertThat(client.get(LANES).text()).doesNotContain("Enquiries");
  }

  @Test
  void confirmedOrTakenBackWithOtherCoversItIsLoggedWithBoth() {
    FilledForm form = FilledForm.of(client.get(PAGE + "/edit?confirm=yes"), "/edit");
    client.post(PAGE + "/edit", form.with("/covers/expected", "20").with("do", "save").fields());
    assertThat(client.get(PAGE).text()).contains("confirmed, 16 → 20 covers");
    assertThat(client.get(ROOT + "log").text()).contains("confirmed, 16 → 20 covers");
    FilledForm back = FilledForm.of(client.get(PAGE + "/edit"), "/edit").with("/draft", "yes");
    client.post(PAGE + "/edit", back.with("/covers/expected", "12").with("do", "save").fields());
    assertThat(client.get(PAGE).text()).contains("only an enquiry again, 20 → 12 covers");
    assertThat(client.get(ROOT + "log").text()).contains("an enquiry, 20 → 12 covers");
  }

  @Test
  void whatIfItWereConfirmedIsWhatConfirmingGives() {
    List<String> asWouldBe = SheetLines.of(asked(Site.DAY).then().outlook().sheet());

    FilledForm form = FilledForm.of(client.get(PAGE + "/edit?confirm=yes"), "/edit");
    client.post(PAGE + "/edit", form.with("do", "save").fields());
    House now = site.house();
    site.wiring().plans().accept(now, Site.DAY, now.stand().facts(), "chef");
    assertThat(SheetLines.of(inForce().sheet())).isEqualTo(asWouldBe);
    assertThat(inForce().sheet().tasks()).extracting(Task::id).hasSizeGreaterThan(60);
  }

  @Test
  void savedUnchangedItStaysAsItIs() {
    ObjectNode before = body("choir-supper");
    FilledForm form = FilledForm.of(client.get(PAGE + "/edit"), "/edit");
    assertThat(client.post(PAGE + "/edit", form.with("do", "save").fields()).status())
        .isEqualTo(303);
    assertThat(body("choir-supper")).isEqualTo(before);
    Answer looked = client.post(PAGE + "/edit", form.with("do", "look").fields());
    assertThat(looked.text()).contains("As long as it is an enquiry no sheet changes.");
  }

  @Test
  void whatIsTypedWrongComesBackAsTyped() {
    FilledForm form = FilledForm.of(client.get(PAGE + "/edit"), "/edit");
    Answer wrong =
        client.post(
            PAGE + "/edit", form.with("/covers/expected", "many").with("do", "save").fields());
    assertThat(wrong.status()).isEqualTo(422);
    FilledForm again = FilledForm.of(wrong, "/edit");
    assertThat(again.value("/covers/expected")).isEqualTo("many");
    assertThat(again.value("/draft")).isEqualTo("yes");
    Answer none =
        client.post(PAGE + "/edit", form.with("/draft", "maybe").with("do", "save").fields());
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.text()).contains("Give true or false");
  }

  @Test
  void theLanesShowTheDayWithItSideBySide() {
    Answer form = client.get(LANES);
    assertThat(form.text()).contains("Enquiries", "Choir supper, 16 covers");
    String link = lanesLinks(client.get(PAGE)).get(0);
    assertThat(link).contains("date=2026-12-05");
    long before = site.house().stand().change();
    Answer asked = client.get(link);
    assertThat(asked.status()).isEqualTo(200);
    assertThat(asked.text()).contains("with Choir supper, 16 covers", "Side by side");
    assertThat(asked.body()).contains("name=\"draft-choir-supper\" checked");
    Answer more = client.get(LANES + "?look=yes&draft-choir-supper=yes&off=ines&covers-terrace=4");
    assertThat(more.text())
        .contains("with Choir supper, 16 covers · Terrace reception: 4 covers more · without Ines");
    assertThat(site.house().stand().change()).isEqualTo(before);
  }

  @Test
  void whatCannotFitIsToldWithItsReasons() {
    site.close();
    open(Site.demo().searchFully());
    move("covers", "{\"expected\": 400}");
    Answer asked = client.get(LANES + "?look=yes&draft-choir-supper=yes");
    assertThat(asked.text()).contains("Fits yes no worse", "Why it would not fit");
  }

  @Test
  void aDraftOfTomorrowIsAskedOfTodayAndOfTomorrow() {
    move("date", "\"2026-12-06\"");
    assertThat(client.get(LANES).text()).contains("Choir supper, 16 covers, on Sun 6 Dec");
    Answer tomorrow = client.get(LANES + "?date=2026-12-06&look=yes&draft-choir-supper=yes");
    assertThat(tomorrow.status()).isEqualTo(200);
    assertThat(tomorrow.text()).contains("with Choir supper, 16 covers", "Naming-day lunch 13:00");
    for (LocalDate day : List.of(Site.DAY, Site.DAY.plusDays(1))) {
      Difference difference = asked(day).difference().orElseThrow();
      assertThat(difference.added().size() + difference.changed().size())
          .as("%s", day)
          .isPositive();
    }
    String ahead = "{'date': '2026-12-06', 'drafts': ['choir-supper']}";
    assertThat(script.post("what-if", ahead).status()).isEqualTo(200);
    assertThat(client.get(LANES + "?date=2026-12-07").text()).doesNotContain("Enquiries");
  }

  @Test
  void anEnquiryTooFarOffSaysFromWhenTheLanesCanBeAskedAndNoLinkIsDead() {
    LocalDate last = Site.DAY.plusDays(WhatIf.MOST_DAYS);
    int lead = (int) Planning.lookAhead(site.house().book());
    assertThat(lead).isPositive();
    for (int off : List.of(0, 1, lead, lead + 1)) {
      LocalDate day = last.plusDays(off);
      move("date", "\"" + day + "\"");
      Answer page = client.get(PAGE);
      List<String> links = lanesLinks(page);
      assertThat(links).as("%s", day).hasSize(lead + 1 - off);
      for (String link : links) {
        assertThat(client.get(link).status()).as(link).isEqualTo(200);
      }
      String told = "too far off for the lanes: they can be asked from Sunday 6 December 2026 on";
      assertThat(page.text().contains(told)).as("%s", day).isEqualTo(off == lead + 1);
      assertThat(page.text()).contains("What it would do to the sheet");
    }
    assertThat(client.get(LANES + "?date=" + last.plusDays(1)).status()).isEqualTo(404);
    String beyond = "{'date': '" + last.plusDays(1) + "', 'drafts': ['choir-supper']}";
    assertThat(script.post("what-if", beyond).body().toString())
        .contains("Wednesday 3 February 2027");
    site.passTime(Duration.ofDays(1));
    assertThat(lanesLinks(client.get(PAGE))).hasSize(1);
  }

  @Test
  void whatIsNoDraftOfTheDayIsRefusedWithThoseThereAre() {
    Script.Answer none = script.post("what-if", "{'drafts': ['terrace', 'nothing']}");
    assertThat(none.status()).isEqualTo(422);
    assertThat(none.problems()).containsExactly("$.drafts", "$.drafts");
    assertThat(none.body().toString()).contains("choir-supper");
    Script.Answer late =
        script.post("what-if", "{'date': '2026-12-04', 'drafts': ['choir-supper']}");
    assertThat(late.problems()).containsExactly("$.date");
    assertThat(client.get(LANES + "?date=2026-12-04").status()).isEqualTo(404);
  }

  @Test
  void aCatererConfirmsAndAViewerOnlyReads() {
    Staff.join(site, "cat", "caterer");
    Client caterer = Staff.signedIn(site, "cat");
    Answer page = caterer.get(PAGE);
    assertThat(page.body()).contains("edit?confirm=yes").doesNotContain("lanes/what-if");
    FilledForm form = FilledForm.of(caterer.get(PAGE + "/edit?confirm=yes"), "/edit");
    assertThat(caterer.post(PAGE + "/edit", form.with("do", "save").fields()).status())
        .isEqualTo(303);
    Staff.join(site, "vi", "viewer");
    Client viewer = Staff.signedIn(site, "vi");
    assertThat(viewer.get(PAGE).body()).doesNotContain("edit?confirm=yes");
    assertThat(viewer.get(PAGE + "/edit?confirm=yes").status()).isEqualTo(403);
  }

  // ---- what the tests do ----

  /** Where a page leads to the lanes of a day with something else. */
  private static List<String> lanesLinks(Answer page) {
    return page.all("href=\"([^\"]*what-if[^\"]*)\"").stream()
        .map(link -> link.replace("&amp;", "&"))
        .toList();
  }

  private WhatIf.Answer asked(LocalDate day) {
    WhatIf whatIf = site.wiring().whatIf();
    WhatIf.Asked asked =
        new WhatIf.Asked(List.of(), Set.of("choir-supper"), Set.of(), Set.of(), Set.of());
    WhatIf.About about = whatIf.about(site.house(), day, "chef");
    return (WhatIf.Answer) whatIf.look(site.house(), about, asked, "chef");
  }

  private void move(String key, String value) {
    ObjectNode event = body("choir-supper");
    event.set(key, Script.object("{'it':" + value.replace('"', '\'') + "}").path("it"));
    long seen = script.get("events/choir-supper").body().path("change").asLong();
    Script.Answer moved = script.sent("PUT", "events/choir-supper?seen=" + seen, event.toString());
    assertThat(moved.status()).isEqualTo(200);
    assertThat(moved.body().path("effects")).isEmpty();
  }

  private ObjectNode body(String code) {
    Events events = new Events(site.wiring().desk());
    return Events.body(events.find(site.house(), code).orElseThrow());
  }

  private InForce inForce() {
    Plans plans = site.wiring().plans();
    return plans.find(site.house(), Site.DAY).orElseThrow();
  }
}
