package halfgram.pages.lanes;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.CrewInForce;
import halfgram.desk.Demo;
import halfgram.desk.InForce;
import halfgram.prep.Task;
import halfgram.prep.crew.Placed;
import halfgram.station.Person;
import halfgram.station.Shift;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import halfgram.web.Visit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What moves the lanes: a cook who begins, the chef's hand, the day itself, another book. */
class MovedTest {
  private static final String LANES = "/k/TARN/lanes";

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
  void whatIsBegunAndDoneIsToldByItsWord() {
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    String task = "yoghurt-base/harvest-dinner/1/shear";
    tick(task, "START");
    assertThat(client.get(LANES).text()).contains("· on it", "ON IT");
    tick(task, "DONE");
    Answer page = client.get(LANES + "/task?id=" + Visit.encoded(task));
    assertThat(page.text()).contains("DONE", "Ines").doesNotContain("Move it by hand");
  }

  private void tick(String task, String kind) {
    client.post(
        "/k/TARN/tick",
        "station",
        "cold",
        "task",
        task,
        "kind",
        kind,
        "sequence",
        String.valueOf(Site.sequence()));
  }

  @Test
  void theDayAsItIsDoesWithoutWhoeverWentHome() {
    site.searchFully();
    assertThat(client.get(LANES).text()).contains("It fits.");
    String[] home = {
      "kind",
      "in",
      "person",
      "ines",
      "from",
      "10:30",
      "until",
      "11:00",
      "sequence",
      String.valueOf(Site.sequence())
    };
    assertThat(client.post("/k/TARN/crew", home).status()).isEqualTo(303);
    Answer page = client.get(LANES);
    assertThat(page.text()).contains("The day has moved", "It does not fit.");
    List<String> rows = page.all("(?s)<tr[^>]*><th scope=\"row\">Fits</th><td>([a-z]+)</td>");
    assertThat(rows).as("as it is").containsExactly("no");
    assertThat(page.all("(?s)<th scope=\"row\">Without a place</th><td>(\\d+), [^<]*</td>"))
        .as("what she was to do")
        .hasSize(1);
    assertThat(client.get("/k/TARN/").text()).contains("tasks have no place");
  }

  @Test
  void aTaskPutByHandIsKeptThereUntilItIsLetGo() {
    String page = LANES + "/task?id=" + Visit.encoded(later().task());
    FilledForm form = FilledForm.of(client.get(page), "lanes/task");
    assertThat(client.post(LANES + "/task", form.fields()).status()).isEqualTo(303);
    assertThat(crew().pins()).containsKey(later().task());
    Answer kept = client.get(page);
    assertThat(kept.text()).contains("It is kept where it is by hand.", "Let it go again");
    FilledForm again = FilledForm.of(kept, "lanes/task").with("do", "unpin");
    assertThat(client.post(LANES + "/task", again.fields()).status()).isEqualTo(303);
    assertThat(crew().pins()).isEmpty();
  }

  @Test
  void whatHoldsATaskPutByHandIsTheHand() {
    String id = later().task();
    String page = LANES + "/task?id=" + Visit.encoded(id);
    FilledForm form = FilledForm.of(client.get(page), "lanes/task").with("start", "17:00");
    assertThat(client.post(LANES + "/task", form.fields()).status()).isEqualTo(303);
    assertThat(holds(client.get(page), "Why not earlier"))
        .hasSize(1)
        .allSatisfy(said -> assertThat(said).endsWith("is kept at 17:00 by hand"));
    assertThat(holds(client.get(page), "Why not later"))
        .allSatisfy(said -> assertThat(said).endsWith("is kept at 17:00 by hand"));
  }

  @Test
  void aBreakOrAMealIsNamedAsSuchAndOnlyAShiftBeginsAndEnds() {
    List<String> said = new ArrayList<>();
    for (Task task : inForce().sheet().tasks()) {
      Answer page = client.get(LANES + "/task?id=" + Visit.encoded(task.id()));
      for (String heading : List.of("Why not earlier", "Why not later")) {
        said.addAll(holds(page, heading));
      }
    }
    assertThat(said).anySatisfy(one -> assertThat(one).containsPattern("has .* (until|from) "));
    List<String> shifts = new ArrayList<>();
    for (Person person : site.house().book().people()) {
      for (Shift shift : person.on(Site.DAY.getDayOfWeek())) {
        shifts.add(person.name() + " is there from " + shift.start());
        shifts.add(person.name() + " leaves at " + shift.end());
      }
    }
    assertThat(said.stream().filter(one -> one.matches(".* (is there from|leaves at) .*")))
        .isSubsetOf(shifts);
  }

  /** What stands below a heading of the page of a task. */
  private static List<String> holds(Answer page, String heading) {
    List<String> lists = page.all("(?s)<h3[^>]*>" + heading + "</h3>(.*?)</ul>");
    String list = lists.isEmpty() ? "" : lists.get(0);
    return Pattern.compile("(?s)<li[^>]*>(.*?)</li>")
        .matcher(list)
        .results()
        .map(one -> one.group(1).replaceAll("<[^>]*>", "").strip())
        .toList();
  }

  @Test
  void whatCannotBeIsRefusedWithItsReasonAndComesBackAsTyped() {
    String page = LANES + "/task?id=" + Visit.encoded(later().task());
    FilledForm form = FilledForm.of(client.get(page), "lanes/task");
    Answer wrong = client.post(LANES + "/task", form.with("start", "half past").fields());
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.text()).contains("Not a time. Accepted");
    assertThat(wrong.body()).contains("value=\"half past\"");
    Answer past = client.post(LANES + "/task", form.with("start", "8:05").fields());
    assertThat(past.status()).isEqualTo(409);
    assertThat(past.text()).contains("nothing can start before that");
    assertThat(past.body()).contains("value=\"8:05\"");
    assertThat(crew().pins()).isEmpty();
  }

  @Test
  void aDayThatHasMovedIsShownBeforeAndAfterAndAcceptedOnce() {
    client.get(LANES);
    int before = crew().number();
    site.setClock(Site.at("12:10"));
    Answer moved = client.get(LANES);
    assertThat(moved.text()).contains("The day has moved", "as it is", "What would move");
    FilledForm form = FilledForm.of(moved, "/k/TARN/lanes");
    for (int i = 0; i < 2; i++) {
      Answer accepted = client.post(LANES, form.fields());
      assertThat(accepted.status()).isEqualTo(303);
      assertThat(accepted.header("location")).endsWith("/k/TARN/lanes");
      assertThat(crew().number()).isEqualTo(before + 1);
    }
    assertThat(client.get(LANES).text()).doesNotContain("The day has moved");
  }

  @Test
  void namesOfFortyLettersAndAShiftPastMidnightAreDrawnWithinTheDay() throws IOException {
    ObjectNode book = (ObjectNode) new ObjectMapper().readTree(Demo.book(Site.DAY));
    ObjectNode night = ((ArrayNode) book.path("people")).addObject();
    night.put("code", "night").put("name", "Ingibjorg Hrafnhildur Thorgeirsdottir-Vik");
    night.putArray("stations").add("hot");
    ObjectNode shift = night.putArray("shifts").addObject();
    shift.putArray("days").add("sat");
    shift.put("start", "17:00").put("end", "02:00");
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
    Answer page = client.get(LANES);
    assertThat(page.text()).contains("Ingibjorg Hrafnhildur Thorgeirsdottir-Vik", "17:00 to 02:00");
    List<String> places = page.all(" x=\"(-?[0-9.]+)%\"");
    assertThat(places).isNotEmpty().allMatch(x -> within(Double.parseDouble(x)));
  }

  private static boolean within(double percent) {
    return percent >= 0 && percent <= 100;
  }

  // ---- what stands behind it ----

  /** The last task of the day that one pair of hands does. */
  private Placed later() {
    InForce inForce = inForce();
    CrewInForce crew = crew();
    return inForce.sheet().tasks().stream()
        .filter(task -> task.hands() == 1 && task.links().isEmpty())
        .map(Task::id)
        .flatMap(id -> crew.plan().find(id).stream())
        .filter(placed -> placed.people().size() == 1)
        .reduce((first, second) -> second.start().isBefore(first.start()) ? first : second)
        .orElseThrow();
  }

  private InForce inForce() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test");
  }

  private CrewInForce crew() {
    return site.wiring().crewPlans().inForce(site.house(), inForce(), "test");
  }
}
