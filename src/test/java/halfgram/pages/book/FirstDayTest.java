package halfgram.pages.book;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A kitchen with nothing in it comes to its first sheet and wall by its pages alone. */
class FirstDayTest {
  private static final String ROOT = "/k/HILL/";

  private final Site site = Site.empty();
  private final Client client = site.stranger();

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void everyPageOfAnEmptyKitchenLeadsToWhatItLacks() {
    begin();
    Map<String, String> leads =
        Map.of(
            "", "book",
            "lanes", "pars",
            "wall", "book/stations/new",
            "formulas", "book",
            "pars", "book/services/new",
            "kit", "book/containers/new",
            "crew", "book/people/new",
            "deliveries/new", "book/ingredients/new",
            "stock/new", "formulas/new",
            "tablets", "book/people/new");
    leads.forEach(
        (page, to) ->
            assertThat(main(client.get(ROOT + page))).as(page).contains(ROOT + to + "\""));
    assertThat(main(client.get(ROOT + "book/people/new"))).contains("The book has none yet");
    assertThat(client.get(ROOT + "book/scales/old").text()).contains("Nothing here is called old");
    assertThat(client.get(ROOT + "formulas/old").text()).contains("Nothing here is called old");
    assertThat(client.get(ROOT + "service/none").text()).contains("there is none at all on that");
  }

  private static String main(Answer page) {
    return page.body().substring(page.body().indexOf("<main"));
  }

  @Test
  void pagesAloneLeadFromNothingToWeightsOnTheWall() {
    begin();
    assertThat(client.get(ROOT).text()).contains("The book has no dish", "Begin the book");
    assertThat(client.get(ROOT + "book").text())
        .contains("To the first sheet", "Stations Where somebody works");
    put("book/stations/new", "name.en", "Cold");
    put("book/stations/new", "name.en", "Pass");
    put(
        "book/kitchen/HILL",
        "opens",
        "9",
        "lineCheck",
        "90min",
        "blocks.rows",
        "0",
        "blocks.0.name.en",
        "Staff meal",
        "blocks.0.days.sat",
        "on",
        "blocks.0.start",
        "16:00",
        "blocks.0.end",
        "16:30",
        "places.rows",
        "0",
        "places.0.name.en",
        "walk-in",
        "places.0.volume",
        "200L");
    assertThat(client.get(ROOT + "lanes").text())
        .contains("No task on this day")
        .doesNotContain("It fits");
    assertThat(client.get(ROOT + "wall/cold/who").body())
        .contains("nobody can be chosen", "href=\"/k/HILL/book/people/new\"");
    put(
        "book/people/new",
        "name",
        "Ada",
        "stations.cold",
        "on",
        "stations.pass",
        "on",
        "chef",
        "on",
        "shifts.0.days.sat",
        "on",
        "shifts.0.start",
        "0800",
        "shifts.0.end",
        "22.00");
    put("book/scales/new", "name.en", "bench scale", "step", "1g", "max", "10 kg");
    put("book/ingredients/new", "name.en", "Crème fraîche", "contains.milk", "on");
    put("book/ingredients/new", "name.en", "Dill", "contains.none", "on");
    put(
        "formulas/new",
        "name.en",
        "Dill cream",
        "lines.0.ingredient",
        "crème fraîche",
        "lines.0.basis",
        "100",
        "lines.0.step",
        "mix-gently",
        "lines.1.ingredient",
        "dill",
        "lines.1.percent",
        "20",
        "lines.1.step",
        "Mix gently",
        "steps.0.code",
        "Mix gently",
        "steps.0.do.0.text.en",
        "Fold the dill in",
        "steps.0.station",
        "cold",
        "steps.0.handsOn.fixed",
        "10min",
        "outputs.0.code",
        "cream",
        "outputs.0.hold.max",
        "2d",
        "outputs.0.hold.why",
        "quality",
        "outputs.0.hold.source",
        "tasted here",
        "outputs.0.hold.place",
        "walk-in");
    put(
        "book/dishes/new",
        "name.en",
        "Toast",
        "plate.0.component",
        "dill cream",
        "plate.0.amount",
        "30g",
        "plating.people",
        "1",
        "plating.platesPerMinute",
        "2",
        "plating.station",
        "pass",
        "plating.last.rows",
        "0",
        "plating.last.0.text.en",
        "pepper",
        "plating.last.0.seconds",
        "60",
        "finish.rows",
        "0",
        "finish.0.text.en",
        "wipe the rim");
    assertThat(main(client.get(ROOT + "events/new"))).contains("href=\"/k/HILL/book#dishes\"");
    event();
    assertThat(client.get(ROOT + "events/supper").text())
        .contains("no price in the book")
        .doesNotContain("at least 0.00");
    assertThat(client.get(ROOT + "book").text()).doesNotContain("To the first sheet");
    Answer today = client.get(ROOT);
    assertThat(today.text())
        .contains("Since this plan was made", "Dill cream", "Who is in when changes")
        .contains("No service on this day. What came since this plan was made stands below")
        .doesNotContain("is plated or finished otherwise");
    FilledForm accept = FilledForm.of(today, "/plan");
    assertThat(client.post(ROOT + "plan", accept.fields()).status()).isEqualTo(303);
    // 20 guests and a tenth more, 30 g each: 660 g, five parts cream to one part dill.
    assertThat(client.get(ROOT + "wall/cold").text())
        .contains("CONTAINS MILK", "550", "Crème fraîche", "110", "Dill", "gives 660 g");
    for (String page : new String[] {"formulas/dill-cream", "wall/cold", "paper?station=cold"}) {
      assertThat(client.get(ROOT + page).text())
          .as(page + ": a step goes by the name that was typed, not by the code made of it")
          .contains("Mix gently")
          .doesNotContain("mix-gently");
    }
    // Ready an hour and a half before supper; plated from twelve minutes before the fire at 18:45.
    assertThat(client.get(ROOT + "wall/cold").text()).contains("by 17:00", "walk-in");
    assertThat(client.get(ROOT + "lanes").text())
        .contains("It fits", "16:00–16:30 Staff meal", "18:33 18:45 plate Toast Ada");
    assertThat(client.get(ROOT).text()).contains("to Mon 7 Dec").doesNotContain("its tubs say");
    done();
    // Done long before it had to be: the plan's date would be too late.
    assertThat(client.get(ROOT).text()).contains("as its tubs say").doesNotContain("to Mon 7 Dec");
    assertThat(client.get(ROOT + "stock").text()).contains("1 tub on hand", "Dill cream", "660 g");
    assertThat(client.get(ROOT + "log").text()).contains("Dill cream", "Ada");
  }

  private void done() {
    client.post(ROOT + "wall/cook", "station", "cold", "person", "ada");
    FilledForm tick = FilledForm.of(client.get(ROOT + "wall/cold"), "/tick");
    String[] kinds = {"START", "DONE"};
    for (String kind : kinds) {
      Answer answer =
          client.post(
              ROOT + "tick",
              "station",
              "cold",
              "task",
              tick.value("task"),
              "kind",
              kind,
              "amount",
              kind.equals("DONE") ? "660 g" : "",
              "sequence",
              String.valueOf(Site.sequence()));
      assertThat(answer.status()).as(kind + answer.text()).isEqualTo(303);
    }
  }

  private void begin() {
    client.get("/first?code=" + Site.FIRST);
    Answer made =
        client.post(
            "/first",
            "first",
            Site.FIRST,
            "code",
            "hill",
            "kitchen",
            "Hill",
            "zone",
            "Europe/Copenhagen",
            "name",
            "ada",
            "shown",
            "Ada",
            "password",
            Staff.PASSWORD);
    assertThat(made.header("location")).as("the code in capitals").isEqualTo(ROOT);
  }

  private void put(String page, String... typed) {
    FilledForm form = FilledForm.of(client.get(ROOT + page), page).with("act", "save");
    for (int i = 0; i < typed.length; i += 2) {
      form = form.with(typed[i], typed[i + 1]);
    }
    Answer answer = client.post(ROOT + page, form.fields());
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
  }

  private void event() {
    FilledForm form =
        FilledForm.of(client.get(ROOT + "events/new"), "events/new")
            .with("/name/en", "Supper")
            .with("/date", Site.DAY.toString())
            .with("/covers/expected", "20")
            .with("/services/0/name", "Supper")
            .with("/services/0/courses/0/name", "First")
            .with("/services/0/start", "18:30")
            .with("/services/0/end", "20:30")
            .with("/services/0/courses/0/at", "18:45")
            .with("/services/0/courses/0/dishes/0/dish", "toast")
            .with("do", "save");
    Answer answer = client.post(ROOT + "events/new", form.fields());
    assertThat(answer.status()).as(answer.text()).isEqualTo(303);
  }
}
