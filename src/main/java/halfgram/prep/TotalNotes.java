package halfgram.prep;

import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.measure.Because.Input;
import halfgram.measure.Message;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The derivations of what all batches of a formula give and take, as a change of plan counts it.
 */
final class TotalNotes {

  /** What comes together under one path. */
  private static final class Total {
    private Amount sum;
    private final List<Input> inputs = new ArrayList<>();

    private Total(Amount none) {
      this.sum = none;
    }

    private void add(Make make, Amount amount, String path) {
      sum = sum.plus(amount);
      inputs.add(Input.derived(Message.of("why.batch", make.id()), Notes.amount(amount), path));
    }
  }

  private final Map<String, Total> made = new LinkedHashMap<>();
  private final Map<String, Total> taken = new LinkedHashMap<>();

  private TotalNotes(List<Make> makes) {
    makes.forEach(this::add);
  }

  static void note(PrepSheet sheet, Because because) {
    TotalNotes all = new TotalNotes(sheet.makes());
    note(because, all.made, "why.rule.made-in-all");
    note(because, all.taken, "why.rule.taken-in-all");
  }

  private static void note(Because because, Map<String, Total> totals, String rule) {
    totals.forEach(
        (path, total) ->
            because.note(
                () ->
                    new Because.Note(
                        path, Notes.amount(total.sum), Message.of(rule), total.inputs)));
  }

  private void add(Make make) {
    String formula = make.version().formula();
    for (int i = 0; i < make.version().outputs().size(); i++) {
      Output output = make.version().outputs().get(i);
      Amount amount = make.scaled().output(i);
      made.computeIfAbsent(
              Paths.made(formula, output.code()), unknown -> new Total(Amount.zero(output.unit())))
          .add(make, amount, Paths.store(make, output, "made"));
    }
    for (Line line : make.version().lines()) {
      taken
          .computeIfAbsent(
              Paths.taken(formula, line.item().code()), unknown -> new Total(Amount.NO_MASS))
          .add(make, make.scaled().setOut(line), Paths.make(make, "basis"));
    }
  }
}
