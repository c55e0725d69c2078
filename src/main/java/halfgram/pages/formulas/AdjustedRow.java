package halfgram.pages.formulas;

import halfgram.desk.Adjusted;
import halfgram.prep.KitchenBook;
import halfgram.web.Visit;
import halfgram.words.GateWords;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.List;

/**
 * A batch into which something went to put it right, offered as the next version.
 *
 * @param href where the next version is filled in from it; empty when it did not pass
 */
record AdjustedRow(String said, String href) {

  static List<AdjustedRow> list(KitchenBook book, List<Adjusted> batches, Messages words) {
    return batches.stream()
        .map(
            one ->
                new AdjustedRow(
                    words.say(
                        "formulas.adjusted",
                        one.times(),
                        added(book, one, words),
                        words.amount(one.basis()),
                        words.dayTime(one.at())),
                    one.passed()
                        ? "formulas/"
                            + one.formulaCode()
                            + "/edit?adjusted="
                            + Visit.encoded(one.make())
                        : ""))
        .toList();
  }

  /** What the new version's note says. */
  static String note(KitchenBook book, Adjusted of, Messages words) {
    return words.say("formulas.adjusted-note", added(book, of, words), words.amount(of.basis()));
  }

  /** "+3 g salt, +10 g cream". */
  private static String added(KitchenBook book, Adjusted of, Messages words) {
    GateWords named = new GateWords(book, words);
    List<String> parts = new ArrayList<>();
    of.added()
        .forEach(
            (item, amount) ->
                parts.add("+" + words.say("gate.added", words.amount(amount), named.item(item))));
    return String.join(", ", parts);
  }
}
