package halfgram.pages.today;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What has changed since the plan was made, and accepting it. */
class AcceptTest {
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
  void changedCoversAreShownBeforeTheyAreAccepted() {
    expect(32);
    Answer page = client.get("/k/TARN/");
    assertThat(page.text())
        .contains("Since this plan was made:", "Terrace reception: 26 → 32 covers")
        .contains("plates", "Nothing that is being made changes.", "Show all", "Plan 1, in force");
    assertThat(number()).isEqualTo(1);
  }

  @Test
  void everyNumberOfTheChangeIsAPressFromItsWhy() {
    expect(32);
    Answer page = client.get("/k/TARN/");
    String changed =
        page.all("(?s)(<section class=\"changed\" id=\"changed\".*?</section>)").get(0);
    List<String[]> lines =
        Pattern.compile("<a class=\"why\" href=\"([^\"]*)\">([^<]*)</a>")
            .matcher(changed)
            .results()
            .map(one -> new String[] {one.group(1).replace("&amp;", "&"), one.group(2)})
            .toList();
    assertThat(lines).extracting(line -> line[1]).anyMatch(said -> said.contains("26 → 32 covers"));
    assertThat(lines).extracting(line -> line[0]).anyMatch(href -> href.contains("path=made"));
    for (String[] line : lines) {
      Answer why = client.get(line[0]);
      assertThat(why.status()).as(line[1]).isEqualTo(200);
      if (line[0].contains("path=made")) {
        assertThat(why.text())
            .contains("What plan 1 of Saturday 5 December 2026 would become", "batch");
        BigDecimal told = number(why.all("<span class=\"number\">([^<]*)<").get(0));
        BigDecimal shown = number(line[1].replaceAll(".*→", ""));
        assertThat(told).as(line[1]).isCloseTo(shown, within(new BigDecimal("0.5")));
      }
    }
    accept("1", field(page, "facts"));
    String made =
        lines.stream().map(l -> l[0]).filter(h -> h.contains("path=made")).toList().get(0);
    Answer after = client.get(made);
    assertThat(after.status()).isEqualTo(303);
    assertThat(client.get(after.header("location")).text()).contains("Plan 2 of Saturday");
  }

  /** Grams or pieces. */
  private static BigDecimal number(String said) {
    BigDecimal number = new BigDecimal(said.strip().replaceAll("[^0-9.].*", ""));
    return said.matches(" *[0-9.]+ kg.*") ? number.movePointRight(3) : number;
  }

  @Test
  void acceptingPutsItInForceOnce() {
    expect(32);
    Answer page = client.get("/k/TARN/");
    String facts = field(page, "facts");
    Answer after = accept("1", facts);
    assertThat(after.status()).isEqualTo(303);
    assertThat(client.get(after.header("location")).text())
        .contains("Plan 2, in force since")
        .doesNotContain("Since this plan was made");
    assertThat(accept("1", facts).status()).isEqualTo(303);
    assertThat(number()).isEqualTo(2);
  }

  @Test
  void whatHasChangedMeanwhileIsNotAccepted() {
    expect(32);
    String facts = field(client.get("/k/TARN/"), "facts");
    expect(40);
    Answer answer = accept("1", facts);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("nothing was accepted", "Terrace reception: 26 → 40 covers");
    assertThat(number()).isEqualTo(1);
  }

  @Test
  void aServiceThatTheBookHasNoMoreIsToldAndLinkedToNowhere() {
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    String sheet = "/k/TARN/events/harvest-dinner";
    assertThat(client.get("/k/TARN/").body()).contains("service/harvest-dinner");
    client.post(sheet + "/remove", FilledForm.of(client.get(sheet), "/remove").fields());
    Answer page = client.get("/k/TARN/");
    assertThat(page.text()).contains("taken out since, or on another day");
    assertThat(page.all("href=\"(/k/TARN/[^\"#?]*harvest-dinner[^\"#?]*)\""))
        .allSatisfy(one -> assertThat(client.get(one).status()).as(one).isEqualTo(200));
    assertThat(client.get("/k/TARN/wall/cold").text())
        .contains("Harvest dinner: gone (was 84 covers)");
    assertThat(accept("1", field(page, "facts")).status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/wall/cold").text())
        .contains("Harvest dinner: gone (was 84 covers)");
    client.post(sheet + "/back");
    assertThat(client.get("/k/TARN/wall/cold").text()).contains("Harvest dinner: new, 84 covers");
  }

  @Test
  void aServiceThatIsMovedToAnotherDayIsNotSaidToBeGone() {
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    client.get("/k/TARN/");
    site.script().postCsv("tables/events", "code,date\nharvest-dinner,2026-12-19\n");
    String moved = "Harvest dinner: Sat 19 Dec 18:30, not Sat 5 Dec 18:30";
    assertThat(client.get("/k/TARN/wall/cold").text()).contains(moved);
    assertThat(accept("1", field(client.get("/k/TARN/"), "facts")).status()).isEqualTo(303);
    assertThat(client.get("/k/TARN/wall/cold").text()).contains(moved).doesNotContain("gone (was");
    assertThat(client.get("/k/TARN/log").text())
        .contains("Harvest dinner Sat 19 Dec 18:30, not Sat 5 Dec 18:30");
  }

  @Test
  void planningAgainShowsWhatItWouldChange() {
    Answer page = client.get("/k/TARN/?again=yes");
    assertThat(page.status()).isEqualTo(200);
    assertThat(page.text()).contains("Planned again from now:", "Leave it as it is");
  }

  @Test
  void whatTheHourChangesIsNotTakenForWhatWasEntered() {
    String all = "Nothing entered since changes the plan by itself";
    expect(32);
    assertThat(client.get("/k/TARN/").text()).doesNotContain(all, "What was entered since does");
    expect(26);
    site.setClock(Site.at("12:00"));
    assertThat(client.get("/k/TARN/").text()).contains("Tasks: ", all);
    expect(32);
    assertThat(client.get("/k/TARN/").text())
        .containsPattern("Tasks: [1-9][0-9]* added, .* as they are.")
        .containsPattern("What was entered since does by itself: 0 added, [0-9]+ withdrawn, [1-9]")
        .doesNotContain(all);
  }

  @Test
  void aServiceThatIsOverIsTheReasonForLessWork() {
    String told = "Lunch is over: nothing more is made for it.";
    site.setClock(Site.at("14:00"));
    expect(32);
    assertThat(client.get("/k/TARN/").text()).doesNotContain(told);
    site.setClock(Site.at("15:30"));
    Answer page = client.get("/k/TARN/");
    assertThat(page.text()).contains("Terrace reception: 26 → 32 covers", told);
    accept("1", field(page, "facts"));
    assertThat(client.get("/k/TARN/?again=yes").text()).doesNotContain(told);
  }

  @Test
  void aCourseThatIsDueAndWasNotCalledIsToldBeforeItsWorkIsDropped() {
    site.setClock(Site.at("18:48"));
    Answer again = client.get("/k/TARN/?again=yes");
    String told = "First of Harvest dinner was due 18:45: nobody has called it and 84 plates";
    assertThat(again.text()).contains(told);
    assertThat(again.body()).contains("href=\"/k/TARN/slip/harvest-dinner\"");
    String entry = "{'kind':'fire','course':'first','who':'ines','device':'%s','sequence':1}";
    String device = "00000000-0000-4000-8000-00000000000a";
    assertThat(
            site.script().post("services/harvest-dinner/entries", entry.formatted(device)).status())
        .isEqualTo(201);
    assertThat(client.get("/k/TARN/?again=yes").text()).doesNotContain("nobody has called it");
  }

  @Test
  void whatNoPageOfOursSendsIsRefused() {
    assertThat(accept("one", "2").status()).isEqualTo(400);
    Answer noPlan = client.post("/k/TARN/plan", "day", "2026-12-20", "number", "1", "facts", "1");
    assertThat(noPlan.status()).isEqualTo(404);
    assertThat(site.client().post("/k/TARN/plan", "day", "2026-12-05").status()).isEqualTo(403);
    assertThat(number()).isEqualTo(1);
  }

  @Test
  void aDayThatIsOverKeepsItsPlan() {
    site.setClock(Site.at("09:00").plusSeconds(24 * 3600));
    Answer answer = accept("1", "1");
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("That day is over");
  }

  private Answer accept(String number, String facts) {
    return client.post(
        "/k/TARN/plan", "day", Site.DAY.toString(), "number", number, "facts", facts);
  }

  private static String field(Answer page, String name) {
    return page.all("name=\"" + name + "\" value=\"([^\"]*)\"").get(0);
  }

  private int number() {
    return site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().plan().number();
  }

  /** Gives the terrace reception another final number. */
  private void expect(int covers) {
    JsonNode book = BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    for (JsonNode event : book.path("events")) {
      if (event.path("code").asText().equals("terrace")) {
        ((ObjectNode) event.path("covers")).put("final", covers);
      }
    }
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
  }
}
