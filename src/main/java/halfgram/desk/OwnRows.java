package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.book.Reference;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.technique.Tables;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a kitchen puts in the place of reference rows, and takes back.
 *
 * <p>Rules. Only fields that differ from the shipped row are kept; a field left empty keeps what
 * was shipped. Nothing is written unless the whole book reads with it.
 */
public final class OwnRows {
  private static final String PART = "reference";

  /** The kind of its changes. */
  static final String KIND = "reference";

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();

  public OwnRows(Desk desk) {
    this.desk = desk;
  }

  /**
   * A row as somebody wants it.
   *
   * @param fields as typed, by the column; empty ones stay as they are
   * @param standing word of how far it can be believed
   * @param source where it comes from
   */
  public record Wanted(
      String table, String row, Map<String, String> fields, String standing, String source) {}

  /** A kitchen's own word on a row, as the book has it. */
  public Optional<JsonNode> find(House house, String table, String row) {
    for (JsonNode own : house.tree().path(PART)) {
      if (isOf(own, table, row)) {
        return Optional.of(own);
      }
    }
    return Optional.empty();
  }

  private static boolean isOf(JsonNode own, String table, String row) {
    return own.path("table").asText().equals(table) && own.path("row").asText().equals(row);
  }

  /** Puts it there; what is wrong, when it may not be: paths are names of columns. */
  public List<Problem> put(House house, Wanted wanted, String who) {
    return desk.write(house, tx -> put(tx, house, wanted, who));
  }

  private List<Problem> put(Tx tx, House house, Wanted wanted, String who) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    ObjectNode body = body(now, wanted);
    ObjectNode tree = without(now, wanted.table(), wanted.row());
    tree.withArray(PART).add(body);
    BookReader.Outcome read = desk.check(tree);
    if (read.book().isEmpty()) {
      return read.problems().stream().map(OwnRows::placed).toList();
    }
    long change = change(tx, now, wanted.table(), wanted.row(), Optional.of(body), who);
    String code = body.path("code").asText();
    books.save(tx, now.id(), PART, code, tree.path(PART).size(), body.toString(), change);
    return List.of();
  }

  /** "$.reference[0].fields.set_low" is the column set_low. */
  private static Problem placed(Problem problem) {
    String path = problem.path().replaceFirst("^\\$\\.reference\\[\\d+]\\.?(fields\\.)?", "");
    return new Problem(path, problem.value(), problem.message());
  }

  /** Takes a kitchen's own word back; false when it has none. */
  public boolean remove(House house, String table, String row, String who) {
    return desk.write(
        house,
        tx -> {
          House now = desk.open(tx, kitchens.lock(tx, house.id()));
          Optional<JsonNode> own = find(now, table, row);
          if (own.isEmpty()) {
            return false;
          }
          change(tx, now, table, row, Optional.empty(), who);
          books.remove(tx, now.id(), PART, own.get().path("code").asText());
          return true;
        });
  }

  private long change(
      Tx tx, House now, String table, String row, Optional<JsonNode> after, String who) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    find(now, table, row).ifPresent(before -> detail.set("before", before));
    after.ifPresent(body -> detail.set("after", body));
    String subject = table + "/" + row;
    return kitchens.change(
        tx, now.id(), News.fact(KIND, subject, detail.toString(), who), desk.now());
  }

  private ObjectNode without(House house, String table, String row) {
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode kept = JsonNodeFactory.instance.arrayNode();
    for (JsonNode own : house.tree().path(PART)) {
      if (!isOf(own, table, row)) {
        kept.add(own);
      }
    }
    tree.set(PART, kept);
    return tree;
  }

  private ObjectNode body(House house, Wanted wanted) {
    ObjectNode body = JsonNodeFactory.instance.objectNode();
    Optional<JsonNode> own = find(house, wanted.table(), wanted.row());
    String code =
        own.map(one -> one.path("code").asText())
            .orElse((wanted.table() + "-" + wanted.row()).replaceAll("[^a-z0-9]+", "-"));
    body.put("code", code.length() > 60 ? code.substring(0, 60) : code);
    body.put("table", wanted.table());
    body.put("row", wanted.row());
    ObjectNode fields = body.putObject("fields");
    Optional<Tables.Row> shipped = Reference.load().tables().find(wanted.table(), wanted.row());
    wanted
        .fields()
        .forEach(
            (column, typed) -> {
              boolean same = shipped.filter(row -> row.text(column).equals(typed)).isPresent();
              if (!typed.isEmpty() && !same) {
                fields.put(column, typed);
              }
            });
    body.put("standing", wanted.standing());
    body.put("source", wanted.source());
    return body;
  }
}
