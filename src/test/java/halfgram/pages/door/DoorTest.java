package halfgram.pages.door;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.desk.Demo;
import halfgram.desk.House;
import halfgram.desk.People;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import halfgram.web.Server;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.logging.Handler;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.Logger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What the door shows and what it keeps to itself. */
class DoorTest {
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
  void theDemosPeopleAreOfferedOnlyInADemoKitchen() {
    Client client = site.stranger();
    assertThat(client.get("/sign-in").body()).doesNotContain("/sign-in/demo");
    String office = site.wiring().people().list(site.house().stand()).get(0).account().id() + "";
    Answer refused =
        client.post("/sign-in/demo", "kitchen", "TARN", "account", office, "to", "/k/TARN/");
    assertThat(refused.status()).isEqualTo(200);
    assertThat(client.cookie("session")).as("no kitchen of the demo").isEmpty();
    site.wiring().firstRun().fillDemo("TARN");
    Answer page = client.get("/sign-in");
    assertThat(page.all("name=\"account\" value=\"([^\"]+)\"")).hasSizeGreaterThanOrEqualTo(5);
    String owner = page.all("name=\"account\" value=\"([^\"]+)\"").get(0);
    Answer in = client.post("/sign-in/demo", "kitchen", "TARN", "account", owner, "to", "/");
    assertThat(in.header("location")).isEqualTo("/k/TARN/");
    assertThat(client.get("/k/TARN/audit").status()).isEqualTo(200);
  }

  @Test
  void whoBelongsToAnotherKitchenTooIsNoPersonOfTheDemo() {
    site.wiring().firstRun().fillDemo("TARN");
    String hill =
        new String(Demo.book(Site.DAY), StandardCharsets.UTF_8).replace("\"TARN\"", "\"HILL\"");
    site.importBook(hill.getBytes(StandardCharsets.UTF_8));
    House other = site.wiring().desk().find("HILL").orElseThrow();
    site.wiring().people().add(other, new People.Draft("tobias", "Tobias", "owner", ""), "test");
    String tobias =
        site.wiring().people().list(other.stand()).stream()
            .filter(one -> one.account().name().equals("tobias"))
            .map(one -> one.account().id().toString())
            .findFirst()
            .orElseThrow();
    Client client = site.stranger();
    assertThat(client.get("/sign-in").body()).contains("Wanda").doesNotContain(tobias);
    client.post("/sign-in/demo", "kitchen", "TARN", "account", tobias, "to", "/k/HILL/");
    assertThat(client.cookie("session")).isEmpty();
  }

  @Test
  void whoHasAPasswordIsNoPersonOfTheDemo() {
    site.wiring().firstRun().fillDemo("TARN");
    Staff.join(site, "ada", "owner");
    String ada =
        site.wiring().people().list(site.house().stand()).stream()
            .filter(one -> one.account().name().equals("ada"))
            .findFirst()
            .orElseThrow()
            .account()
            .id()
            .toString();
    Client client = site.stranger();
    assertThat(client.get("/sign-in").body()).doesNotContain(ada);
    client.post("/sign-in/demo", "kitchen", "TARN", "account", ada, "to", "/");
    assertThat(client.cookie("session")).isEmpty();
  }

  @Test
  void behindHttpsCookiesInsistOnItAndTheDemoIsShut() throws Exception {
    site.wiring().firstRun().fillDemo("TARN");
    Server.Options options =
        new Server.Options(
            "127.0.0.1", 0, Optional.empty(), Optional.empty(), true, true, Optional.empty());
    try (Server shut = site.wiring().server(options, "other-secret", new Opening(false, "other"))) {
      int port = shut.start();
      HttpRequest request =
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/sign-in")).build();
      HttpResponse<String> page =
          HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofString());
      assertThat(page.body()).doesNotContain("/sign-in/demo");
      assertThat(page.headers().allValues("set-cookie"))
          .isNotEmpty()
          .allSatisfy(
              cookie -> assertThat(cookie).contains("HttpOnly", "SameSite=Strict", "Secure"));
    }
  }

  @Test
  void theCookieOfASessionIsOutOfReachOfScriptsAndOtherSites() {
    Staff.join(site, "ada", "owner");
    Client client = site.stranger();
    client.get("/sign-in");
    Answer in = client.post("/sign-in", "name", "ada", "password", Staff.PASSWORD);
    List<String> session =
        in.headers().getOrDefault("set-cookie", List.of()).stream()
            .filter(cookie -> cookie.startsWith("session="))
            .toList();
    assertThat(session).hasSize(1);
    assertThat(session.get(0)).contains("HttpOnly", "SameSite=Strict", "Path=/");
  }

  @Test
  void noPageAndNoLineOfTheLogHoldsAPasswordOrAToken() {
    List<String> said = new CopyOnWriteArrayList<>();
    Handler listening = listening(said);
    Logger root = Logger.getLogger("");
    Level before = root.getLevel();
    root.addHandler(listening);
    root.setLevel(Level.INFO);
    List<String> secrets = new ArrayList<>(List.of(Staff.PASSWORD, "a wrong one of hers 77"));
    try {
      String code = Staff.invite(site, "ada", "owner");
      Client client = site.stranger();
      said.add(client.get("/sign-in").body());
      said.add(client.post("/invitation", "code", code, "password", Staff.PASSWORD).body());
      said.add(client.post("/sign-out").body());
      said.add(client.get("/sign-in").body());
      said.add(client.post("/sign-in", "name", "ada", "password", secrets.get(1)).body());
      Answer in = client.post("/sign-in", "name", "ada", "password", Staff.PASSWORD);
      assertThat(in.status()).as(in.text()).isEqualTo(303);
      said.add(in.body());
      secrets.add(client.cookie("session"));
      for (String page : List.of("", "me", "people", "audit", "log", "nothing", "api/v1/me")) {
        said.add(client.get("/k/TARN/" + page).body());
      }
      said.add(
          client
              .post("/k/TARN/me/password", "before", secrets.get(1), "after", Staff.PASSWORD)
              .body());
      secrets.add(code);
      said.add(client.get("/k/TARN/audit?kind=people").body());
      said.add(client.get("/k/TARN/api/v1/audit").body());
    } finally {
      root.removeHandler(listening);
      root.setLevel(before);
    }
    assertThat(secrets).hasSize(4).noneMatch(String::isEmpty);
    for (String secret : secrets) {
      assertThat(said.stream().filter(text -> text.contains(secret))).isEmpty();
    }
  }

  private static Handler listening(List<String> said) {
    Handler handler =
        new Handler() {
          @Override
          public void publish(LogRecord record) {
            said.add(record.getMessage() + " " + java.util.Arrays.toString(record.getParameters()));
          }

          @Override
          public void flush() {}

          @Override
          public void close() {}
        };
    handler.setLevel(Level.ALL);
    return handler;
  }
}
