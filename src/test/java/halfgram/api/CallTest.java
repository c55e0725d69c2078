package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.net.http.HttpRequest;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Who may call the API, and with what. */
class CallTest {
  private static final String BIN = "/k/TARN/api/v1/stock/t-1202-oil/bin";
  private static final String REASON = "{\"reason\":\"old\"}";

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
  void pagesGiveCookiesAndTheApiGivesNone() {
    assertThat(site.client().get("/k/TARN/stock").header("set-cookie")).contains("HttpOnly");
    for (String rest : new String[] {"stock", "stock/none", "nothing-here", "../../NOPE/api/v1"}) {
      assertThat(site.client().get("/k/TARN/api/v1/" + rest).header("set-cookie"))
          .as(rest)
          .isEmpty();
    }
  }

  @Test
  void aPageOfAnotherSiteCannotCall() {
    for (String[] header :
        new String[][] {{"Sec-Fetch-Site", "cross-site"}, {"Origin", "http://elsewhere.test"}}) {
      Answer answer = send("application/json", REASON, header);
      assertThat(answer.status()).as(header[0]).isEqualTo(403);
      assertThat(answer.body()).contains("\"kind\":\"bad-input\"");
    }
    assertThat(isThere()).isTrue();
  }

  @Test
  void whatAFormCanSendIsNoCall() {
    for (String type :
        new String[] {"text/plain", "application/x-www-form-urlencoded", "multipart/form-data"}) {
      assertThat(send(type, REASON, "X-Any", "1").status()).as(type).isEqualTo(400);
    }
    assertThat(isThere()).isTrue();
  }

  @Test
  void aCallOfTwoMegabytesIsRefusedAndABookOfThatSizeIsRead() {
    String large = "{\"reason\":\"" + "x".repeat(2 * 1024 * 1024) + "\"}";
    Answer answer = client.json("POST", BIN, large);
    assertThat(answer.status()).isEqualTo(413);
    assertThat(answer.body()).contains("more than 1024 KB");
    assertThat(client.json("POST", "/k/TARN/api/v1/book", large).status()).isEqualTo(422);
    assertThat(isThere()).isTrue();
  }

  @Test
  void aFormulaCalledApiIsStillAPage() {
    client.get("/k/TARN/stock");
    Answer answer = client.post("/k/TARN/formulas/api/edit", "act", "save");
    assertThat(answer.status()).isEqualTo(404);
    assertThat(answer.header("content-type")).startsWith("text/html");
  }

  private Answer send(String type, String body, String... header) {
    return client.send(
        client
            .request(BIN)
            .header("Content-Type", type)
            .header(header[0], header[1])
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  private static boolean isThere() {
    return site.wiring().stock().list(site.house()).stream()
        .anyMatch(tub -> tub.lot().code().equals("t-1202-oil"));
  }
}
