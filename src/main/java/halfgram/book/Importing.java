package halfgram.book;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.event.EventStore;
import halfgram.formula.FormulaStore;
import halfgram.measure.Amount;
import halfgram.par.Par;
import halfgram.par.ParStore;
import halfgram.prep.KitchenBook;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * Writes a whole, checked book into a kitchen's rows: what has a code that is there is replaced,
 * what has none there is added, and nothing is taken away. Versions that are there stay as they
 * are.
 */
public final class Importing {
  private final BookStore parts = new BookStore();
  private final FormulaStore formulas = new FormulaStore();
  private final EventStore events = new EventStore();
  private final ParStore pars = new ParStore();

  private final Tx tx;
  private final UUID kitchen;
  private final long change;
  private final String who;
  private final Instant at;
  private final Map<String, Map<String, String>> bodies = new HashMap<>();
  private int written;

  public Importing(Tx tx, UUID kitchen, long change, String who, Instant at) {
    this.tx = tx;
    this.kitchen = kitchen;
    this.change = change;
    this.who = who;
    this.at = at;
  }

  /**
   * Writes it.
   *
   * @param tree the book as a tree of the current version
   * @param book the same book, read: every problem has been found before
   * @return how many rows changed
   */
  public int write(ObjectNode tree, KitchenBook book) {
    part("kitchen", "kitchen", 0, tree.path("kitchen"));
    for (String kind : BookStore.PARTS) {
      int place = 0;
      for (JsonNode item : tree.path(kind)) {
        part(kind, item.path("code").asText(), place++, item);
      }
    }
    for (Iterator<String> keys = tree.fieldNames(); keys.hasNext(); ) {
      String key = keys.next();
      if (key.startsWith("x-")) {
        part("x", key, 0, tree.path(key));
      }
    }
    formulas(tree.path("formulas"));
    events(tree.path("events"));
    pars(tree.path("pars"), book.pars());
    written += new ImportingDeliveries(tx, kitchen, change).write(tree.path("deliveries"));
    return written;
  }

  private void part(String kind, String code, int place, JsonNode body) {
    String text = body.toString();
    Map<String, String> there =
        bodies.computeIfAbsent(kind, any -> parts.listBodies(tx, kitchen, any));
    if (!text.equals(there.get(code))) {
      parts.save(tx, kitchen, kind, code, place, text, change);
      written++;
    }
  }

  private void formulas(JsonNode list) {
    Map<String, String> heads = new HashMap<>();
    formulas.listHeads(tx, kitchen).forEach(head -> heads.put(head.code(), head.body()));
    Set<String> versions = new HashSet<>();
    formulas.listVersions(tx, kitchen).forEach(v -> versions.add(v.formula() + "/" + v.version()));
    int place = 0;
    for (JsonNode item : list) {
      String code = item.path("code").asText();
      ObjectNode head = ((ObjectNode) item).deepCopy();
      head.remove("versions");
      if (!head.toString().equals(heads.get(code))) {
        formulas.saveHead(tx, kitchen, place, new FormulaStore.Head(code, head.toString(), change));
        written++;
      }
      place++;
      for (JsonNode version : item.path("versions")) {
        int number = version.path("version").asInt();
        if (versions.add(code + "/" + number)) {
          formulas.add(
              tx,
              kitchen,
              new FormulaStore.Saved(code, number, version.toString(), who, at),
              change);
          written++;
        }
      }
    }
  }

  private void events(JsonNode list) {
    Map<String, String> bodies = new HashMap<>();
    events.list(tx, kitchen).forEach(event -> bodies.put(event.code(), event.body()));
    int place = 0;
    for (JsonNode item : list) {
      String code = item.path("code").asText();
      if (!item.toString().equals(bodies.get(code))) {
        LocalDate date = Moments.date(item.path("date").asText()).orElse(LocalDate.EPOCH);
        events.save(tx, kitchen, place, new EventStore.Saved(code, date, item.toString(), change));
        written++;
      }
      place++;
    }
  }

  private void pars(JsonNode list, List<Par> read) {
    Map<String, ParStore.Cell> cells = new HashMap<>();
    pars.list(tx, kitchen).forEach(cell -> cells.put(key(cell), cell));
    for (int i = 0; i < read.size(); i++) {
      Par par = read.get(i);
      for (Map.Entry<DayOfWeek, Amount> entry : par.amounts().entrySet()) {
        String typed = list.path(i).path("amounts").path(BookStore.word(entry.getKey())).asText();
        ParStore.Cell cell =
            new ParStore.Cell(
                par.service(),
                par.component().formula(),
                list.path(i).path("output").asText(""),
                entry.getKey(),
                typed,
                entry.getValue(),
                change);
        ParStore.Cell before = cells.get(key(cell));
        if (before == null || !before.typed().equals(typed)) {
          pars.save(tx, kitchen, i, cell);
          written++;
        }
      }
    }
  }

  private static String key(ParStore.Cell cell) {
    return cell.service() + "/" + cell.component() + "/" + cell.output() + "/" + cell.weekday();
  }

  /** The first version in a tree that is stored otherwise: versions never change. */
  public static Optional<String> findChangedVersion(Tx tx, UUID kitchen, JsonNode tree) {
    Map<String, String> stored = new HashMap<>();
    new FormulaStore()
        .listVersions(tx, kitchen)
        .forEach(v -> stored.put(v.formula() + "/" + v.version(), v.body()));
    JsonNode list = tree.path("formulas");
    for (int f = 0; f < list.size(); f++) {
      JsonNode versions = list.path(f).path("versions");
      for (int v = 0; v < versions.size(); v++) {
        JsonNode version = versions.path(v);
        String key = list.path(f).path("code").asText() + "/" + version.path("version").asInt();
        if (stored.containsKey(key) && !BookStore.parse(stored.get(key)).equals(version)) {
          return Optional.of("$.formulas[" + f + "].versions[" + v + "]");
        }
      }
    }
    return Optional.empty();
  }
}
