package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.DemoBook;
import halfgram.measure.Because;
import halfgram.testkit.BookText;
import halfgram.testkit.Seeds;
import halfgram.testkit.SheetLines;
import java.util.Iterator;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** A draft asks nothing: the sheet is the one of a book that does not have it at all. */
class DraftLawTest {
  private static final int SHORT = 60;

  @Test
  void aBookWithADraftPlansAsOneWithoutIt() {
    Seeds.over(
        SHORT,
        seed -> {
          Planned planned = Planned.of(seed);
          for (JsonNode event : planned.json().path("events")) {
            String code = event.path("code").asText();
            PrepSheet draft = planned.replanned(drafted(planned.json(), code)).sheet();
            PrepSheet without = planned.replanned(without(planned.json(), code)).sheet();
            assertThat(SheetLines.of(draft)).as(code).isEqualTo(SheetLines.of(without));
          }
        });
  }

  @Test
  void agreedItPlansAsOneThatNeverWasADraft() {
    Planned demo = demo();
    ObjectNode agreed = demo.json().deepCopy();
    agreed.path("events").forEach(event -> ((ObjectNode) event).remove("draft"));
    KitchenBook book = demo.book().agreed(Set.of("choir-supper"));
    PrepSheet sheet = Planning.plan(book, demo.request(), Because.NOT_ASKED);
    assertThat(SheetLines.of(sheet)).isEqualTo(SheetLines.of(demo.replanned(agreed).sheet()));
    assertThat(SheetLines.of(sheet)).isNotEqualTo(SheetLines.of(demo.sheet()));
  }

  @Test
  void whatTubsKeepForADraftIsFree() {
    Planned demo = demo();
    assertThat(kept(demo.book())).isTrue();
    assertThat(kept(BookText.read(drafted(demo.json(), "harvest-dinner")))).isFalse();
  }

  private static boolean kept(KitchenBook book) {
    return book.lots().stream()
        .flatMap(lot -> lot.reserved().stream())
        .anyMatch(one -> one.event().equals("harvest-dinner"));
  }

  private static Planned demo() {
    ObjectNode json = DemoBook.fresh().json();
    KitchenBook book = BookText.read(json);
    PlanRequest request =
        new PlanRequest(
            java.time.LocalDate.of(2026, 12, 5),
            1,
            book.kitchen().clock().start(java.time.LocalDate.of(2026, 12, 5)));
    PrepSheet sheet = Planning.plan(book, request, Because.NOT_ASKED);
    return new Planned(json, book, request, sheet);
  }

  private static ObjectNode drafted(ObjectNode json, String code) {
    ObjectNode book = json.deepCopy();
    for (JsonNode event : book.path("events")) {
      if (event.path("code").asText().equals(code)) {
        ((ObjectNode) event).put("draft", true);
      }
    }
    return book;
  }

  private static ObjectNode without(ObjectNode json, String code) {
    ObjectNode book = json.deepCopy();
    drop((ArrayNode) book.path("events"), "code", code);
    for (JsonNode tub : book.path("tubs")) {
      if (tub.path("reserved") instanceof ArrayNode reserved) {
        drop(reserved, "event", code);
      }
    }
    return book;
  }

  private static void drop(ArrayNode list, String key, String value) {
    for (Iterator<JsonNode> items = list.elements(); items.hasNext(); ) {
      if (items.next().path(key).asText().equals(value)) {
        items.remove();
      }
    }
  }
}
