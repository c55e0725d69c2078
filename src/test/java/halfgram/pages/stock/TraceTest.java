package halfgram.pages.stock;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.lot.LedgerStore;
import halfgram.lot.Tub;
import halfgram.prep.Task;
import halfgram.testkit.Client;
import halfgram.testkit.Client.Answer;
import halfgram.testkit.Site;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A tub says of which tubs it was made, and those say where they went, as a recall asks. */
class TraceTest {

  private Site site;
  private Client client;
  private List<Task> powder;

  @BeforeEach
  void open() {
    site = Site.demo();
    client = site.client();
    powder =
        site.wiring().plans().open(site.house(), Site.DAY, "test").sheet().tasks().stream()
            .filter(one -> one.make().version().formula().equals("dill-oil-powder"))
            .toList();
    client.get("/k/TARN/wall/cold");
    client.post("/k/TARN/wall/cook", "station", "cold", "person", "ines");
  }

  @AfterEach
  void close() {
    site.close();
  }

  @Test
  void aTubIsFollowedIntoWhatWasMadeOfItAndBack() {
    Tub oil = tub("dill-oil");
    assertThat(page(oil).text()).doesNotContain("Went into", "Made of");
    powder.forEach(task -> press(task, "DONE"));
    Tub made = tub("dill-oil-powder");
    assertThat(page(oil).text()).contains("Went into", "owder " + made.lot().code());
    assertThat(page(made).text()).contains("Made of", "Dill oil " + oil.lot().code());
    assertThat(page(made).body()).contains("href=\"/k/TARN/stock/" + oil.lot().code() + "\"");
    assertThat(codes(made, "madeOf")).contains(oil.lot().code());
    assertThat(codes(oil, "wentInto")).contains(made.lot().code());
    assertThat(codes(oil, "madeOf")).isEmpty();
  }

  @Test
  void whatWasTakenBackWentNowhere() {
    Tub oil = tub("dill-oil");
    press(powder.get(0), "DONE");
    assertThat(makesUsing(oil)).containsExactly(powder.get(0).make().id());
    String tick =
        client
            .get("/k/TARN/wall/cold?task=" + Client.encoded(powder.get(0).id()))
            .all("name=\"undoes\" value=\"([0-9a-f-]{36})\"")
            .get(0);
    press(powder.get(0), "UNDO", "undoes", tick);
    assertThat(makesUsing(oil)).isEmpty();
  }

  @Test
  void whatAServiceWasAssumedToUseIsToldByItsName() {
    Tub oil = tub("dill-oil");
    site.setClock(Site.at("09:00").plusSeconds(24 * 3600));
    client.get("/k/TARN/");
    assertThat(page(oil).text())
        .contains("used, assumed", "Lunch, Saturday 5 December")
        .doesNotContain("lunch.2026-12-05");
  }

  private Tub tub(String formula) {
    return site.wiring().stock().list(site.house()).stream()
        .filter(one -> one.lot().component().formula().equals(formula))
        .findFirst()
        .orElseThrow();
  }

  private Answer page(Tub tub) {
    return client.get("/k/TARN/stock/" + tub.lot().code());
  }

  /** The same as a script is told it. */
  private List<String> codes(Tub tub, String field) {
    List<String> codes = new ArrayList<>();
    JsonNode life = site.script().get("stock/" + tub.lot().code()).body();
    life.path(field).forEach(code -> codes.add(code.asText()));
    return codes;
  }

  private List<String> makesUsing(Tub tub) {
    return site.wiring()
        .desk()
        .read(tx -> new LedgerStore().listMakesUsing(tx, site.house().id(), tub.id()));
  }

  private void press(Task task, String kind, String... more) {
    List<String> fields = new ArrayList<>();
    fields.addAll(List.of("station", "cold", "task", task.id(), "kind", kind));
    fields.addAll(List.of("sequence", String.valueOf(Site.sequence())));
    fields.addAll(List.of(more));
    Answer answer = client.post("/k/TARN/tick", fields.toArray(String[]::new));
    assertThat(answer.status()).as(kind + " " + answer.text()).isEqualTo(303);
  }
}
