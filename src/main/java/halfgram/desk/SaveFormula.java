package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.db.Tx;
import halfgram.formula.FormulaStore;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.measure.Message;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Saves a new version of a formula, or a new formula with its first. Versions that are there never
 * change. The whole book is read with it first, so that nothing is stored which would not plan.
 */
public final class SaveFormula {

  /**
   * What is to be saved.
   *
   * @param based number of the version it was made from; 0 for a new formula
   * @param head what belongs to all versions, as the book writes it, without versions
   * @param version the new one as the book writes it, without number
   */
  public record Draft(String code, int based, ObjectNode head, ObjectNode version) {

    /** Saving takes nothing out and puts nothing back. */
    private Draft unflagged() {
      ObjectNode kept = head.deepCopy();
      kept.remove(FormulaOut.FLAG);
      return new Draft(code, based, kept, version);
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Saved, Stale, Out, Wrong {}

  /** It is there, now or from the same draft sent before. */
  public record Saved(int version) implements Outcome {}

  /** Somebody has saved another version meanwhile. */
  public record Stale(FormulaStore.Saved by) implements Outcome {}

  /** The formula was taken out: nothing is saved of it until somebody puts it back. */
  public record Out(String code) implements Outcome {

    /** What is to be done first. */
    public Message message() {
      return Message.of("formulas.out-first", code);
    }
  }

  /**
   * The book does not read with it.
   *
   * @param path of the formula in the book; the new version is its last
   * @param index of the new version
   */
  public record Wrong(String path, int index, List<Problem> problems) implements Outcome {}

  /** The kitchen as it would be with it, or why it cannot be. */
  public record Tried(Optional<House> house, Optional<Outcome> refusal) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final FormulaStore formulas = new FormulaStore();

  public SaveFormula(Desk desk) {
    this.desk = desk;
  }

  /** All versions of a formula as saved, oldest first; none when there is no such formula. */
  public List<FormulaStore.Saved> list(House house, String code) {
    return desk.read(tx -> list(tx, house, code));
  }

  private List<FormulaStore.Saved> list(Tx tx, House house, String code) {
    return formulas.listVersions(tx, house.id()).stream()
        .filter(saved -> saved.formula().equals(code))
        .toList();
  }

  /** What a formula's versions have in common, as the book writes it. */
  public static Optional<ObjectNode> findHead(House house, String code) {
    for (JsonNode formula : house.tree().path("formulas")) {
      if (formula.path("code").asText().equals(code)) {
        ObjectNode head = ((ObjectNode) formula).deepCopy();
        head.remove("versions");
        return Optional.of(head);
      }
    }
    return Optional.empty();
  }

  public Outcome save(House house, Draft draft, String who) {
    return desk.write(house, tx -> save(tx, house, draft, who));
  }

  private Outcome save(Tx tx, House before, Draft sent, String who) {
    Stand stand = kitchens.lock(tx, before.id());
    House house = desk.open(tx, stand);
    Draft draft = sent.unflagged();
    List<FormulaStore.Saved> saved = list(tx, house, draft.code());
    int current = saved.isEmpty() ? 0 : saved.get(saved.size() - 1).version();
    int number = draft.based() + 1;
    ObjectNode body = numbered(draft.version(), number);
    if (current != draft.based()) {
      FormulaStore.Saved last = saved.get(saved.size() - 1);
      boolean same =
          last.version() == number
              && last.body().equals(body.toString())
              && findHead(house, draft.code()).filter(draft.head()::equals).isPresent();
      return same ? new Saved(number) : new Stale(last);
    }
    if (isOut(house, draft)) {
      return new Out(draft.code());
    }
    Optional<Outcome> wrong = check(put(house, draft, body));
    if (wrong.isPresent()) {
      return wrong.get();
    }
    return write(tx, house, draft, body, new By(who, desk.now(), number));
  }

  private static boolean isOut(House house, Draft draft) {
    return findHead(house, draft.code())
        .filter(there -> there.path(FormulaOut.FLAG).asBoolean(false))
        .isPresent();
  }

  private record By(String who, Instant at, int number) {}

  private Outcome write(Tx tx, House house, Draft draft, ObjectNode body, By by) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("version", by.number());
    detail.set("note", body.path("note"));
    Optional<ObjectNode> head = findHead(house, draft.code());
    if (!head.equals(Optional.of(draft.head()))) {
      head.ifPresent(before -> detail.set("before", before));
      detail.set("after", draft.head());
    }
    long change =
        kitchens.change(
            tx,
            house.id(),
            KitchenStore.News.fact("formula", draft.code(), detail.toString(), by.who()),
            by.at());
    int place = house.tree().path("formulas").size();
    formulas.saveHead(
        tx,
        house.id(),
        place,
        new FormulaStore.Head(draft.code(), draft.head().toString(), change));
    formulas.add(
        tx,
        house.id(),
        new FormulaStore.Saved(draft.code(), by.number(), body.toString(), by.who(), by.at()),
        change);
    return new Saved(by.number());
  }

  /** The number first, as a book has it. */
  private static ObjectNode numbered(ObjectNode version, int number) {
    ObjectNode body = version.objectNode();
    body.put("version", number);
    version.properties().stream()
        .filter(entry -> !entry.getKey().equals("version"))
        .forEach(entry -> body.set(entry.getKey(), entry.getValue()));
    return body;
  }

  /** What saving would make of the kitchen; nothing is stored. */
  public Tried look(House house, Draft draft) {
    return desk.read(tx -> look(tx, house, draft.unflagged()));
  }

  private Tried look(Tx tx, House house, Draft draft) {
    List<FormulaStore.Saved> saved = list(tx, house, draft.code());
    int current = saved.isEmpty() ? 0 : saved.get(saved.size() - 1).version();
    if (current != draft.based()) {
      Stale stale = new Stale(saved.get(saved.size() - 1));
      return new Tried(Optional.empty(), Optional.of(stale));
    }
    if (isOut(house, draft)) {
      return new Tried(Optional.empty(), Optional.of(new Out(draft.code())));
    }
    Put put = put(house, draft, numbered(draft.version(), draft.based() + 1));
    Optional<Outcome> wrong = check(put);
    return wrong.isPresent()
        ? new Tried(Optional.empty(), wrong)
        : new Tried(
            Optional.of(new House(house.stand(), desk.bookOf(put.tree()), put.tree())),
            Optional.empty());
  }

  /** The book with a version put in: where its formula stands, and which of its versions it is. */
  private record Put(ObjectNode tree, int at, int index) {}

  private static Put put(House house, Draft draft, ObjectNode body) {
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode list = tree.withArray("formulas");
    int at = 0;
    while (at < list.size() && !list.get(at).path("code").asText().equals(draft.code())) {
      at++;
    }
    ObjectNode formula = draft.head().deepCopy();
    ArrayNode versions = formula.putArray("versions");
    if (at < list.size()) {
      list.get(at).path("versions").forEach(versions::add);
      list.set(at, formula);
    } else {
      list.add(formula);
    }
    versions.add(body);
    return new Put(tree, at, versions.size() - 1);
  }

  private Optional<Outcome> check(Put put) {
    BookReader.Outcome read = desk.check(put.tree());
    String path = "$.formulas[" + put.at() + "]";
    if (read.unreadable().isPresent()) {
      Message why = read.unreadable().get();
      List<Problem> problems = List.of(new Problem("", "", why));
      return Optional.of(new Wrong(path, put.index(), problems));
    }
    return read.book().isPresent()
        ? Optional.empty()
        : Optional.of(new Wrong(path, put.index(), read.problems()));
  }
}
