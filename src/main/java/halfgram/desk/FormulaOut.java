package halfgram.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookReader;
import halfgram.db.Tx;
import halfgram.formula.FormulaStore;
import halfgram.input.Problem;
import halfgram.kitchen.KitchenStore;
import halfgram.lot.LotStore;
import halfgram.measure.Message;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Takes formulas out of the book and puts them back. One that is out stays with all its versions
 * for what was made of it, so that tubs and plans of the past still name it; nothing of the book
 * may use it. What uses it keeps it in: the book, a tub with something left, the plan of the day.
 */
public final class FormulaOut {

  /** What became of it. */
  public sealed interface Outcome permits Done, Stale, Used {}

  /** It is out, or in; now or from the same press before. */
  public record Done() implements Outcome {}

  /** Somebody has saved another version meanwhile. */
  public record Stale() implements Outcome {}

  /**
   * It stays as it is.
   *
   * @param tree the book with its tubs, in which the problems lie
   * @param problems what uses it, or what it uses itself that is out
   */
  public record Used(ObjectNode tree, List<Problem> problems) implements Outcome {}

  /** Of a formula's head in the book: true when it is out. */
  static final String FLAG = "takenOut";

  private final Desk desk;
  private final Plans plans;
  private final KitchenStore kitchens = new KitchenStore();
  private final FormulaStore formulas = new FormulaStore();
  private final LotStore lots = new LotStore();

  public FormulaOut(Desk desk, Plans plans) {
    this.desk = desk;
    this.plans = plans;
  }

  /**
   * Takes it out or puts it back.
   *
   * @param seen number of the version that was current for whoever says so
   * @param out whether it is to be out
   */
  public Outcome put(House house, String code, int seen, boolean out, String who) {
    return desk.write(house, tx -> put(tx, house, new Wish(code, seen, out), who));
  }

  /** What is to be. */
  private record Wish(String code, int seen, boolean out) {}

  private Outcome put(Tx tx, House before, Wish wish, String who) {
    House house = desk.open(tx, kitchens.lock(tx, before.id()));
    ObjectNode head = SaveFormula.findHead(house, wish.code()).orElseThrow();
    if (head.path(FLAG).asBoolean(false) == wish.out()) {
      return new Done();
    }
    if (house.book().formulary().find(wish.code()).orElseThrow().current().number()
        != wish.seen()) {
      return new Stale();
    }
    ObjectNode after = head.deepCopy();
    after.remove(FLAG);
    if (wish.out()) {
      after.put(FLAG, true);
    }
    ObjectNode tree = ExportBook.withTubs(house, lots.list(tx, house.id()));
    List<Problem> problems = problems(tree, after, wish);
    if (wish.out()) {
      planned(tx, house, wish.code()).ifPresent(problems::add);
    }
    if (!problems.isEmpty()) {
      return new Used(tree, problems);
    }
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.set("before", head);
    detail.set("after", after);
    long change =
        kitchens.change(
            tx,
            house.id(),
            KitchenStore.News.fact("formula", wish.code(), detail.toString(), who),
            desk.now());
    formulas.saveHead(
        tx, house.id(), 0, new FormulaStore.Head(wish.code(), after.toString(), change));
    return new Done();
  }

  /** What of the book and its tubs speaks against it, all at once. */
  private List<Problem> problems(ObjectNode tree, ObjectNode head, Wish wish) {
    List<Problem> problems = new ArrayList<>();
    ObjectNode then = tree.deepCopy();
    for (JsonNode formula : then.path("formulas")) {
      if (formula.path("code").asText().equals(wish.code())) {
        ((ObjectNode) formula).remove(FLAG);
        ((ObjectNode) formula).setAll(head);
      }
    }
    BookReader.Outcome read = desk.check(tree, then);
    problems.addAll(read.problems());
    for (int i = 0; i < tree.path("tubs").size() && wish.out(); i++) {
      JsonNode tub = tree.path("tubs").path(i);
      if (tub.path("component").asText().equals(wish.code())) {
        String code = tub.path("code").asText();
        problems.add(new Problem("$.tubs[" + i + "]", code, Message.of("formulas.used-tub")));
      }
    }
    return problems;
  }

  /** That the plan of the day, or the last before it, makes it. */
  private Optional<Problem> planned(Tx tx, House house, String code) {
    LocalDate today = house.day(desk.now());
    return plans
        .inForce(tx, house, today)
        .or(() -> plans.inForce(tx, house, today.minusDays(1)))
        .map(plan -> plans.inForce(tx, house, plan))
        .filter(
            plan ->
                plan.sheet().makes().stream()
                    .anyMatch(make -> make.version().formula().equals(code)))
        .map(
            plan ->
                new Problem("$.plan", code, Message.of("formulas.used-plan", plan.plan().day())));
  }
}
