package halfgram.api;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.testkit.Script.Answer;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** A tub keeps no longer than what really went into it is safe, whatever was planned. */
class InsideDatesTest extends OnDemo {
  private static final String BASE = "yoghurt-base/harvest-dinner/1/shear";
  private static final String DEVICE = "'device':'00000000-0000-4000-8000-000000000001'";
  private int sequence;

  /** With gates, and with char that keeps its looks for longer than it is safe. */
  @Override
  Site opened() {
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(GatesApiTest.gated(), StandardCharsets.UTF_8));
    for (JsonNode formula : book.path("formulas")) {
      if (formula.path("code").asText().matches("char-(portions|roasted)")) {
        ObjectNode hold = (ObjectNode) formula.at("/versions/0/outputs/0/hold");
        hold.put("why", "quality").put("max", "9 d");
      }
    }
    Site started = Site.empty();
    started.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
    return started;
  }

  @Test
  void anOlderTubThanThePlanKnewOfCounts() {
    freshOil();
    assertThat(script.post("stock", oil("2026-12-02T08:00")).status()).isEqualTo(201);
    JsonNode fresh = tub("dill-oil", "2026-12-05T08:00");
    script.post("stock/" + fresh.path("code").asText() + "/bin", "{'reason':'dropped'}");
    assertThat(filled(BASE).path("useBy").asText()).startsWith("2026-12-05T23:59");
  }

  @Test
  void withFreshTubsItsOwnHoldEndsFirst() {
    freshOil();
    assertThat(filled(BASE).path("useBy").asText()).startsWith("2026-12-07T11:00");
  }

  @Test
  void whatWasMadeInPartsKeepsFromWhenAllShouldHaveBeenDone() {
    freshOil();
    String part =
        "{'task':'%s','kind':'part-done','cook':'ines','amount':'1 kg',%s,'sequence':801}"
            .formatted(BASE, DEVICE);
    assertThat(script.post("ticks", part).status()).isEqualTo(201);
    site.setClock(Site.at("15:00"));
    assertThat(filled(BASE).path("useBy").asText()).startsWith("2026-12-07T11:34");
  }

  @Test
  void whatKeepsForQualityAndHasSomethingInItThatEndsForSafetyCounts() {
    String roast = first("char-roasted/", "/roast");
    String portions =
        "{'component':'char-portions','left':'40 kg','made':'2026-12-04T10:00',"
            + "'useBy':'2026-12-05T10:00','sure':true}";
    assertThat(script.post("stock", portions).status()).isEqualTo(201);
    assertThat(filled(roast).path("useBy").asText()).startsWith("2026-12-05T10:00");
  }

  @Test
  void whatWasAddedAtAGateCounts() {
    freshOil();
    String stock =
        "{'component':'pea-stock','output':'stock','left':'2 kg','made':'2026-12-02T11:00'}";
    assertThat(script.post("stock", stock).status()).isEqualTo(201);
    String added =
        "{'task':'"
            + BASE
            + "','cook':'marit','verdict':'adjust',"
            + DEVICE
            + ",'sequence':901,'added':[{'item':'pea-stock','amount':'30 g'}]}";
    assertThat(script.post("gates", added).status()).isEqualTo(201);
    assertThat(filled(BASE).path("useBy").asText()).startsWith("2026-12-06T11:00");
  }

  /** All the oil there is was made this morning, and the plan counts on it. */
  private void freshOil() {
    for (JsonNode tub : script.get("stock").body().path("tubs")) {
      if (tub.path("component").asText().equals("dill-oil")) {
        script.post("stock/" + tub.path("code").asText() + "/bin", "{'reason':'dropped'}");
      }
    }
    assertThat(script.post("stock", oil("2026-12-05T08:00")).status()).isEqualTo(201);
    long facts = script.get("today").body().path("facts").asLong();
    Answer accepted = script.post("plan", "{'day':'2026-12-05','facts':" + facts + "}");
    assertThat(accepted.status()).isBetween(200, 201);
  }

  private static String oil(String made) {
    return "{'component':'dill-oil','left':'4 kg','made':'" + made + "','sure':true}";
  }

  private JsonNode tub(String component, String made) {
    for (JsonNode tub : script.get("stock").body().path("tubs")) {
      if (tub.path("component").asText().equals(component)
          && tub.path("made").asText().startsWith(made)) {
        return tub;
      }
    }
    throw new AssertionError(component + " of " + made);
  }

  private String first(String start, String end) {
    return site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
        .map(task -> task.id())
        .filter(id -> id.startsWith(start) && id.endsWith(end))
        .findFirst()
        .orElseThrow();
  }

  /** The first tub that a task fills when it is done. */
  private JsonNode filled(String task) {
    String go =
        "{'task':'"
            + task
            + "','cook':'marit','verdict':'go',"
            + DEVICE
            + ",'sequence':902,'said':{'taste':'right','texture':'right'}}";
    script.post("gates", go);
    String done =
        "{'task':'"
            + task
            + "','kind':'done','cook':'ines','sure':true,"
            + DEVICE
            + ",'sequence':"
            + ++sequence
            + "}";
    Answer answer = script.post("ticks", done);
    assertThat(answer.status()).as(answer.body().toString()).isEqualTo(201);
    return script.get("stock/" + answer.body().at("/tubs/0").asText()).body();
  }
}
