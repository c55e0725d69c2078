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
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.par.Par;
import halfgram.par.ParStore;
import halfgram.prep.KitchenBook;
import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Sets pars, many cells of the week at once.
 *
 * <p>Rules. Only what was changed is written. A cell that somebody else has changed since to
 * something else is not: then nothing is written and both are told. Nothing is written unless the
 * whole book reads with it. A changed par is a fact at once; no plan in force changes.
 */
public final class Pars {
  /** The kind of its changes, and what each is about. */
  private static final String KIND = "par";

  private static final Pattern SUBJECT = Pattern.compile("([^/]+)/([^/:]+)(?::([^/]+))?/(\\w+)");

  private static final Pattern AT =
      Pattern.compile("\\$\\.pars\\[(\\d+)](?:\\.(\\w+))?(?:\\.(\\w+))?");

  /**
   * A component as a service uses it.
   *
   * @param output empty for a formula of one output
   */
  public record Row(String service, String component, String output) {
    String subject() {
      return service + "/" + component + (output.isEmpty() ? "" : ":" + output);
    }
  }

  /** A cell of the week. */
  public record Spot(Row row, DayOfWeek day) {
    String word() {
      return day.name().substring(0, 3).toLowerCase(Locale.ROOT);
    }
  }

  /** What became of it. */
  public sealed interface Outcome permits Saved, Wrong, Stale {}

  /**
   * It is stored.
   *
   * @param cells how many were changed
   * @param change number of the last of their changes, which follow each other
   */
  public record Saved(int cells, long change) implements Outcome {}

  /** The book does not read with it: what is wrong, by cell, by row, and with anything else. */
  public record Wrong(Map<Spot, Message> cells, Map<Row, Message> rows, List<Problem> others)
      implements Outcome {}

  /** Somebody else has changed some of the same cells: what they hold now. */
  public record Stale(Map<Spot, String> theirs) implements Outcome {}

  /**
   * What it would be.
   *
   * @param house the kitchen with the cells set; empty when they may not be
   * @param refusal why not
   * @param days of the week that change
   */
  public record Tried(Optional<House> house, Optional<Outcome> refusal, Set<DayOfWeek> days) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();
  private final ParStore pars = new ParStore();

  public Pars(Desk desk) {
    this.desk = desk;
  }

  /** Every cell with an amount, as typed, in the order of the book. */
  public static Map<Spot, String> cells(House house) {
    return cells(house.tree().path("pars"));
  }

  /** Every cell of a list as the book writes it. */
  public static Map<Spot, String> cells(JsonNode pars) {
    Map<Spot, String> cells = new LinkedHashMap<>();
    for (JsonNode par : pars) {
      for (DayOfWeek day : DayOfWeek.values()) {
        Spot spot = new Spot(row(par), day);
        JsonNode typed = par.path("amounts").path(spot.word());
        if (typed.isTextual()) {
          cells.put(spot, typed.asText());
        }
      }
    }
    return cells;
  }

  private static Row row(JsonNode par) {
    JsonNode output = par.path("output");
    return new Row(
        par.path("service").asText(),
        par.path("component").asText(),
        output.isTextual() ? output.asText() : "");
  }

  /** What is wrong with a list as the book writes it, by its paths in the book: "$.pars[0]". */
  public List<Problem> problems(House house, JsonNode pars) {
    ObjectNode tree = house.tree().deepCopy();
    tree.set("pars", pars);
    return desk.check(tree).problems();
  }

  /**
   * Sets cells.
   *
   * @param seen what each cell held when whoever sets it began; a cell without is empty
   * @param wanted what each cell shall hold, as typed; blank to empty it
   */
  public Outcome save(House house, Map<Spot, String> seen, Map<Spot, String> wanted, String who) {
    return desk.write(house, tx -> save(tx, house, seen, wanted, who));
  }

  /**
   * The kitchen with cells as they would be; nothing is stored.
   *
   * @param wanted what each cell shall hold, as typed
   */
  public Tried look(House house, Map<Spot, String> seen, Map<Spot, String> wanted) {
    Judged judged = judge(house, seen, wanted);
    Optional<House> after =
        judged.refusal().isPresent()
            ? Optional.empty()
            : judged.book().map(book -> new House(house.stand(), book, judged.tree()));
    Set<DayOfWeek> days = EnumSet.noneOf(DayOfWeek.class);
    judged.changes().keySet().forEach(spot -> days.add(spot.day()));
    return new Tried(after, judged.refusal(), days);
  }

  private Outcome save(
      Tx tx, House house, Map<Spot, String> seen, Map<Spot, String> wanted, String who) {
    House now = desk.open(tx, kitchens.lock(tx, house.id()));
    Judged judged = judge(now, seen, wanted);
    if (judged.refusal().isPresent()) {
      return judged.refusal().get();
    }
    Map<Spot, String> there = cells(now);
    KitchenBook book = judged.book().orElseThrow();
    long change = 0;
    for (Map.Entry<Spot, String> cell : judged.changes().entrySet()) {
      String before = there.getOrDefault(cell.getKey(), "");
      change = store(tx, now, cell.getKey(), cell.getValue(), before, book, who);
    }
    return new Saved(judged.changes().size(), change);
  }

  /** What would change, the book it makes, and why it may not be stored. */
  private record Judged(
      Map<Spot, String> changes,
      ObjectNode tree,
      Optional<KitchenBook> book,
      Optional<Outcome> refusal) {}

  private Judged judge(House now, Map<Spot, String> seen, Map<Spot, String> wanted) {
    Map<Spot, String> there = cells(now);
    Map<Spot, String> changes = new LinkedHashMap<>();
    Map<Spot, String> theirs = new LinkedHashMap<>();
    wanted.forEach(
        (spot, typed) -> {
          String was = seen.getOrDefault(spot, "");
          String is = there.getOrDefault(spot, "");
          if (!typed.equals(was) && !typed.equals(is)) {
            changes.put(spot, typed);
            if (!is.equals(was)) {
              theirs.put(spot, is);
            }
          }
        });
    ObjectNode tree = with(now, changes);
    BookReader.Outcome read = desk.check(tree);
    Optional<Outcome> refusal =
        read.book().isEmpty()
            ? Optional.of(wrong(tree, read.problems()))
            : theirs.isEmpty() ? Optional.empty() : Optional.of(new Stale(theirs));
    return new Judged(changes, tree, read.book(), refusal);
  }

  /** The book with cells set; a row without any goes. */
  private static ObjectNode with(House house, Map<Spot, String> changes) {
    ObjectNode tree = house.tree().deepCopy();
    ArrayNode list = tree.withArray("pars");
    Map<Row, ObjectNode> rows = new LinkedHashMap<>();
    list.forEach(par -> rows.put(row(par), (ObjectNode) par));
    changes.forEach(
        (spot, typed) -> {
          ObjectNode par = rows.computeIfAbsent(spot.row(), row -> fresh(list, row));
          ObjectNode amounts = (ObjectNode) par.path("amounts");
          if (typed.isEmpty()) {
            amounts.remove(spot.word());
          } else {
            amounts.put(spot.word(), typed);
          }
        });
    for (int i = list.size() - 1; i >= 0; i--) {
      if (list.get(i).path("amounts").isEmpty()) {
        list.remove(i);
      }
    }
    return tree;
  }

  private static ObjectNode fresh(ArrayNode list, Row row) {
    ObjectNode par = list.addObject();
    par.put("service", row.service());
    par.put("component", row.component());
    if (!row.output().isEmpty()) {
      par.put("output", row.output());
    }
    par.putObject("amounts");
    return par;
  }

  private static Wrong wrong(ObjectNode tree, List<Problem> problems) {
    Wrong wrong = new Wrong(new LinkedHashMap<>(), new LinkedHashMap<>(), new ArrayList<>());
    for (Problem problem : problems) {
      Matcher at = AT.matcher(problem.path());
      if (!at.matches()) {
        wrong.others().add(problem);
        continue;
      }
      Row row = row(tree.path("pars").path(Integer.parseInt(at.group(1))));
      Optional<DayOfWeek> day = day(at.group(3) == null ? "" : at.group(3));
      if (day.isPresent()) {
        wrong.cells().put(new Spot(row, day.get()), problem.message());
      } else {
        wrong.rows().put(row, problem.message());
      }
    }
    return wrong;
  }

  /** A weekday by its first three letters. */
  public static Optional<DayOfWeek> day(String word) {
    for (DayOfWeek day : DayOfWeek.values()) {
      if (day.name().substring(0, 3).equalsIgnoreCase(word)) {
        return Optional.of(day);
      }
    }
    return Optional.empty();
  }

  private long store(
      Tx tx, House house, Spot spot, String typed, String before, KitchenBook book, String who) {
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("from", before);
    detail.put("to", typed);
    String subject = spot.row().subject() + "/" + spot.word();
    long change =
        kitchens.change(
            tx, house.id(), News.fact(KIND, subject, detail.toString(), who), desk.now());
    ParStore.Cell cell =
        new ParStore.Cell(
            spot.row().service(),
            spot.row().component(),
            spot.row().output(),
            spot.day(),
            typed,
            amount(book, spot),
            change);
    if (typed.isEmpty()) {
      pars.remove(tx, house.id(), cell);
    } else {
      pars.save(tx, house.id(), pars.place(tx, house.id(), cell), cell);
    }
    return change;
  }

  /**
   * What cells held before they were saved together; without those that hold something else now.
   *
   * @param cells how many were changed
   * @param change number of the last of their changes
   */
  public Map<Spot, String> listBefore(House house, int cells, long change) {
    Map<Spot, String> now = cells(house);
    Map<Spot, String> before = new LinkedHashMap<>();
    desk.read(tx -> kitchens.listBefore(tx, house.id(), change + 1, Set.of(KIND), cells)).stream()
        .filter(one -> one.number() > change - cells)
        .forEach(
            one -> {
              JsonNode detail = BookStore.parse(one.detail());
              spot(one.subject())
                  .filter(at -> now.getOrDefault(at, "").equals(detail.path("to").asText()))
                  .ifPresent(at -> before.put(at, detail.path("from").asText()));
            });
    return before;
  }

  /** The cell of a subject in the log. */
  private static Optional<Spot> spot(String subject) {
    Matcher of = SUBJECT.matcher(subject);
    return of.matches()
        ? day(of.group(4))
            .map(
                day ->
                    new Spot(
                        new Row(of.group(1), of.group(2), of.group(3) == null ? "" : of.group(3)),
                        day))
        : Optional.empty();
  }

  /** The amount as the book reads it; none for a cell that is empty now. */
  private static Amount amount(KitchenBook book, Spot spot) {
    return book.pars().stream()
        .filter(par -> isOf(par, spot.row()))
        .flatMap(par -> Optional.ofNullable(par.amounts().get(spot.day())).stream())
        .findFirst()
        .orElse(Amount.zero(Dimension.MASS));
  }

  private static boolean isOf(Par par, Row row) {
    return par.service().equals(row.service())
        && par.component().formula().equals(row.component())
        && par.component().output().orElse("").equals(row.output());
  }
}
