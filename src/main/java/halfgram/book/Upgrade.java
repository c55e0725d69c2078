package halfgram.book;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * Brings a book of an earlier format version to the current one, step by step: the step at position
 * n makes version n + 2 of version n + 1. A step only rewrites what its version changed.
 */
record Upgrade(List<UnaryOperator<ObjectNode>> steps) {

  /** Format 1 is the first, so there is nothing to do yet; the next version adds its step here. */
  static final Upgrade STEPS = new Upgrade(List.of());

  /** The version this program reads and writes. */
  int current() {
    return steps.size() + 1;
  }

  ObjectNode toCurrent(ObjectNode book, int version) {
    ObjectNode upgraded = book;
    for (int from = version; from < current(); from++) {
      upgraded = steps.get(from - 1).apply(upgraded.deepCopy());
      upgraded.put("version", from + 1);
    }
    return upgraded;
  }
}
