package halfgram.pages.formulas;

import com.fasterxml.jackson.databind.JsonNode;
import halfgram.pages.form.Part;
import halfgram.pages.form.Part.Kind;
import halfgram.pages.form.TypedForm;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** What one version changes against another, in words, by everything the book can say of it. */
final class Changes {

  /** What changed about one thing. */
  record Change(String subject, List<String> said) {}

  private static final Set<String> KNOWN_BY = Set.of("ingredient", "component", "use");

  private final BookNames names;
  private final Messages words;
  private final List<Change> changes = new ArrayList<>();

  private Changes(BookNames names) {
    this.names = names;
    this.words = names.words();
  }

  static List<Change> of(JsonNode from, JsonNode to, BookNames names) {
    Changes changes = new Changes(names);
    List<String> whole = new ArrayList<>();
    for (Part part : Shape.VERSION) {
      JsonNode before = from.path(part.key());
      JsonNode after = to.path(part.key());
      if (part.kind() == Kind.ROWS) {
        changes.rows(part, before, after);
      } else {
        changes.value(part, before, after, "", whole);
      }
    }
    if (!whole.isEmpty()) {
      changes.changes.add(new Change(names.words().say("formulas.change.whole"), whole));
    }
    return changes.changes;
  }

  private void rows(Part part, JsonNode from, JsonNode to) {
    Map<String, JsonNode> before = byCode(from);
    Map<String, JsonNode> after = byCode(to);
    String what = words.say(part.label());
    after.forEach(
        (code, row) -> {
          List<String> said = new ArrayList<>();
          if (!before.containsKey(code)) {
            said.add(words.say("formulas.change.added"));
          }
          JsonNode old = before.getOrDefault(code, row.path("-"));
          part.parts().stream()
              .map(p -> p.kind() == Kind.CHOSEN ? p.by(row.path(p.known().get(0)).asText()) : p)
              .forEach(p -> value(p, old.path(p.key()), row.path(p.key()), "", said));
          if (!said.isEmpty()) {
            changes.add(new Change(what + ": " + called(part, row), said));
          }
        });
    before.forEach(
        (code, row) -> {
          if (!after.containsKey(code)) {
            changes.add(
                new Change(
                    what + ": " + called(part, row),
                    List.of(words.say("formulas.change.removed"))));
          }
        });
    List<String> stayed = new ArrayList<>(before.keySet());
    stayed.retainAll(after.keySet());
    List<String> now = new ArrayList<>(after.keySet());
    now.retainAll(before.keySet());
    if (!stayed.equals(now)) {
      changes.add(
          new Change(
              what,
              List.of(
                  words.say(
                      "formulas.change.order",
                      after.values().stream()
                          .map(row -> called(part, row))
                          .collect(Collectors.joining(", "))))));
    }
  }

  private static Map<String, JsonNode> byCode(JsonNode rows) {
    Map<String, JsonNode> byCode = new LinkedHashMap<>();
    for (JsonNode row : rows) {
      byCode.putIfAbsent(code(row), row);
    }
    return byCode;
  }

  /** What a row is known by: a technique by its name and step. */
  private static String code(JsonNode row) {
    if (row.has("name") && row.has("step") && !row.has("code")) {
      return row.path("name").asText() + ", " + row.path("step").asText();
    }
    return row.path("code").asText(row.path("ingredient").asText(row.path("component").asText("")));
  }

  /** A row by the names of what it names; by its code where it names nothing. */
  private String called(Part rows, JsonNode row) {
    return rows.parts().stream()
        .filter(part -> KNOWN_BY.contains(part.key()) && row.has(part.key()))
        .findFirst()
        .map(part -> shown(part, row.path(part.key())))
        .orElseGet(() -> code(row));
  }

  private String shown(Part part, JsonNode value) {
    if (part.kind() == Kind.CHOICE && part.input().isPresent()) {
      return words.say(part.label() + "." + value.asText());
    }
    return part.kind() == Kind.TEXT && !part.known().isEmpty()
        ? names.of(part.known().get(0), value.asText())
        : shown(value);
  }

  private void value(Part part, JsonNode from, JsonNode to, String in, List<String> said) {
    if (from.equals(to)) {
      return;
    }
    String label = words.say(part.label());
    String name = in.isEmpty() ? label : in + ", " + label;
    if (part.kind() == Kind.GROUP) {
      part.parts().forEach(p -> value(p, from.path(p.key()), to.path(p.key()), name, said));
    } else if (from.isMissingNode()) {
      said.add(words.say("formulas.change.set", name, shown(part, to)));
    } else if (to.isMissingNode()) {
      said.add(words.say("formulas.change.unset", name, shown(part, from)));
    } else {
      said.add(words.say("formulas.change.from-to", name, shown(part, from), shown(part, to)));
    }
  }

  private String shown(JsonNode value) {
    if (value.isBoolean()) {
      return words.say(value.asBoolean() ? "formulas.yes" : "formulas.no");
    }
    if (value.isValueNode()) {
      return TypedForm.shown(value);
    }
    List<String> said = new ArrayList<>();
    if (value.isObject() && value.has("en")) {
      new TreeSet<>(value.properties().stream().map(Map.Entry::getKey).toList())
          .forEach(language -> said.add(value.path(language).asText()));
      return String.join(" / ", said);
    }
    value.forEach(one -> said.add(one.isValueNode() ? one.asText() : shown(one)));
    return said.isEmpty() ? "-" : String.join(", ", said);
  }
}
