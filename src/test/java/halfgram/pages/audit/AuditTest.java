package halfgram.pages.audit;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.FilledForm;
import halfgram.testkit.Script;
import halfgram.testkit.Site;
import halfgram.testkit.Staff;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Who changed what, when, from where, what it was and what it is. */
class AuditTest {
  private Site site;
  private Client client;
  private Script script;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    script = site.script();
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aFormulaIsToldFieldByFieldWithTheVersionBefore() {
    ObjectNode formula = (ObjectNode) script.get("formulas/dill-oil").body().path("formula");
    ((ObjectNode) formula.at("/versions/0")).put("note", "drips longer");
    formula.put("name", "Green oil");
    script.sent("PUT", "formulas/dill-oil?seen=1", formula.toString());
    JsonNode row = script.get("audit?kind=formula").body().at("/changes/0");
    assertThat(row.path("subject").asText()).isEqualTo("dill-oil");
    assertThat(row.path("via").asText()).isEqualTo("call");
    assertThat(row.path("account").asText()).isEqualTo("office");
    assertThat(row.path("address").asText()).isEqualTo("127.0.0.1");
    assertThat(field(row, "version")).isEqualTo("1 > 2");
    assertThat(field(row, "note")).endsWith("> drips longer");
    assertThat(row.path("whole").asBoolean()).isTrue();
    assertThat(client.get("/k/TARN/audit").text()).contains("drips longer", "by a script");
  }

  @Test
  void anEventIsToldWithWhatItWasAndWhatItIs() {
    long seen = script.get("events/terrace").body().path("change").asLong();
    script.put("events/terrace/covers?seen=" + seen, "{'final':30}");
    JsonNode row = script.get("audit?kind=event").body().at("/changes/0");
    assertThat(field(row, "covers.final")).endsWith("> 30");
    long now = script.get("events/terrace").body().path("change").asLong();
    script.delete("events/terrace?seen=" + now);
    JsonNode gone = script.get("audit?kind=event").body().at("/changes/0");
    assertThat(field(gone, "covers.final")).isEqualTo("30 > ");
  }

  @Test
  void aParAPersonAndAnImportAreToldToo() {
    client.get("/k/TARN/people");
    client.post("/k/TARN/people", "name", "gwyn", "shown", "Eve", "role", "cook", "person", "");
    String id = client.get("/k/TARN/people").all("/people/([0-9a-f-]{36})/invite").get(0);
    client.post("/k/TARN/people/" + id, "role", "viewer", "person", "");
    JsonNode people = script.get("audit?kind=people").body();
    assertThat(field(people.at("/changes/0"), "role")).isEqualTo("cook > viewer");
    assertThat(people.at("/changes/0/via").asText()).isEqualTo("page");
    assertThat(field(people.at("/changes/1"), "name")).isEqualTo(" > Eve");

    ObjectNode book = (ObjectNode) script.get("book").body();
    ((ObjectNode) book.at("/events/0")).put("name", "Feast of lanterns");
    ((ObjectNode) book.path("kitchen")).put("lineCheck", "7 min");
    ObjectNode diet = ((ObjectNode) book.at("/stations/0")).deepCopy();
    book.withArray("stations").add(diet.put("code", "attic").put("name", "Attic"));
    script.sent("POST", "book", book.toString());
    JsonNode brought = script.get("audit?kind=import").body().at("/changes/0");
    String event = book.at("/events/0/code").asText();
    assertThat(field(brought, "events[" + event + "].name")).endsWith("> Feast of lanterns");
    assertThat(field(brought, "kitchen.lineCheck")).endsWith("> 7 min");
    assertThat(field(brought, "stations[attic].code")).isEqualTo(" > attic");
    assertThat(brought.path("fields").size()).as("nothing that stayed").isLessThan(12);
    assertThat(brought.path("whole").asBoolean()).isTrue();
  }

  @Test
  void whatWasDoneToATubIsSaidInWords() {
    String tub = "/k/TARN/stock/t-1203-oil-1";
    FilledForm form = FilledForm.of(client.get(tub), "/split");
    assertThat(client.post(tub + "/split", form.with("amount", "100 g").fields()).status())
        .isEqualTo(303);
    assertThat(client.get("/k/TARN/audit?kind=stock").text())
        .contains("split", "mass")
        .doesNotContain("SPLIT", "MASS");
  }

  @Test
  void theFirstImportSaysWhereTheLogWasTooSmall() {
    JsonNode first = script.get("audit?kind=import").body().at("/changes/0");
    assertThat(first.path("fields").size()).isGreaterThan(100);
    assertThat(first.path("whole").asBoolean()).isFalse();
    assertThat(client.get("/k/TARN/audit").text()).contains("keeps only a part");
    assertThat(script.get("log?kind=import").body().at("/entries/0/detail").has("items")).isFalse();
  }

  @Test
  void itIsNarrowedByWhatWhoWhichAndWhenAndComesInParts() {
    script.get("today");
    script.post("stock/t-1203-oil-1/count", "{'amount':'400 g'}");
    site.passTime(Duration.ofDays(1));
    script.post("stock/t-1203-oil-1/count", "{'amount':'300 g'}");
    assertThat(changes("audit?subject=1203-OIL")).hasSize(2);
    assertThat(changes("audit?subject=1203-oil&from=2026-12-06")).hasSize(1);
    assertThat(changes("audit?subject=1203-oil&to=2026-12-05")).hasSize(1);
    assertThat(changes("audit?who=OFF&kind=stock")).hasSize(2);
    assertThat(changes("audit?who=nobody")).isEmpty();
    assertThat(changes("audit?subject=%25")).as("no pattern").isEmpty();
    List<JsonNode> whole = changes("audit");
    List<JsonNode> parts = new ArrayList<>(changes("audit?limit=2"));
    parts.addAll(changes("audit?after=" + parts.get(1).path("number").asText()));
    assertThat(parts).isEqualTo(whole);
    assertThat(script.get("audit?kind=weather").status()).isEqualTo(400);
    Answer wrong = client.get("/k/TARN/audit?from=soon");
    assertThat(wrong.status()).isEqualTo(422);
    assertThat(wrong.body()).contains("YYYY-MM-DD", "value=\"soon\"");
  }

  @Test
  void theFileHasALineForEveryField() {
    client.get("/k/TARN/people");
    client.post("/k/TARN/people", "name", "gwyn", "shown", "=1+1", "role", "cook", "person", "");
    String page = client.get("/k/TARN/audit?kind=people&who=office").body();
    assertThat(page).contains("api/v1/audit.csv?kind=people&amp;who=office");
    String file = script.text("audit.csv?kind=people&who=office");
    assertThat(file.lines().toList().get(0))
        .isEqualTo("number,at,who,account,via,address,kind,subject,field,before,after");
    assertThat(file).contains(",page,127.0.0.1,people,gwyn,role,,cook", "name,,'=1+1");
  }

  @Test
  void thoseWhoReadTheLogSeeNothingOfIt() {
    Staff.invite(site, "gwyn", "cook");
    assertThat(client.get("/k/TARN/log").text()).doesNotContain("gwyn");
    assertThat(script.get("log").body().findValuesAsText("kind")).doesNotContain("people");
    assertThat(script.get("log?kind=people").status()).isEqualTo(400);
    Staff.join(site, "cleo", "chef");
    Client chef = Staff.signedIn(site, "cleo");
    assertThat(chef.get("/k/TARN/audit").status()).isEqualTo(403);
    assertThat(chef.get("/k/TARN/").body()).doesNotContain("/k/TARN/audit");
  }

  @Test
  void nothingTakesALineOutOfTheLogOrAltersOne() throws IOException {
    List<Path> wrong;
    try (Stream<Path> java = Files.walk(Path.of("src", "main", "java"));
        Stream<Path> sql = Files.walk(Path.of("db"))) {
      wrong =
          Stream.concat(java, sql)
              .filter(Files::isRegularFile)
              .filter(AuditTest::touchesTheLog)
              .toList();
    }
    assertThat(wrong).isEmpty();
  }

  private static boolean touchesTheLog(Path file) {
    try {
      String text = Files.readString(file).replaceAll("\\s+", " ");
      return text.matches("(?s).*\\b(update|deleteFrom|delete|mergeInto|truncate)\\( ?CHANGE_LOG.*")
          || text.matches(
              "(?is).*\\b(delete from|update|truncate table|drop table) change_log\\b.*");
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private List<JsonNode> changes(String rest) {
    List<JsonNode> changes = new ArrayList<>();
    script.get(rest).body().path("changes").forEach(changes::add);
    return changes;
  }

  /** "before > after" of a field; it must be there. */
  private static String field(JsonNode row, String path) {
    for (JsonNode one : row.path("fields")) {
      if (one.path("path").asText().equals(path)) {
        return one.path("before").asText() + " > " + one.path("after").asText();
      }
    }
    throw new AssertionError("no field " + path + " in " + row);
  }
}
