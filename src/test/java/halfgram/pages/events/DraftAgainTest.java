package halfgram.pages.events;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Stock;
import halfgram.lot.Reservation;
import halfgram.measure.Amount;
import halfgram.prep.Task;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import java.util.List;
import org.junit.jupiter.api.Test;

/** An event that becomes an enquiry again, by whatever way: its tubs, its name, its confirming. */
class DraftAgainTest extends OnEnquiry {
  private static final String DINNER = ROOT + "events/harvest-dinner";
  private static final String BOX = "name=\"/draft\" value=\"yes\" id=\"f-draft\"";

  @Test
  void anEventThatIsOnlyAnEnquiryAgainLeavesTheSheetAndFreesItsTubs() {
    String edit = DINNER + "/edit";
    List<Reservation> kept = reserved();
    assertThat(kept).isNotEmpty();
    FilledForm ticked = FilledForm.of(client.get(edit), "/edit").with("/draft", "yes");
    Answer looked = client.post(edit, ticked.with("do", "look").fields());
    assertThat(looked.text()).contains("Harvest dinner: 84 → 0 covers, made for 93 → 0");
    assertThat(looked.body()).contains("value=\"yes\" id=\"f-draft\" checked");

    assertThat(client.post(edit, ticked.with("do", "save").fields()).status()).isEqualTo(303);
    assertThat(reserved()).isEmpty();
    assertThat(client.get(ROOT + "stock/t-1203-oil-1").text())
        .contains("for Harvest dinner 420 g office the event is only an enquiry again")
        .doesNotContain("taken out", "cancelled");
    assertThat(client.get(ROOT).text()).contains("Harvest dinner goes");
    assertThat(client.get(DINNER).text()).contains(WORD, "only an enquiry again");
    assertThat(client.get(ROOT + "log").text()).contains("Event Harvest dinner an enquiry");

    FilledForm confirm = FilledForm.of(client.get(edit + "?confirm=yes"), "/edit");
    assertThat(client.post(edit, confirm.with("do", "save").fields()).status()).isEqualTo(303);
    assertThat(reserved()).isEqualTo(kept);
    assertThat(client.get(ROOT).text()).doesNotContain("Harvest dinner goes");
  }

  @Test
  void anEnquiryTakenOutAndPutBackKeepsNoTubsUntilItIsConfirmed() {
    List<Reservation> kept = reserved();
    draft(DINNER, true);
    assertThat(reserved()).isEmpty();
    takeOut(DINNER);
    assertThat(reserved()).isEmpty();
    assertThat(client.post(DINNER + "/back").status()).isEqualTo(303);
    assertThat(client.get(DINNER).text()).contains(WORD);
    assertThat(reserved()).isEmpty();
    draft(DINNER, false);
    assertThat(reserved()).isEqualTo(kept);
    takeOut(DINNER);
    assertThat(reserved()).isEmpty();
    assertThat(client.get(ROOT + "stock/t-1203-oil-1").text()).contains("the event was taken out");
    assertThat(client.post(DINNER + "/back").status()).isEqualTo(303);
    assertThat(reserved()).isEqualTo(kept);
  }

  @Test
  void bookAndTableTakeItOutAndBringItInAgain() {
    ObjectNode book = (ObjectNode) script.get("book").body();
    assertThat(script.sent("POST", "book", book.toString()).status()).isEqualTo(200);
    assertThat(script.get("book").body()).isEqualTo(book);
    String table = script.text("tables/events");
    assertThat(table.lines().filter(line -> line.startsWith("choir-supper"))).hasSize(1);
    assertThat(script.postCsv("tables/events", table).body().path("rows").asInt()).isZero();
    assertThat(script.postCsv("tables/events", "code,draft\nchoir-supper,maybe\n").problems())
        .containsExactly("row 2, column draft");
    List<Reservation> kept = reserved();
    script.postCsv("tables/events", "code,draft\nchoir-supper,no\nharvest-dinner,yes\n");
    assertThat(reserved()).isEmpty();
    assertThat(client.get(PAGE).text()).doesNotContain(WORD);
    assertThat(client.get(DINNER).text()).contains(WORD);
    assertThat(client.get(ROOT).text()).contains("Harvest dinner goes");
    script.postCsv("tables/events", "code,draft\nharvest-dinner,no\n");
    assertThat(reserved()).isNotEmpty().isEqualTo(kept);
  }

  @Test
  void whatABookTakesBackToAnEnquiryKeepsNoTubsAndWhatItConfirmsKeepsThemAgain() {
    List<Reservation> kept = reserved();
    ObjectNode agreed = (ObjectNode) script.get("book").body();
    ObjectNode enquiry = agreed.deepCopy();
    for (JsonNode event : enquiry.path("events")) {
      if (event.path("code").asText().equals("harvest-dinner")) {
        ((ObjectNode) event).put("draft", true);
      }
    }
    assertThat(script.sent("POST", "book", enquiry.toString()).status()).isEqualTo(200);
    assertThat(reserved()).isEmpty();
    assertThat(client.get(ROOT + "stock/t-1203-oil-1").text()).contains("only an enquiry again");
    assertThat(script.sent("POST", "book", enquiry.toString()).body().path("rows").asInt())
        .isZero();
    assertThat(script.sent("POST", "book", agreed.toString()).status()).isEqualTo(200);
    assertThat(reserved()).isNotEmpty().isEqualTo(kept);
    assertThat(script.get("book").body()).isEqualTo(agreed);
  }

  @Test
  void whatIsSaidOfItElsewhereStillHasItsName() {
    String entry =
        "{'kind':'out','dish':'trout-plate','note':'none left','who':'ines',"
            + "'device':'00000000-0000-4000-8000-000000000001','sequence':1}";
    Script.Answer out = script.post("services/harvest-dinner/entries", entry);
    assertThat(out.status()).as("%s", out.body()).isEqualTo(201);
    String log = ROOT + "log?kind=service";
    String said = "Service Harvest dinner 86 Cured lake trout";
    assertThat(client.get(log).text()).contains(said);

    String wall = takenOfWhatItKeeps();
    assertThat(client.get(wall).text()).contains("of what is kept for Harvest dinner went in");
    draft(DINNER, true);
    assertThat(client.get(log).text()).contains(said);
    assertThat(client.get(wall).text()).contains("of what is kept for Harvest dinner went in");
  }

  @Test
  void untickedItCanBeTickedAgainAfterEveryWayRound() {
    String edit = PAGE + "/edit";
    FilledForm unticked = FilledForm.of(client.get(edit), "/edit").with("/draft", "");
    for (String[] way :
        new String[][] {
          {"do", "look"}, {"add", "/services"}, {"drop", "/services/0/courses/0/dishes/0"},
        }) {
      Answer round = client.post(edit, unticked.with(way[0], way[1]).fields());
      confirms(round, way[1]);
      Answer again = client.post(edit, ticked(round).with("do", "look").fields());
      assertThat(again.text()).as(way[1]).contains("Edit Choir supper");
      assertThat(FilledForm.of(again, "/edit").value("/draft")).as(way[1]).isEqualTo("yes");
    }
    FilledForm wrong = unticked.with("/covers/expected", "many").with("do", "save");
    Answer fault = client.post(edit, wrong.fields());
    assertThat(fault.status()).isEqualTo(422);
    confirms(fault, "fault");
    FilledForm mended = ticked(fault).with("/covers/expected", "17").with("do", "save");
    assertThat(client.post(edit, mended.fields()).status()).isEqualTo(303);
    assertThat(client.get(PAGE).text()).contains(WORD, "16 → 17 covers");

    confirms(client.get(edit + "?confirm=yes"), "confirm");
    draft(PAGE, false);
    assertThat(client.get(edit).text()).contains("Edit Choir supper");
    assertThat(client.get(edit).body()).contains(BOX);
  }

  /** The form says that it confirms, and its box is there to be ticked. */
  private static void confirms(Answer form, String way) {
    assertThat(form.text()).as(way).contains("Confirm Choir supper", "Confirmed, it is an event");
    assertThat(form.body()).as(way).contains(BOX).contains(">Confirm</button>");
  }

  private static FilledForm ticked(Answer form) {
    assertThat(FilledForm.of(form, "/edit").value("/draft")).isEmpty();
    return FilledForm.of(form, "/edit").with("/draft", "yes");
  }

  // ---- what the tests do ----

  /** Ticks or unticks the box of an enquiry on an event's form, and saves it. */
  private void draft(String page, boolean ticked) {
    FilledForm form = FilledForm.of(client.get(page + "/edit"), "/edit");
    FilledForm sent = form.with("/draft", ticked ? "yes" : "").with("do", "save");
    assertThat(client.post(page + "/edit", sent.fields()).status()).isEqualTo(303);
  }

  private void takeOut(String page) {
    FilledForm form = FilledForm.of(client.get(page), "/remove");
    assertThat(client.post(page + "/remove", form.fields()).status()).isEqualTo(303);
  }

  private List<Reservation> reserved() {
    return site.wiring().stock().list(site.house()).stream()
        .flatMap(tub -> tub.lot().reserved().stream())
        .filter(one -> one.event().equals("harvest-dinner"))
        .toList();
  }

  /** Somebody uses what is kept for the dinner; the wall's address that says so. */
  private String takenOfWhatItKeeps() {
    Stock stock = site.wiring().stock();
    stock.count(site.house(), "t-1203-oil-1", Amount.grams(380), "ines");
    for (String other : List.of("t-1202-oil", "t-1203-oil-2", "t-1203-oil-3")) {
      stock.bin(site.house(), other, "smells of nothing", "ines");
    }
    Task task =
        site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
            .filter(one -> one.version().formula().equals("yoghurt-base"))
            .filter(one -> !one.stored().isEmpty())
            .findFirst()
            .orElseThrow();
    String tick =
        "{'date':'2026-12-05','task':'"
            + task.id()
            + "','kind':'done','cook':'ines',"
            + "'device':'00000000-0000-4000-8000-000000000001','sequence':2}";
    Script.Answer done = script.post("ticks", tick);
    assertThat(done.status()).as("%s", done.body()).isEqualTo(201);
    return ROOT
        + "wall/"
        + task.station()
        + "?done="
        + task.id()
        + "&tick="
        + done.body().path("tick").asText();
  }
}
