package halfgram.prep;

import halfgram.formula.FormulaVersion;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * The sums of a sheet by component, whatever its version: what is used, what tubs give, what makes
 * are asked for. Baths are counted by their own technique and left aside.
 */
record Ledger(
    SortedMap<String, Amount> used,
    SortedMap<String, Amount> drawn,
    SortedMap<String, Amount> net) {

  static Ledger of(KitchenBook book, PrepSheet sheet) {
    Ledger ledger = new Ledger(new TreeMap<>(), new TreeMap<>(), new TreeMap<>());
    for (ServiceRun run : sheet.allServices()) {
      for (ServiceRun.Use use : run.uses()) {
        add(ledger.used, use.version(), use.output(), use.amount());
      }
    }
    for (Make make : sheet.makes()) {
      make.version().lines().forEach(line -> ledger.part(book, make, line));
      for (Need need : make.served()) {
        if (!need.user().startsWith("bath/")) {
          add(ledger.net, make.version(), need.output(), need.amount());
        }
      }
    }
    for (Draw draw : sheet.draws()) {
      FormulaVersion any = book.formulary().get(draw.lot().component());
      if (!draw.need().user().startsWith("bath/")) {
        add(ledger.drawn, any, draw.need().output(), draw.amount());
      }
    }
    return ledger;
  }

  private void part(KitchenBook book, Make make, Line line) {
    if (line.item().component().isPresent()) {
      FormulaVersion part = book.formulary().get(line.item().component().get());
      int index = part.outputIndex(line.item().component().get().output());
      Output output = part.outputs().get(index);
      Amount mass = make.scaled().setOut(line);
      Amount amount = output.isPieces() ? output.inUnit(mass) : mass;
      add(used, part, index, output.isPieces() ? amount.rounded(Rounding.UP_TO_WHOLE) : amount);
    }
  }

  private static void add(
      SortedMap<String, Amount> sums, FormulaVersion version, int output, Amount amount) {
    sums.merge(
        version.formula() + ":" + version.outputs().get(output).code(), amount, Amount::plus);
  }

  static Amount in(SortedMap<String, Amount> sums, String component, Amount like) {
    return sums.getOrDefault(component, Amount.zero(like.dimension()));
  }
}
