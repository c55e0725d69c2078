package halfgram.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Rounding;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Collection;

/** Numbers with their why id, as JSON. Masses are decimal grams to the microgram. */
final class Json {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(com.fasterxml.jackson.core.StreamWriteFeature.WRITE_BIGDECIMAL_AS_PLAIN)
          .build();

  private final String prefix;
  private final ZoneId zone;

  Json(String prefix, ZoneId zone) {
    this.prefix = prefix;
    this.zone = zone;
  }

  ObjectNode object() {
    return NODES.objectNode();
  }

  String text(ObjectNode root) {
    return text(root, MAPPER.writer());
  }

  String indented(ObjectNode root) {
    return text(root, MAPPER.writerWithDefaultPrettyPrinter());
  }

  private static String text(ObjectNode root, ObjectWriter writer) {
    try {
      return writer.writeValueAsString(root);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  /** A number to six decimals, without the zeros at its end. */
  ObjectNode number(String path, BigDecimal value, String unit) {
    BigDecimal rounded = Rounding.TO_MICROGRAM.round(value).stripTrailingZeros();
    ObjectNode node = object().put("id", prefix + "/" + path);
    node.put("value", rounded.scale() < 0 ? rounded.setScale(0) : rounded);
    return node.put("unit", unit);
  }

  ObjectNode amount(String path, Amount amount) {
    return number(path, amount.number(), amount.dimension() == Dimension.COUNT ? "piece" : "g");
  }

  ObjectNode mass(String path, Mass mass) {
    return number(path, mass.grams(), "g");
  }

  ObjectNode count(String path, long count) {
    return number(path, BigDecimal.valueOf(count), "1");
  }

  ObjectNode minutes(String path, Duration duration) {
    return number(path, BigDecimal.valueOf(duration.toMinutes()), "min");
  }

  ObjectNode at(String path, Instant instant) {
    return object().put("id", prefix + "/" + path).put("at", time(instant));
  }

  String time(Instant instant) {
    return instant.atZone(zone).format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
  }

  void words(ObjectNode node, String key, Collection<String> words) {
    ArrayNode array = node.putArray(key);
    words.forEach(array::add);
  }
}
