package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Demo;
import halfgram.desk.House;
import halfgram.desk.Tablets;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.people.Account;
import halfgram.people.AccountStore;
import halfgram.people.Member;
import halfgram.people.Role;
import halfgram.people.Tablet;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Two kitchens that have nobody in common: what is the one's is not there for the other. */
class TenancyTest {
  private static final String BELOW = "/k/{kitchen}/";

  private static Site site;
  private static Client tarn;
  private static Account hillOwner;
  private static Tablet hillTablet;
  private static String hillToken;

  /** Ids that only the other kitchen has, by the part of a path. */
  private static final TreeMap<String, String> IDS = new TreeMap<>();

  @BeforeAll
  static void open() {
    site = Site.demo();
    site.importBook(hill());
    site.wiring()
        .desk()
        .read(
            tx -> {
              AccountStore accounts = new AccountStore();
              hillOwner = accounts.add(tx, "hilda", "Hilda", Site.at("08:00"));
              Member owner = new Member(hillOwner, Role.OWNER, Optional.empty(), Site.at("08:00"));
              accounts.put(tx, stand().id(), owner);
              accounts.remove(tx, stand().id(), accounts.find(tx, Site.OFFICE).orElseThrow().id());
              return true;
            });
    House house = site.wiring().desk().find("HILL").orElseThrow();
    Tablets tablets = new Tablets(site.wiring().desk(), site.wiring().signing());
    Tablets.Paired paired =
        tablets.pair(tablets.offer(house, "hill-wall", List.of(), "test"), "here").orElseThrow();
    hillTablet = paired.tablet();
    hillToken = paired.token();
    site.wiring().plans().open(house, Site.DAY, "test");
    site.wiring().plans().open(site.house(), Site.DAY, "test");
    IDS.put("{code}", "hill-only");
    IDS.put("{lot}", "hill-only");
    IDS.put("{id}", "tub.hill-only");
    IDS.put("{label}", "hill-only");
    IDS.put("{run}", "hill-only");
    IDS.put("{service}", "hill-only");
    IDS.put("{station}", "hill-only");
    IDS.put("{person}", hillOwner.id().toString());
    IDS.put("{tablet}", hillTablet.id().toString());
    IDS.put("{entry}", hillTablet.id().toString());
    IDS.put("{table}", "hill-only");
    IDS.put("{deed}", "move");
    IDS.put("{technique}", "hill-only");
    IDS.put("{kind}", "hill-only");
    IDS.put("{row}", "hill-only");
    tarn = site.client();
    tarn.get("/k/TARN/pars");
  }

  @AfterAll
  static void close() {
    site.close();
  }

  /** The demo's book as another kitchen's, with one thing more of each kind. */
  private static byte[] hill() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ((ObjectNode) book.path("kitchen")).put("code", "HILL");
    for (String kind : List.of("stations", "events", "tubs", "formulas")) {
      ObjectNode one = book.path(kind).get(0).deepCopy();
      if (one.has("name")) {
        one.put("name", "Hill only");
      }
      book.withArray(kind).add(one.put("code", "hill-only"));
    }
    return book.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static Stand stand() {
    return site.wiring().desk().findStand("HILL").orElseThrow();
  }

  @Test
  void whatOnlyTheOtherKitchenHasIsNotFoundAndNothingHappensToIt() {
    String before = hillsState();
    List<String> wrong = new ArrayList<>();
    for (String route : site.routes()) {
      if (route.contains(BELOW) && route.replace("{kitchen}", "").contains("{")) {
        Answer answer = ask(route);
        boolean reads = route.startsWith("GET ");
        boolean right = reads ? answer.status() == 404 : answer.status() >= 400;
        if (!right || answer.status() >= 500) {
          wrong.add(route + " answered " + answer.status());
        }
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(hillsState()).isEqualTo(before);
  }

  private static String hillsState() {
    return stand()
        + " "
        + site.wiring().people().list(stand())
        + new Tablets(site.wiring().desk(), site.wiring().signing()).list(stand())
        + site.wiring().signing().list(hillOwner.id());
  }

  @Test
  void peopleAndChangesOfTheOneAreNotSeenByTheOther() {
    Client hill = site.stranger().withCookie("session", site.session("hilda"));
    assertThat(hill.get("/k/HILL/people").text()).contains("Hilda").doesNotContain("office");
    assertThat(hill.get("/k/TARN/people").status()).isEqualTo(404);
    assertThat(tarn.get("/k/TARN/people").text()).contains("office").doesNotContain("Hilda");
    assertThat(tarn.get("/k/TARN/audit").text()).doesNotContain("hill-wall");
    assertThat(hill.get("/k/HILL/audit").text()).contains("hill-wall");
    assertThat(tarn.get("/k/TARN/log").text()).doesNotContain("HILL");
  }

  @Test
  void aTabletOfTheOneIsNobodyInTheOther() {
    Client wall = site.stranger().withCookie("tablet", hillToken);
    assertThat(wall.get("/k/HILL/wall").status()).isEqualTo(200);
    assertThat(wall.get("/k/TARN/wall").header("location")).startsWith("/sign-in");
    assertThat(wall.get("/k/NONE/wall").header("location")).startsWith("/sign-in");
  }

  @Test
  void aScriptOfTheOneGetsNothingOfTheOther() {
    Client script = site.stranger().withCookie("session", site.session("hilda"));
    JsonNode said = BookStore.parse(script.get("/k/TARN/api/v1/book").body());
    JsonNode none = BookStore.parse(script.get("/k/NONE/api/v1/book").body());
    assertThat(said.path("kind").asText()).isEqualTo("not-found");
    assertThat(said.toString().replace("TARN", "NONE")).isEqualTo(none.toString());
  }

  private static Answer ask(String route) {
    int space = route.indexOf(' ');
    String method = route.substring(0, space);
    String path = route.substring(space + 1).replace("{kitchen}", Site.KITCHEN);
    for (String part : IDS.keySet()) {
      path = path.replace(part, IDS.getOrDefault(part, ""));
    }
    assertThat(path).doesNotContain("{");
    if (method.equals("GET")) {
      return tarn.get(path);
    }
    boolean call = path.contains("/api/");
    return call ? tarn.json(method, path, "{}") : tarn.post(path);
  }
}
