package halfgram.api;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.House;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;

/** How numbers and times are written. */
final class Answers {
  private Answers() {}

  /** Grams or pieces as a decimal number, and its unit. */
  static void amount(ObjectNode node, String key, Amount amount) {
    ObjectNode written = node.putObject(key);
    written.put("value", new BigDecimal(Exact.plain(amount.number(), 6)));
    written.put("unit", unit(amount.dimension()));
  }

  /** Of amounts: what is no count is a mass. */
  static String unit(Dimension dimension) {
    return dimension == Dimension.COUNT ? "piece" : "g";
  }

  /** Where the kitchen's clock stands. */
  static ZoneId zone(House house) {
    return house.book().kitchen().clock().zone();
  }

  /** A moment with the kitchen's offset. */
  static String moment(Instant at, ZoneId zone) {
    return at.atZone(zone).format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
  }
}
