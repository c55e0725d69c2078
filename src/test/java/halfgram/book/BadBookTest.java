package halfgram.book;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.input.Problem;
import org.junit.jupiter.api.Test;

/** What is wrong with a book is said with its path, what stands there and what would be right. */
class BadBookTest extends RefusedBook {
  private static final String OIL = "formulas/dill-oil/versions/0";
  private static final String BASE = "formulas/yoghurt-base/versions/1";
  private static final String STOCK = "formulas/pea-stock/versions/0";

  @Test
  void aCycleIsNamedRoundItsLoop() {
    book.set(
        "formulas/blanched-dill/versions/0/lines/0",
        "{'code': 'dill', 'component': 'dill-oil', 'basis': 100}");
    assertOnly("$.formulas", "blanched-dill > dill-oil > blanched-dill", "is made of itself");
  }

  @Test
  void aComponentWithoutYieldIsRefused() {
    book.set(OIL + "/steps/drip/yield", "0");
    assertOnly(OIL + "/steps", "0 g", "dill-oil yields nothing", "accepted: yields above 0");
  }

  @Test
  void aVolumeOfWhatHasNoDensityIsRefused() {
    book.set(STOCK + "/lines/3", "{'ingredient': 'juniper', 'amount': '2 tbsp'}");
    assertOnly(STOCK + "/lines/3/amount", "2 tbsp", "juniper has no density", "a mass", "density");
  }

  @Test
  void aBasisThatIsNot100IsRefusedWithItsSum() {
    book.set(BASE + "/lines/3/basis", "68.5");
    assertOnly(BASE + "/lines", "99.5 %", "basis lines", "add up to 100 %");
  }

  @Test
  void aThawThatTakesNoTimeIsRefused() {
    book.set(OIL + "/outputs/oil/thaw", "'0 h'");
    assertOnly(OIL + "/outputs/oil/thaw", "0 h", "thaws in no time", "how long a tub takes");
  }

  @Test
  void negativeCoversAreRefusedWithTheRange() {
    book.set("events/harvest-dinner/covers/final", "-3");
    assertOnly("events/harvest-dinner/covers/final", "-3", "a number from 0 to 20000");
  }

  @Test
  void absurdCoversAreRefusedWithTheRange() {
    book.set("events/harvest-dinner/covers", "{'expected': 1000000}");
    assertOnly("events/harvest-dinner/covers/expected", "1000000", "a number from 0 to 20000");
  }

  @Test
  void lanesThatAreNeitherAskedNorAtOnceAreRefused() {
    book.set("kitchen/lanes", "'always'");
    assertOnly("kitchen/lanes", "always", "accepted: one of ask, at-once");
  }

  @Test
  void aClockAndALanguageThatThereAreNotAreRefusedWithThoseThereAre() {
    book.set("kitchen/clock", "13");
    assertOnly("kitchen/clock", "13", "accepted: 12 or 24");
    book.remove("kitchen/clock").set("kitchen/language", "'da'");
    assertOnly("kitchen/language", "da", "accepted: en, es or fr");
  }

  @Test
  void twoTubsOfOneCodeAreRefused() {
    book.set("tubs/1/code", "'t-1204-a1'");
    assertOnly("tubs/1/code", "t-1204-a1", "used twice", "each tub", "a code of its own");
  }

  @Test
  void anUnknownKeyIsRefusedWithTheKnownOnes() {
    book.set("kitchen/colour", "'red'");
    assertOnly("kitchen/colour", "red", "not known here", "dayStart", "waterHardness", "x-");
  }

  @Test
  void aGateSaysWhatIsTriedAndKnowsItsChecks() {
    book.set(BASE + "/steps/shear/gate", "{'by': 'chef'}");
    assertOnly(BASE + "/steps/0/gate/kind", "", "is missing", "tasting, test-piece");
    book.set(BASE + "/steps/shear/gate", "{'kind': 'tasting', 'checks': ['taste', 'smell']}");
    assertOnly(BASE + "/steps/0/gate/checks/1", "smell", "skin, centre, taste, texture");
  }

  @Test
  void aSentenceConcernsWhatGoesInAtItsStep() {
    String at = BASE + "/steps/shear/do";
    book.set(at, "[{'text': 'Stir', 'lines': ['salt', 'pepper']}]");
    assertOnly(BASE + "/steps/0/do/0/lines/1", "pepper", "does not go in at this step", "cream");
    book.set(at, "[{'text': 'Stir', 'vessel': 'bowl'}]");
    assertOnly(BASE + "/steps/0/do/0/vessel", "bowl", "not go in", "accepted: dry-cup, jug");
    book.set(at, "[{'text': 'Stir', 'vessel': 'jug', 'lines': ['salt']}]");
    assertOnly(BASE + "/steps/0/do/0/lines", "[\"salt\"]", "a vessel or lines, not both");
  }

  @Test
  void aMarkThatIsNoMeasureIsRefusedWhereverItStands() {
    book.set(BASE + "/steps/shear/do", "[{'text': {'en': 'to {85 °C}', 'fr': 'à {85 Cell}'}}]");
    assertOnly(BASE + "/steps/0/do/0/text", "{85 Cell}", "mark a measure", "{85 °C}, {250 g}");
    book.set(BASE + "/steps/shear/do", "'{1,5 kg} at a time {sic}'");
    assertOnly(BASE + "/steps/0/do", "{1,5 kg}", "a point before the decimals");
  }

  @Test
  void aMissingKeyIsAskedForByWhatItTakes() {
    book.remove("kitchen/zone");
    assertOnly("kitchen/zone", "", "is missing", "a time zone such as \"Europe/Copenhagen\"");
  }

  @Test
  void aMissingTextIsAskedForWithABracedExample() {
    book.remove("kitchen/name");
    assertOnly("kitchen/name", "", "is missing", "{\"en\": \"dill\"}");
  }

  @Test
  void aWrongReferenceGetsNearCodesSuggested() {
    book.set(STOCK + "/lines/1/ingredient", "'leak'")
        .remove(STOCK + "/lines/1/cut")
        .set(STOCK + "/steps/simmer/do", "'Simmer'");
    assertOnly(
        STOCK + "/lines/1/ingredient", "leak", "no such ingredient", "accepted: leek, ", " others");
  }

  @Test
  void aDietServedWhatItMustNotEatIsNamedWithTheWayItCameIn() {
    book.remove("dishes/trout-plate/variants/0");
    assertOnly(
        "events/harvest-dinner/diets/0",
        "trout-plate",
        "served to dairy-free guests",
        "contains milk: yoghurt-spheres > yoghurt-base > sheep-yoghurt",
        "accepted: a variant");
  }

  @Test
  void outputSharesOverEverythingAreRefusedWithTheirSum() {
    book.set(STOCK + "/outputs/stock/share", "80");
    assertOnly(STOCK + "/outputs", "101 %", "add up to at most 100 %");
  }

  @Test
  void aSwapForWhatIsNotOnThePlateIsRefusedWithWhatIs() {
    book.set(
        "dishes/trout-plate/swaps/0",
        "{'component': 'pea-jelly', 'with': {'component': 'pea-spheres', 'amount': '3 piece'}}");
    assertOnly("dishes/trout-plate/swaps/0/component", "pea-jelly", "trout-slices", "dill-oil");
  }

  @Test
  void aSwapForNothingIsRefused() {
    book.remove("dishes/trout-plate/swaps/0/with");
    assertOnly("dishes/trout-plate/swaps/0/with", "", "is missing");
  }

  @Test
  void platingAtNoPaceOrAtNoStationIsRefused() {
    book.set("dishes/trout-plate/plating/platesPerMinute", "0");
    assertOnly("dishes/trout-plate/plating/platesPerMinute", "0", "a number from 0.05 to 120");
    book.set("dishes/trout-plate/plating/platesPerMinute", "2")
        .set("dishes/trout-plate/plating/station", "'pas'");
    assertOnly("dishes/trout-plate/plating/station", "pas", "no such station", "pass");
  }

  @Test
  void aSwapInForceOfADishThatIsNotThereIsRefused() {
    book.set(
        "events/harvest-dinner/services/dinner/swaps",
        "[{'dish': 'trout-plat', 'component': 'rye-crisp',"
            + " 'with': {'component': 'seed-crisp', 'amount': '1 piece'}}]");
    assertOnly("events/harvest-dinner/services/dinner/swaps/0/dish", "trout-plat", "no such dish");
  }

  @Test
  void aSwapOnADateOfARegularServiceNamesADishOfTheBook() {
    book.set(
        "services/lunch/dates",
        "[{'date': '2026-12-05', 'swaps': [{'dish': 'trout-plat', 'component': 'rye-crisp',"
            + " 'with': {'component': 'seed-crisp', 'amount': '1 piece'}}]}]");
    assertOnly("services/lunch/dates/0/swaps/0/dish", "trout-plat", "no such dish");
  }

  @Test
  void aCurveThatDoesNotAddUpIsRefusedWithItsSum() {
    book.set("services/lunch/curve/0/share", "39");
    assertOnly("services/lunch/curve", "99 %", "must add up to 100 %");
  }

  @Test
  void aMenuSplitThatServesTooFewIsRefusedWithItsSum() {
    String main = "events/harvest-dinner/services/dinner/courses/main/dishes";
    book.set(main + "/0/share", "50");
    assertOnly(main, "95 %", "fewer than everybody", "at least 100 %");
  }

  @Test
  void aLagToALaterStepIsRefusedWithTheStepsBefore() {
    book.set(OIL + "/steps/drip/after/0/step", "'decant'");
    assertOnly(OIL + "/steps/drip/after/0/step", "decant", "step listed before", "accepted: blend");
  }

  @Test
  void aLagThatEndsBeforeItBeginsShowsTheTypedDuration() {
    book.set(OIL + "/steps/drip/after/0/min", "'90 min'");
    assertOnly(OIL + "/steps/drip/after/0/max", "1 h", "shorter than", "1 h 30 min");
  }

  @Test
  void aReservationOverWhatIsLeftIsRefusedWithWhatIsLeft() {
    book.set("tubs/t-1203-oil-1/reserved/0/amount", "'421 g'");
    assertOnly("tubs/t-1203-oil-1/reserved", "421 g", "more is reserved", "at most 420 g");
  }

  @Test
  void aTubCarriesKnownAllergens() {
    book.set("tubs/t-1203-oil-1/contains", "['moonshine']");
    assertOnly("tubs/t-1203-oil-1/contains/0", "moonshine", "there is no such allergen");
  }

  @Test
  void aTubThatIsFrozenAfterItWasThawedIsRefused() {
    book.set("tubs/t-1203-oil-1/thawed", "'2026-12-04T10:00'")
        .set(
            "tubs/t-1203-oil-1/frozen",
            "{'since': '2026-12-04T12:00', 'keepUntil': '2027-03-01T12:00'}");
    assertOnly("tubs/t-1203-oil-1/frozen", "", "was thawed", "is not frozen again");
  }

  @Test
  void aTubIsFrozenWithinItsLifeAndKeepsLongerThanThat() {
    book.set(
        "tubs/t-1203-oil-1/frozen",
        "{'since': '2026-12-07T12:00', 'keepUntil': '2027-03-01T12:00'}");
    assertOnly(
        "tubs/t-1203-oil-1/frozen/since",
        "2026-12-07T12:00",
        "outside its life",
        "before its use-by");
    book.set(
        "tubs/t-1203-oil-1/frozen",
        "{'since': '2026-12-04T12:00', 'keepUntil': '2026-12-04T11:00', 'place': 'x'}");
    assertThat(problems())
        .anySatisfy(
            p ->
                assertProblem(
                    p, "tubs/t-1203-oil-1/frozen/keepUntil", "2026-12-04T11:00", "a later moment"))
        .anySatisfy(p -> assertProblem(p, "tubs/t-1203-oil-1/frozen/place", "x", "not known here"));
  }

  @Test
  void aHouseholdWordWithoutMassIsRefused() {
    book.set(STOCK + "/lines/3", "{'ingredient': 'juniper', 'amount': '3 sprig'}");
    assertOnly(STOCK + "/lines/3/amount", "3 sprig", "a \"sprig\" of juniper has no mass", "units");
  }

  @Test
  void anUnknownCutIsRefusedWithTheKnownOnes() {
    book.set("formulas/blanched-dill/versions/0/lines/0/cut", "'picked-fin'");
    assertOnly(
        "formulas/blanched-dill/versions/0/lines/0/cut",
        "picked-fin",
        "no such cut",
        "accepted: picked-fine");
  }

  @Test
  void aVersionThatIsNotThereIsRefusedWithThoseThatAre() {
    book.set("tubs/t-1203-crisp-1/version", "7");
    assertOnly("tubs/t-1203-crisp-1/version", "7", "no such version", "accepted: 1, 2");
  }

  @Test
  void anItemOfAListIsNamedByItsPosition() {
    book.set("people/ines/stations/0", "7");
    assertOnly("people/ines/stations/0", "7", "a text");
  }

  @Test
  void aLineWithTwoDosesIsNamedItself() {
    book.set(OIL + "/lines/0/basis", "7");
    assertThat(problems())
        .anySatisfy(p -> assertProblem(p, OIL + "/lines/0", "", "exactly one of: basis, percent"));
  }

  @Test
  void aBathThatFillsNoPanIsNamedWhereItIsUsed() {
    book.remove("formulas/alginate-bath/versions/0/outputs/0/container")
        .remove("formulas/alginate-bath/versions/0/outputs/0/fill");
    String technique = "formulas/yoghurt-spheres/versions/0/technique/bath";
    assertThat(problems())
        .anySatisfy(p -> assertProblem(p, technique, "alginate-bath", "what fills its pan"));
  }

  @Test
  void aValueInSeveralUnitsIsAskedForInOne() {
    book.set("tubs/t-1203-crisp-1/left", "'2 kg'");
    assertOnly("tubs/t-1203-crisp-1/left", "2 kg", "a count such as \"3 pieces\"");
  }

  @Test
  void anEveningServicePastMidnightIsAccepted() {
    book.set("events/terrace/services/0/start", "'22:00'")
        .set("events/terrace/services/0/end", "'01:30'")
        .set(
            "events/terrace/services/0/curve",
            "[{'at': '22:00', 'share': 60}, {'at': '00:15', 'share': 40}]");
    assertThat(problems()).isEmpty();
  }

  @Test
  void aServiceThatEndsPastTheDayStartIsRefused() {
    book.set("events/harvest-dinner/services/0/end", "'04:30'");
    assertThat(problems())
        .anySatisfy(
            p ->
                assertProblem(
                    p,
                    "events/harvest-dinner/services/0/end",
                    "04:30",
                    "ends before it starts at 18:30",
                    "belongs to the night"));
  }

  @Test
  void aDeliveryOfTwoLinesOfOneIngredientIsRefused() {
    book.set("deliveries", "[" + GREENS + "]").set("deliveries/0/lines/1/ingredient", "'dill'");
    assertOnly("deliveries/0/lines/1/ingredient", "dill", "on two lines", "one line for each");
  }

  @Test
  void anEntryOfALineThatIsNotThereIsRefused() {
    book.set("deliveries", "[" + GREENS + "]").set("deliveries/0/entries/0/ingredient", "'cream'");
    assertOnly("deliveries/0/entries/0/ingredient", "cream", "on no line", "accepted: dill, leek");
  }

  @Test
  void anEntryThatLacksWhatItSaysIsRefused() {
    book.set("deliveries", "[" + GREENS + "]").remove("deliveries/0/entries/0/came");
    assertOnly("$.deliveries[0].entries[0].came", "", "is missing", "a number and a unit");
  }

  @Test
  void twoEntriesOfOneIdAreRefused() {
    book.set("deliveries", "[" + GREENS + "]")
        .set("deliveries/0/entries/1/entry", "'00000000-0000-0000-0000-000000000001'");
    assertOnly(
        "deliveries/0/entries/1/entry",
        "00000000-0000-0000-0000-000000000001",
        "the id of two entries");
  }

  private static final String GREENS =
      "{'code': 'greens', 'supplier': 'Elm Farm', 'date': '2026-12-05', 'expected': '14:00',"
          + " 'lines': [{'ingredient': 'dill', 'amount': '2 kg'},"
          + " {'ingredient': 'leek', 'amount': '4 kg'}],"
          + " 'entries': [{'entry': '00000000-0000-0000-0000-000000000001', 'kind': 'short',"
          + " 'ingredient': 'dill', 'came': '1 kg', 'who': 'ines', 'at': '2026-12-05T14:00'},"
          + " {'entry': '00000000-0000-0000-0000-000000000002', 'kind': 'arrived',"
          + " 'who': 'ines', 'at': '2026-12-05T14:00'}]}";

  @Test
  void everyProblemIsSaidInOneRunAndOnce() {
    book.set("kitchen/colour", "'red'")
        .remove("kitchen/zone")
        .set("equipment/hob/max", "'3 stone'")
        .set("formulas/blanched-dill/versions/0/lines/0/cut", "'picked-fin'")
        .set(BASE + "/lines/3/basis", "68")
        .remove("dishes/trout-plate/variants/0")
        .set("events/harvest-dinner/covers/final", "-3")
        .set("tubs/1/code", "'t-1204-a1'")
        .set("tubs/t-1203-oil-1/reserved/0/amount", "'421 g'");
    assertThat(problems())
        .extracting(Problem::path)
        .containsExactlyInAnyOrder(
            "$.kitchen.colour",
            "$.kitchen.zone",
            book.path("equipment/hob/max"),
            book.path("formulas/blanched-dill/versions/0/lines/0/cut"),
            book.path(BASE + "/lines"),
            "$.events[0].diets[0]",
            "$.events[0].covers.final",
            "$.tubs[1].code",
            book.path("tubs/t-1203-oil-1/reserved"));
  }
}
