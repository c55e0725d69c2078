package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.BookReader;
import halfgram.book.DemoBook;
import halfgram.book.Reference;
import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Scaled;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Where each sentence of a method stands. The base is weighed as xanthan, calcium-lactate and salt
 * into the dry cup, then sheep-yoghurt, cream and dill-oil into the jug.
 */
class MethodTest {
  private static final String DO = "formulas/yoghurt-base/versions/1/steps/shear/do";

  @Test
  void aTextAloneStandsOnTopWithoutANumber() {
    assertThat(placed("'Shear it all'")).containsExactly("Shear it all");
  }

  @Test
  void aSentenceOfLinesStandsBelowTheLastOfThem() {
    assertThat(
            placed("[{'text': 'Oil in a thread', 'lines': ['dill-oil']}," + " {'text': 'Taste'}]"))
        .containsExactly(
            "xanthan",
            "calcium-lactate",
            "salt",
            "sheep-yoghurt",
            "cream",
            "dill-oil *",
            "1 Oil in a thread",
            "2 Taste");
    assertThat(placed("[{'text': 'Stir', 'lines': ['salt', 'xanthan']}]"))
        .as("alone it has no number")
        .containsExactly(
            "xanthan *", "calcium-lactate", "salt *", "Stir", "sheep-yoghurt", "cream", "dill-oil");
  }

  @Test
  void aSentenceOfAVesselStandsBelowItsLastLineAndOneOfTheStepFollowsTheVesselBefore() {
    assertThat(
            placed(
                "[{'text': 'Clean jug'}, {'text': 'Stir', 'lines': ['xanthan']},"
                    + " {'text': 'Sieve it'}, {'text': 'Shear', 'vessel': 'jug'}]"))
        .containsExactly(
            "1 Clean jug",
            "xanthan *",
            "2 Stir",
            "calcium-lactate",
            "salt",
            "3 Sieve it",
            "sheep-yoghurt",
            "cream",
            "dill-oil",
            "4 Shear");
  }

  @Test
  void noSentenceStandsAboveTheOneBeforeIt() {
    assertThat(
            placed(
                "[{'text': 'Cream first', 'lines': ['cream']},"
                    + " {'text': 'The cup on it', 'vessel': 'dry-cup'}]"))
        .containsExactly(
            "xanthan",
            "calcium-lactate",
            "salt",
            "sheep-yoghurt",
            "cream *",
            "1 Cream first",
            "2 The cup on it",
            "dill-oil");
  }

  @Test
  void aStepThatWeighsNothingHasAllOfItOnTop() {
    FormulaVersion version = version(read("[{'text': 'One'}, {'text': 'Two'}]"));
    assertThat(Method.of(version.steps().get(0), List.of()).first())
        .extracting(one -> one.number() + " " + one.text())
        .containsExactly("1 One", "2 Two");
  }

  /** Lines and sentences down the page; a line that a sentence speaks of is starred. */
  private static List<String> placed(String written) {
    KitchenBook read = read(written);
    FormulaVersion version = version(read);
    Step step = version.steps().get(0);
    Scaled scaled = new Scaled(version, read.formulary().balance(version), Amount.grams(5000));
    List<WeighGroup> groups = WeighList.of(read, scaled, step, Fills.of(scaled, 0));
    Method method = Method.of(step, groups);
    List<String> down = new ArrayList<>();
    method.first().forEach(one -> down.add(said(one)));
    for (WeighGroup group : groups) {
      for (WeighLine line : group.lines()) {
        String star = method.joined().contains(line.path()) ? " *" : "";
        if (!method.after().isEmpty()) {
          down.add(line.line().code() + star);
        }
        method.below(line).forEach(one -> down.add(said(one)));
      }
    }
    return down;
  }

  private static String said(Method.Sentence one) {
    return (one.number() == 0 ? "" : one.number() + " ") + one.text();
  }

  private static FormulaVersion version(KitchenBook book) {
    return book.formulary().find("yoghurt-base").orElseThrow().current();
  }

  private static KitchenBook read(String written) {
    var read = new BookReader(Reference.load()).read(DemoBook.fresh().set(DO, written).bytes());
    assertThat(read.problems()).isEmpty();
    return read.book().orElseThrow();
  }
}
