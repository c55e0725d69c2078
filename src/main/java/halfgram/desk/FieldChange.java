package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * One field that differs between two states of something, as the book names it.
 *
 * @param path "covers.final", "lines[dill].amount"
 * @param before what it said; empty when it was not there
 * @param after what it says now; empty when it is not there any more
 */
public record FieldChange(String path, String before, String after) {
  private static final int LONGEST = 500;

  /** What names an item of a list, the first that is there. */
  private static final List<String> NAMES =
      List.of("code", "version", "ingredient", "component", "dish", "item", "diet", "entry");

  /** Every field that differs, in the order of what it was, then of what it is. */
  static List<FieldChange> between(JsonNode before, JsonNode after) {
    Map<String, String> old = new LinkedHashMap<>();
    flatten("", before, old);
    Map<String, String> now = new LinkedHashMap<>();
    flatten("", after, now);
    Set<String> paths = new java.util.LinkedHashSet<>(old.keySet());
    paths.addAll(now.keySet());
    List<FieldChange> changes = new ArrayList<>();
    for (String path : paths) {
      String from = old.getOrDefault(path, "");
      String to = now.getOrDefault(path, "");
      if (!from.equals(to)) {
        changes.add(new FieldChange(path, cut(from), cut(to)));
      }
    }
    return changes;
  }

  /** The same field of something that stands in something else. */
  FieldChange within(String place) {
    return new FieldChange(path.isEmpty() ? place : place + "." + path, before, after);
  }

  private static String cut(String text) {
    return text.length() > LONGEST ? text.substring(0, LONGEST) + "…" : text;
  }

  private static void flatten(String path, JsonNode node, Map<String, String> flat) {
    if (node.isObject()) {
      for (Map.Entry<String, JsonNode> one : node.properties()) {
        flatten(path.isEmpty() ? one.getKey() : path + "." + one.getKey(), one.getValue(), flat);
      }
    } else if (node.isArray() && holdsObjects(node)) {
      List<String> names = names(node);
      for (int i = 0; i < node.size(); i++) {
        flatten(path + "[" + names.get(i) + "]", node.get(i), flat);
      }
    } else if (node.isArray()) {
      List<String> words = new ArrayList<>();
      node.forEach(one -> words.add(one.isValueNode() ? one.asText() : one.toString()));
      flat.put(path, String.join(", ", words));
    } else if (!node.isNull() && !node.isMissingNode()) {
      flat.put(path, node.asText());
    }
  }

  private static boolean holdsObjects(JsonNode list) {
    return !list.isEmpty() && list.get(0).isObject();
  }

  /** By what the items name themselves where all of them do and no two the same, else by place. */
  private static List<String> names(JsonNode list) {
    for (String name : NAMES) {
      List<String> names = new ArrayList<>();
      for (JsonNode one : list) {
        if (one.hasNonNull(name)) {
          names.add(one.path(name).asText());
        }
      }
      if (names.size() == list.size() && new HashSet<>(names).size() == names.size()) {
        return names;
      }
    }
    List<String> places = new ArrayList<>();
    for (int i = 1; i <= list.size(); i++) {
      places.add(String.valueOf(i));
    }
    return places;
  }
}
