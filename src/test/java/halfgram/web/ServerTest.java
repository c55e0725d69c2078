package halfgram.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import halfgram.testkit.Client;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.net.http.HttpRequest;
import java.util.List;
import org.jooq.exception.DataAccessException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** What every request passes through, whatever the page. */
class ServerTest {
  private static Site site;
  private final Client client = site.client();

  @BeforeAll
  static void open() {
    site = Site.demo();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void oneKitchenIsEnteredStraightAway() {
    Client.Answer answer = client.get("/");
    assertThat(answer.status()).isEqualTo(303);
    assertThat(answer.header("location")).isEqualTo("/k/TARN/");
  }

  @Test
  void aKitchensAddressWithoutItsClosingSlashLeadsToIt() {
    Client.Answer answer = client.get("/k/TARN");
    assertThat(answer.status()).isEqualTo(302);
    assertThat(answer.header("location")).isEqualTo("/k/TARN/");
    assertThat(client.get("/k/TARN?date=2026-12-05").header("location"))
        .isEqualTo("/k/TARN/?date=2026-12-05");
    assertThat(client.get("/k/NOPE").header("location")).isEqualTo("/k/NOPE/");
  }

  @Test
  void anUnknownKitchenIsNotFoundAndSoIsAnUnknownPage() {
    assertThat(client.get("/k/NOPE/").status()).isEqualTo(404);
    Client.Answer answer = client.get("/k/TARN/nothing-here");
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.header("content-type")).startsWith("text/html;").contains("utf-8");
    assertThat(answer.text()).contains("Nothing here is called /k/TARN/nothing-here.");
  }

  @Test
  void anAddressThatIsNoTextIsAnsweredByAPageOfOurs() {
    List<String> paths = List.of("/k/TARN/%ff", "/k/TARN/stock/%c3%28", "/%ff", "/k/TARN/%c3");
    for (String path : paths) {
      Client.Answer answer = client.get(path);
      assertThat(answer.status()).as(path).isEqualTo(400);
      assertThat(answer.text()).contains("That cannot be read: " + path);
      assertThat(answer.header("content-security-policy")).contains("default-src 'self'");
    }
    assertThat(client.get("/k/%ff/").status()).isEqualTo(404);
    assertThat(client.get("/k/TARN/formulas/cr%C3%A8me").status()).isEqualTo(404);
    Client.Answer call = client.json("GET", "/k/TARN/api/v1/stock/%ff", "");
    assertThat(call.status()).isEqualTo(400);
    assertThat(call.header("content-type")).startsWith("application/json");
    assertThat(call.body()).contains("\"kind\":\"bad-input\"", "/api/v1/stock/%ff");
  }

  @Test
  void whatIsNoTextInAFieldIsAnsweredInWords() {
    client.get("/k/TARN/");
    Client.Answer form = client.post("/k/TARN/stock/t-1204-pulp/bin", "reason", "off\0");
    assertThat(form.status()).isEqualTo(400);
    assertThat(form.text()).contains("That cannot be read: reason=NUL");
    assertThat(client.get("/k/TARN/label?tub=%00").status()).isEqualTo(400);
    assertThat(client.post("/sign-in", "name", "a\0", "password", "b").status()).isEqualTo(400);
    for (String body : List.of("{'note':'a\\u0000'}", "{'kind':['a\\u0000']}", "{'\\u0000':1}")) {
      Client.Answer call = client.json("POST", "/k/TARN/api/v1/ticks", body.replace('\'', '"'));
      assertThat(call.status()).as(body).isEqualTo(400);
    }
  }

  @Test
  void aToneOrALanguageThereIsNotIsAnsweredInWords() {
    client.get("/k/TARN/");
    String endless = "x".repeat(20_000);
    assertThat(client.post("/k/TARN/tone", "tone", endless).status()).isEqualTo(400);
    Client.Answer answer = client.post("/k/TARN/language", "language", endless);
    assertThat(answer.status()).isEqualTo(400);
    assertThat(answer.text()).contains("language=en|es|fr");
  }

  @Test
  void anAddressThatIsNoTextIsSaidToACookInTheirLanguage() {
    Staff.join(site, "ola", "cook");
    Client cook = Staff.signedIn(site, "ola").withCookie("language", "fr");
    assertThat(cook.get("/k/TARN/wall/%ff").text()).contains("Cela ne se lit pas");
  }

  @Test
  void pagesAllowNothingInlineAndNoFrames() {
    Client.Answer page = client.get("/k/TARN/");
    assertThat(page.header("content-security-policy"))
        .contains("default-src 'self'")
        .contains("frame-ancestors 'none'")
        .doesNotContain("unsafe");
    assertThat(page.body())
        .doesNotContain("<style")
        .doesNotContain(" style=")
        .doesNotContain("onclick=");
    assertThat(page.header("cache-control")).isEqualTo("no-store");
    assertThat(page.header("x-content-type-options")).isEqualTo("nosniff");
  }

  @Test
  void assetsCarryTheirHashAndAreKeptForGood() {
    String css = client.get("/k/TARN/").all("href=\"(/assets/css/base[^\"]+)\"").get(0);
    assertThat(css).matches("/assets/css/base\\.[0-9a-f]{10}\\.css");
    Client.Answer kept = client.get(css);
    assertThat(kept.status()).isEqualTo(200);
    assertThat(kept.header("cache-control")).contains("immutable");
    assertThat(client.get(css.replaceAll("[0-9a-f]{10}", "0123456789")).status()).isEqualTo(404);
  }

  @Test
  void bigAnswersAreCompressedAndSayThatTheyVary() {
    Client.Answer page =
        client.send(client.request("/k/TARN/").header("Accept-Encoding", "gzip").GET());
    assertThat(page.header("content-encoding")).isEqualTo("gzip");
    assertThat(page.header("vary")).contains("Accept-Encoding");
  }

  @Test
  void aFormWithoutItsPagesTokenChangesNothing() {
    client.get("/k/TARN/");
    Client.Answer answer =
        client.send(
            client
                .request("/k/TARN/tone")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString("_csrf=wrong&tone=night")));
    assertThat(answer.status()).isEqualTo(403);
    assertThat(answer.text()).contains("Nothing was changed");
  }

  @Test
  void anotherSitesPageCannotActHere() {
    client.get("/k/TARN/");
    for (String[] header :
        new String[][] {{"Sec-Fetch-Site", "cross-site"}, {"Origin", "http://elsewhere.test"}}) {
      Client.Answer answer =
          client.send(
              client
                  .request("/k/TARN/tone")
                  .header("Content-Type", "application/x-www-form-urlencoded")
                  .header(header[0], header[1])
                  .POST(
                      HttpRequest.BodyPublishers.ofString(
                          "_csrf=" + client.token() + "&tone=night")));
      assertThat(answer.status()).as(header[0]).isEqualTo(403);
    }
  }

  @Test
  void aFormOfTenMegabytesIsRefusedInSoManyWords() {
    client.get("/k/TARN/");
    Client.Answer answer = client.post("/k/TARN/tone", "tone", "x".repeat(10 * 1024 * 1024));
    assertThat(answer.status()).isEqualTo(413);
    assertThat(answer.text()).contains("more than 1024 KB");
  }

  @Test
  void theToneIsRememberedByTheBrowser() {
    client.get("/k/TARN/");
    Client.Answer page = client.postAndFollow("/k/TARN/tone", "tone", "night", "here", "/k/TARN/");
    assertThat(page.body()).contains("data-tone=\"night\"");
  }

  @Test
  void afterAPressNobodyIsSentToAnotherSite() {
    client.get("/k/TARN/");
    Client.Answer answer =
        client.post("/k/TARN/tone", "tone", "day", "here", "//elsewhere.test/k/TARN/");
    assertThat(answer.header("location")).isEqualTo("/k/TARN/");
  }

  @Test
  void aCommandNeedsTheSecretOfTheDataFolder() {
    Client.Answer answer = client.json("POST", "/command", "{\"args\":[\"--help\"]}");
    assertThat(answer.status()).isEqualTo(404);
  }

  @Test
  void healthSaysWhetherTheDatabaseAnswers() {
    assertThat(client.get("/health/live").body()).isEqualTo("ok");
    assertThat(client.get("/health/ready").status()).isEqualTo(200);
  }

  @Test
  void whereNothingCanBeKeptItSaysSoAndWhatToDo() {
    Site lost = Site.demo();
    Client client = lost.client();
    client.get("/k/TARN/");
    // What H2 does of its own accord when its disk takes nothing any more.
    assertThatThrownBy(
            () -> lost.wiring().desk().read(tx -> tx.sql().execute("shutdown immediately")))
        .isInstanceOf(DataAccessException.class);
    Client.Answer page = client.get("/k/TARN/wall/cold");
    assertThat(page.status()).isEqualTo(500);
    assertThat(page.text())
        .contains("Nothing can be kept now", "Write on paper", "goes on by itself");
    Client.Answer press = client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
    assertThat(press.status()).isEqualTo(500);
    assertThat(press.text()).contains("Nothing can be kept now");
    assertThat(lost.stranger().get("/health/ready").status()).isEqualTo(503);
    lost.close();
  }
}
