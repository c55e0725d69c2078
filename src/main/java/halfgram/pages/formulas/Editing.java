package halfgram.pages.formulas;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.desk.Adjusted;
import halfgram.desk.House;
import halfgram.desk.SaveFormula;
import halfgram.formula.Formula;
import halfgram.formula.FormulaStore;
import halfgram.input.Problem;
import halfgram.pages.Code;
import halfgram.pages.Effect;
import halfgram.pages.form.Cells;
import halfgram.pages.form.Cells.Cell;
import halfgram.pages.form.Cells.Suggestions;
import halfgram.pages.form.Elsewhere;
import halfgram.pages.form.FieldFault;
import halfgram.pages.form.Part;
import halfgram.pages.form.TypedForm;
import halfgram.pages.form.WrongFields;
import halfgram.prep.KitchenBook;
import halfgram.web.Halt;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** One edit of a formula: what it was made from, what is typed, what is wrong with it. */
final class Editing {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;
  private static final List<Part> NAME = List.of(Shape.NAME);

  /** Fields that call a step, or what comes out, by its code. */
  private static final Predicate<String> CALLED =
      Pattern.compile("(steps|outputs)\\.\\d+\\.code").asMatchPredicate();

  /** Fields that name a step. */
  private static final Predicate<String> NAMED =
      Pattern.compile(
              "(lines|techniques|steps\\.\\d+\\.after)\\.\\d+\\.step"
                  + "|technique\\.step|outputs\\.\\d+\\.hold\\.from")
          .asMatchPredicate();

  private static final Predicate<String> CODE = Pattern.compile("[a-z0-9-]*").asMatchPredicate();

  /** Fields of the page that are no part of a version. */
  private static final List<Part> AROUND =
      List.of(Part.text("code", "formulas.code", ""), Part.text("note", "formulas.note", ""));

  private final boolean fresh;
  private final String code;
  private final int based;
  private final String start;
  private final ObjectNode head;
  private final ObjectNode version;
  private final TypedForm form;
  private final Map<String, String> faults = new LinkedHashMap<>();
  private final List<String> elsewhere = new ArrayList<>();
  private boolean behind;
  private List<Changes.Change> differs = List.of();

  private Editing(
      boolean fresh,
      String code,
      int based,
      String start,
      ObjectNode head,
      ObjectNode version,
      TypedForm form) {
    this.fresh = fresh;
    this.code = code;
    this.based = based;
    this.start = start;
    this.head = head;
    this.version = version;
    this.form = form;
  }

  /** The current version, to be changed. */
  static Editing of(House house, SaveFormula saving, Formula formula) {
    FormulaStore.Saved saved = last(saving.list(house, formula.code()));
    ObjectNode head = SaveFormula.findHead(house, formula.code()).orElseThrow();
    ObjectNode body = (ObjectNode) BookStore.parse(saved.body());
    return new Editing(false, formula.code(), saved.version(), "", head, body, filled(head, body));
  }

  /** The current version with what went into a batch to put it right, to be looked at and saved. */
  static Editing of(
      House house, SaveFormula saving, Formula formula, Adjusted adjusted, Messages words) {
    Editing editing = of(house, saving, formula);
    ObjectNode right =
        adjusted.version(
            formula.current(),
            editing.version,
            code -> house.book().formulary().find(code).isPresent());
    TypedForm form = filled(editing.head, right);
    form.put("note", AdjustedRow.note(house.book(), adjusted, words));
    return new Editing(false, editing.code, editing.based, "", editing.head, editing.version, form);
  }

  /** A change as sent, from the version its form was based on. */
  static Editing sent(
      House house, SaveFormula saving, Formula formula, Map<String, List<String>> sent) {
    TypedForm form = typed(sent);
    FormulaStore.Saved saved =
        saving.list(house, formula.code()).stream()
            .filter(one -> String.valueOf(one.version()).equals(form.get("based")))
            .findFirst()
            .orElseThrow(Halt::stale);
    ObjectNode head = SaveFormula.findHead(house, formula.code()).orElseThrow();
    ObjectNode body = (ObjectNode) BookStore.parse(saved.body());
    return new Editing(false, formula.code(), saved.version(), "", head, body, form);
  }

  /** A new formula, empty or from another. */
  static Editing start(House house, SaveFormula saving, String from) {
    ObjectNode head = head(house, from, "");
    ObjectNode body = body(house, saving, from);
    TypedForm form = filled(head, body);
    if (from.isEmpty()) {
      List.of("lines", "lines", "steps", "outputs").forEach(list -> add(form, list));
    }
    return new Editing(true, "", 0, from, head, body, form);
  }

  static Editing startSent(
      House house, SaveFormula saving, String from, Map<String, List<String>> sent) {
    TypedForm form = typed(sent);
    String typed = form.get("code").strip();
    String code = typed.isEmpty() ? Code.of(form.get("name.en"), "") : typed;
    return new Editing(
        true, code, 0, from, head(house, from, code), body(house, saving, from), form);
  }

  /**
   * As sent; a step that was given a name, "Simmer gently", has the code made of it and keeps the
   * name, unless it has one of its own.
   */
  private static TypedForm typed(Map<String, List<String>> sent) {
    TypedForm form = TypedForm.sent(sent);
    sent.keySet().stream().filter(CALLED).forEach(field -> call(form, field));
    List<String> steps =
        form.rows("steps").stream().map(row -> form.get("steps." + row + ".code")).toList();
    sent.keySet().stream()
        .filter(NAMED.and(field -> steps.contains(code(form, field))))
        .forEach(field -> form.put(field, code(form, field)));
    return form;
  }

  private static void call(TypedForm form, String field) {
    String typed = form.get(field).strip();
    String code = code(form, field);
    String name = field.replaceFirst("code$", "name.en");
    if (!code.equals(typed) && form.get(name).isBlank()) {
      form.put(name, typed);
    }
    form.put(field, code);
  }

  private static String code(TypedForm form, String field) {
    String name = form.get(field).strip();
    return CODE.test(name) ? name : Code.of(name, name);
  }

  private static ObjectNode head(House house, String from, String code) {
    ObjectNode head = NODES.objectNode();
    head.put("code", code);
    if (!from.isEmpty()) {
      ObjectNode other = SaveFormula.findHead(house, from).orElseThrow(() -> Halt.notFound(from));
      other.properties().stream()
          .filter(entry -> !entry.getKey().equals("code"))
          .forEach(entry -> head.set(entry.getKey(), entry.getValue()));
    }
    return head;
  }

  private static ObjectNode body(House house, SaveFormula saving, String from) {
    return from.isEmpty()
        ? NODES.objectNode()
        : (ObjectNode) BookStore.parse(last(saving.list(house, from)).body());
  }

  private static FormulaStore.Saved last(List<FormulaStore.Saved> all) {
    return all.get(all.size() - 1);
  }

  boolean isFresh() {
    return fresh;
  }

  String code() {
    return code;
  }

  /** As a version and its name stand. */
  private static TypedForm filled(ObjectNode head, ObjectNode version) {
    return TypedForm.empty().filled(NAME, head).filled(Shape.VERSION, version);
  }

  /** One more row; a step comes with a sentence to fill in. */
  private static void add(TypedForm form, String list) {
    String row = form.add(list);
    if (list.equals("steps")) {
      form.add(row + ".do");
    }
  }

  /** The same with one more technique, to be filled in. */
  Editing attaching(String technique) {
    if (AttachedFields.names().contains(technique)) {
      form.put(form.add("techniques") + ".name", technique);
    }
    return this;
  }

  /** As {@link TypedForm#act}; a step comes with a sentence to fill in. */
  void act(String act) {
    if (act.equals("add steps")) {
      add(form, "steps");
    } else {
      form.act(act);
    }
  }

  /** Whether it cannot be stored, whatever the book says of it. */
  boolean isWrong() {
    return !faults.isEmpty();
  }

  /** The version as typed. */
  ObjectNode version(KitchenBook book, String since, Messages words) {
    form.knowing(lists(book, words));
    ObjectNode typed = form.write(Shape.VERSION, version, "");
    String note = form.get("note").strip();
    boolean changed = !typed.equals(version) || !form.write(NAME, head, "name:").equals(head);
    if (!fresh && !changed && note.isEmpty()) {
      faults.put("note", words.say("formulas.nothing-changed"));
    }
    if (fresh && code.isEmpty()) {
      faults.put("name", words.say("formulas.no-name"));
    } else if (fresh && !code.matches("[a-z0-9]+(-[a-z0-9]+)*")) {
      faults.put("code", words.say("problem.accepted", words.say("accept.code")));
    }
    typed.put("since", since);
    if (note.isEmpty()) {
      typed.remove("note");
    } else {
      typed.put("note", note);
    }
    return typed;
  }

  SaveFormula.Draft draft(ObjectNode typed) {
    return new SaveFormula.Draft(code, based, form.write(NAME, head, "name:"), typed);
  }

  /** Puts each problem to its field; what is elsewhere in the book stands on top. */
  void take(SaveFormula.Wrong wrong, JsonNode tree, Messages words) {
    Elsewhere others = new Elsewhere(tree, "", words);
    boolean unnamed = faults.containsKey("name") || faults.containsKey("code");
    String own = wrong.path() + ".versions[" + wrong.index() + "]";
    for (Problem problem : wrong.problems()) {
      String said = FieldFault.say(problem, words);
      String field = field(problem.path(), own, wrong.path());
      if (field.isEmpty()) {
        elsewhere.add(others.say(problem));
      } else if (!(unnamed && List.of("name", "code").contains(field))) {
        faults.merge(field, said, (one, other) -> one + "; " + other);
      }
    }
  }

  private String field(String path, String own, String formula) {
    if (path.startsWith(own + ".")) {
      String rest = path.substring(own.length() + 1);
      return rest.startsWith("note") ? "note" : form.field(rest);
    }
    return path.startsWith(formula + ".name")
        ? "name"
        : fresh && path.equals(formula + ".code") ? "code" : "";
  }

  /** The code that a new formula may not have. */
  String taken(Messages words) {
    faults.put("code", words.say("formulas.code-taken", code));
    return words.say("formulas.code-taken", code);
  }

  /** As typed, on the version that somebody saved meanwhile, with what differs from that. */
  Editing rebased(House now, SaveFormula.Stale stale, BookNames names) {
    ObjectNode theirs = (ObjectNode) BookStore.parse(stale.by().body());
    ObjectNode named = SaveFormula.findHead(now, code).orElseThrow();
    Editing rebased = new Editing(false, code, stale.by().version(), "", named, theirs, form);
    rebased.faults.putAll(faults);
    rebased.behind = true;
    rebased.differs = Changes.of(theirs, form.write(Shape.VERSION, theirs, ""), names);
    return rebased;
  }

  /** What its fields may name. */
  private List<Suggestions> lists(KitchenBook book, Messages words) {
    List<Suggestions> lists = Cells.suggestions(book, form, words);
    lists.addAll(AttachedFields.lists(book, form, words));
    return lists;
  }

  EditView view(KitchenBook book, List<Effect> effects, Messages words) {
    Cells typed = new Cells(form, faults, words, AttachedFields.called(words));
    Cells maker = behind ? typed.against(filled(head, version)) : typed;
    Cell name = maker.cells(NAME, "").get(0);
    List<Cell> cells = maker.cells(Shape.VERSION, "");
    List<Cell> all = new ArrayList<>(List.of(name));
    all.addAll(maker.cells(AROUND, ""));
    all.addAll(cells);
    return new EditView(
        fresh ? "formulas/new" : "formulas/" + code + "/edit",
        fresh,
        fresh ? form.get("code") : code,
        faults.getOrDefault("code", ""),
        fresh ? words.say("formulas.new") : words.say("formulas.edit-of", form.get("name.en")),
        fresh ? words.say("formulas.save-new") : words.say("formulas.save", based + 1),
        String.valueOf(based),
        start,
        form.get("note"),
        faults.getOrDefault("note", ""),
        version.path("note").asText(""),
        elsewhere,
        WrongFields.of(all),
        name,
        cells,
        lists(book, words),
        behind ? words.say("formulas.differs", based) : "",
        differs,
        effects);
  }
}
