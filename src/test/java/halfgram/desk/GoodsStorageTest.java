package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.util.OptionalLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Deliveries as kept, on H2; {@link GoodsStorageOnPostgresTest} is the same on PostgreSQL. */
class GoodsStorageTest {
  private Site site;

  Site open() {
    return Site.demo();
  }

  @BeforeEach
  void openSite() {
    site = open();
  }

  @AfterEach
  void closeSite() {
    site.close();
  }

  @Test
  void whatIsEnteredOfADeliveryIsAddedAndNeverTakenAway() {
    Deliveries deliveries = new Deliveries(site.wiring().desk());
    ObjectNode body = (ObjectNode) BookStore.parse(GREENS);
    deliveries.add(site.house(), body, "test");
    ObjectNode late = (ObjectNode) BookStore.parse("{\"kind\":\"late\",\"expected\":\"15:30\"}");
    late.put("entry", "0b8c7a3e-52f1-4c7d-9a16-3d2f5e6b7a80");
    deliveries.enter(site.house(), "greens", late, "test");
    Deliveries.Outcome again = deliveries.enter(site.house(), "greens", late, "test");
    assertThat(again).isInstanceOf(Deliveries.Saved.class);
    long seen = deliveries.find(site.house(), "greens").orElseThrow().change();
    body.put("supplier", "Oak Farm");
    deliveries.save(site.house(), OptionalLong.of(seen), body, "test");
    assertThat(export().at("/deliveries/0/entries")).hasSize(1);
    assertThat(export().at("/deliveries/0/supplier").asText()).isEqualTo("Oak Farm");
    String text = export().toString();
    ImportBook.Outcome imported = importText(text);
    assertThat(imported.problems()).isEmpty();
    assertThat(export().at("/deliveries/0")).isEqualTo(BookStore.parse(text).at("/deliveries/0"));
  }

  private static final String GREENS =
      """
      {"code":"greens","supplier":"Elm Farm","date":"2026-12-05","expected":"14:00",
       "lines":[{"ingredient":"kohlrabi","amount":"6 kg"}]}
      """;

  private ImportBook.Outcome importText(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return site.wiring().importBook().importBook(bytes, "test");
  }

  private ObjectNode export() {
    return site.wiring().desk().read(tx -> site.wiring().exportBook().export(tx, site.house()));
  }
}
