package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.desk.Tablets;
import halfgram.people.Deed;
import halfgram.people.Role;
import halfgram.prep.PrepSheet;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Seen;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every page a tablet can get, in its language: the demo kitchen's Saturday, from seven on. */
class TabletLanguageTest {
  private static final String K = "/k/TARN/";
  private static final String RUN = "yoghurt-spheres/harvest-dinner/1";

  /** Every page a tablet may have, and where to look for it. */
  private static final Map<String, List<String>> PAGES =
      Map.ofEntries(
          Map.entry("GET wall", List.of("wall?choose=yes")),
          Map.entry(
              "GET wall/{station}",
              List.of("wall/cold", "wall/hot", "wall/pastry", "wall/pass", "wall/all")),
          Map.entry("GET wall/{station}/who", List.of("wall/cold/who")),
          Map.entry("GET label", List.of("label?tub=t-1203-oil-1")),
          Map.entry("GET baths/{label}", List.of("baths/A", "baths/B")),
          Map.entry("GET service", List.of("service")),
          Map.entry(
              "GET service/{service}", List.of("service/harvest-dinner", "service/bar.2026-12-05")),
          Map.entry("GET service/{service}/who", List.of("service/harvest-dinner/who")),
          Map.entry("GET service/{service}/swap", List.of("service/harvest-dinner/swap")),
          Map.entry("GET paper", List.of("paper", "paper?station=cold")),
          Map.entry("GET paper/entry", List.of("paper/entry?station=cold")),
          Map.entry("GET q/{id}", List.of("q/abcdefghijkl")),
          Map.entry(
              "GET count/{station}",
              List.of("count/cold", "count/hot", "count/cold.pastry", "count/all")));

  private Site site;
  private Client tablet;
  private final Map<String, Set<String>> english = new TreeMap<>();
  private Seen seen;

  @BeforeEach
  void open() {
    site = Site.demo();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void everyPageOfATabletIsLookedAtHere() {
    Set<String> permitted = new TreeSet<>();
    Arrays.stream(Deed.values())
        .filter(deed -> deed.roles().contains(Role.TABLET))
        .flatMap(deed -> deed.routes().stream())
        .filter(route -> route.startsWith("GET ") && !route.startsWith("GET api/"))
        .filter(route -> !route.equals("GET live"))
        .forEach(permitted::add);
    assertThat(PAGES.keySet()).containsExactlyInAnyOrderElementsOf(permitted);
  }

  @Test
  void everyTextOfTheDemoThatAWallShowsIsInEveryLanguage() {
    List<String> lacking = new ArrayList<>();
    texts(site.house().tree(), "", lacking);
    assertThat(lacking).isEmpty();
  }

  /** Texts of the book that are in English alone; names of people, and of techniques, are none. */
  private static void texts(JsonNode node, String path, List<String> lacking) {
    node.properties()
        .forEach(
            one -> {
              String at = path + "/" + one.getKey();
              boolean named = one.getKey().equals("name") && !NAMES.matcher(at).find();
              boolean text =
                  named
                      || List.of("do", "finish", "stopWhen", "plate", "text")
                          .contains(one.getKey());
              one.getValue().elements().forEachRemaining(item -> texts(item, at, lacking));
              if (one.getValue().isObject()) {
                texts(one.getValue(), at, lacking);
              }
              boolean plain =
                  one.getValue().isTextual()
                      || (one.getValue().size() > 0 && one.getValue().path(0).isTextual());
              if (text && plain) {
                lacking.add(at + " " + one.getValue());
              }
            });
  }

  private static final Pattern NAMES = Pattern.compile("^/kitchen/name|/people/|techniques?/name");

  @ParameterizedTest
  @ValueSource(strings = {"es", "fr"})
  void noPageOfATabletSaysAnythingInEnglish(String language) {
    pair(language);
    look("/pair");
    lookAround();
    lookAtTasks();
    work();
    lookAt("GET wall/{station}", "GET count/{station}");
    site.setClock(Site.at("16:03"));
    atBaths();
    lookAt("GET baths/{label}");
    site.setClock(Site.at("18:20"));
    atPass();
    lookAt("GET service/{service}", "GET service/{service}/swap");
    site.setClock(Site.at("23:30"));
    lookAt("GET wall/{station}", "GET service", "GET count/{station}");
    refusals();
    revoke();
    assertThat(english).as("said in English").isEmpty();
  }

  // ---- what is done, so that there is something to see ----

  private void work() {
    post("wall/cook", "station", "cold", "person", "ines");
    Task base = task("yoghurt-base");
    tick(base, "START");
    tick(base, "START");
    String line = base.weigh().get(0).lines().get(0).path();
    post(
        "tick",
        "station",
        "cold",
        "task",
        base.id(),
        "kind",
        "WEIGHED",
        "line",
        line,
        "sequence",
        n());
    tick(base, "PROBLEM", "note", "x");
    tick(base, "DONE", "amount", "zz");
    tick(base, "DONE");
    tick(base, "SOLVED");
    tick(base, "PART_DONE", "amount", "1 kg");
    tick(base, "DONE", "amount", "2 kg");
    tick(base, "DONE");
    Task pea = task("pea-base");
    tick(pea, "FAILED");
    tick(pea, "FAILED", "note", "x");
    look(K + "wall/cold?task=" + Visit.encoded(base.id()));
    look(K + "wall/cold?task=" + Visit.encoded(pea.id()));
    post("lanes/longer", "station", "cold", "task", base.id(), "minutes", "20", "sequence", n());
    Client office = site.client();
    office.get(K + "events/harvest-dinner");
    office.json("PUT", K + "api/v1/events/harvest-dinner/covers", "{\"final\":90,\"seen\":0}");
    for (String verdict : List.of("TASTED", "GO", "ADJUST", "FAIL", "USED")) {
      post("gate", "station", "cold", "task", base.id(), "verdict", verdict, "sequence", n());
    }
    post(
        "wall/kit",
        "station",
        "cold",
        "task",
        base.id(),
        "thing",
        "none",
        "how",
        "",
        "sequence",
        n());
    tub().forEach(code -> post("stock/" + code + "/count", "amount", "zz", "back", "count/cold"));
    tub()
        .forEach(code -> post("stock/" + code + "/count", "amount", "100 g", "back", "count/cold"));
    tub().forEach(code -> look(K + "label?station=cold&tub=" + code));
  }

  private void atBaths() {
    bath("DROP", "run", RUN, "label", "A", "pieces", "zz");
    Answer dropped = bath("DROP", "run", RUN, "label", "A", "pieces", "15");
    List<String> drops = dropped.all("name=\"drop\" value=\"([0-9a-f-]{36})\"");
    assertThat(drops).as("a drop to lift").isNotEmpty();
    String drop = drops.get(0);
    bath("LEVEL", "label", "A", "formula", "alginate-bath", "millimetres", "zz");
    bath("LEVEL", "label", "A", "formula", "alginate-bath", "millimetres", "20");
    bath("CHANGED", "label", "A", "formula", "alginate-bath", "note", "x");
    bath("BROKE", "drop", drop, "label", "A", "pieces", "900");
    bath("BROKE", "drop", drop, "label", "A", "pieces", "9");
    bath("DROP", "run", RUN, "label", "A", "pieces", "14");
    bath("DROP", "run", RUN, "label", "7", "pieces", "14");
    site.setClock(Site.at("16:06"));
    bath("LIFT", "drop", drop, "label", "A");
    bath("LIFT", "drop", drop, "label", "A");
    bath("LEVEL", "label", "A", "formula", "alginate-bath", "millimetres", "30");
    bath("CHANGED", "label", "A", "formula", "alginate-bath", "note", "x", "fresh", "B");
    bath("UNDO", "undoes", drop);
  }

  private void atPass() {
    String dinner = "service/harvest-dinner";
    post(dinner, "kind", "FIRE", "course", "first", "sequence", n());
    post(dinner + "/cook", "person", "ines");
    for (int i = 0; i < 2; i++) {
      post(dinner, "kind", "FIRE", "course", "first", "sequence", n());
    }
    for (String number : List.of("5", "90", "zz")) {
      post(
          dinner,
          "kind",
          "SENT",
          "course",
          "first",
          "dish",
          "trout-plate",
          "number",
          number,
          "sequence",
          n());
    }
    post(dinner, "kind", "OUT", "item", "yoghurt-spheres", "note", "x", "sequence", n());
    post(dinner, "kind", "OUT", "item", "yoghurt-spheres", "note", "x", "sequence", n());
    look(K + dinner + "/swap");
    for (String who : List.of("", "nobody", "ines", "ines")) {
      post(
          dinner + "/swap",
          "dish",
          "trout-plate",
          "item",
          "yoghurt-spheres",
          "with",
          "pea-spheres",
          "confirmedBy",
          who,
          "sequence",
          n());
    }
    look(K + dinner);
    look(K + "service?date=2026-11-01");
    look(K + "service/none");
  }

  private void refusals() {
    look(K + "wall/nowhere");
    look(K + "stock");
    look(K + "formulas");
    look(K + "nowhere");
    look(K + "baths/Q");
    look(K + "count/nowhere");
    look("/k/OTHER/wall");
    look(K + "label?tub=none");
    post("tick", "kind", "???");
    Answer foreign =
        tablet.send(
            tablet
                .request(K + "tick")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(java.net.http.HttpRequest.BodyPublishers.ofString("_csrf=old")));
    say("a form too old", foreign);
    for (String call :
        List.of("ticks", "baths", "gates", "lanes/longer", "services/harvest-dinner/entries")) {
      for (String body : List.of("{}", "{\"task\":\"none\",\"kind\":\"DONE\",\"sequence\":1}")) {
        say("POST api/v1/" + call + " " + body, tablet.json("POST", K + "api/v1/" + call, body));
      }
    }
  }

  private void revoke() {
    Tablets tablets = new Tablets(site.wiring().desk(), site.wiring().signing());
    tablets
        .list(site.house().stand())
        .forEach(one -> tablets.revoke(site.house(), one.id(), "test"));
    site.passTime(java.time.Duration.ofSeconds(5));
    look(K + "wall/cold");
    post(
        "tick",
        "station",
        "cold",
        "task",
        task("yoghurt-base").id(),
        "kind",
        "START",
        "sequence",
        n());
  }

  // ---- below their callers ----

  private void pair(String language) {
    seen = new Seen(language).with(site.house().tree(), language);
    tablet = site.stranger().withCookie("language", language);
    String code =
        new Tablets(site.wiring().desk(), site.wiring().signing())
            .offer(site.house(), "Mur 1", List.of(), "test");
    tablet.get("/pair");
    say("a wrong code", tablet.post("/pair", "code", "WRONGONE"));
    assertThat(tablet.post("/pair", "code", code).status()).isEqualTo(303);
  }

  private void lookAround() {
    lookAt(PAGES.keySet().toArray(String[]::new));
  }

  private void lookAt(String... pages) {
    Arrays.stream(pages)
        .flatMap(page -> PAGES.getOrDefault(page, List.of()).stream())
        .forEach(path -> look(K + path));
  }

  private void lookAtTasks() {
    Map<String, String> byLook = new LinkedHashMap<>();
    sheet()
        .tasks()
        .forEach(
            one ->
                byLook.putIfAbsent(
                    one.version().formula() + one.kind(),
                    K + "wall/" + one.station() + "?task=" + Visit.encoded(one.id())));
    byLook.values().forEach(this::look);
  }

  private PrepSheet sheet() {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet();
  }

  private Task task(String beginning) {
    return sheet().tasks().stream()
        .filter(one -> one.id().startsWith(beginning))
        .findFirst()
        .orElseThrow();
  }

  private List<String> tub() {
    return List.of("t-1203-oil-1");
  }

  private static String n() {
    return String.valueOf(Site.sequence());
  }

  private void tick(Task task, String kind, String... more) {
    List<String> fields = new ArrayList<>(List.of(more));
    fields.addAll(List.of("station", "cold", "task", task.id(), "kind", kind, "sequence", n()));
    post("tick", fields.toArray(String[]::new));
  }

  private Answer bath(String entry, String... more) {
    List<String> fields = new ArrayList<>(List.of(more));
    fields.addAll(
        List.of("station", "cold", "task", RUN + "/drop", "entry", entry, "sequence", n()));
    return post("bath", fields.toArray(String[]::new));
  }

  private Answer post(String path, String... fields) {
    Answer answer = tablet.post(K + path, fields);
    say("POST " + path + " " + String.join(" ", fields), answer);
    if (answer.status() == 303) {
      answer = tablet.get(answer.header("location"));
      say("after POST " + path + " " + String.join(" ", fields), answer);
    }
    return answer;
  }

  private void look(String path) {
    say(path, tablet.get(path));
  }

  private void say(String where, Answer answer) {
    assertThat(answer.status()).as(where).isLessThan(500);
    String body = answer.body();
    if (answer.header("content-type").startsWith("application/json")) {
      body =
          String.join(
              "",
              answer.all("\"said\":\"((?:[^\"\\\\]|\\\\.)*)\"").stream()
                  .map(said -> "<p>" + said.replace("\\\"", "\"") + "</p>")
                  .toList());
    }
    Set<String> found = seen.english(body.replace(">English<", "><"));
    found.forEach(one -> english.computeIfAbsent(one, key -> new LinkedHashSet<>()).add(where));
  }
}
