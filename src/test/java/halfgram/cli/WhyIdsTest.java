package halfgram.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import halfgram.book.BookReader;
import halfgram.book.Reference;
import halfgram.measure.Because;
import halfgram.prep.KitchenBook;
import halfgram.prep.PlanRequest;
import halfgram.prep.Planning;
import halfgram.prep.PrepSheet;
import halfgram.words.Messages;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Every number of the JSON can be asked why, and the derivation tells the same number. */
class WhyIdsTest {
  private static KitchenBook book;
  private static PlanRequest request;
  private static JsonNode json;
  private static Because.Recording recording;

  @BeforeAll
  static void planTheDemoWeekend() throws IOException {
    book =
        new BookReader(Reference.load())
            .read(Path.of("db/demo/tarnholm.json"))
            .book()
            .orElseThrow();
    LocalDate saturday = LocalDate.of(2026, 12, 5);
    request = new PlanRequest(saturday, 2, book.kitchen().clock().start(saturday));
    PrepSheet sheet = Planning.plan(book, request, Because.NOT_ASKED);
    Messages messages = new Messages("en", ZoneOffset.UTC);
    json = JsonMapper.builder().build().readTree(new SheetJson(book, sheet, messages).write());
    recording = Because.recording();
    Planning.plan(book, request, recording);
  }

  @Test
  void everyNumberOfTheJsonHasAnId() {
    List<String> bare = new ArrayList<>();
    collectBareNumbers("$", json, bare);
    assertThat(bare).isEmpty();
  }

  @Test
  void everyIdHasADerivationThatTellsTheSameValue() {
    List<String> wrong = new ArrayList<>();
    int asked = 0;
    for (JsonNode number : numbers(json)) {
      String id = number.get("id").asText();
      Optional<Because.Note> note =
          recording.find(id.substring(request.prefix(book.kitchen().clock()).length() + 1));
      if (note.isEmpty()) {
        wrong.add(id + " has no derivation");
      } else if (!tells(note.get().value(), number)) {
        wrong.add(id + " is " + number + " but derived as " + note.get().value());
      }
      asked++;
    }
    assertThat(wrong).isEmpty();
    assertThat(asked).isGreaterThan(1500);
  }

  @Test
  void everyInputThatPointsOnPointsAtADerivation() {
    List<String> lost = new ArrayList<>();
    for (String path : recording.paths()) {
      for (Because.Input input : recording.find(path).orElseThrow().inputs()) {
        input
            .from()
            .filter(from -> recording.find(from).isEmpty())
            .ifPresent(from -> lost.add(path + " -> " + from));
      }
    }
    assertThat(lost).isEmpty();
  }

  private static boolean tells(String derived, JsonNode number) {
    if (number.has("at")) {
      OffsetDateTime at = OffsetDateTime.parse(number.get("at").asText());
      return derived.equals(at.toLocalDateTime().toString());
    }
    BigDecimal value = number.get("value").decimalValue();
    BigDecimal told = new BigDecimal(derived.split(" ", -1)[0]);
    BigDecimal near = value.abs().movePointLeft(3).max(new BigDecimal("0.001"));
    return told.subtract(value).abs().compareTo(near) <= 0;
  }

  private static List<JsonNode> numbers(JsonNode node) {
    List<JsonNode> found = new ArrayList<>();
    if (node.has("id")) {
      found.add(node);
    }
    node.forEach(child -> found.addAll(numbers(child)));
    return found;
  }

  private static void collectBareNumbers(String path, JsonNode node, List<String> bare) {
    if (node.isNumber()) {
      bare.add(path);
    }
    node.properties()
        .forEach(
            entry -> {
              boolean told = node.has("id") && entry.getKey().equals("value");
              if (!told) {
                collectBareNumbers(path + "." + entry.getKey(), entry.getValue(), bare);
              }
            });
    if (node.isArray()) {
      node.forEach(child -> collectBareNumbers(path + "[]", child, bare));
    }
  }
}
