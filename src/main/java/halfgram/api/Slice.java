package halfgram.api;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.web.Halt;
import halfgram.web.Visit;
import java.util.List;
import java.util.function.BiConsumer;
import java.util.function.Function;

/**
 * Answers with part of a list that can grow: as many as the address says, behind the one it names;
 * with the name to go on after, while there are more.
 */
final class Slice {
  private Slice() {}

  /**
   * @param key of the list in the answer
   * @param code names an item
   */
  static <T> void answer(
      Visit visit,
      String key,
      List<T> all,
      Function<T, String> code,
      BiConsumer<ObjectNode, T> write) {
    int limit = Query.limit(visit);
    int from = from(visit.query("after"), all, code);
    int to = Math.min(all.size(), from + limit);
    ObjectNode answer = JsonNodeFactory.instance.objectNode();
    ArrayNode list = answer.putArray(key);
    all.subList(from, to).forEach(item -> write.accept(list.addObject(), item));
    if (to < all.size()) {
      answer.put("next", code.apply(all.get(to - 1)));
    }
    visit.json(200, answer.toString());
  }

  private static <T> int from(String after, List<T> all, Function<T, String> code) {
    if (after.isEmpty()) {
      return 0;
    }
    for (int i = 0; i < all.size(); i++) {
      if (code.apply(all.get(i)).equals(after)) {
        return i + 1;
      }
    }
    throw Halt.notFound(after);
  }
}
