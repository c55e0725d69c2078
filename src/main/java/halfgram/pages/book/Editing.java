package halfgram.pages.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.BookItems;
import halfgram.input.Problem;
import halfgram.pages.Code;
import halfgram.pages.Effect;
import halfgram.pages.TimeZones;
import halfgram.pages.form.Cells;
import halfgram.pages.form.Cells.Option;
import halfgram.pages.form.Elsewhere;
import halfgram.pages.form.FieldFault;
import halfgram.pages.form.Part;
import halfgram.pages.form.TypedForm;
import halfgram.pages.form.WrongFields;
import halfgram.prep.KitchenBook;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One edit of a thing of the book: what it was, what is typed, what is wrong with it. */
final class Editing {
  /** Rows that a new thing of a kind begins with. */
  private static final Map<String, String> FIRST_ROW =
      Map.of("dishes", "plate", "people", "shifts");

  private static final String CONTAINS = "contains";

  /** The code of what has no name yet, while the rest of it is looked at. */
  private static final String UNNAMED = "not-named-yet";

  private final String kind;
  private final Optional<String> code;
  private final ObjectNode base;
  private final TypedForm form;
  private final Map<String, String> faults = new LinkedHashMap<>();
  private final List<String> elsewhere = new ArrayList<>();
  private final List<String> uses = new ArrayList<>();
  private boolean asksOut;

  /** Whether somebody else has made the base of it meanwhile. */
  private boolean changed;

  private Editing(String kind, Optional<String> code, ObjectNode base, TypedForm form) {
    this.kind = kind;
    this.code = code;
    this.base = base;
    this.form = form;
  }

  /** A new thing. */
  static Editing blank(String kind) {
    TypedForm form = TypedForm.empty();
    Optional.ofNullable(FIRST_ROW.get(kind)).ifPresent(form::add);
    return new Editing(kind, Optional.empty(), JsonNodeFactory.instance.objectNode(), form);
  }

  /** A thing that is there. */
  static Editing of(String kind, KitchenBook book, ObjectNode item) {
    TypedForm form = TypedForm.empty().filled(Shapes.of(kind, book), item);
    if (item.path(CONTAINS).isArray() && item.path(CONTAINS).isEmpty()) {
      form.put(CONTAINS + "." + Shapes.NONE, "on");
    }
    return new Editing(kind, Optional.of(item.path("code").asText()), item, form);
  }

  /** As sent. */
  static Editing sent(
      String kind, Optional<String> code, ObjectNode base, Map<String, List<String>> sent) {
    return new Editing(kind, code, base, TypedForm.sent(sent));
  }

  /** The same typed over what somebody else has made of it; a new thing when it is gone. */
  Editing rebased(Optional<ObjectNode> theirs) {
    Editing rebased =
        new Editing(
            kind,
            theirs.isPresent() ? code : Optional.empty(),
            theirs.orElseGet(JsonNodeFactory.instance::objectNode),
            form);
    rebased.changed = theirs.isPresent();
    return rebased;
  }

  String kind() {
    return kind;
  }

  /** "add plate", "remove plate 3", "up plate 3"; anything else changes nothing. */
  void act(String act) {
    form.act(act);
  }

  /** The thing taken out. */
  BookItems.Edit out() {
    return new BookItems.Edit(kind, code.orElse(""), Optional.of(base), Optional.empty());
  }

  /** Asks once more before it is taken out, since something goes on with it. */
  void askOut(List<String> said) {
    asksOut = true;
    uses.addAll(said);
  }

  /** The thing as typed. What it has no name for goes by a code of its own until it has one. */
  BookItems.Edit edit(KitchenBook book, Messages words) {
    form.knowing(lists(book, words));
    ObjectNode body = form.write(Shapes.of(kind, book), base, "");
    if (sayNone(body)) {
      faults.put(CONTAINS, words.say("book.contains-both"));
    }
    String called = code.orElseGet(() -> Code.of(english(body.path("name")), ""));
    if (called.isEmpty() || !body.has("name")) {
      faults.put("name", words.say("formulas.no-name"));
    }
    ObjectNode coded = JsonNodeFactory.instance.objectNode().put("code", called);
    coded.setAll(body);
    coded.put("code", called.isEmpty() ? UNNAMED : called);
    ObjectNode stored = (ObjectNode) BookStore.parse(coded.toString());
    Optional<ObjectNode> seen = code.map(known -> base);
    return new BookItems.Edit(kind, coded.path("code").asText(), seen, Optional.of(stored));
  }

  /** Whether it cannot be stored, whatever the book says of it. */
  boolean isWrong() {
    return !faults.isEmpty();
  }

  /** No allergen is something to say; nothing ticked says nothing. Answers whether it says both. */
  private static boolean sayNone(ObjectNode body) {
    ArrayNode kept = JsonNodeFactory.instance.arrayNode();
    boolean none = false;
    for (JsonNode one : body.path(CONTAINS)) {
      none |= one.asText().equals(Shapes.NONE);
      if (!one.asText().equals(Shapes.NONE)) {
        kept.add(one);
      }
    }
    if (none) {
      body.set(CONTAINS, kept);
    }
    return none && !kept.isEmpty();
  }

  private static String english(JsonNode name) {
    return name.isTextual() ? name.asText() : name.path("en").asText();
  }

  /** Puts each problem to its field; what is elsewhere in the book stands on top. */
  void take(BookItems.Wrong wrong, JsonNode tree, Messages words) {
    Elsewhere others = new Elsewhere(tree, "", words);
    String own = wrong.path() + ".";
    boolean unnamed = faults.containsKey("name");
    for (Problem problem : wrong.problems()) {
      String said = FieldFault.say(problem, words);
      String rest = problem.path().startsWith(own) ? problem.path().substring(own.length()) : "";
      String field = rest.equals("code") ? "name" : form.field(rest);
      if (field.isEmpty()) {
        elsewhere.add(others.say(problem));
      } else if (!(unnamed && field.equals("name"))) {
        faults.merge(field, said, (one, other) -> one + "; " + other);
      }
    }
  }

  /** Why it cannot be taken out: what names it still. */
  void stays(BookItems.Wrong wrong, JsonNode tree, Messages words) {
    Elsewhere others = new Elsewhere(tree, wrong.path(), words);
    String users = others.users(wrong.problems());
    if (users.isEmpty()) {
      wrong.problems().forEach(problem -> elsewhere.add(others.say(problem)));
    } else {
      elsewhere.add(users);
    }
  }

  EditView view(KitchenBook book, List<Effect> effects, Messages words) {
    List<Part> parts = Shapes.of(kind, book);
    Cells typed = new Cells(form, faults, words, names(book, words));
    Cells cells = changed ? typed.against(of(kind, book, base).form) : typed;
    List<Cells.Cell> shown = cells.cells(parts, "");
    String one = words.say("book.one." + kind);
    return new EditView(
        "book/" + kind + "/" + code.orElse("new"),
        code.isEmpty(),
        code.isEmpty() || kind.equals(BookItems.KITCHEN),
        asksOut,
        uses,
        code.isEmpty()
            ? words.say("book.new", one)
            : words.say("book.edit-of", one, english(base.path("name"))),
        how(words),
        base.toString(),
        elsewhere,
        WrongFields.of(shown),
        shown,
        lists(book, words),
        effects);
  }

  private String how(Messages words) {
    String how = words.say("book.how." + kind);
    return kind.equals(BookItems.KITCHEN) ? how + " " + words.say("book.kitchen-brackets") : how;
  }

  /** What its fields may name. */
  private List<Cells.Suggestions> lists(KitchenBook book, Messages words) {
    List<Cells.Suggestions> lists = Cells.suggestions(book, form, words);
    if (kind.equals(BookItems.KITCHEN)) {
      lists.add(
          new Cells.Suggestions(
              Shapes.ZONES,
              TimeZones.list().stream().map(zone -> new Option(zone, zone, false)).toList()));
    }
    lists.add(
        new Cells.Suggestions(
            Shapes.PLATED,
            lists.stream()
                .filter(one -> List.of("ingredients", "formulas").contains(one.id()))
                .flatMap(one -> one.options().stream())
                .toList()));
    return lists;
  }

  /** What codes to choose from are called: weekdays, allergens, stations, diets. */
  private static Map<String, String> names(KitchenBook book, Messages words) {
    Map<String, String> names = new LinkedHashMap<>();
    Shapes.DAYS.forEach(day -> names.put(day, words.say("book.day." + day)));
    book.allergens().forEach((code, name) -> names.put(code, words.text(name)));
    book.stations().forEach((code, station) -> names.put(code, words.text(station.name())));
    book.diets().forEach((code, diet) -> names.put(code, words.text(diet.name())));
    Shapes.LANES.forEach(lanes -> names.put(lanes, words.say("book.lanes." + lanes)));
    names.put(Shapes.NONE, words.say("book.contains-none"));
    return names;
  }
}
