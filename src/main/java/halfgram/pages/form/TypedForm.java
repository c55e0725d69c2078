package halfgram.pages.form;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.pages.TypedAmount;
import halfgram.pages.TypedDuration;
import halfgram.pages.TypedNumber;
import halfgram.pages.TypedTime;
import halfgram.pages.form.Part.Kind;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * A thing of the book as typed into a form, and back into the book's own writing.
 *
 * <p>Names of fields are paths, {@code lines.3.percent}; a list keeps the numbers of its rows in
 * their order in {@code lines.rows}, and each row where it came from in {@code lines.3.was}. What
 * is left as it was shown is not written anew, so that it stays byte for byte; keys without a field
 * stay too. A row with nothing in it is no row.
 */
public final class TypedForm {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  /** A quantity typed without the space before its unit. */
  private static final Pattern UNSPACED =
      Pattern.compile("^(\\d+(?:\\.\\d+)?)(mg|g|kg|oz|lb|mL|cL|L|min|h|d|mm|cm|in|°C|°F)$");

  private final Map<String, String> typed;

  /** Codes by what the things are called, in lower case, for each list of suggestions. */
  private final Map<String, Map<String, String>> codes = new LinkedHashMap<>();

  /** Names of fields by their place in the book, filled by {@link #write}. */
  private final Map<String, String> places = new LinkedHashMap<>();

  private TypedForm(Map<String, String> typed) {
    this.typed = typed;
  }

  /** As sent. */
  public static TypedForm sent(Map<String, List<String>> form) {
    Map<String, String> typed = new LinkedHashMap<>();
    form.forEach((name, values) -> typed.put(name, values.isEmpty() ? "" : values.get(0)));
    return new TypedForm(typed);
  }

  /** With nothing in it. */
  public static TypedForm empty() {
    return new TypedForm(new LinkedHashMap<>());
  }

  /** This form with the fields of a thing as it stands. */
  public TypedForm filled(List<Part> parts, JsonNode node) {
    fill(parts, node, "");
    return this;
  }

  /** The same form; the name of a thing stands for its code from now on. */
  public TypedForm knowing(List<Cells.Suggestions> lists) {
    for (Cells.Suggestions list : lists) {
      Map<String, String> of = codes.computeIfAbsent(list.id(), id -> new LinkedHashMap<>());
      list.options().forEach(one -> of.putIfAbsent(called(one.label()), one.value()));
      list.options().forEach(one -> of.put(called(one.value()), one.value()));
    }
    return this;
  }

  /** A name as it is compared with what is typed. */
  public static String called(String name) {
    return name.strip().toLowerCase(Locale.ROOT);
  }

  public String get(String name) {
    return typed.getOrDefault(name, "");
  }

  public void put(String name, String value) {
    typed.put(name, value);
  }

  public List<String> rows(String name) {
    return Arrays.stream(get(name + ".rows").split(" "))
        .filter(row -> row.matches("\\d{1,4}"))
        .distinct()
        .toList();
  }

  private void setRows(String name, List<String> rows) {
    put(name + ".rows", String.join(" ", rows));
  }

  /** One more empty row at the end; answers its name. */
  public String add(String name) {
    List<String> rows = new ArrayList<>(rows(name));
    int next = rows.stream().mapToInt(Integer::parseInt).max().orElse(-1) + 1;
    rows.add(String.valueOf(next));
    setRows(name, rows);
    return name + "." + next;
  }

  public void remove(String name, String row) {
    setRows(name, rows(name).stream().filter(one -> !one.equals(row)).toList());
  }

  public void up(String name, String row) {
    List<String> rows = new ArrayList<>(rows(name));
    int at = rows.indexOf(row);
    if (at > 0) {
      rows.set(at, rows.get(at - 1));
      rows.set(at - 1, row);
    }
    setRows(name, rows);
  }

  /** "add lines", "remove lines 3", "up lines 3"; anything else changes nothing. */
  public void act(String act) {
    String[] words = act.split(" ", 3);
    if (words.length == 2 && words[0].equals("add")) {
      add(words[1]);
    } else if (words.length == 3 && words[0].equals("remove")) {
      remove(words[1], words[2]);
    } else if (words.length == 3 && words[0].equals("up")) {
      up(words[1], words[2]);
    }
  }

  private void fill(List<Part> parts, JsonNode node, String prefix) {
    for (Part part : parts) {
      JsonNode value = node.path(part.key());
      String name = prefix + part.key();
      switch (part.kind()) {
        case GROUP -> fill(part.parts(), value, name + ".");
        case ROWS, SENTENCES, ITEMS -> fillRows(part, Bare.opened(part, value), name);
        case CODES -> put(name, codes(value));
        case TEXTS -> part.known().forEach(l -> put(name + "." + l, said(value, l)));
        case TICKS -> value.forEach(one -> put(name + "." + one.asText(), "on"));
        case CHOSEN -> fill(part.by(node.path(decider(part)).asText()).parts(), value, name + ".");
        case TEXT, NUMBER, TIME, FLAG, CHOICE, DECIDES -> put(name, shown(value));
      }
    }
  }

  private void fillRows(Part part, JsonNode list, String name) {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < list.size(); i++) {
      rows.add(String.valueOf(i));
      put(name + "." + i + ".was", String.valueOf(i));
      fill(part.parts(), list.get(i), name + "." + i + ".");
    }
    setRows(name, rows);
  }

  private static String codes(JsonNode value) {
    List<String> codes = new ArrayList<>();
    value.forEach(one -> codes.add(one.asText()));
    return String.join(", ", codes);
  }

  /** A value as a field shows it. */
  public static String shown(JsonNode value) {
    if (value.isNumber()) {
      return halfgram.measure.Exact.plain(value.decimalValue(), 18);
    }
    if (value.isBoolean()) {
      return value.asBoolean() ? "on" : "";
    }
    return value.isTextual() ? value.asText() : "";
  }

  private static String said(JsonNode value, String language) {
    boolean plain = value.isTextual() && language.equals("en");
    return plain ? value.asText() : value.path(language).asText("");
  }

  /**
   * The thing as typed, from the one it is based on.
   *
   * @param path before the places of its fields, where {@link #field} is asked for several things
   */
  public ObjectNode write(List<Part> parts, ObjectNode base, String path) {
    ObjectNode node = base.deepCopy();
    write(parts, node, "", path);
    return node;
  }

  /** The field of a place in the thing: the nearest there is; empty when there is none. */
  public String field(String path) {
    String at = path;
    while (!at.isEmpty()) {
      String name = places.get(at);
      if (name != null) {
        return name;
      }
      int cut = Math.max(at.lastIndexOf('.'), at.lastIndexOf('['));
      at = cut < 0 ? "" : at.substring(0, cut);
    }
    return "";
  }

  private void write(List<Part> parts, ObjectNode node, String prefix, String path) {
    for (Part part : parts) {
      String name = prefix + part.key();
      String at = path + part.key();
      places.put(at, name);
      switch (part.kind()) {
        case GROUP -> group(part, node, name, at);
        case ROWS, SENTENCES, ITEMS -> list(part, node, name, at);
        case CODES -> codes(part, node, name);
        case TEXTS -> texts(part, node, name);
        case TICKS -> ticks(part, node, name);
        case CHOSEN -> chosen(part, node, prefix, at);
        case TEXT, NUMBER, TIME, FLAG, CHOICE, DECIDES -> value(part, node, name);
      }
    }
  }

  private void value(Part part, ObjectNode node, String name) {
    String text = TypedAmount.booked(get(name).strip());
    if (text.equals(TypedAmount.booked(shown(node.path(part.key())).strip()))) {
      return;
    }
    if (text.isEmpty()) {
      node.remove(part.key());
    } else if (part.kind() == Kind.FLAG) {
      node.put(part.key(), true);
    } else if (part.kind() == Kind.TIME) {
      node.put(part.key(), TypedTime.of(text));
    } else {
      String list = part.known().isEmpty() ? "" : part.known().get(0);
      String plain =
          codes
              .getOrDefault(list, Map.of())
              .getOrDefault(called(text), spaced(TypedNumber.pointed(text)));
      node.set(part.key(), part.kind() == Kind.NUMBER ? number(plain) : NODES.textNode(plain));
    }
  }

  /** "250g" as the book writes it, "250 g"; "2 hours" as "2 h". */
  private static String spaced(String text) {
    return UNSPACED.matcher(TypedDuration.of(text)).replaceFirst("$1 $2");
  }

  /** What is no number stays text: the reader says so. */
  private static JsonNode number(String text) {
    return text.matches("-?\\d{1,15}(\\.\\d{1,18})?")
        ? NODES.numberNode(new BigDecimal(text))
        : NODES.textNode(text);
  }

  private void texts(Part part, ObjectNode node, String name) {
    JsonNode before = node.path(part.key());
    boolean same =
        part.known().stream()
            .allMatch(l -> said(before, l).strip().equals(get(name + "." + l).strip()));
    if (same) {
      return;
    }
    ObjectNode texts = before.isObject() ? ((ObjectNode) before).deepCopy() : NODES.objectNode();
    for (String language : part.known()) {
      String text = get(name + "." + language).strip();
      if (text.isEmpty()) {
        texts.remove(language);
      } else if (!text.equals(said(texts, language).strip())) {
        texts.put(language, text);
      }
    }
    if (texts.isEmpty()) {
      node.remove(part.key());
    } else if (texts.size() == 1 && texts.has("en")) {
      node.set(part.key(), texts.get("en"));
    } else {
      node.set(part.key(), texts);
    }
  }

  private void ticks(Part part, ObjectNode node, String name) {
    ArrayNode ticked = NODES.arrayNode();
    List<String> before = new ArrayList<>();
    node.path(part.key()).forEach(one -> before.add(one.asText()));
    before.stream().filter(one -> !get(name + "." + one).isEmpty()).forEach(ticked::add);
    part.known().stream()
        .filter(one -> !before.contains(one) && !get(name + "." + one).isEmpty())
        .forEach(ticked::add);
    if (!ticked.equals(node.path(part.key())) && !(ticked.isEmpty() && before.isEmpty())) {
      set(node, part.key(), ticked, ticked.isEmpty());
    }
  }

  private static String decider(Part part) {
    return part.known().get(0);
  }

  /** What only another word asks for is not of this one. */
  private void chosen(Part part, ObjectNode node, String prefix, String at) {
    Part group = part.by(get(prefix + decider(part)).strip());
    List<String> keys = group.parts().stream().map(Part::key).toList();
    if (node.path(part.key()) instanceof ObjectNode before) {
      before
          .properties()
          .removeIf(one -> !keys.contains(one.getKey()) && !one.getKey().startsWith("x-"));
    }
    group(group, node, prefix + part.key(), at);
  }

  private void group(Part part, ObjectNode node, String name, String at) {
    JsonNode before = node.path(part.key());
    ObjectNode group = before.isObject() ? ((ObjectNode) before).deepCopy() : NODES.objectNode();
    write(part.parts(), group, name + ".", at + ".");
    if (!group.equals(before) && !(group.isEmpty() && before.isMissingNode())) {
      set(node, part.key(), group, group.isEmpty());
    }
  }

  private ArrayNode rows(Part part, JsonNode before, String name, String at) {
    ArrayNode list = NODES.arrayNode();
    for (String row : rows(name)) {
      String of = get(name + "." + row + ".was");
      JsonNode origin =
          of.matches("\\d{1,4}") ? before.path(Integer.parseInt(of)) : before.path(-1);
      ObjectNode item = origin.isObject() ? ((ObjectNode) origin).deepCopy() : NODES.objectNode();
      String place = at + "[" + list.size() + "]";
      places.put(place, name + "." + row);
      write(part.parts(), item, name + "." + row + ".", place + ".");
      if (!item.isEmpty()) {
        list.add(item);
      }
    }
    return list;
  }

  private static void put(ObjectNode node, String key, JsonNode before, ArrayNode list) {
    if (!list.equals(before) && !(list.isEmpty() && before.isMissingNode())) {
      set(node, key, list, list.isEmpty());
    }
  }

  private void list(Part part, ObjectNode node, String name, String at) {
    JsonNode before = node.path(part.key());
    ArrayNode rows = rows(part, Bare.opened(part, before), name, at);
    JsonNode list = Bare.closed(part, before, rows);
    String first = "." + part.parts().get(0).key();
    if (list instanceof ArrayNode all) {
      for (int i = 0; i < all.size() && part.kind() == Kind.ITEMS; i++) {
        String place = at + "[" + i + "]";
        places.put(place, places.getOrDefault(place + first, name));
      }
      put(node, part.key(), before, all);
    } else {
      places.put(at, places.getOrDefault(at + "[0]" + first, name));
      node.set(part.key(), list);
    }
  }

  private void codes(Part part, ObjectNode node, String name) {
    JsonNode before = node.path(part.key());
    if (get(name).strip().equals(codes(before))) {
      return;
    }
    Map<String, String> known =
        codes.getOrDefault(part.known().isEmpty() ? "" : part.known().get(0), Map.of());
    ArrayNode list = NODES.arrayNode();
    listed(get(name), known, 0, list);
    put(node, part.key(), before, list);
  }

  /** What stands between codes: a name may have commas and spaces in it. */
  private static final List<String> BETWEEN = List.of("[;\\n]", ",", "\\s+");

  private static void listed(String typed, Map<String, String> known, int at, ArrayNode list) {
    String word = typed.strip();
    String code = known.get(called(word));
    if (code != null || (at == BETWEEN.size() && !word.isEmpty())) {
      list.add(code == null ? word : code);
    } else if (at < BETWEEN.size()) {
      Arrays.stream(word.split(BETWEEN.get(at))).forEach(one -> listed(one, known, at + 1, list));
    }
  }

  private static void set(ObjectNode node, String key, JsonNode value, boolean empty) {
    if (empty) {
      node.remove(key);
    } else {
      node.set(key, value);
    }
  }
}
