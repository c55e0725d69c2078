package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Because;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A day ahead: its page, its lanes and the command show the same work. */
class PlanAheadTest {
  private static final LocalDate TOMORROW = Site.DAY.plusDays(1);

  private Site site;

  @BeforeEach
  void open() {
    site = Site.demo();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aDayAheadHasTheWorkThatItsLanesShow() throws IOException {
    JsonNode plan = json("--crew");
    Set<String> tasks = new TreeSet<>();
    plan.path("tasks").forEach(task -> tasks.add(task.path("task").asText()));
    assertThat(tasks).isNotEmpty().isEqualTo(shownOnLanes());

    Set<String> placed = new TreeSet<>();
    plan.at("/crew/tasks").forEach(task -> placed.add(task.path("task").asText()));
    plan.at("/crew/leftOut").forEach(task -> placed.add(task.asText()));
    assertThat(placed).isEqualTo(tasks);
    String start = TOMORROW + "T04:00";
    plan.at("/crew/tasks")
        .forEach(task -> assertThat(task.path("start").asText()).isGreaterThanOrEqualTo(start));
  }

  @Test
  void withoutPeopleItHasTheSameWork() throws IOException {
    JsonNode crewed = json("--crew");
    ((ObjectNode) crewed).remove("crew");
    assertThat(json()).isEqualTo(crewed);
  }

  @Test
  void itsPageHasThatWorkToo() throws IOException {
    Set<String> tasks = new TreeSet<>();
    json().path("tasks").forEach(task -> tasks.add(task.path("task").asText()));
    Answer page = site.client().get("/k/TARN/?date=" + TOMORROW);
    Set<String> shown = new TreeSet<>();
    page.all("/k/TARN/task[?]date=" + TOMORROW + "&amp;id=([^\"]*)\"")
        .forEach(id -> shown.add(URLDecoder.decode(id, StandardCharsets.UTF_8)));
    assertThat(shown).isEqualTo(tasks);
  }

  @Test
  void whatCanStillBeDoneTheEveningBeforeIsNotCalledTooLate() throws IOException {
    assertThat(site.client().get("/k/TARN/?date=" + TOMORROW).text())
        .contains("It fits by rests and holds")
        .doesNotContain("should have started");
    JsonNode alone = json("--as-of", TOMORROW + "T04:00");
    assertThat(alone.path("misfits").size()).as("planned on its own morning").isPositive();
    assertThat(json().path("misfits").size()).isZero();
  }

  @Test
  void whatTheDayBeforeLacksIsToldOfOnThatDayAlone() {
    KitchenBook book = site.house().book();
    Instant four = Site.at("16:00");
    assertThat(planned(book, Site.DAY, four).misfits()).isNotEmpty();
    assertThat(planned(book, TOMORROW, four).misfits()).isEmpty();
    assertThat(planned(book, TOMORROW, Site.at("23:30")).misfits())
        .as("what should have been done by then for its own services")
        .isNotEmpty();
  }

  @Test
  void aDayFarAheadIsPlannedFromAsManyDaysBeforeItAsItsLongestWorkNeeds() {
    LocalDate far = Site.DAY.plusDays(300);
    KitchenBook book = site.house().book();
    Instant from = book.kitchen().clock().start(far.minusDays(Planning.lookAhead(book)));
    assertThat(site.wiring().plans().preview(site.house(), far, 1).sheet().request().asOf())
        .isEqualTo(from);
  }

  private static PrepSheet planned(KitchenBook book, LocalDate day, Instant asOf) {
    return Planning.plan(book, new PlanRequest(day, 1, asOf), Because.NOT_ASKED);
  }

  @Test
  void asOfAMomentItIsPlannedFromThenWithPeopleAndWithout() throws IOException {
    JsonNode asOf = json("--crew", "--as-of", TOMORROW + "T04:00");
    ((ObjectNode) asOf).remove("crew");
    assertThat(asOf).isEqualTo(json("--as-of", TOMORROW + "T04:00"));
  }

  /** The tasks of which the lanes have a bar, or say that they have no place. */
  private Set<String> shownOnLanes() {
    Client client = site.client();
    Answer page = client.get("/k/TARN/lanes?date=" + TOMORROW);
    assertThat(page.status()).isEqualTo(200);
    Set<String> shown = new TreeSet<>();
    page.all("lanes/task[?]date=" + TOMORROW + "&amp;id=([^\"]*)\"")
        .forEach(id -> shown.add(URLDecoder.decode(id, StandardCharsets.UTF_8)));
    return shown;
  }

  private JsonNode json(String... more) throws IOException {
    List<String> args = new ArrayList<>(List.of("plan", "--date", TOMORROW.toString(), "--json"));
    args.addAll(List.of(more));
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream said = new PrintStream(out, false, StandardCharsets.UTF_8);
    PrintStream faults = new PrintStream(err, false, StandardCharsets.UTF_8);
    int status = new Cli(said, faults, site.wiring()).run(args.toArray(String[]::new));
    assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
    assertThat(status).isLessThan(Exit.UNUSABLE);
    return new ObjectMapper().readTree(out.toByteArray());
  }
}
