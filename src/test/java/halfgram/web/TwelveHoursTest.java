package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A kitchen by a clock of twelve hours: no page of it shows a time by the other. */
class TwelveHoursTest {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";

  /** A time of day in what can be read, and what follows it. */
  private static final Pattern TIME =
      Pattern.compile("(?<![\\d:.,])(\\d{1,2}:\\d\\d(?::\\d\\d)?)(?!\\d)(.{0,6})");

  private static final Pattern READ =
      Pattern.compile("\\s(?:aria-label|title|alt)=\"([^\"]*)\"|>([^<]+)<");

  private Site site;
  private Client client;
  private int sequence;

  @BeforeEach
  void open() {
    site = Site.empty();
    site.importBook(book(12));
    client = site.client();
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    work();
  }

  @AfterEach
  void close() {
    site.close();
  }

  private static byte[] book(int clock) {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ((ObjectNode) book.path("kitchen")).put("clock", clock);
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Something of each kind that has a time. */
  private void work() {
    site.setClock(Site.at("10:00"));
    tick("start", "parsnip-puree/lunch.2026-12-05/1/cook", "");
    tick("timed", "parsnip-puree/lunch.2026-12-05/1/cook", "'minutes': 20, 'note': 'turn it'");
    tick("done", "char-portions/lunch.2026-12-05/1/brine", "");
    tick("called", "pea-base/harvest-dinner/1/shear", "'note': 'thick?'");
    tick("note", BASE, "'note': 'lid leaks'");
    tick("done", BASE, "'at': '" + Site.at("09:40") + "'");
    site.script().post("stock/t-1204-trout-1/waste", "{'amount': '120 g', 'reason': 'fell'}");
    site.script()
        .post(
            "deliveries",
            "{'code': 'dairy', 'supplier': 'Hill dairy', 'date': '2026-12-05',"
                + " 'expected': '13:40', 'lines': [{'ingredient': 'sheep-yoghurt',"
                + " 'amount': '12 kg'}]}");
    site.script().post("slip/harvest-dinner", "{'minutes': 10, 'seen': 0}");
    client.post(
        "/k/TARN/bath",
        "station",
        "cold",
        "task",
        "yoghurt-spheres/harvest-dinner/1/drop",
        "entry",
        "DROP",
        "run",
        "yoghurt-spheres/harvest-dinner/1",
        "label",
        "A",
        "pieces",
        "15",
        "sequence",
        String.valueOf(Site.sequence()));
    site.setClock(Site.at("14:05"));
  }

  private void tick(String kind, String task, String more) {
    site.script()
        .post(
            "ticks",
            "{'task':'%s','kind':'%s','cook':'ines','device':'%s','sequence':%d%s}"
                .formatted(
                    task, kind, new UUID(1, 2), ++sequence, more.isEmpty() ? "" : "," + more));
  }

  @Test
  void noPageShowsATimeByTheOtherClock() {
    Map<String, List<String>> wrong = new TreeMap<>();
    pages().forEach(page -> look(wrong, client, page));
    for (String language : List.of("es", "fr")) {
      Client device = site.client().withCookie("language", language);
      pages().stream()
          .filter(page -> page.matches("(wall|paper|label|baths|service|count).*"))
          .forEach(page -> look(wrong, device, page));
    }
    assertThat(wrong).isEmpty();
  }

  @Test
  void timesAreSaidByTwelveHours() {
    site.setClock(Site.at("09:05"));
    assertThat(client.get("/k/TARN/wall/hot").text()).contains("9:05 am", "to Lunch");
    assertThat(site.client().withCookie("language", "es").get("/k/TARN/wall/hot").text())
        .contains("9:05 a.\u00a0m.");
    assertThat(client.get("/k/TARN/paper?station=cold").text())
        .containsPattern("\\d{1,2}:\\d\\d [ap]m");
    assertThat(client.get("/k/TARN/wall/hot").body()).contains("data-am=\"% am\"");
  }

  @Test
  void aScriptStillGetsTheTimesOfTheBook() {
    String plan = site.script().get("plan").body().toString();
    assertThat(plan).contains("T09:").doesNotContainPattern("\\d [ap]m\"");
    assertThat(site.script().text("book"))
        .contains("\"18:30\"")
        .containsPattern("\"clock\" ?: ?12");
  }

  @Test
  void onPaperATimeSaysWhichHalfOfTheDayItIs() {
    String page = "/k/TARN/paper/entry?station=cold";
    assertThat(client.get(page).text()).contains("such as 2:30 pm");
    Answer either = enter(page, "9:40");
    assertThat(either.status()).isEqualTo(422);
    assertThat(either.text()).contains("with am or pm");
    assertThat(enter(page, "9:40 am").status()).isEqualTo(303);
    Task ribbons = task();
    assertThat(
            site.wiring()
                .plans()
                .find(site.house(), Site.DAY)
                .orElseThrow()
                .progress(ribbons)
                .onIt()
                .orElseThrow()
                .since())
        .isEqualTo(Site.at("09:40"));
  }

  private Answer enter(String page, String time) {
    var form = halfgram.testkit.FilledForm.of(client.get(page), "paper/entry");
    String[] all = form.fields();
    String row = "";
    for (int i = 0; i < all.length; i += 2) {
      row = all[i + 1].equals(task().id()) ? all[i].substring("task".length()) : row;
    }
    return client.post(
        "/k/TARN/paper/entry", form.with("started" + row, time).with("who" + row, "ines").fields());
  }

  private Task task() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .filter(one -> one.id().startsWith("kohlrabi-ribbons/"))
        .findFirst()
        .orElseThrow();
  }

  private static void look(Map<String, List<String>> wrong, Client who, String page) {
    Answer answer = who.get("/k/TARN/" + page);
    assertThat(answer.status()).as(page).isEqualTo(200);
    String body = answer.body().replaceAll("(?s)<(style|script|option|code)\\b.*?</\\1>", "");
    List<String> found = new ArrayList<>();
    Matcher read = READ.matcher(body);
    while (read.find()) {
      String text = read.group(1) == null ? read.group(2) : read.group(1);
      Matcher time = TIME.matcher(text.replaceAll("[\\s\u00a0]+", " "));
      while (time.find()) {
        if (!time.group(2).matches(" ([ap]m\\b|[ap]\\. m\\.).*")) {
          found.add(time.group());
        }
      }
    }
    if (!found.isEmpty()) {
      wrong.put(page, found.subList(0, Math.min(4, found.size())));
    }
  }

  /** But the audit: it shows what stands in the book, as the book writes it. */
  private List<String> pages() {
    return List.of(
        "",
        "?date=2026-12-06",
        "tonight",
        "task?id=" + Client.encoded(BASE),
        "lanes",
        "lanes/what-if",
        "wall?choose=yes",
        "wall/cold",
        "wall/hot",
        "wall/pastry",
        "wall/pass",
        "wall/all",
        "wall/cold?task=" + Client.encoded(BASE),
        "wall/cold?task=" + Client.encoded("yoghurt-spheres/harvest-dinner/1/drop"),
        "wall/cold/who",
        "paper",
        "paper/entry",
        "label?tub=t-1203-oil-1",
        "baths",
        "baths/A",
        "service",
        "service/harvest-dinner",
        "service/bar.2026-12-05",
        "service/harvest-dinner/swap",
        "slip/harvest-dinner",
        "count/cold",
        "count/all",
        "stock",
        "stock/t-1203-oil-1",
        "stock/t-1204-trout-1",
        "deliveries",
        "deliveries/dairy",
        "kit",
        "crew",
        "events",
        "events/harvest-dinner",
        "pars",
        "formulas/yoghurt-base",
        "formulas/yoghurt-base/versions",
        "log",
        "people",
        "tablets",
        "me");
  }
}
