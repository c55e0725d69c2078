package halfgram.book.table;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A column: where its cell stands in an item of the book, and how it is written there and here.
 *
 * @param name in the header
 * @param key in the item, "covers.final" for a key within a key
 * @param cell shows what the item has
 * @param value what a cell means, given what the item has; empty when it means nothing
 * @param accepted key of the sentence that says what a cell may be
 */
record Column(
    String name, String key, Function<JsonNode, String> cell, Reading value, String accepted) {

  /** What a cell means. */
  interface Reading {
    Optional<JsonNode> read(JsonNode before, String cell);
  }

  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,12}(\\.\\d{1,9})?");
  private static final Pattern DIET =
      Pattern.compile("(\\d{1,6}) +([^ ()]+(?: *\\+ *[^ ()]+)*)(?: *\\( *(\\d{1,6}) spare *\\))?");
  private static final Pattern TWO = Pattern.compile("(.+) +(\\S+)");
  private static final Pattern AMOUNT_OF = Pattern.compile("(\\S+ +\\S+)(?: +(\\S+))?");

  /** A word, a date or a quantity, as the book has it; the book says what is wrong with one. */
  static Column word(String name, String key) {
    return new Column(
        name, key, Column::plain, (before, cell) -> Optional.of(TextNode.valueOf(cell)), "");
  }

  static Column word(String key) {
    return word(key, key);
  }

  /** A number; what is none goes to the book as it is, which says what is wrong with it. */
  static Column number(String name, String key) {
    return new Column(name, key, Column::plain, (before, cell) -> Optional.of(number(cell)), "");
  }

  /** "yes" or "no"; what the book leaves out is "no". */
  static Column flag(String key) {
    return new Column(
        key,
        key,
        node -> node.asBoolean(false) ? "yes" : "no",
        (before, cell) ->
            cell.equals("yes") || cell.equals("no")
                ? Optional.of(BooleanNode.valueOf(cell.equals("yes")))
                : Optional.empty(),
        "accept.table-flag");
  }

  /** A text in one language; the English one may stand for all. */
  static Column text(String name, String key, String language) {
    return new Column(
        name,
        key,
        node -> said(node, language),
        (before, cell) -> Optional.of(with(before, language, cell)),
        "");
  }

  /** Words between commas; "none" for a list that is there and empty. */
  static Column words(String name, String key) {
    return new Column(
        name,
        key,
        node -> {
          List<String> words = new ArrayList<>();
          node.forEach(word -> words.add(word.asText()));
          return words.isEmpty() && node.isArray() ? "none" : String.join(", ", words);
        },
        (before, cell) -> {
          ArrayNode list = NODES.arrayNode();
          if (!cell.equals("none")) {
            Arrays.stream(cell.split(",", -1)).map(String::strip).forEach(list::add);
          }
          return Optional.of(list);
        },
        "");
  }

  /** "4 dairy-free (1 spare); 1 dairy-free + gluten-free". */
  static Column diets() {
    return new Column(
        "diets",
        "diets",
        list -> each(list, Column::diet),
        (before, cell) ->
            list(
                cell,
                DIET,
                (item, of) -> {
                  ArrayNode diets = item.putArray("diets");
                  for (String diet : of.group(2).split("\\+", -1)) {
                    diets.add(diet.strip());
                  }
                  item.set("count", number(of.group(1)));
                  if (of.group(3) != null) {
                    item.set("spare", number(of.group(3)));
                  }
                }),
        "accept.table-diets");
  }

  /** "5 kg 31.50; 1 kg": packs with their prices. */
  static Column packs() {
    return pairs("packs", AMOUNT_OF, List.of("mass", "price"), "accept.table-packs");
  }

  /** "bunch 90 g; piece 55 g": what one weighs. */
  static Column units() {
    return pairs(
        "units", Pattern.compile("(\\S+) +(.+)"), List.of("unit", "mass"), "accept.table-units");
  }

  /** "300 g harvest-dinner": kept for events. */
  static Column reserved() {
    return pairs("reserved", TWO, List.of("amount", "event"), "accept.table-reserved");
  }

  /** "20:30 45; 21:00 35": pick-ups. */
  static Column curve() {
    return new Column(
        "curve",
        "curve",
        list -> each(list, item -> joined(item, List.of("at", "share"))),
        (before, cell) ->
            list(
                cell,
                TWO,
                (item, of) -> {
                  item.put("at", of.group(1));
                  item.set("share", number(of.group(2)));
                }),
        "accept.table-curve");
  }

  private static Column pairs(String key, Pattern form, List<String> keys, String accepted) {
    return new Column(
        key,
        key,
        list -> each(list, item -> joined(item, keys)),
        (before, cell) ->
            list(
                cell,
                form,
                (item, of) -> {
                  for (int i = 0; i < keys.size(); i++) {
                    if (of.group(i + 1) != null) {
                      item.put(keys.get(i), of.group(i + 1));
                    }
                  }
                }),
        accepted);
  }

  /** What an item has under the key. */
  JsonNode in(JsonNode item) {
    JsonNode node = item;
    for (String part : key.split("\\.", -1)) {
      node = node.path(part);
    }
    return node;
  }

  String show(JsonNode item) {
    return cell.apply(in(item));
  }

  /**
   * Puts a cell into an item, unless it is empty or says what is there; false when it cannot be
   * read.
   */
  boolean put(ObjectNode item, String said) {
    if (said.isEmpty() || said.equals(show(item))) {
      return true;
    }
    Optional<JsonNode> read = value.read(in(item), said);
    read.ifPresent(
        node -> {
          String[] parts = key.split("\\.", -1);
          ObjectNode inner = item;
          for (int i = 0; i < parts.length - 1; i++) {
            inner =
                inner.path(parts[i]) instanceof ObjectNode there
                    ? there
                    : inner.putObject(parts[i]);
          }
          inner.set(parts[parts.length - 1], node);
        });
    return read.isPresent();
  }

  private static String plain(JsonNode node) {
    return node.isNumber()
        ? node.decimalValue().toPlainString()
        : node.isNull() ? "" : node.asText();
  }

  private static JsonNode number(String cell) {
    return NUMBER.matcher(cell).matches()
        ? NODES.numberNode(new java.math.BigDecimal(cell))
        : TextNode.valueOf(cell);
  }

  private static String said(JsonNode node, String language) {
    return node.isObject()
        ? node.path(language).asText()
        : language.equals("en") ? node.asText() : "";
  }

  private static JsonNode with(JsonNode before, String language, String cell) {
    if (!before.isObject() && language.equals("en")) {
      return TextNode.valueOf(cell);
    }
    ObjectNode all = before.isObject() ? before.deepCopy() : NODES.objectNode();
    if (before.isTextual()) {
      all.set("en", before);
    }
    return all.put(language, cell);
  }

  private static String diet(JsonNode item) {
    List<String> diets = new ArrayList<>();
    item.path("diets").forEach(diet -> diets.add(diet.asText()));
    String spare = item.has("spare") ? " (" + plain(item.path("spare")) + " spare)" : "";
    return plain(item.path("count")) + " " + String.join("+", diets) + spare;
  }

  private static String joined(JsonNode item, List<String> keys) {
    return String.join(
        " ", keys.stream().filter(item::has).map(key -> plain(item.path(key))).toList());
  }

  private static String each(JsonNode list, Function<JsonNode, String> item) {
    List<String> all = new ArrayList<>();
    list.forEach(node -> all.add(item.apply(node)));
    return String.join("; ", all);
  }

  private static Optional<JsonNode> list(
      String cell, Pattern form, java.util.function.BiConsumer<ObjectNode, Matcher> item) {
    ArrayNode list = NODES.arrayNode();
    for (String part : cell.split(";", -1)) {
      Matcher matcher = form.matcher(part.strip());
      if (!matcher.matches()) {
        return Optional.empty();
      }
      item.accept(list.addObject(), matcher);
    }
    return Optional.of(list);
  }
}
