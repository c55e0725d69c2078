package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.db.Tx;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Message;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Puts a tub into the house by hand: one that was found or bought in. It is read by the reader of
 * books, so that it obeys the rules a tub of a book obeys.
 */
public final class Bringing {

  /**
   * What came of it.
   *
   * @param code of the tub; empty when nothing was saved
   * @param problems by the names of a tub's fields in a book: "left", "useBy"
   */
  public record Outcome(Optional<String> code, List<Problem> problems) {}

  /**
   * What can be said of a tub put in by hand: it gets its code here, and is kept for nobody yet.
   */
  private static final List<String> FIELDS =
      List.of(
          "component",
          "output",
          "version",
          "left",
          "made",
          "useBy",
          "place",
          "container",
          "frozen",
          "thawed");

  private static final String DETAIL = "{\"kind\":\"" + Movement.Kind.BROUGHT + "\"}";

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final LotStore lots = new LotStore();
  private final Posting posting = new Posting();

  public Bringing(Desk desk) {
    this.desk = desk;
  }

  /**
   * Brings one in.
   *
   * @param id of the form it was typed into: the same form sent again is the same tub
   * @param fields of a tub as a book has them, without its code
   */
  public Outcome bring(House house, UUID id, ObjectNode fields, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Tub> there = lots.find(tx, house.id(), id);
          return there
              .map(tub -> new Outcome(Optional.of(tub.lot().code()), List.of()))
              .orElseGet(() -> add(tx, house, id, fields, who));
        });
  }

  private Outcome add(Tx tx, House house, UUID id, ObjectNode fields, String who) {
    Instant now = desk.now();
    String code = TubCodes.next(tx, house, now, 1).get(0);
    ObjectNode book = house.tree().deepCopy();
    ObjectNode node = book.putArray("tubs").addObject();
    node.put("code", code);
    List<Problem> problems = new ArrayList<>();
    for (Map.Entry<String, JsonNode> field : fields.properties()) {
      if (FIELDS.contains(field.getKey()) || field.getKey().startsWith("x-")) {
        node.set(field.getKey(), field.getValue());
      } else {
        Message unknown = Message.of("problem.unknown-key", String.join(", ", FIELDS));
        problems.add(new Problem(field.getKey(), field.getValue().toString(), unknown));
      }
    }
    BookReader.Outcome read = desk.reader().read(book.toString().getBytes(StandardCharsets.UTF_8));
    read.problems().stream().map(Bringing::own).forEach(problems::add);
    if (!problems.isEmpty()) {
      return new Outcome(Optional.empty(), problems);
    }
    Lot lot = read.book().orElseThrow().lots().get(0);
    long change = kitchens.change(tx, house.id(), News.fact("stock", code, DETAIL, who), now);
    Tub tub = new Tub(id, lot, Optional.empty(), change, false);
    Movement brought = Movement.of(id, Movement.Kind.BROUGHT, lot.left(), who, now);
    posting.open(tx, house.id(), tub, brought, change);
    return new Outcome(Optional.of(code), List.of());
  }

  /** The field's own name in place of its path in the book. */
  private static Problem own(Problem problem) {
    String name = problem.path().substring(problem.path().lastIndexOf('.') + 1);
    return new Problem(name, problem.value(), problem.message());
  }
}
