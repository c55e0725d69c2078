package halfgram.desk;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.db.Tx;
import halfgram.formula.Formula;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Output;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Puts a tub into the house by hand: one that was found or bought in. It is read by the reader of
 * books, so that it obeys the rules a tub of a book obeys; its dates obey {@link TubDates}. Without
 * a use-by it has the one that its formula gives it. A hold of quality that is overrun, and far
 * more than fits, are asked about and taken when whoever enters it is sure.
 */
public final class Bringing {

  /**
   * What came of it.
   *
   * @param code of the tub; empty when nothing was saved
   * @param problems by the names of a tub's fields in a book: "left", "useBy"
   * @param asks what speaks against it; there when nothing else keeps it from being taken
   */
  public record Outcome(Optional<String> code, List<Problem> problems, List<Message> asks) {
    /** Nothing was entered yet. */
    public static final Outcome NONE = wrong(List.of());

    private static Outcome of(String code) {
      return new Outcome(Optional.of(code), List.of(), List.of());
    }

    private static Outcome wrong(List<Problem> problems) {
      return new Outcome(Optional.empty(), problems, List.of());
    }
  }

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

  /** So many times what its formula fills into one is a slip of the hand, or is asked about. */
  private static final int FAR = 10;

  /** The same where no formula says what goes into one. */
  private static final Amount MUCH = Amount.grams(100_000);

  private static final Amount MANY = Amount.pieces(10_000);

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
   * @param sure whether whoever enters it has been told what speaks against it
   */
  public Outcome bring(House house, UUID id, ObjectNode fields, boolean sure, String who) {
    return desk.write(
        house,
        tx -> {
          kitchens.lock(tx, house.id());
          Optional<Tub> there = lots.find(tx, house.id(), id);
          return there
              .map(tub -> Outcome.of(tub.lot().code()))
              .orElseGet(() -> add(tx, house, id, fields, sure, who));
        });
  }

  private Outcome add(Tx tx, House house, UUID id, ObjectNode fields, boolean sure, String who) {
    Instant now = desk.now();
    String code = TubCodes.next(tx, house, now, 1).get(0);
    BookReader.Outcome read = read(house, code, dated(house, code, fields));
    List<Problem> problems = new ArrayList<>(unknown(fields));
    read.problems().stream().map(Bringing::own).forEach(problems::add);
    if (read.book().isEmpty() || !problems.isEmpty()) {
      return Outcome.wrong(problems);
    }
    Lot lot = read.book().get().lots().get(0);
    isOut(read.book().get(), lot).ifPresent(why -> problems.add(problem("component", fields, why)));
    TubDates dates = new TubDates(read.book().get(), now);
    dates.early(lot).ifPresent(why -> problems.add(problem("made", fields, why)));
    dates.unsafe(lot).ifPresent(why -> problems.add(problem("useBy", fields, why)));
    if (!problems.isEmpty()) {
      return Outcome.wrong(problems);
    }
    List<Message> asks = new ArrayList<>(dates.doubt(lot).stream().toList());
    far(read.book().get(), lot).ifPresent(asks::add);
    if (!sure && !asks.isEmpty()) {
      return new Outcome(Optional.empty(), List.of(), asks);
    }
    long change = kitchens.change(tx, house.id(), News.fact("stock", code, DETAIL, who), now);
    Tub tub = new Tub(id, lot, Optional.empty(), change, false);
    Movement brought = Movement.of(id, Movement.Kind.BROUGHT, lot.left(), who, now);
    posting.open(tx, house.id(), house.book(), tub, brought, change);
    return Outcome.of(code);
  }

  private BookReader.Outcome read(House house, String code, ObjectNode fields) {
    ObjectNode book = house.tree().deepCopy();
    ObjectNode node = book.putArray("tubs").addObject();
    node.put("code", code);
    fields.properties().stream()
        .filter(field -> isKnown(field.getKey()))
        .forEach(field -> node.set(field.getKey(), field.getValue()));
    return desk.reader().read(book.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** The fields with the use-by that the formula gives it, when they have none. */
  private ObjectNode dated(House house, String code, ObjectNode fields) {
    if (!fields.path("useBy").isMissingNode() || !fields.path("made").isTextual()) {
      return fields;
    }
    ObjectNode fresh = fields.deepCopy();
    fresh.remove(List.of("frozen", "thawed"));
    fresh.set("useBy", fields.get("made"));
    ObjectNode dated = fields.deepCopy();
    read(house, code, fresh)
        .book()
        .ifPresentOrElse(
            book -> {
              Instant useBy = new TubDates(book, desk.now()).reckoned(book.lots().get(0));
              ZoneId zone = book.kitchen().clock().zone();
              dated.put("useBy", useBy.atZone(zone).toLocalDateTime().toString());
            },
            // Something else is wrong, and that is what is told.
            () -> dated.set("useBy", fields.get("made")));
    return dated;
  }

  /** Tubs that are there may be of a formula that was taken out; a new one would be a use of it. */
  private static Optional<Message> isOut(KitchenBook book, Lot lot) {
    return book.formulary()
        .find(lot.component().formula())
        .filter(Formula::takenOut)
        .map(out -> Message.of("problem.taken-out"));
  }

  private static Optional<Message> far(KitchenBook book, Lot lot) {
    FormulaVersion version = book.formulary().get(lot.component());
    Output output = version.outputs().get(version.outputIndex(lot.component().output()));
    Amount most =
        output
            .fill()
            .filter(fill -> fill.dimension() == lot.left().dimension())
            .map(fill -> fill.times(FAR))
            .orElse(output.isPieces() ? MANY : MUCH);
    return lot.left().compareTo(most) > 0
        ? Optional.of(
            output
                .fill()
                .map(fill -> Message.of("stock.far-more", lot.left(), fill))
                .orElse(Message.of("stock.far-much", lot.left())))
        : Optional.empty();
  }

  private static boolean isKnown(String field) {
    return FIELDS.contains(field) || field.startsWith("x-");
  }

  private static List<Problem> unknown(ObjectNode fields) {
    Message unknown = Message.of("problem.unknown-key", String.join(", ", FIELDS));
    return fields.properties().stream()
        .filter(field -> !isKnown(field.getKey()))
        .map(field -> new Problem(field.getKey(), field.getValue().toString(), unknown))
        .toList();
  }

  private static Problem problem(String field, ObjectNode fields, Message why) {
    return new Problem(field, fields.path(field).asText(), why);
  }

  /** The field's own name in place of its path in the book. */
  private static Problem own(Problem problem) {
    String name = problem.path().substring(problem.path().lastIndexOf('.') + 1);
    return new Problem(name, problem.value(), problem.message());
  }
}
