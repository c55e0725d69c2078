package halfgram.book;

import static halfgram.db.schema.Tables.BOOK_PART;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.db.schema.tables.records.BookPartRecord;
import halfgram.delivery.DeliveryStore;
import halfgram.event.EventStore;
import halfgram.formula.FormulaStore;
import halfgram.par.ParStore;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * The kitchen book in the database: put together from its rows as the tree a file would hold,
 * without tubs, and the rows that have no store of their own.
 */
public final class BookStore {
  /** Lists of a book whose items are rows of book_part, in the order of the book. */
  static final List<String> PARTS =
      List.of(
          "reference",
          "stations",
          "people",
          "equipment",
          "containers",
          "scales",
          "ingredients",
          "diets",
          "dishes",
          "services");

  /** So many of them stand before the formulas. */
  private static final int BEFORE_FORMULAS = PARTS.indexOf("diets");

  /** Of those, the ones that a book has even when nothing stands in them. */
  private static final Set<String> NEEDED = Set.of("stations", "ingredients");

  private static final String KITCHEN = "kitchen";
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private final FormulaStore formulas = new FormulaStore();
  private final EventStore events = new EventStore();
  private final ParStore pars = new ParStore();
  private final DeliveryStore deliveries = new DeliveryStore();

  /** The book as a tree, without tubs. */
  public ObjectNode load(Tx tx, UUID kitchen) {
    ObjectNode book = NODES.objectNode();
    book.put("format", "halfgram-book");
    book.put("version", 1);
    Map<String, ArrayNode> lists = new LinkedHashMap<>();
    PARTS.forEach(part -> lists.put(part, NODES.arrayNode()));
    for (BookPartRecord row : rows(tx, kitchen)) {
      JsonNode body = parse(row.getBody());
      if (row.getKind().equals(KITCHEN)) {
        book.set(KITCHEN, body);
      } else if (lists.containsKey(row.getKind())) {
        lists.get(row.getKind()).add(body);
      } else {
        book.set(row.getCode(), body);
      }
    }
    PARTS.subList(0, BEFORE_FORMULAS).forEach(part -> set(book, part, lists));
    book.set("formulas", formulas(tx, kitchen));
    PARTS.subList(BEFORE_FORMULAS, PARTS.size()).forEach(part -> set(book, part, lists));
    book.set("pars", pars(tx, kitchen));
    ArrayNode occasions = book.putArray("events");
    events.list(tx, kitchen).forEach(event -> occasions.add(parse(event.body())));
    deliveries(tx, kitchen, book);
    return book;
  }

  /** Deliveries with what was entered of them; no list where there is none. */
  private void deliveries(Tx tx, UUID kitchen, ObjectNode book) {
    Map<String, List<String>> entries = deliveries.listEntries(tx, kitchen);
    for (DeliveryStore.Saved saved : deliveries.list(tx, kitchen)) {
      ObjectNode body = (ObjectNode) parse(saved.body());
      entries
          .getOrDefault(saved.code(), List.of())
          .forEach(entry -> body.withArray("entries").add(parse(entry)));
      book.withArray("deliveries").add(body);
    }
  }

  private static void set(ObjectNode book, String part, Map<String, ArrayNode> lists) {
    ArrayNode list = lists.get(part);
    if (list != null && (!list.isEmpty() || NEEDED.contains(part))) {
      book.set(part, list);
    }
  }

  private ArrayNode formulas(Tx tx, UUID kitchen) {
    Map<String, ObjectNode> heads = new LinkedHashMap<>();
    for (FormulaStore.Head head : formulas.listHeads(tx, kitchen)) {
      heads.put(head.code(), (ObjectNode) parse(head.body()));
    }
    for (FormulaStore.Saved saved : formulas.listVersions(tx, kitchen)) {
      ObjectNode head = heads.get(saved.formula());
      if (head != null) {
        head.withArray("versions").add(parse(saved.body()));
      }
    }
    ArrayNode list = NODES.arrayNode();
    heads.values().forEach(list::add);
    return list;
  }

  private ArrayNode pars(Tx tx, UUID kitchen) {
    Map<List<String>, ObjectNode> rows = new LinkedHashMap<>();
    for (ParStore.Cell cell : pars.list(tx, kitchen)) {
      ObjectNode row =
          rows.computeIfAbsent(
              List.of(cell.service(), cell.component(), cell.output()),
              key -> {
                ObjectNode par = NODES.objectNode();
                par.put("service", cell.service());
                par.put("component", cell.component());
                if (!cell.output().isEmpty()) {
                  par.put("output", cell.output());
                }
                par.putObject("amounts");
                return par;
              });
      ((ObjectNode) row.path("amounts")).put(word(cell.weekday()), cell.typed());
    }
    ArrayNode list = NODES.arrayNode();
    rows.values().forEach(list::add);
    return list;
  }

  /** "mon", as the book spells it. */
  public static String word(DayOfWeek day) {
    return day.name().substring(0, 3).toLowerCase(Locale.ROOT);
  }

  /**
   * A part as stored.
   *
   * @param change number of its last change
   */
  public record Saved(String body, long change) {}

  /** Parts of one kind as stored, in the order of the book. */
  public List<Saved> list(Tx tx, UUID kitchen, String kind) {
    return rows(tx, kitchen).stream()
        .filter(row -> row.getKind().equals(kind))
        .map(row -> new Saved(row.getBody(), row.getChangeNumber()))
        .toList();
  }

  /** Parts of one kind as stored: bodies by code. */
  Map<String, String> listBodies(Tx tx, UUID kitchen, String kind) {
    Map<String, String> bodies = new LinkedHashMap<>();
    for (BookPartRecord row : rows(tx, kitchen)) {
      if (row.getKind().equals(kind)) {
        bodies.put(row.getCode(), row.getBody());
      }
    }
    return bodies;
  }

  /** Adds or replaces one part; the place is for one that is added. */
  public void save(
      Tx tx, UUID kitchen, String kind, String code, int place, String body, long change) {
    int updated =
        tx.sql()
            .update(BOOK_PART)
            .set(BOOK_PART.BODY, body)
            .set(BOOK_PART.CHANGE_NUMBER, change)
            .where(BOOK_PART.KITCHEN_ID.eq(kitchen))
            .and(BOOK_PART.KIND.eq(kind))
            .and(BOOK_PART.CODE.eq(code))
            .execute();
    if (updated == 0) {
      tx.sql()
          .insertInto(BOOK_PART)
          .set(BOOK_PART.KITCHEN_ID, kitchen)
          .set(BOOK_PART.ID, UUID.randomUUID())
          .set(BOOK_PART.KIND, kind)
          .set(BOOK_PART.CODE, code)
          .set(BOOK_PART.PLACE, place)
          .set(BOOK_PART.BODY, body)
          .set(BOOK_PART.CHANGE_NUMBER, change)
          .execute();
    }
  }

  public void remove(Tx tx, UUID kitchen, String kind, String code) {
    tx.sql()
        .deleteFrom(BOOK_PART)
        .where(BOOK_PART.KITCHEN_ID.eq(kitchen))
        .and(BOOK_PART.KIND.eq(kind))
        .and(BOOK_PART.CODE.eq(code))
        .execute();
  }

  private static List<BookPartRecord> rows(Tx tx, UUID kitchen) {
    return new ArrayList<>(
        tx.sql()
            .selectFrom(BOOK_PART)
            .where(BOOK_PART.KITCHEN_ID.eq(kitchen))
            .orderBy(BOOK_PART.PLACE, BOOK_PART.CODE)
            .fetch());
  }

  /** A body as a tree; it was a tree when it was stored. */
  public static JsonNode parse(String body) {
    try {
      return JsonTree.parse(body.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException("a stored part is not JSON", e);
    }
  }
}
