package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.book.BookStore;
import halfgram.book.Importing;
import halfgram.book.ImportingDeliveries;
import halfgram.book.Moments;
import halfgram.book.Namesakes;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.kitchen.KitchenStore.Stand;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Tub;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Brings a book into the database: into the kitchen of its code, which is made when it is not
 * there. Items are matched by code; what the book does not mention stays. Every problem is told and
 * nothing changes unless there is none.
 */
public final class ImportBook {

  /**
   * What came of it.
   *
   * @param kitchen code of the kitchen; empty when nothing was imported
   * @param rows how many rows were written
   * @param told what was written and is more often a slip than meant
   */
  public record Outcome(
      Optional<String> kitchen,
      int rows,
      List<Problem> problems,
      Optional<Message> unreadable,
      List<Problem> told) {

    private static Outcome refused(List<Problem> problems, Optional<Message> unreadable) {
      return new Outcome(Optional.empty(), 0, problems, unreadable, List.of());
    }
  }

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final BookStore books = new BookStore();
  private final LotStore lots = new LotStore();

  public ImportBook(Desk desk) {
    this.desk = desk;
  }

  public Outcome importBook(byte[] bytes, String who) {
    return importBooks(List.of(bytes), who).get(0);
  }

  /** Brings a book into one kitchen: that of another is a problem, told with all others. */
  public Outcome importBook(House house, byte[] bytes, String who) {
    BookReader.Outcome read = desk.reader().readBrought(bytes);
    String code =
        read.unreadable().isPresent()
            ? house.code()
            : desk.reader().tree(bytes).path("kitchen").path("code").asText();
    if (code.equals(house.code())) {
      return importBooks(List.of(bytes), List.of(read), who).get(0);
    }
    Message own = Message.of("book.other-kitchen", house.code());
    List<Problem> problems = new ArrayList<>(read.problems());
    problems.add(new Problem("$.kitchen.code", code, own));
    return Outcome.refused(problems, Optional.empty());
  }

  /** Another kitchen's book, called as this one and without what stands in the other. */
  public byte[] asOf(House house, byte[] bytes) {
    if (desk.reader().read(bytes).unreadable().isPresent()) {
      return bytes;
    }
    ObjectNode tree = desk.reader().tree(bytes);
    if (tree.path("kitchen") instanceof ObjectNode kitchen) {
      JsonNode own = house.tree().path("kitchen");
      List.of("code", "name", "zone").forEach(key -> kitchen.set(key, own.path(key)));
    }
    return tree.without(List.of("tubs", "deliveries")).toString().getBytes(StandardCharsets.UTF_8);
  }

  /** Brings several books in, all or none: one outcome each, in their order. */
  public List<Outcome> importBooks(List<byte[]> files, String who) {
    return importBooks(files, files.stream().map(desk.reader()::readBrought).toList(), who);
  }

  private List<Outcome> importBooks(List<byte[]> files, List<BookReader.Outcome> read, String who) {
    Set<String> codes = new TreeSet<>();
    for (BookReader.Outcome one : read) {
      one.book().ifPresent(book -> codes.add(book.kitchen().code()));
    }
    if (read.stream().anyMatch(one -> one.book().isEmpty())) {
      return desk.read(tx -> refused(tx, files, read));
    }
    try {
      return desk.write(codes, tx -> write(tx, files, read, who));
    } catch (Refused e) {
      return e.outcomes;
    }
  }

  /** What is wrong with files of which one does not read. */
  private List<Outcome> refused(Tx tx, List<byte[]> files, List<BookReader.Outcome> read) {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      List<Problem> problems = new ArrayList<>(read.get(i).problems());
      if (read.get(i).unreadable().isEmpty()) {
        ObjectNode tree = desk.reader().tree(files.get(i));
        String code = tree.path("kitchen").path("code").asText();
        Optional<Stand> there = kitchens.find(tx, code);
        ObjectNode stored = there.map(one -> books.load(tx, one.id())).orElse(tree.objectNode());
        problems.addAll(Namesakes.list(stored, tree));
      }
      outcomes.add(Outcome.refused(problems, read.get(i).unreadable()));
    }
    return outcomes;
  }

  private List<Outcome> write(
      Tx tx, List<byte[]> files, List<BookReader.Outcome> read, String who) {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      KitchenBook book = read.get(i).book().orElseThrow();
      ObjectNode tree = desk.reader().tree(files.get(i));
      outcomes.add(write(tx, book.kitchen().code(), tree, book, who));
    }
    if (outcomes.stream().anyMatch(outcome -> outcome.kitchen().isEmpty())) {
      throw new Refused(outcomes);
    }
    return outcomes;
  }

  /** Takes back what was written of the other books. */
  private static final class Refused extends RuntimeException {
    private static final long serialVersionUID = 1;
    private final transient List<Outcome> outcomes;

    private Refused(List<Outcome> outcomes) {
      super("a book was refused", null, false, false);
      this.outcomes =
          outcomes.stream().map(one -> Outcome.refused(one.problems(), one.unreadable())).toList();
    }
  }

  /** Writes one book that has been read; within the transaction of the caller. */
  Outcome write(Tx tx, String code, ObjectNode tree, KitchenBook book, String who) {
    Instant at = desk.now();
    Optional<Stand> there = kitchens.find(tx, code);
    BroughtIn brought = new BroughtIn();
    ObjectNode before = tree.objectNode();
    if (there.isPresent()) {
      kitchens.lock(tx, there.get().id());
      Optional<String> changed = Importing.findChangedVersion(tx, there.get().id(), tree);
      if (changed.isPresent()) {
        return problem(changed.get(), Message.of("problem.version-changed"));
      }
      ObjectNode stored = books.load(tx, there.get().id());
      keepDates(stored, tree);
      ObjectNode merged = merged(stored, tree);
      BookReader.Outcome whole = desk.check(stored, merged);
      if (whole.book().isEmpty()) {
        return Outcome.refused(whole.problems(), whole.unreadable());
      }
      brought.compare(stored, merged);
      before = stored;
    } else {
      List<Problem> namesakes = Namesakes.list(before, tree);
      if (!namesakes.isEmpty()) {
        return Outcome.refused(namesakes, Optional.empty());
      }
      brought.compare(before, tree);
    }
    Map<String, Tub> tubs = new HashMap<>();
    there.ifPresent(
        kitchen ->
            lots.list(tx, kitchen.id(), book.lots().stream().map(Lot::code).toList())
                .forEach(tub -> tubs.put(tub.lot().code(), tub)));
    List<Problem> unsafe = unsafe(book, tubs);
    if (!unsafe.isEmpty()) {
      return Outcome.refused(unsafe, Optional.empty());
    }
    Stand stand = there.orElseGet(() -> kitchens.create(tx, UUID.randomUUID(), code, at));
    for (Lot lot : book.lots()) {
      Optional<Tub> tub = Optional.ofNullable(tubs.get(lot.code()));
      brought.tub(lot.code(), tub.map(one -> left(one.lot())).orElse(""), left(lot));
    }
    News news = News.fact("import", code, brought.detail().toString(), who);
    long change = kitchens.change(tx, stand.id(), news, at);
    int rows = new Importing(tx, stand.id(), change, who, at).write(tree, book);
    BroughtTubs bringing = new BroughtTubs(tx, stand.id(), book, change, who, at);
    List<Problem> told = new ArrayList<>();
    for (int i = 0; i < book.lots().size(); i++) {
      Lot lot = book.lots().get(i);
      Optional<Tub> tub = Optional.ofNullable(tubs.get(lot.code()));
      for (Message doubt : tub.map(of -> bringing.doubts(of, lot.left())).orElse(List.of())) {
        told.add(new Problem("$.tubs[" + i + "].left", lot.code(), doubt));
      }
      rows += bringing.bring(lot, tub);
    }
    new Reserved(tx, stand.id(), change, who, at)
        .changed(before.path("events"), tree.path("events"));
    told.addAll(there.isPresent() ? doubts(stand, before, tree) : List.of());
    return new Outcome(Optional.of(code), rows, List.of(), Optional.empty(), told);
  }

  /** Events that a kitchen had already, or gets now. */
  private List<Problem> doubts(Stand stand, ObjectNode before, ObjectNode tree) {
    Map<String, JsonNode> known = new HashMap<>();
    before.path("events").forEach(event -> known.put(event.path("code").asText(), event));
    LocalDate today = new House(stand, desk.bookOf(before), before).day(desk.now());
    List<Problem> doubts = new ArrayList<>();
    for (int i = 0; i < tree.path("events").size(); i++) {
      JsonNode event = tree.path("events").path(i);
      JsonNode was = known.getOrDefault(event.path("code").asText(), tree.path("none"));
      doubts.addAll(Doubts.list("$.events[" + i + "]", was, event, today));
    }
    return doubts;
  }

  /** New tubs with a use-by past what is safe. */
  private List<Problem> unsafe(KitchenBook book, Map<String, Tub> there) {
    TubDates dates = new TubDates(book, desk.now());
    List<Problem> problems = new ArrayList<>();
    for (int i = 0; i < book.lots().size(); i++) {
      Lot lot = book.lots().get(i);
      String path = "$.tubs[" + i + "].useBy";
      if (!there.containsKey(lot.code())) {
        dates.unsafe(lot).ifPresent(why -> problems.add(new Problem(path, "", why)));
      }
    }
    return problems;
  }

  private static String left(Lot lot) {
    String unit = lot.left().dimension() == Dimension.COUNT ? " piece" : " g";
    return Exact.plain(lot.left().number(), 6) + unit;
  }

  private static Outcome problem(String path, Message message) {
    return Outcome.refused(List.of(new Problem(path, "", message)), Optional.empty());
  }

  /**
   * What was said of a regular service on single dates stays where the import says nothing of any:
   * a push of tonight is no part of a book that was written last month. A date on which it no
   * longer runs goes.
   */
  private static void keepDates(ObjectNode stored, ObjectNode tree) {
    for (JsonNode item : tree.path("services")) {
      for (JsonNode before : stored.path("services")) {
        boolean same = before.path("code").equals(item.path("code"));
        if (same && !item.has("dates") && before.path("dates") instanceof ArrayNode dates) {
          ArrayNode kept = tree.arrayNode();
          for (JsonNode date : dates) {
            if (runs(item, date.path("date").asText())) {
              kept.add(date);
            }
          }
          if (!kept.isEmpty()) {
            ((ObjectNode) item).set("dates", kept);
          }
        }
      }
    }
  }

  private static boolean runs(JsonNode service, String date) {
    String day = BookStore.word(Moments.date(date).orElse(LocalDate.EPOCH).getDayOfWeek());
    for (JsonNode one : service.path("days")) {
      if (one.asText().equals(day)) {
        return true;
      }
    }
    return false;
  }

  /** The stored book with the items of another by their codes, as it would be after the import. */
  private static ObjectNode merged(ObjectNode stored, ObjectNode other) {
    ObjectNode merged = stored.deepCopy();
    for (Map.Entry<String, JsonNode> entry : other.properties()) {
      JsonNode there = merged.get(entry.getKey());
      if (entry.getValue() instanceof ArrayNode list && there instanceof ArrayNode before) {
        put(before, list, entry.getKey());
      } else {
        merged.set(entry.getKey(), entry.getValue());
      }
    }
    return merged;
  }

  private static void put(ArrayNode list, ArrayNode items, String kind) {
    Map<String, Integer> there = new HashMap<>();
    for (int i = 0; i < list.size(); i++) {
      there.putIfAbsent(key(list.get(i), kind), i);
    }
    for (JsonNode item : items) {
      Integer at = there.putIfAbsent(key(item, kind), list.size());
      if (at == null) {
        list.add(item);
      } else {
        list.set(at, together(list.get(at), item, kind));
      }
    }
  }

  /** What stays of an item that is replaced: older versions, and what was entered. */
  private static JsonNode together(JsonNode before, JsonNode item, String kind) {
    return switch (kind) {
      case "formulas" -> withOlderVersions(before, item);
      case "deliveries" -> ImportingDeliveries.withEntries(before, item);
      default -> item;
    };
  }

  /** What names an item among those of its kind. */
  static String key(JsonNode item, String kind) {
    return kind.equals("pars")
        ? item.path("service").asText()
            + "/"
            + item.path("component").asText()
            + "/"
            + item.path("output").asText("")
        : item.path("code").asText();
  }

  /** Versions that the import does not mention stay. */
  private static JsonNode withOlderVersions(JsonNode before, JsonNode item) {
    ObjectNode both = ((ObjectNode) item).deepCopy();
    ArrayNode versions = both.withArray("versions");
    for (Iterator<JsonNode> old = before.path("versions").elements(); old.hasNext(); ) {
      JsonNode version = old.next();
      boolean mentioned = false;
      for (JsonNode other : versions) {
        mentioned |= other.path("version").asInt() == version.path("version").asInt();
      }
      if (!mentioned) {
        versions.add(version);
      }
    }
    return both;
  }
}
