package halfgram.technique.gel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.TechniqueUse;
import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Values;
import halfgram.testkit.BookText;
import halfgram.testkit.Cast;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Texture techniques attached to a formula of the cast's kitchen. */
class GelInAFormulaTest {
  private static FormulaVersion formula(String lines, String techniques) {
    return formula(lines, techniques, "");
  }

  private static FormulaVersion formula(String lines, String techniques, String reference) {
    String text =
        """
        {ingredients: [{code: 'thickener', name: 'Thickener'}, {code: 'gum', name: 'Gum'},
          {code: 'whole-milk', name: 'Milk', reference: 'milk-whole', contains: ['milk']}],
         formulas: [{code: 'infusion', name: 'Infusion', versions: [{version: 1,
          lines: [{ingredient: 'water', basis: 100}, {ingredient: 'whole-milk', percent: 100}],
          steps: [{code: 'steep', do: 'Steep it', station: 'cold'}],
          outputs: [{code: 'infusion', hold: {max: '2 d'}}]}]},
          {code: 'jelly', name: 'Jelly', versions: [{version: 1,
          lines: [{ingredient: 'water', basis: 100}, %s],
          steps: [{code: 'boil', do: 'Boil it', station: 'cold'}],
          outputs: [{code: 'jelly', hold: {max: '2 d'}}],
          techniques: [%s]}]}],
         reference: [%s]}
        """
            .formatted(lines, techniques, reference);
    return BookText.read(Cast.theHeronWith(text))
        .formulary()
        .find(ComponentRef.of("jelly"))
        .orElseThrow();
  }

  @Test
  void theDoseIsReadFromTheLineAndTheStandEndsInTheOutput() {
    FormulaVersion jelly =
        formula(
            "{ingredient: 'thickener', percent: 1}",
            "{name: 'gel', step: 'boil', of: {agent: 'thickener'},"
                + " inputs: {agent: 'agar', serve: '85 °C'}}");
    TechniqueUse use = jelly.techniques().get(0);
    assertThat(use.result().orElseThrow().number("dose")).isEqualTo(1);
    assertThat(use.result().orElseThrow().warnings())
        .extracting(Message::key)
        .contains("technique.gel.warn.served-melting");
    assertThat(jelly.outputs().get(0).rest().min()).isEqualTo(Duration.ofMinutes(30));
    assertThat(jelly.steps().get(0).cautions()).isEqualTo(List.of("boiling-pot"));
  }

  /** Published: 113 mg of calcium in 100 g of whole milk, a quarter of this jelly. */
  @Test
  void whatIsInsideOfAComponentIsCounted() {
    FormulaVersion jelly =
        formula(
            "{component: 'infusion', percent: 98}, {ingredient: 'thickener', percent: 2}",
            "{name: 'gel', step: 'boil', of: {agent: 'thickener'},"
                + " inputs: {agent: 'carrageenan-kappa'}}");
    Values values = jelly.techniques().get(0).values();
    assertThat(values.number("calcium")).isEqualTo(276.85);
    assertThat(values.get("calcium").standing()).isEqualTo(Standing.COMPUTED);
    assertThat(values.word("milk")).isEqualTo("yes");
    assertThat(values.get("amount").standing()).isEqualTo(Standing.COMPUTED);
    assertThat(values.get("agent").standing()).isEqualTo(Standing.ENTERED);
    assertThat(warnings(jelly)).doesNotContain("technique.gel.warn.ions");
  }

  @Test
  void whatSomebodySaysOfCalciumAndMilkStays() {
    FormulaVersion jelly =
        formula(
            "{component: 'infusion', percent: 98}, {ingredient: 'thickener', percent: 2}",
            "{name: 'gel', step: 'boil', of: {agent: 'thickener'},"
                + " inputs: {agent: 'carrageenan-kappa', calcium: 0, milk: 'no'}}");
    Values values = jelly.techniques().get(0).values();
    assertThat(values.number("calcium")).isZero();
    assertThat(values.get("milk").standing()).isEqualTo(Standing.ENTERED);
    assertThat(warnings(jelly)).contains("technique.gel.warn.ions");
  }

  @Test
  void moreCalciumThanAnythingHoldsIsAProblemOfTheBook() {
    assertThatThrownBy(
            () ->
                formula(
                    "{component: 'infusion', percent: 98}, {ingredient: 'thickener', percent: 2}",
                    "{name: 'gel', step: 'boil', of: {agent: 'thickener'},"
                        + " inputs: {agent: 'carrageenan-kappa'}}",
                    "{code: 'lab', table: 'composition', row: 'milk-whole', source: 'a slip',"
                        + " fields: {calcium_mg_per_100g: 11300}}"))
        .hasMessageContaining("$.formulas.jelly.calcium");
  }

  @Test
  void thePartnerIsALineOfTheFormula() {
    FormulaVersion alone =
        formula(
            "{ingredient: 'thickener', percent: 0.2}, {ingredient: 'gum', percent: 0.2}",
            "{name: 'gel', step: 'boil', of: {agent: 'thickener'},"
                + " inputs: {agent: 'locust-bean-gum'}}");
    assertThat(warnings(alone)).contains("technique.gel.warn.partner");
    FormulaVersion both =
        formula(
            "{ingredient: 'thickener', percent: 0.2}, {ingredient: 'gum', percent: 0.2}",
            "{name: 'gel', step: 'boil', of: {agent: 'thickener', partner: 'gum'},"
                + " inputs: {agent: 'locust-bean-gum'}}");
    assertThat(warnings(both)).doesNotContain("technique.gel.warn.partner");
  }

  private static List<String> warnings(FormulaVersion version) {
    return version.techniques().get(0).result().orElseThrow().warnings().stream()
        .map(Message::key)
        .toList();
  }

  @Test
  void aLineMayBeWhatATechniqueWorksOut() {
    FormulaVersion jelly =
        formula(
            "{ingredient: 'thickener', technique: 'gelatin'}",
            "{name: 'gelatin-strength', step: 'boil',"
                + " inputs: {recipeGrade: 'silver', ownGrade: 'platinum', mass: '15 g'}}");
    assertThat(jelly.lines().get(1).contribution().percent()).isEqualByComparingTo("1");
  }

  /** The line that a technique doses is the one it asks for: it counts as not weighed yet. */
  @Test
  void theDoseWantedOfAnAirIsWeighedOnItsOwnLine() {
    FormulaVersion air =
        formula(
            "{ingredient: 'thickener', technique: 'lecithinWanted'}",
            "{name: 'foam', step: 'boil', of: {lecithin: 'thickener'}, inputs: {wanted: 0.4}}");
    assertThat(air.lines().get(1).contribution().percent()).isEqualByComparingTo("0.4");
    assertThat(air.steps().get(0).cautions()).isEqualTo(List.of("allergen-contact"));
  }

  @Test
  void aLevelAboveItsMaximumIsAProblemOfTheBook() {
    assertThatThrownBy(
            () ->
                formula(
                    "{ingredient: 'thickener', percent: 2}",
                    "{name: 'additive-level', step: 'boil', of: {additive: 'thickener'},"
                        + " inputs: {additive: 'us-agar-other'}}"))
        .hasMessageContaining("technique.additive-level.stop.above");
  }
}
