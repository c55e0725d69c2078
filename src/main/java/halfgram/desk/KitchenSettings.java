package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.Kitchen;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import java.util.List;

/**
 * Sets how a kitchen reads: its units, its clock, the language of its walls.
 *
 * <p>Rules. Only these keys of the kitchen are written, and only those that change. Where somebody
 * else has changed one of them since to something else, nothing is written and both are told. What
 * is set is shown at once, on plans in force too; no plan changes by it.
 */
public final class KitchenSettings {
  /** The kind of its changes. */
  static final String KIND = "settings";

  private static final String KITCHEN = "kitchen";

  /**
   * How a kitchen reads, as a book writes it.
   *
   * @param clock "24" or "12"
   * @param language empty for that of the device
   */
  public record Values(String units, String clock, String language) {
    public static Values of(House house) {
      Kitchen kitchen = house.book().kitchen();
      return new Values(
          kitchen.units().word(),
          String.valueOf(kitchen.hours().number()),
          kitchen.language().orElse(""));
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Saved, Wrong, Stale {}

  /** It is set. */
  public record Saved(Values values) implements Outcome {}

  /** What is wrong, by the names of the keys. */
  public record Wrong(List<Problem> problems) implements Outcome {}

  /** Somebody else has set it meanwhile: to this. */
  public record Stale(Values theirs) implements Outcome {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();

  public KitchenSettings(Desk desk) {
    this.desk = desk;
  }

  /**
   * Sets them.
   *
   * @param seen what they were when whoever sets them began
   */
  public Outcome save(House house, Values seen, Values wanted, String who) {
    return desk.write(house, tx -> save(tx, house, seen, wanted, who));
  }

  private Outcome save(Tx tx, House house, Values seen, Values wanted, String who) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    Values there = Values.of(now);
    if (there.equals(wanted)) {
      return new Saved(there);
    }
    if (!there.equals(seen)) {
      return new Stale(there);
    }
    ObjectNode before = (ObjectNode) now.tree().path(KITCHEN);
    ObjectNode after = body(before, there, wanted);
    ObjectNode tree = now.tree().deepCopy();
    tree.set(KITCHEN, after);
    BookReader.Outcome read = desk.check(tree);
    if (read.book().isEmpty()) {
      return new Wrong(read.problems().stream().map(KitchenSettings::placed).toList());
    }
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.set("before", json(there));
    detail.set("after", json(wanted));
    long change =
        kitchens.change(
            tx, now.id(), News.fact(KIND, now.code(), detail.toString(), who), desk.now());
    books.save(tx, now.id(), KITCHEN, KITCHEN, 0, after.toString(), change);
    return new Saved(wanted);
  }

  /** "$.kitchen.units" is units. */
  private static Problem placed(Problem problem) {
    String path = problem.path().replaceFirst("^\\$\\.kitchen\\.", "");
    return new Problem(path, problem.value(), problem.message());
  }

  private static ObjectNode body(ObjectNode before, Values there, Values wanted) {
    ObjectNode body = before.deepCopy();
    if (!wanted.units().equals(there.units())) {
      body.put("units", wanted.units());
    }
    if (!wanted.clock().equals(there.clock())) {
      body.set("clock", number(wanted.clock()));
    }
    if (wanted.language().isEmpty()) {
      body.remove("language");
    } else if (!wanted.language().equals(there.language())) {
      body.put("language", wanted.language());
    }
    return body;
  }

  /** What is no number stays text: the reader says so. */
  private static JsonNode number(String typed) {
    return typed.matches("\\d{1,4}")
        ? JsonNodeFactory.instance.numberNode(Integer.parseInt(typed))
        : JsonNodeFactory.instance.textNode(typed);
  }

  private static ObjectNode json(Values values) {
    ObjectNode node = JsonNodeFactory.instance.objectNode();
    node.put("units", values.units());
    node.put("clock", values.clock());
    node.put("language", values.language());
    return node;
  }
}
