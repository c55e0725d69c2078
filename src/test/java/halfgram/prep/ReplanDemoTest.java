package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Because;
import halfgram.testkit.BookText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The demo Saturday at four: everybody kept to the sheet, and the harvest dinner grows. */
class ReplanDemoTest {
  private static final LocalDate SATURDAY = LocalDate.of(2026, 12, 5);
  private static ObjectNode json;
  private static Instant four;
  private static PrepSheet inForce;
  private static List<Begun> begun;
  private static PrepSheet same;
  private static PrepSheet grown;

  @BeforeAll
  static void replanAtFour() throws IOException {
    json =
        (ObjectNode)
            JsonMapper.builder()
                .build()
                .readTree(Files.readString(Path.of("db/demo/tarnholm.json")));
    KitchenBook book = BookText.read(json);
    four = book.kitchen().clock().at(SATURDAY, LocalTime.of(16, 0));
    PlanRequest morning = new PlanRequest(SATURDAY, 1, book.kitchen().clock().start(SATURDAY));
    inForce = Planning.plan(book, morning, Because.NOT_ASKED);
    begun = Began.until(inForce, four);
    same = replan(84);
    grown = replan(97);
  }

  /** The sheet at four for so many guests, of the book as its ledger has it by then. */
  private static PrepSheet replan(int covers) {
    ObjectNode changed = json.deepCopy();
    for (JsonNode event : changed.withArray("events")) {
      if (event.get("code").asText().equals("harvest-dinner")) {
        ((ObjectNode) event.get("covers")).put("final", covers);
      }
    }
    KitchenBook book = Began.kept(BookText.read(changed), inForce, begun, four);
    return Planning.plan(book, new PlanRequest(SATURDAY, 1, four), begun, Because.NOT_ASKED);
  }

  @Test
  void someIsFinishedAndSomeUnderWay() {
    assertThat(begun).anyMatch(Begun::finished).anyMatch(of -> !of.finished());
  }

  @Test
  void withNoNewsThereIsNoNewWork() {
    Difference none = Difference.of(inForce, same);
    assertThat(none.touched()).isEmpty();
    assertThat(none.services()).isEmpty();
    assertThat(none.added()).extracting(Task::id).isEmpty();
    assertThat(none.withdrawn()).extracting(Task::id).isEmpty();
    assertThat(none.changed()).extracting(change -> change.to().id()).isEmpty();
  }

  @Test
  void thirteenMoreGuestsOnlyAddWork() {
    Difference more = Difference.of(inForce, grown);
    assertThat(more.touched()).isEmpty();
    assertThat(more.added()).isNotEmpty();
    // What has not begun may be pooled for another service first, and then has another id.
    assertThat(more.added().stream().map(ReplanDemoTest::work).toList())
        .containsAll(more.withdrawn().stream().map(ReplanDemoTest::work).toList());
    for (Begun of : begun) {
      assertThat(grown.makes().contains(of.make())).as(of.make().id()).isTrue();
    }
    for (Difference.Made made : more.made()) {
      assertThat(made.to()).as(made.formula()).isGreaterThanOrEqualTo(made.from());
    }
    List<Difference.Service> services = more.services();
    assertThat(services)
        .extracting(of -> of.to().orElseThrow().id())
        .containsExactly("harvest-dinner");
  }

  private static String work(Task task) {
    return task.version().formula() + "/" + task.step().code() + "/" + task.kind();
  }

  @Test
  void nothingIsMadeOrDrawnForLessThanAMicrogram() {
    for (PrepSheet sheet : List.of(same, grown)) {
      assertThat(sheet.draws())
          .allMatch(draw -> draw.amount().number().compareTo(Planned.MICROGRAM) >= 0);
      assertThat(sheet.makes())
          .allMatch(make -> make.wanted().number().compareTo(Planned.MICROGRAM) >= 0);
    }
  }

  @Test
  void noIdIsGivenTwice() {
    assertThat(grown.tasks()).extracting(Task::id).doesNotHaveDuplicates();
    assertThat(grown.makes()).extracting(Make::id).doesNotHaveDuplicates();
  }
}
