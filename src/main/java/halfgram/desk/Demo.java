package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.measure.BusinessDay;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * The demo kitchen, dated from today: every date of its book is moved by as many days as lie
 * between its Saturday and today, and its week is turned likewise, so that today is always its full
 * day.
 */
public final class Demo {
  private static final LocalDate SATURDAY = LocalDate.of(2026, 12, 5);
  private static final Pattern DATE = Pattern.compile("\\d{4}-\\d\\d-\\d\\d(T.*)?");
  private static final List<String> WEEK = List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

  private final long days;

  private Demo(LocalDate today) {
    this.days = ChronoUnit.DAYS.between(SATURDAY, today);
  }

  /** The demo book for the business day at a moment, by the demo kitchen's own clock. */
  public static byte[] book(Instant now) {
    JsonNode kitchen = stored().path("kitchen");
    ZoneId zone = ZoneId.of(kitchen.path("zone").asText());
    LocalTime dayStart = LocalTime.parse(kitchen.path("dayStart").asText());
    return book(new BusinessDay(zone, dayStart).of(now));
  }

  /** The demo book for a day. */
  public static byte[] book(LocalDate today) {
    return new Demo(today).moved(stored()).toString().getBytes(StandardCharsets.UTF_8);
  }

  private static JsonNode stored() {
    try (InputStream stream = Demo.class.getResourceAsStream("/db/demo/tarnholm.json")) {
      if (stream == null) {
        throw new IllegalStateException("the program lacks its demo book");
      }
      return BookStore.parse(new String(stream.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private JsonNode moved(JsonNode node) {
    if (node instanceof ObjectNode object) {
      ObjectNode moved = JsonNodeFactory.instance.objectNode();
      for (Map.Entry<String, JsonNode> entry : object.properties()) {
        moved.set(turned(entry.getKey()), moved(entry.getValue()));
      }
      return moved;
    }
    if (node instanceof ArrayNode list) {
      ArrayNode moved = JsonNodeFactory.instance.arrayNode();
      list.forEach(item -> moved.add(moved(item)));
      return moved;
    }
    return node.isTextual() ? JsonNodeFactory.instance.textNode(moved(node.asText())) : node;
  }

  private String moved(String text) {
    if (!DATE.matcher(text).matches()) {
      return turned(text);
    }
    LocalDate date = LocalDate.parse(text.substring(0, 10)).plusDays(days);
    return date + text.substring(10);
  }

  /** A weekday's word as many days on; anything else as it is. */
  private String turned(String word) {
    int at = WEEK.indexOf(word);
    return at < 0 ? word : WEEK.get(Math.floorMod(at + days, 7));
  }
}
