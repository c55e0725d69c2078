package halfgram.pages.today;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Listener;
import halfgram.testkit.Site;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Today and the lanes say the same of people and machines. */
@Timeout(120)
class OneVerdictTest {
  private static final String TODAY = "/k/TARN/";
  private static final String LANES = "/k/TARN/lanes";
  private static final String SATURDAY = "?date=2026-12-05";
  private static final String NOT = "With the people and machines of the day it does not fit.";

  private Site site;
  private Client client;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void allThatIsLateIsCountedOnTodayAsOnTheLanes() {
    client.get(LANES);
    site.setClock(Site.at("12:20"));
    String lanes = verdict(LANES);
    assertThat(lanes).startsWith("It does not fit.");
    assertThat(late(lanes)).hasSize(1);
    assertThat(verdict(TODAY)).contains(NOT);
    assertThat(late(verdict(TODAY))).isEqualTo(late(lanes));
    assertThat(late(lanes).get(0)).as("more than one").doesNotStartWith("1 ");
  }

  @Test
  void whatIsDoneIsNotLateAnyMore() {
    client.get(LANES);
    site.setClock(Site.at("12:20"));
    String brine =
        site.wiring().plans().find(site.house(), Site.DAY).orElseThrow().sheet().tasks().stream()
            .filter(task -> task.version().formula().equals("fish-brine"))
            .map(Task::id)
            .findFirst()
            .orElseThrow();
    assertThat(lateTasks()).contains(brine);
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "lorcan");
    for (String kind : List.of("START", "DONE")) {
      String sequence = String.valueOf(Site.sequence());
      String amount = kind.equals("DONE") ? "5591 g" : "";
      client.post(
          "/k/TARN/tick",
          "station",
          "cold",
          "task",
          brine,
          "kind",
          kind,
          "amount",
          amount,
          "sequence",
          sequence);
    }
    assertThat(lateTasks()).isNotEmpty().doesNotContain(brine);
  }

  @Test
  void aDayAheadIsToldByPeopleAndMachinesToo() {
    site.setClock(Site.at("15:00").minus(Duration.ofDays(1)));
    boolean fits = verdict(TODAY + SATURDAY).contains("all is in time");
    assertThat(verdict(LANES + SATURDAY)).startsWith(fits ? "It fits." : "It does not fit.");
    assertThat(site.script().post("slip/harvest-dinner?accept=yes", "{'covers':400}").status())
        .isEqualTo(200);
    String lanes = verdict(LANES + SATURDAY);
    assertThat(lanes).startsWith("It does not fit.");
    String today = verdict(TODAY + SATURDAY);
    assertThat(today).contains(NOT);
    assertThat(late(today)).isEqualTo(late(lanes));
  }

  @Test
  void whoIsSaidToBeOffOnADayAheadDoesNothingOnIt() {
    site.setClock(Site.at("15:00").minus(Duration.ofDays(1)));
    assertThat(client.get(LANES + SATURDAY).body()).contains(">Marit<");
    String device = "00000000-0000-4000-8000-00000000000a";
    String off = "{'kind':'out','person':'marit','day':'%s','device':'%s','sequence':1}";
    assertThat(site.script().post("crew", off.formatted(Site.DAY, device)).status()).isEqualTo(201);
    assertThat(client.get("/k/TARN/crew" + SATURDAY).text()).contains("4 in");
    assertThat(client.get(LANES + SATURDAY).body()).doesNotContain(">Marit<");
  }

  @Test
  void aDayAheadIsShownAtOnceAndThePageIsToldWhenItIsFound() {
    Queue<Runnable> later = new ArrayDeque<>();
    site.setClock(Site.at("15:00").minus(Duration.ofDays(1)));
    client.get(LANES);
    site.setLater(later::add);
    assertThat(verdict(TODAY + SATURDAY)).contains("Still looking for the best order");
    client.get(TODAY + SATURDAY);
    assertThat(later).as("looked for once").hasSize(1);
    try (Listener page = Listener.open(site, "session", site.session())) {
      long before = page.next();
      later.remove().run();
      assertThat(page.next()).isGreaterThan(before);
    }
    assertThat(verdict(TODAY + SATURDAY))
        .contains("With the people and machines of the day")
        .doesNotContain("Still looking");
    assertThat(later).isEmpty();
  }

  // ---- below their callers ----

  private String verdict(String page) {
    List<String> verdicts =
        client.get(page).all("(?s)<p class=\"verdict\">(.*?)</p>").stream()
            .map(one -> one.replaceAll("<[^>]*>", "").strip())
            .toList();
    assertThat(verdicts).hasSize(1);
    return verdicts.get(0);
  }

  private List<String> lateTasks() {
    JsonNode now = site.script().post("what-if", "{'more': ['fryer']}").body().path("today");
    return now.path("late").findValuesAsText("task");
  }

  /** "3 late, the most by 45 min". */
  private static List<String> late(String verdict) {
    Matcher matcher = Pattern.compile("\\d+ late, the most by [^.]*").matcher(verdict);
    return matcher.results().map(MatchResult::group).toList();
  }
}
