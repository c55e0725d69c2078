package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Adds, changes and takes out single things of a kitchen's book: stations, ingredients, dishes, and
 * the house's own rules, of which there is one and always will be.
 *
 * <p>Rules. The whole book is read with the change first, tubs included, so that nothing is stored
 * which would not plan. Where somebody else has changed the thing since it was shown, nothing is
 * written and theirs is told. The same edit sent twice is stored once.
 */
public final class BookItems {
  /** The kind of its changes. */
  static final String KIND = "book";

  /** The house's rules: the one thing of its kind, by the code of the kitchen. */
  public static final String KITCHEN = "kitchen";

  /** What of a book is kept like this, in the order in which a kitchen needs it. */
  public static final List<String> KINDS =
      List.of(
          KITCHEN,
          "stations",
          "people",
          "scales",
          "ingredients",
          "diets",
          "dishes",
          "services",
          "equipment",
          "containers");

  /**
   * A thing as it is to be.
   *
   * @param kind one of {@link #KINDS}
   * @param seen what it was when whoever changes it began; empty for a new one
   * @param body as the book writes it; empty to take it out
   */
  public record Edit(
      String kind, String code, Optional<ObjectNode> seen, Optional<ObjectNode> body) {}

  /**
   * A thing as it is kept.
   *
   * @param change number of its last change
   */
  public record Kept(ObjectNode body, long change) {
    public String code() {
      return body.path("code").asText();
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Saved, Wrong, Stale, Looked {}

  /** It is stored. */
  public record Saved() implements Outcome {}

  /** It is something else now: this, or nothing when it was taken out. */
  public record Stale(Optional<ObjectNode> theirs) implements Outcome {}

  /** What the kitchen would be with it; nothing is stored. */
  public record Looked(House house) implements Outcome {}

  /**
   * The book does not read with it.
   *
   * @param path of the thing in the book; problems elsewhere are of what uses it
   */
  public record Wrong(String path, List<Problem> problems) implements Outcome {}

  private static final int LOOKED_BACK = 24;

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();
  private final ExportBook export = new ExportBook();

  public BookItems(Desk desk) {
    this.desk = desk;
  }

  /** The things of a kind, as the book writes them. */
  public static List<ObjectNode> list(House house, String kind) {
    if (house.tree().path(kind) instanceof ObjectNode one) {
      return List.of(one);
    }
    List<ObjectNode> all = new ArrayList<>();
    for (JsonNode item : house.tree().path(kind)) {
      if (item instanceof ObjectNode object) {
        all.add(object);
      }
    }
    return all;
  }

  public static Optional<ObjectNode> find(House house, String kind, String code) {
    return list(house, kind).stream()
        .filter(item -> item.path("code").asText().equals(code))
        .findFirst();
  }

  /** The things of a kind as they are kept now, each with its last change. */
  public List<Kept> listKept(House house, String kind) {
    return desk.read(tx -> books.list(tx, house.id(), kind)).stream()
        .map(row -> new Kept((ObjectNode) BookStore.parse(row.body()), row.change()))
        .toList();
  }

  public Optional<Kept> findKept(House house, String kind, String code) {
    return listKept(house, kind).stream().filter(kept -> kept.code().equals(code)).findFirst();
  }

  /** The edit that puts back what was taken out lately, as it was; empty once it is there again. */
  public Optional<Edit> findOut(House house, String code) {
    return desk
        .read(tx -> kitchens.listBefore(tx, house.id(), Long.MAX_VALUE, Set.of(KIND), LOOKED_BACK))
        .stream()
        .filter(change -> change.subject().equals(code))
        .findFirst()
        .map(change -> BookStore.parse(change.detail()))
        .filter(detail -> detail.path("before").isObject() && !detail.has("after"))
        .map(
            detail ->
                new Edit(
                    detail.path("list").asText(),
                    code,
                    Optional.empty(),
                    Optional.of((ObjectNode) detail.path("before"))))
        .filter(edit -> find(house, edit.kind(), code).isEmpty());
  }

  /** What storing it would make of the kitchen; nothing is stored. */
  public Outcome look(House house, Edit edit) {
    return desk.read(tx -> refusal(tx, house, edit).orElseGet(() -> looked(house, edit)));
  }

  private Outcome looked(House house, Edit edit) {
    // Without tubs it is the book that the desk opens once this is stored: read once for both.
    ObjectNode alone = house.tree().deepCopy();
    put(alone, edit);
    return new Looked(new House(house.stand(), desk.bookOf(alone), alone));
  }

  /** Stores it, unless the book does not read with it or somebody has changed it meanwhile. */
  public Outcome save(House house, Edit edit, String who) {
    return desk.write(house, tx -> save(tx, house, edit, who));
  }

  private Outcome save(Tx tx, House house, Edit edit, String who) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    Optional<ObjectNode> there = find(now, edit.kind(), edit.code());
    if (there.equals(edit.body())) {
      return new Saved();
    }
    Optional<Outcome> refusal = refusal(tx, now, edit);
    if (refusal.isPresent()) {
      return refusal.get();
    }
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("list", edit.kind());
    there.ifPresent(before -> detail.set("before", before));
    edit.body().ifPresent(after -> detail.set("after", after));
    long change =
        kitchens.change(
            tx, now.id(), News.fact(KIND, edit.code(), detail.toString(), who), desk.now());
    if (edit.body().isPresent()) {
      boolean one = edit.kind().equals(KITCHEN);
      int place = one ? 0 : now.tree().path(edit.kind()).size();
      String body = edit.body().get().toString();
      String code = one ? KITCHEN : edit.code();
      books.save(tx, now.id(), edit.kind(), code, place, body, change);
    } else {
      books.remove(tx, now.id(), edit.kind(), edit.code());
    }
    return new Saved();
  }

  private Optional<Outcome> refusal(Tx tx, House house, Edit edit) {
    boolean own =
        edit.code().equals(house.code())
            && edit.body()
                .map(body -> body.path("code").asText().equals(house.code()))
                .orElse(false);
    if (edit.kind().equals(KITCHEN) && !own) {
      String said = edit.body().map(body -> body.path("code").asText()).orElse("");
      return Optional.of(stays(house, said));
    }
    Optional<ObjectNode> there = find(house, edit.kind(), edit.code());
    boolean taken = edit.seen().isEmpty() && there.isPresent();
    if (!taken && !there.equals(edit.seen())) {
      return Optional.of(new Stale(there));
    }
    ObjectNode tree = export.export(tx, house).deepCopy();
    String path = put(tree, edit);
    if (taken) {
      Message message = Message.of("book.code-taken", edit.code());
      return Optional.of(
          new Wrong(path, List.of(new Problem(path + ".code", edit.code(), message))));
    }
    BookReader.Outcome read = desk.check(house.tree(), tree);
    return read.book().isPresent()
        ? Optional.empty()
        : Optional.of(new Wrong(path, read.problems()));
  }

  /** A kitchen has its rules under its own code, whatever else they say. */
  private static Wrong stays(House house, String said) {
    Message message = Message.of("book.kitchen-stays", house.code());
    return new Wrong("$." + KITCHEN, List.of(new Problem("$." + KITCHEN + ".code", said, message)));
  }

  /** Puts it into a book, or takes it out; answers the path at which it stands or stood. */
  private static String put(ObjectNode tree, Edit edit) {
    if (edit.kind().equals(KITCHEN)) {
      edit.body().ifPresent(body -> tree.set(KITCHEN, body));
      return "$." + KITCHEN;
    }
    ArrayNode list = tree.withArray(edit.kind());
    int at = 0;
    while (at < list.size() && !list.get(at).path("code").asText().equals(edit.code())) {
      at++;
    }
    if (edit.body().isEmpty()) {
      list.remove(at);
    } else if (at < list.size()) {
      list.set(at, edit.body().get());
    } else {
      list.add(edit.body().get());
    }
    return "$." + edit.kind() + "[" + at + "]";
  }
}
