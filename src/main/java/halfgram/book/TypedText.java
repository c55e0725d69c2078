package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Optional;

/** A value that is a text with its unit or a number in a unit that is known. */
final class TypedText {
  private TypedText() {}

  /** The text as it stands; a number with the unit put after it. */
  static Optional<String> find(Node node, String key, String unit) {
    if (!node.has(key) || !node.get(key).isNumber()) {
      return node.findWord(key);
    }
    JsonNode number = node.get(key);
    String after = unit.equals("1") ? "" : " " + unit;
    return Optional.of(number.decimalValue().toPlainString() + after);
  }
}
