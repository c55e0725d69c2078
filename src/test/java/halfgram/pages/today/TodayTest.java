package halfgram.pages.today;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The page of a day, looked at. */
class TodayTest {
  private static Site site;
  private static Client client;

  @BeforeAll
  static void open() {
    site = Site.demo().searchFully();
    client = site.client();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void todayPutsItsFirstPlanInForceAndASecondLookNoOther() {
    Answer first = client.get("/k/TARN/");
    Answer second = client.get("/k/TARN/");
    assertThat(first.status()).isEqualTo(200);
    assertThat(first.text())
        .contains("Saturday 5 December 2026", "It fits", "Plan 1, in force since")
        .contains("Next to start: Fish brine", "4 DAIRY-FREE", "Tightest:", "Tonight for tomorrow");
    assertThat(second.text()).contains("Plan 1, in force since");
    assertThat(site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().plan().number())
        .isEqualTo(1);
  }

  @Test
  void everyWhyOfThePageIsAnswered() {
    Set<String> links =
        new LinkedHashSet<>(client.get("/k/TARN/").all("href=\"([^\"]*why[?][^\"]*)\""));
    assertThat(links).hasSizeGreaterThan(150);
    for (String link : links) {
      assertThat(client.get(plain(link)).status()).as(link).isEqualTo(200);
    }
  }

  @Test
  void everyTaskHasAPageWhoseWhysAreAnswered() {
    Set<String> links =
        new LinkedHashSet<>(client.get("/k/TARN/").all("href=\"([^\"]*task[?][^\"]*)\""));
    assertThat(links).hasSizeGreaterThan(50);
    Set<String> whys = new LinkedHashSet<>();
    for (String link : links) {
      Answer answer = client.get(plain(link));
      assertThat(answer.status()).as(link).isEqualTo(200);
      whys.addAll(answer.all("href=\"([^\"]*why[?][^\"]*)\""));
    }
    for (String link : whys) {
      assertThat(client.get(plain(link)).status()).as(link).isEqualTo(200);
    }
  }

  @Test
  void everyOrderShowsTheSameTasks() {
    int tasks = client.get("/k/TARN/").all("(id=\"task-)").size();
    for (String by : List.of("start", "service")) {
      assertThat(client.get("/k/TARN/?by=" + by).all("(id=\"task-)")).as(by).hasSize(tasks);
    }
  }

  @Test
  void aLongStationFoldsWhatComesLaterAndShowsWhatComesNext() {
    Answer page = client.get("/k/TARN/");
    List<String> later =
        page.all("(?s)<details class=\"fold\" id=\"at-hot-later\">(.*?)</details>");
    assertThat(later).hasSize(1);
    assertThat(later.get(0)).contains("<summary>Later: ", "id=\"task-");
    String hot =
        page.all("(?s)(<section class=\"group\" aria-labelledby=\"at-hot\">.*?</section>)").get(0);
    String open = hot.replaceAll("(?s)<details class=\"fold\".*?</details>", "");
    assertThat(open.split("id=\"task-", -1)).as("tasks in sight").hasSize(6);
  }

  @Test
  void aDayAheadIsAPreviewThatNobodyPutInForce() {
    Answer answer = client.get("/k/TARN/?date=2026-12-06");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text()).contains("Sunday 6 December 2026", "Not on the wall yet");
    assertThat(site.wiring().plans().find(site.house(), Site.DAY.plusDays(1))).isEmpty();
    List<String> whys = answer.all("href=\"([^\"]*why[?][^\"]*)\"");
    assertThat(client.get(plain(whys.get(0))).text()).contains("Not in force yet");
  }

  @Test
  void aDayThatIsOverAndHadNoPlanSaysSo() {
    Answer answer = client.get("/k/TARN/?date=2026-12-04");
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text()).contains("No plan was made for this day");
  }

  @Test
  void aDayWithoutServicesSaysWhatToDoNext() {
    try (Site other = Site.empty()) {
      ObjectNode book =
          (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
      List.of("events", "pars", "services", "tubs").forEach(book::remove);
      other.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
      Answer answer = other.client().get("/k/TARN/");
      assertThat(answer.status()).isEqualTo(200);
      assertThat(answer.text()).contains("No service on this day", "To events", "Nothing to do");
    }
  }

  @Test
  void whatIsNoDayIsToldCalmlyOnToday() {
    for (String no : List.of("yesterday", "2026-13-40", "2190-01-01")) {
      Answer answer = client.get("/k/TARN/?date=" + no);
      assertThat(answer.status()).as(no).isEqualTo(422);
      assertThat(answer.text()).contains(no + " is no day", "Saturday 5 December 2026");
    }
  }

  @Test
  void aTaskThatIsNotThereIsNotFound() {
    assertThat(client.get("/k/TARN/task?id=no/such").status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/task").status()).isEqualTo(404);
    assertThat(client.get("/k/OTHER/").status()).isEqualTo(404);
  }

  @Test
  void nothingOnThePageIsInline() {
    Answer answer = client.get("/k/TARN/");
    assertThat(answer.body()).doesNotContain("style=", "<style", "onclick", "javascript:");
  }

  private static String plain(String link) {
    return link.replace("&amp;", "&");
  }
}
