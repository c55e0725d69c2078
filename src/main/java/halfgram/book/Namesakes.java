package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.input.Problem;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Two things of a kind that have the very same name: on a sheet nobody could tell them apart.
 *
 * <p>Rules. Only what gets its name now is a problem: a book that has two of a name already opens,
 * and each of the two can be changed. Names are the same whatever their capitals and spaces.
 * Formulas, events and pars are kept apart: of formulas there may be two of a name.
 */
public final class Namesakes {
  private Namesakes() {}

  /**
   * What is newly named like another.
   *
   * @param before the book as it is stored; an empty object when there is none
   * @param brought what is to be stored over it, the whole book or a part; need not be sound
   */
  public static List<Problem> list(JsonNode before, JsonNode brought) {
    List<Problem> problems = new ArrayList<>();
    BookStore.PARTS.forEach(kind -> list(kind, before.path(kind), brought.path(kind), problems));
    return problems;
  }

  private static void list(String kind, JsonNode before, JsonNode brought, List<Problem> problems) {
    Map<String, String> stored = new HashMap<>();
    before.forEach(item -> stored.put(code(item), name(item)));
    Map<String, String> codes = new HashMap<>();
    Map<String, String> kept = new HashMap<>(stored);
    brought.forEach(item -> kept.remove(code(item)));
    kept.forEach((code, name) -> codes.put(name, code));
    for (JsonNode item : brought) {
      if (!isNew(stored, item)) {
        codes.put(name(item), code(item));
      }
    }
    for (int i = 0; i < brought.size(); i++) {
      JsonNode item = brought.path(i);
      String name = name(item);
      if (!name.isEmpty() && isNew(stored, item)) {
        String other = codes.putIfAbsent(name, code(item));
        if (other != null && !other.equals(code(item))) {
          Message said = Message.of("problem.name-twice", other);
          problems.add(new Problem("$." + kind + "[" + i + "].name", said(item), said));
        }
      }
    }
  }

  private static boolean isNew(Map<String, String> stored, JsonNode item) {
    return !name(item).equals(stored.get(code(item)));
  }

  private static String code(JsonNode item) {
    return item.path("code").asText();
  }

  private static String said(JsonNode item) {
    JsonNode name = item.path("name");
    return name.isTextual() ? name.asText() : name.path("en").asText();
  }

  private static String name(JsonNode item) {
    return said(item).strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
  }
}
