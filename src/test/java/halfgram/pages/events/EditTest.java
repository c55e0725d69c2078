package halfgram.pages.events;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Events;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** An event as a form: nothing lost, looked at first, wrong fields told in place. */
class EditTest {
  private static final String DINNER = "/k/TARN/events/harvest-dinner/edit";
  private static final String NEW = "/k/TARN/events/new";

  private Site site;
  private Client client;
  private Events events;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    client.get("/k/TARN/");
    events = new Events(site.wiring().desk());
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void savedUnchangedItIsTheSame() {
    for (String code : List.of("harvest-dinner", "terrace", "naming-day")) {
      String edit = "/k/TARN/events/" + code + "/edit";
      ObjectNode before = body(code);
      Answer answer = save(edit, form(edit));
      assertThat(answer.status()).as(code).isEqualTo(303);
      assertThat(body(code)).isEqualTo(before);
      assertThat(events.listChanges(site.house(), code)).isEmpty();
    }
  }

  @Test
  void rowsComeAndGoAndNothingTypedIsLost() {
    FilledForm typed = form(DINNER).with("/name/en", "Harvest supper").with("/buffer", "x");
    Answer more = client.post(DINNER, typed.with("add", "/services/0/courses").fields());
    assertThat(more.status()).isEqualTo(200);
    FilledForm longer = FilledForm.of(more, "/edit");
    assertThat(longer.value("/name/en")).isEqualTo("Harvest supper");
    assertThat(longer.value("/buffer")).isEqualTo("x");
    assertThat(longer.value("/services/0/courses/4/at")).isEmpty();
    assertThat(more.body()).contains("autofocus");
    Answer fewer = client.post(DINNER, longer.with("drop", "/services/0/courses/0").fields());
    FilledForm shorter = FilledForm.of(fewer, "/edit");
    assertThat(shorter.value("/services/0/courses/0/at")).isEqualTo("19:25");
    assertThat(body("harvest-dinner").path("services").get(0).path("courses")).hasSize(4);
  }

  @Test
  void lookingShowsWhatItWouldDoAndStoresNothing() {
    Answer answer =
        client.post(DINNER, form(DINNER).with("/covers/final", "97").with("do", "look").fields());
    assertThat(answer.status()).isEqualTo(200);
    assertThat(answer.text())
        .contains("What it would do to the sheet", "Today's sheet")
        .contains("84 → 97 covers, made for 93 → 107", "Nothing is stored yet");
    assertThat(body("harvest-dinner").at("/covers/final").asInt()).isEqualTo(84);
    assertThat(FilledForm.of(answer, "/edit").value("/covers/final")).isEqualTo("97");
  }

  @Test
  void everyNumberOfWhatItWouldDoSaysWhyInPlace() {
    for (String event : List.of("harvest-dinner", "naming-day")) {
      String edit = "/k/TARN/events/" + event + "/edit";
      String effect =
          client
              .post(edit, form(edit).with("/covers/final", "97").with("do", "look").fields())
              .all("(?s)(<section class=\"effect\".*?</section>)")
              .get(0);
      List<String> changes = found(effect, "<(?:summary|li)>([^<]*→[^<]*)<");
      List<String> asked =
          found(effect, "<details class=\"asked\"><summary>([^<]*)</summary><p><b>[0-9.]+");
      assertThat(changes).hasSizeGreaterThan(5).isEqualTo(asked);
      assertThat(effect)
          .containsPattern(
              "(?s)<b class=\"value\">97</b> <span>covers counted.*what all its batches give");
    }
  }

  private static List<String> found(String text, String pattern) {
    return Pattern.compile(pattern).matcher(text).results().map(one -> one.group(1)).toList();
  }

  @Test
  void aServiceThatSlipsTakesAllItsTimesAlongAndShowsWhatThatDoes() {
    FilledForm typed = form(DINNER).with("minutes-0", "20").with("push", "/services/0");
    Answer pushed = client.post(DINNER, typed.fields());
    assertThat(pushed.status()).isEqualTo(200);
    assertThat(pushed.text()).contains("What it would do to the sheet", "Nothing is stored yet");
    FilledForm later = FilledForm.of(pushed, "/edit");
    assertThat(later.value("/services/0/start")).isEqualTo("18:50");
    assertThat(later.value("/services/0/end")).isEqualTo("21:50");
    assertThat(later.value("/services/0/courses/0/at")).isEqualTo("19:05");
    assertThat(body("harvest-dinner").at("/services/0/start").asText()).isEqualTo("18:30");
    assertThat(save(DINNER, later).status()).isEqualTo(303);
    assertThat(body("harvest-dinner").at("/services/0/courses/3/at").asText()).isEqualTo("21:15");
    assertThat(client.get("/k/TARN/").text()).contains("Accept");
  }

  @Test
  void aCourseThatSlipsLeavesThoseBeforeIt() {
    FilledForm typed = form(DINNER).with("minutes-0", "-10").with("push", "/services/0/courses/2");
    FilledForm moved = FilledForm.of(client.post(DINNER, typed.fields()), "/edit");
    assertThat(moved.value("/services/0/start")).isEqualTo("18:30");
    assertThat(moved.value("/services/0/courses/1/at")).isEqualTo("19:25");
    assertThat(moved.value("/services/0/courses/2/at")).isEqualTo("19:55");
    assertThat(moved.value("/services/0/courses/3/at")).isEqualTo("20:45");
    assertThat(moved.value("/services/0/end")).isEqualTo("21:20");
  }

  @Test
  void minutesThatAreNoneAreToldAndNothingMoves() {
    for (String minutes : List.of("soon", "1.5", "")) {
      FilledForm typed = form(DINNER).with("minutes-0", minutes).with("push", "/services/0");
      Answer wrong = client.post(DINNER, typed.fields());
      assertThat(wrong.status()).as(minutes).isEqualTo(422);
      assertThat(wrong.text()).contains("A number of minutes: 15 pushes it back");
      FilledForm again = FilledForm.of(wrong, "/edit");
      assertThat(again.value("minutes-0")).isEqualTo(minutes);
      assertThat(again.value("/services/0/start")).isEqualTo("18:30");
    }
  }

  @Test
  void lookingAheadComparesTheSheetsOfThoseDays() {
    String edit = "/k/TARN/events/naming-day/edit";
    Answer answer =
        client.post(edit, form(edit).with("/covers/final", "70").with("do", "look").fields());
    assertThat(answer.text()).contains("Sheet of Sun 6 Dec", "48 → 70 covers");
  }

  @Test
  void eachProblemStandsAtItsField() {
    wrong(
        form(DINNER).with("/name/en", "").with("/name/es", "").with("/name/fr", ""),
        "f-name-en",
        "Give it a name");
    wrong(form(DINNER).with("/date", "soon"), "f-date", "Give a date");
    wrong(form(DINNER).with("/covers/final", "1.5"), "f-covers-final", "whole number");
    wrong(form(DINNER).with("/buffer", "200"), "f-buffer", "Give a number from 0 to 100");
    wrong(form(DINNER).with("/services/0/start", "late"), "f-services-0-start", "Give a time");
    wrong(
        form(DINNER).with("/services/0/courses/1/at", "23:40"),
        "f-services-0-courses-1-at",
        "outside the service");
    wrong(
        form(DINNER).with("/services/0/courses/0/dishes/0/dish", ""),
        "f-services-0-courses-0-dishes-0",
        "Choose a dish");
    Answer split = save(DINNER, form(DINNER).with("/services/0/courses/2/dishes/0/share", "10"));
    assertThat(split.text()).contains("Course 3 55 %: the menu split serves fewer");
    String terrace = "/k/TARN/events/terrace/edit";
    Answer curve = save(terrace, form(terrace).with("/services/0/curve/0/share", "10"));
    assertThat(curve.status()).isEqualTo(422);
    assertThat(curve.text()).contains("the shares of the curve add up to this");
  }

  private void wrong(FilledForm form, String id, String said) {
    Answer answer = save(DINNER, form);
    assertThat(answer.status()).as(said).isEqualTo(422);
    assertThat(answer.body()).contains("id=\"" + id + "-told\"");
    assertThat(answer.text()).contains(said);
  }

  @Test
  void somebodyElsesChangeIsShownBesideMine() {
    FilledForm mine = form(DINNER).with("/covers/final", "97");
    save(DINNER, form(DINNER).with("/covers/final", "90"));
    Answer answer = save(DINNER, mine);
    assertThat(answer.status()).isEqualTo(409);
    assertThat(answer.text()).contains("What you typed is kept", "now 90");
    assertThat(save(DINNER, FilledForm.of(answer, "/edit")).status()).isEqualTo(303);
    assertThat(body("harvest-dinner").at("/covers/final").asInt()).isEqualTo(97);
  }

  @Test
  void aNewEventIsAddedOnceHoweverOftenItIsSent() {
    FilledForm form =
        FilledForm.of(client.get(NEW), "/events/new")
            .with("/name/en", "Été: First frost")
            .with("/covers/expected", "12")
            .with("/services/0/start", "1830")
            .with("/services/0/end", "20.30")
            .with("/services/0/courses/0/name", "Main")
            .with("/services/0/courses/0/at", "19:00")
            .with("/services/0/courses/0/dishes/0/dish", "kohlrabi-plate");
    Answer answer = save(NEW, form);
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
    assertThat(answer.header("location")).endsWith("/events/ete-first-frost");
    assertThat(save(NEW, form).header("location")).endsWith("/events/ete-first-frost");
    assertThat(body("ete-first-frost").at("/services/0/start").asText()).isEqualTo("18:30");
    assertThat(save(NEW, form.with("/covers/expected", "14")).header("location"))
        .endsWith("/events/ete-first-frost-2");
    assertThat(client.get("/k/TARN/events/ete-first-frost").text()).contains("Main", "19:00");
  }

  @Test
  void aNewEventCanBePickedUpAlongACurve() {
    Answer page = client.get(NEW);
    page = again(page, "drop", "/services/0/courses/0");
    page = again(page, "add", "/services/0/curve");
    page = again(page, "add", "/services/0/dishes");
    FilledForm form =
        FilledForm.of(page, "/events/new")
            .with("/name/en", "Bites")
            .with("/covers/expected", "30")
            .with("/services/0/start", "17:00")
            .with("/services/0/end", "18:00")
            .with("/services/0/curve/0/at", "17:00")
            .with("/services/0/curve/0/share", "100")
            .with("/services/0/dishes/0/dish", "trout-bite")
            .with("/services/0/dishes/0/perCover", "2");
    Answer answer = save(NEW, form);
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
    assertThat(body("bites").path("services").get(0).has("courses")).isFalse();
    assertThat(client.get("/k/TARN/events/bites").text()).contains("picked up from 17:00 100 %");
  }

  private Answer again(Answer page, String what, String where) {
    return client.post(NEW, FilledForm.of(page, "/events/new").with(what, where).fields());
  }

  @Test
  void anEmptyNewEventSaysWhatIsMissing() {
    Answer answer = save(NEW, FilledForm.of(client.get(NEW), "/events/new"));
    assertThat(answer.status()).isEqualTo(422);
    assertThat(answer.text())
        .contains("Give it a name", "Say how many are expected", "Give a time", "Choose a dish");
  }

  @Test
  void whoChoosesADishSeesWhatItContains() {
    assertThat(client.get(NEW).text())
        .contains("Cured lake trout, sheep yoghurt, dill (contains fish, gluten, milk)");
  }

  @Test
  void whatSeveralCoursesUseStandsOnceOnTheSheet() {
    Answer sheet = client.get("/k/TARN/events/harvest-dinner");
    List<String> used =
        sheet.all("<li><a class=\"why n\"[^>]*><b>[^<]*</b></a> <span>([^<]*)</span>");
    assertThat(used).contains("Celeriac, baked", "Dill oil").doesNotHaveDuplicates();
  }

  @Test
  void whatMovesAServiceStandsOnlyWhereThereIsOne() {
    assertThat(client.get(NEW).text()).doesNotContain("Push this service", "Push from here");
    assertThat(client.get(DINNER).text()).contains("Push this service", "Push from here");
  }

  @Test
  void anUnknownEventIsNotThere() {
    assertThat(client.get("/k/TARN/events/nothing/edit").status()).isEqualTo(404);
    Answer answer = save("/k/TARN/events/nothing/edit", form(DINNER));
    assertThat(answer.status()).isEqualTo(404);
  }

  private FilledForm form(String edit) {
    return FilledForm.of(client.get(edit), "/edit");
  }

  private Answer save(String path, FilledForm form) {
    return client.post(path, form.with("do", "save").fields());
  }

  private ObjectNode body(String code) {
    return Events.body(events.find(site.house(), code).orElseThrow());
  }
}
