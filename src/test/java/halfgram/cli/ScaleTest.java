package halfgram.cli;

import static halfgram.cli.CliTest.assertError;
import static halfgram.cli.CliTest.assertUsage;
import static halfgram.cli.CliTest.run;
import static org.assertj.core.api.Assertions.assertThat;

import halfgram.book.DemoBook;
import halfgram.cli.CliTest.Ran;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The five ways to scale, each worked by hand from the demo book beside the numbers expected. */
class ScaleTest {
  private static final String GOOD = DemoBook.FILE.toString();

  @Test
  void byAmountTheYieldsAreUndoneAndTheCutIsPulled() {
    // Squeezing keeps 88 %: 600 / 0.88 = 681.82 g of picked dill; picking keeps 52 %:
    // 681.82 / 0.52 = 1311.2 g as bought. Ice by the heat balance for a gram of dill, from 100 °C
    // and
    // water of 11 °C down to 4: (3.87 + 0.5 x 4.18) x 96 + 4 x 4.18 x 7 = 689.2 J, over
    // 333.55 + 4.18 x 4 = 350.27 J/g, and a quarter for the room: 2.4595 g.
    assertThat(scale("blanched-dill", "--amount", "600 g"))
        .containsExactly(
            "Dill, blanched, version 1",
            "    681.82  g  dill  (pull 1311.2 g)",
            "   1676.95  g  ice",
            "gives 600 g blanched dill");
  }

  @Test
  void byAmountAMakeIsRaisedToFillsOfItsMachine() {
    // Wanted 1000 g. Decanting keeps 98.5 %, dripping 57 %, blending all but 20 g and 1 %:
    // in = 1000 / (0.985 x 0.57 x 0.99) + 20 = 1819.1 g. The blender takes 1.8 kg in steps of
    // 50 g: two fills of 909.5, so of 950, together 1900 = 1.45 x basis: oil 1310.34, dill 589.66.
    // Out: (1900 - 20) x 0.99 x 0.57 x 0.985 = 1044.96 g.
    assertThat(scale("dill-oil", "--amount", "1 kg"))
        .containsExactly(
            "Dill oil, version 1",
            "    589.66  g  Dill, blanched",
            "   1310.34  g  sunflower oil",
            "gives 1045 g dill oil",
            "made more: raised to a fill of blender");
  }

  @Test
  void byPiecesThoseThatBreakAreFormedToo() {
    // 8 % break: 267 / 0.92 = 290.2, so 291 are formed; 291 x 12 g = 3492 g.
    // The bag keeps 60 g and 2.5 %: 3492 / 0.975 + 60 = 3641.54 g. 291 x 0.92 = 267.7, 267 whole.
    assertThat(scale("yoghurt-spheres", "--pieces", "267"))
        .containsExactly(
            "Yoghurt spheres, version 1",
            "   3641.54  g  Sheep-yoghurt base",
            "gives 267 pc spheres");
  }

  @Test
  void byCoversEachGetsTheirShareOfTheCurrentVersion() {
    // 40 x 2 = 80; 7 % break: 86.02, so 87 are formed; x 8 g = 696 g; baking keeps 66 %:
    // 1054.545 g of dough = 170.6 % of 618.139 g of flour. 70 % rye: 432.70, 30 % wheat: 185.44,
    // salt and honey 2 %: 12.36, caraway 0.6 %: 3.71, water 58 %: 358.52, oil 8 %: 49.45.
    assertThat(scale("rye-crisp", "--covers", "40", "--each", "2 piece"))
        .containsExactly(
            "Rye crisps, version 2",
            "    432.70  g  rye flour, fine",
            "    185.44  g  wheat flour",
            "     12.36  g  fine salt",
            "      3.71  g  caraway seed",
            "    358.52  g  water",
            "     49.45  g  sunflower oil",
            "     12.36  g  heather honey",
            "gives 80 pc rye crisps");
  }

  @Test
  void byBatchesTheWrittenBatchIsMultiplied() {
    // Half of 10 kg of water. Leek 9 % as bought; fennel 6 %, 72 % usable: 300 / 0.72 = 416.7;
    // 3 bay leaves of 0.25 g to 10 kg: 0.375 g. Leek counts its usable 44 %: 198 g. In the pot
    // 5000 + 198 + 300 + 0.375 + 2250 + 40 = 7788.375 g; x 0.95 x 0.985 = 7287.9 g;
    // 76 % of it stock: 5538.8 g, 21 % pulp: 1530.5 g.
    assertThat(scale("pea-stock", "--batches", "0.5"))
        .containsExactly(
            "Pea stock, version 1",
            "   5000.00  g  water",
            "    450.00  g  leek  (pull 450 g)",
            "    300.00  g  fennel bulb  (pull 416.7 g)",
            "      0.38  g  bay leaf",
            "   2250.00  g  peas, frozen",
            "     40.00  g  fine salt",
            "gives 5539 g pea stock",
            "gives 1530 g soft peas");
  }

  @Test
  void byWhatIsOnHandTheScarcestCountsAndIsNotRaised() {
    // Cream is 31 % of the basis: 1200 / 0.31 = 3870.97 g; yoghurt 69 %: 2670.97 g are needed and
    // 3 kg there, so cream is the scarcest. In: x 1.055 = 4083.87 g; out: (in - 40) x 0.99.
    assertThat(scale("yoghurt-base", "--have", "cream=1.2 kg", "--have", "sheep-yoghurt=3 kg"))
        .containsExactly(
            "Sheep-yoghurt base, version 2",
            "      7.74  g  xanthan",
            "     30.97  g  calcium lactate",
            "     19.35  g  fine salt",
            "   2670.97  g  sheep yoghurt",
            "   1200.00  g  cream, 36 %",
            "    154.84  g  Dill oil",
            "gives 4003 g yoghurt base",
            "no more than is on hand; a make would be raised to a fill of blender");
  }

  @Test
  void aMinorOutputSizesTheWholeMake() {
    // Pulp is 21 %: 850 / 0.21 = 4047.62 g out, stock 76 %: 3076.19 g.
    assertThat(scale("pea-stock", "--output", "pulp", "--amount", "850 g"))
        .contains("gives 3076 g pea stock", "gives 850 g soft peas");
  }

  @Test
  void aKitchenWordOfTheIngredientMayBeOnHand() {
    // 2 bunches of 90 g, as picked: 180 g, x 0.88 = 158.4 g.
    assertThat(scale("blanched-dill", "--have", "dill=2 bunch"))
        .contains("    180.00  g  dill  (pull 346.2 g)", "gives 158 g blanched dill");
  }

  // ---- what scale refuses ----

  @Test
  void exactlyOneWayIsAskedFor() {
    String one = "give exactly one of: --amount, --pieces, --covers with --each";
    assertUsage(run("scale", "dill-oil", "--book", GOOD), one);
    assertUsage(
        run("scale", "dill-oil", "--book", GOOD, "--amount", "1 kg", "--batches", "2"), one);
  }

  @Test
  void coversAndEachBelongTogether() {
    assertUsage(
        run("scale", "dill-oil", "--book", GOOD, "--covers", "40"), "option --each is missing");
    assertUsage(
        run("scale", "dill-oil", "--book", GOOD, "--amount", "1 kg", "--each", "4 g"),
        "option --covers is missing");
  }

  @Test
  void fractionsOfPiecesAndCoversAreRefused() {
    assertUsage(
        run("scale", "yoghurt-spheres", "--book", GOOD, "--pieces", "2.5"),
        "option --pieces is \"2.5\"; accepted: a whole number");
    assertUsage(
        run("scale", "dill-oil", "--book", GOOD, "--covers", "0.5", "--each", "4 g"),
        "option --covers is \"0.5\"; accepted: a whole number above zero");
  }

  @Test
  void anAmountOfTheWrongKindIsRefused() {
    for (String amount : List.of("40 piece", "1 L", "0 g", "kg", "-1 kg", "")) {
      assertUsage(
          run("scale", "dill-oil", "--book", GOOD, "--amount", amount),
          "option --amount is \"" + amount + "\"; accepted: an amount in the output's own unit");
    }
    assertUsage(
        run("scale", "dill-oil", "--book", GOOD, "--pieces", "12"),
        "for a formula that yields pieces");
  }

  @Test
  void noBatchesWithoutAWrittenBatch() {
    assertError(
        run("scale", "dill-oil", "--book", GOOD, "--batches", "2"), 1, "Dill oil does not say");
    for (String batches : List.of("0", "-1", "half")) {
      assertUsage(
          run("scale", "pea-stock", "--book", GOOD, "--batches", batches),
          "option --batches is \"" + batches + "\"; accepted: a number above zero");
    }
  }

  @Test
  void whatIsOnHandMustBeALineOfTheFormula() {
    assertError(
        run("scale", "yoghurt-base", "--book", GOOD, "--have", "cream=1 kg", "--have", "crem=1 kg"),
        1,
        "\"crem\" is not weighed for Sheep-yoghurt base; accepted: xanthan, ");
    for (String have : List.of("1 kg", "=1 kg", "cream", "cream=", "cream=1 bunch")) {
      assertUsage(
          run("scale", "yoghurt-base", "--book", GOOD, "--have", have),
          "option --have is \"" + have + "\"; accepted: an item of the formula and a mass");
    }
  }

  @Test
  void anUnknownFormulaOrOutputIsAnsweredWithNo() {
    assertError(
        run("scale", "dil-oil", "--book", GOOD, "--batches", "1"),
        1,
        "there is no formula \"dil-oil\"; accepted: alginate-bath, ");
    assertError(
        run("scale", "pea-stock", "--book", GOOD, "--batches", "1", "--output", "peas"),
        1,
        "there is no output \"peas\" of Pea stock; accepted: stock, pulp");
  }

  @Test
  void aBadBookEndsAsCheckDoes(@TempDir Path dir) throws IOException {
    String invalid =
        Files.write(dir.resolve("a.json"), DemoBook.fresh().remove("kitchen/zone").bytes())
            .toString();
    String unreadable = Files.writeString(dir.resolve("b.json"), "").toString();
    assertError(run("scale", "dill-oil", "--book", invalid, "--batches", "1"), 1, "$.kitchen.zone");
    assertError(run("scale", "dill-oil", "--book", unreadable, "--batches", "1"), 2, "line 1");
  }

  private static List<String> scale(String formula, String... how) {
    String[] args = new String[how.length + 4];
    args[0] = "scale";
    args[1] = formula;
    args[2] = "--book";
    args[3] = GOOD;
    System.arraycopy(how, 0, args, 4, how.length);
    Ran ran = run(args);
    assertThat(ran.err()).isEmpty();
    assertThat(ran.status()).isZero();
    return ran.out().lines().toList();
  }
}
