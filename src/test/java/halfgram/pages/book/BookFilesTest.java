package halfgram.pages.book;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Script;
import java.net.http.HttpRequest;
import org.junit.jupiter.api.Test;

/** The book and its tables as files, through the page: out, in, and everything wrong at once. */
class BookFilesTest extends OnBook {
  private static final String PLACE = BOOK + "/file";

  private final Script script = site.script();

  /** As a browser sends a form with a file. */
  private Answer bring(String what, String file) {
    return bring(what, file, "");
  }

  private Answer bring(String what, String file, String other) {
    String page = client.get(PLACE).body();
    assertThat(page).contains("enctype=\"multipart/form-data\"");
    String line = "----form-of-a-test";
    String body =
        part(line, "name=\"_csrf\"", client.token())
            + part(line, "name=\"what\"", what)
            + part(line, "name=\"other\"", other)
            + part(line, "name=\"file\"; filename=\"a file\"", file)
            + "--"
            + line
            + "--\r\n";
    return client.send(
        client
            .request(PLACE)
            .header("Content-Type", "multipart/form-data; boundary=" + line)
            .POST(HttpRequest.BodyPublishers.ofString(body)));
  }

  private static String part(String line, String of, String value) {
    return "--" + line + "\r\nContent-Disposition: form-data; " + of + "\r\n\r\n" + value + "\r\n";
  }

  private JsonNode book() {
    return script.get("book").body();
  }

  @Test
  void whatWasTakenOutComesBackTheSameAndWhatIsNewIsWritten() {
    assertThat(client.get(PLACE).body())
        .contains("href=\"/k/TARN/api/v1/book\"", "href=\"/k/TARN/api/v1/tables/pars\"")
        .contains("href=\"/k/TARN/api/v1/tables/log\"");
    JsonNode before = book();
    String file = client.get("/k/TARN/api/v1/book").body();
    assertThat(bring("book", file).text()).contains("Brought in: 0 rows written");
    for (String table : new String[] {"pars", "events", "event-services", "stock", "ingredients"}) {
      String csv = client.get("/k/TARN/api/v1/tables/" + table).body();
      assertThat(bring(table, csv).text()).as(table).contains("Brought in: 0 rows written");
    }
    assertThat(book()).isEqualTo(before);
    ObjectNode more = (ObjectNode) before.deepCopy();
    more.withArray("stations").addObject().put("code", "attic").put("name", "Attic");
    assertThat(bring("book", more.toString()).text()).contains("Brought in: 1 row written");
    assertThat(client.get(BOOK).text()).contains("Attic");
  }

  @Test
  void theBookOfAnotherKitchenComesInUnderTheCodeOfThisOne() {
    JsonNode before = book();
    ObjectNode other = (ObjectNode) before.deepCopy();
    ((ObjectNode) other.path("kitchen")).put("code", "HILL").put("name", "The hill");
    ((ObjectNode) other.path("kitchen")).put("zone", "Asia/Tokyo").put("lineCheck", "55 min");
    ((ObjectNode) other.at("/tubs/0")).put("code", "1205-91");
    assertThat(bring("book", other.toString()).status()).isEqualTo(422);
    assertThat(book()).isEqualTo(before);
    assertThat(bring("book", other.toString(), "yes").text()).contains("Brought in: 1 row written");
    ((ObjectNode) before.path("kitchen")).put("lineCheck", "55 min");
    assertThat(book()).isEqualTo(before);
    assertThat(bring("book", "{\"kitchen\": 3}", "yes").status()).isEqualTo(422);
    assertThat(bring("book", "no book", "yes").status()).isEqualTo(422);
  }

  @Test
  void aTubOfAFormulaThatCameAfterThePlanStandsInNobodysWay() {
    assertThat(client.get("/k/TARN/").text()).contains("Plan 1, in force");
    ObjectNode more = (ObjectNode) book().deepCopy();
    ObjectNode oil = null;
    for (JsonNode one : more.path("formulas")) {
      oil = one.path("code").asText().equals("dill-oil") ? one.deepCopy() : oil;
    }
    more.withArray("formulas").add(oil.put("code", "other-oil").put("name", "Other oil"));
    more.withArray("tubs")
        .addObject()
        .put("code", "1205-90")
        .put("component", "other-oil")
        .put("version", oil.path("versions").path(0).path("version").asInt())
        .put("left", "200 g")
        .put("made", "2026-12-05T08:00")
        .put("useBy", "2026-12-06T08:00");
    for (JsonNode one : more.path("events")) {
      if (one.path("code").asText().equals("harvest-dinner")) {
        ((ObjectNode) one.path("covers")).put("final", 97);
      }
    }
    assertThat(bring("book", more.toString()).text()).contains("Brought in: ");
    assertThat(client.get("/k/TARN/").text()).contains("Since this plan was made");
    for (String page : new String[] {"stock", "lanes", "wall/all", "slip/harvest-dinner"}) {
      assertThat(client.get("/k/TARN/" + page).status()).as(page).isEqualTo(200);
    }
  }

  @Test
  void everyProblemIsToldAtOnceAndNothingIsChanged() {
    JsonNode before = book();
    ObjectNode bad = (ObjectNode) before.deepCopy();
    ((ObjectNode) bad.at("/people/0")).putArray("stations").add("moon");
    ((ObjectNode) bad.at("/dishes/0/plate/0")).put("amount", "5 stone");
    ((ObjectNode) bad.path("kitchen")).put("code", "HILL");
    Answer refused = bring("book", bad.toString());
    assertThat(refused.status()).isEqualTo(422);
    assertThat(refused.text())
        .contains("Nothing was changed; 3 problems")
        .contains("$.people[0].stations[0] \"moon\": there is no such station")
        .contains("$.dishes[0].plate[0].amount", "$.kitchen.code \"HILL\"")
        .contains("is the code of another kitchen", "write TARN in its place");
    Answer rows = bring("pars", "service,component,output,mon\nnowhere,dill-oil,,1 g\nlunch,,,x\n");
    assertThat(rows.status()).isEqualTo(422);
    assertThat(rows.text()).contains("row 2, column service \"nowhere\"", "row 3, column mon");
    assertThat(bring("book", "{\"format\"").text())
        .contains("not whole and sound JSON", "Nothing was changed; 1 problem:");
    assertThat(bring("book", "").text()).contains("No file was chosen");
    assertThat(bring("moon", "{}").status()).isEqualTo(400);
    assertThat(book()).isEqualTo(before);
  }
}
