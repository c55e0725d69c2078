package halfgram.book;

import org.junit.jupiter.api.Test;

/** What is wrong with a technique of a formula, or a kitchen's own row, is said at its place. */
class BadTechniqueTest extends RefusedBook {
  @Test
  void aTechniqueToldOfALineThatIsNotThereIsToldOnce() {
    String place = "formulas/blanched-dill/versions/0/techniques/0/of/herb";
    book.set(place, "'parsley'");
    assertOnly(place, "parsley", "no such line", "dill, ice");
  }

  @Test
  void aLineThatNoTechniqueDosesIsRefused() {
    String place = "formulas/blanched-dill/versions/0/lines/1/technique";
    book.set(place, "'snow'");
    assertOnly(place, "snow", "no such figure", "ice, salt, water");
  }

  @Test
  void aTechniquesInputOutsideItsRangeIsRefusedWithItsUnit() {
    String place = "formulas/blanched-dill/versions/0/techniques/0/inputs/bathTemperature";
    book.set(place, "'60 °C'");
    assertOnly(place, "60 °C", "outside the range", "0 to 40 °C");
  }

  @Test
  void whatATechniqueStopsIsRefused() {
    book.set("formulas/dill-oil/versions/0/techniques/0/inputs/holdTemperature", "'6 °C'");
    assertOnly("formulas/dill-oil/versions/0/techniques/0/name", "herb-oil", "4.4 °C");
  }

  @Test
  void anOwnRowThatCannotBeIsRefusedAtItsColumn() {
    own("densities", "water", "g_per_ml", "0");
    assertOnly("reference/0/fields/g_per_ml", "0", "a number above 0");
    own("yields", "basil.picked", "yield_percent", "101");
    assertOnly("reference/0/fields/yield_percent", "101", "a number from 0 to 100");
    own("salts", "calcium-gluconate-anhydrous", "calcium_atoms", "1.5");
    assertOnly("reference/0/fields/calcium_atoms", "1.5", "a whole number");
    own("nitrite-limits", "us-comminuted", "ppm", "157");
    assertOnly("reference/0/fields/ppm", "157", "above the published limit", "at most 156");
    own("densities", "watr", "g_per_ml", "1");
    assertOnly("reference/0/row", "watr", "no such row", "water");
  }

  private void own(String table, String row, String column, String value) {
    book.set(
        "reference",
        String.format(
            "[{'code': 'own', 'table': '%s', 'row': '%s', 'source': 'here',"
                + " 'fields': {'%s': '%s'}}]",
            table, row, column, value));
  }
}
