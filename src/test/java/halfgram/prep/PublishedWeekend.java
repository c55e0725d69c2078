package halfgram.prep;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What the weekend of published/book.json has to come to, by plain arithmetic from the published
 * ratios: covers, plates, grams, lines. It knows nothing of the program; where it needs a choice of
 * the book's (a portion, a round yield, which needs share a make) the README beside the book has
 * it.
 */
final class PublishedWeekend {
  private static final MathContext DIGITS = MathContext.DECIMAL128;
  private static final BigDecimal POUND = number("453.59237");
  private static final BigDecimal OUNCE = number("28.349523125");
  private static final BigDecimal GALLON = number("3785.411784");
  private static final BigDecimal WATER_DENSITY = number("1.002");
  private static final BigDecimal GRAPESEED_DENSITY = number("0.921");

  private static final String FRIDAY = "supper.2027-06-11";
  private static final String SATURDAY = "supper.2027-06-12";
  private static final String SUNDAY = "supper.2027-06-13";
  private static final String PIER = "pier-reception";
  private static final String BANQUET = "harbour-banquet";
  private static final String LUNCH = "orchard-lunch";

  // Covers: 40 expected and 10 %, 100 guaranteed and 10 %, 60 final and 10 %.
  static final int PIER_COVERS = 40 + 4;
  static final int BANQUET_COVERS = 100 + 10;
  static final int LUNCH_COVERS = 60 + 6;

  // Six guests without meat are counted among the 66; they get a spare plate of their own.
  static final int LUNCH_CHICKEN = LUNCH_COVERS - 6;
  static final int LUNCH_MEAT_FREE = 6 + 1;
  static final int LUNCH_PLATES = LUNCH_CHICKEN + LUNCH_MEAT_FREE;

  /** Grams of one fill by weigh line, {@code task/line}. */
  final SortedMap<String, BigDecimal> lines = new TreeMap<>();

  /** Grams taken off a weigh line because a dilution of another brings them. */
  final SortedMap<String, BigDecimal> carried = new TreeMap<>();

  /** Grams to pull by ingredient, before trim. */
  final SortedMap<String, BigDecimal> pulls = new TreeMap<>();

  /** Grams or pieces that come out, by make. */
  final SortedMap<String, BigDecimal> makes = new TreeMap<>();

  /** Every task, by id, and its fills. */
  final SortedMap<String, Integer> tasks = new TreeMap<>();

  PublishedWeekend() {
    bread();
    spheres();
    pearls();
    airsAndPowder();
    herbs();
    meats();
    trims();
  }

  /** Worked percent worksheet: 100, 67, 2 and 1 %, loaves of 390 g, 73 of them on Saturday. */
  private void bread() {
    // 110 quarters are 27.5, so 28 loaves; 45 more for supper; 67 quarters are 16.75, so 17.
    dough("bread/" + SATURDAY + "/1", 28 + 45, 3);
    dough("bread/" + LUNCH + "/1", 17, 1);
  }

  private void dough(String make, int loaves, int fills) {
    BigDecimal flour = of(390L * loaves).divide(number("1.70"), DIGITS);
    makes.put(make, of(loaves));
    steps(make, "mix", "shape");
    tasks.put(make + "/mix", fills);
    weigh(make, "mix", "flour", flour);
    weigh(make, "mix", "water", percent(flour, "67"));
    weigh(make, "mix", "salt", percent(flour, "2"));
    weigh(make, "mix", "yeast", percent(flour, "1"));
  }

  /** Reverse method: 2 % lactate, 0.25 % xanthan, bath of 0.5 %, citrate one to one at 120 ppm. */
  private void spheres() {
    String spheres = "spheres/" + PIER + "/1";
    int pieces = 2 * PIER_COVERS;
    int formed = 98; // 88 / 0.9 = 97.8
    makes.put(spheres, of(pieces));
    steps(spheres, "drop", "drop/test-piece");
    BigDecimal base = of(5L * formed).divide(number("0.975"), DIGITS).add(of(60));
    weigh(spheres, "drop", "sphere-base", base);

    String made = "sphere-base/" + PIER + "/1";
    makes.put(made, base);
    steps(made, "shear");
    BigDecimal juice = base.divide(number("1.0225"), DIGITS);
    weigh(made, "shear", "tomato-juice", juice);
    weigh(made, "shear", "calcium-lactate", percent(juice, "2"));
    weigh(made, "shear", "xanthan", percent(juice, "0.25"));

    // One pan of 6 kg in use (98 pieces take 0.2 L of the 1.1 L that may go) and one spare.
    String bath = "alginate-bath/" + PIER + "/1";
    makes.put(bath, of(2 * 6000));
    steps(bath, "shear");
    BigDecimal citratePerGram =
        of(120).multiply(number("294.10")).divide(number("100.086"), DIGITS).movePointLeft(6);
    BigDecimal water = of(12_000).divide(number("1.005").add(citratePerGram), DIGITS);
    weigh(bath, "shear", "water", water);
    weigh(bath, "shear", "sodium-alginate", percent(water, "0.5"));
    weigh(bath, "shear", "trisodium-citrate", water.multiply(citratePerGram, DIGITS));
  }

  /** Direct method: 250 g and 2 g in 500 g and 2.5 g; 300 g and 3 g; 400 g and 5.6 g in 800 + 5. */
  private void pearls() {
    // Half of the 44 get 20 g, 60 % of it in the first hour.
    BigDecimal all = of(20 * PIER_COVERS / 2);
    BigDecimal first =
        pearls("melon", "juice", PIER + "/1", percent(all, "60"), "0.8", "201", "33.4", "pearl");
    BigDecimal second =
        pearls("melon", "juice", PIER + "/2", percent(all, "40"), "0.8", "201", "33.4", "pearl");
    BigDecimal sweet =
        pearls(
            "pear", "juice", BANQUET + "/1", of(15 * BANQUET_COVERS), "1", "200", "33.5", "pearl");
    BigDecimal beet =
        pearls(
            "beet", "puree", LUNCH + "/1", of(10 * LUNCH_PLATES), "1.4", "201.25", "33.5", "beet");
    bath("pearl-bath/" + PIER + "/1", first.add(second), "0.5");
    bath("pearl-bath/" + BANQUET + "/1", sweet, "0.5");
    bath("beet-bath/" + LUNCH + "/1", beet, "0.625");
  }

  /** What a make of pearls takes of its bath. */
  private BigDecimal pearls(
      String fruit,
      String form,
      String service,
      BigDecimal wanted,
      String alginate,
      String bathPercent,
      String yield,
      String bath) {
    String make = fruit + "-pearls/" + service;
    makes.put(make, wanted);
    steps(make, "mix", "drop");
    BigDecimal inThePan = wanted.divide(number(yield).movePointLeft(2), DIGITS);
    BigDecimal sum = of(100).add(number(alginate)).add(number(bathPercent));
    BigDecimal juice = inThePan.multiply(of(100)).divide(sum, DIGITS);
    weigh(make, "mix", fruit + "-" + form, juice);
    weigh(make, "mix", "sodium-alginate", percent(juice, alginate));
    weigh(make, "drop", bath + "-bath", percent(juice, bathPercent));
    return percent(juice, bathPercent);
  }

  private void bath(String make, BigDecimal wanted, String percent) {
    makes.put(make, wanted);
    steps(make, "stir");
    BigDecimal water = wanted.multiply(of(100)).divide(of(100).add(number(percent)), DIGITS);
    weigh(make, "stir", "water", water);
    weigh(make, "stir", "calcium-chloride", percent(water, percent));
  }

  /** Lime air 225 + 275 + 1.5; apple air 500 + 2; oil powder 60 to 40. */
  private void airsAndPowder() {
    limeAir("lime-air/" + BANQUET + "/1", of(20 * BANQUET_COVERS));
    // 0.21 g at 1 % is no load for a 0.01 g scale: 1 in 10, of which 2.09 g, the rest of it water.
    String small = "lime-air/" + LUNCH + "/1";
    limeAir(small, of(10 * LUNCH_MEAT_FREE));
    BigDecimal dose = lines.get(small + "/froth/lecithin");
    BigDecimal brought = number("2.09").subtract(dose);
    lines.merge(small + "/froth/water", brought.negate(), BigDecimal::add);
    carried.put(small + "/froth/water", brought);

    String apple = "apple-air/" + LUNCH + "/1";
    BigDecimal wanted = of(8 * LUNCH_PLATES);
    makes.put(apple, wanted);
    steps(apple, "froth");
    BigDecimal juice = wanted.divide(number("1.004"), DIGITS);
    weigh(apple, "froth", "apple-juice", juice);
    weigh(apple, "froth", "lecithin", percent(juice, "0.4"));

    String powder = "oil-powder/" + FRIDAY + "/1";
    BigDecimal rubbed = of(3 * 100 + 3 * BANQUET_COVERS);
    makes.put(powder, rubbed);
    steps(powder, "rub");
    weigh(powder, "rub", "sunflower-oil", percent(rubbed, "60"));
    weigh(powder, "rub", "tapioca-maltodextrin", percent(rubbed, "40"));
  }

  private void limeAir(String make, BigDecimal wanted) {
    makes.put(make, wanted);
    steps(make, "froth");
    BigDecimal base = wanted.divide(number("1.003"), DIGITS);
    weigh(make, "froth", "lime-juice", percent(base, "45"));
    weigh(make, "froth", "water", percent(base, "55"));
    weigh(make, "froth", "lecithin", percent(base, "0.3"));
  }

  /** Oil 100 g to 350 mL; blanching 2 gal a pound; acid 3 %, garlic 1 to 3, basil 1 to 10. */
  private void herbs() {
    String oil = "herb-oil/" + BANQUET + "/1";
    BigDecimal strained = of(4 * BANQUET_COVERS + 4 * LUNCH_PLATES);
    makes.put(oil, strained);
    steps(oil, "blend", "drip");
    BigDecimal oilPerLeaf = of(350).multiply(GRAPESEED_DENSITY).movePointLeft(2);
    BigDecimal blended = strained.divide(number("0.75"), DIGITS);
    BigDecimal leaves = blended.divide(oilPerLeaf.add(of(1)), DIGITS);
    weigh(oil, "blend", "blanched-basil", leaves);
    weigh(oil, "blend", "grapeseed-oil", leaves.multiply(oilPerLeaf, DIGITS));

    String blanched = "blanched-basil/" + BANQUET + "/1";
    makes.put(blanched, leaves);
    steps(blanched, "blanch");
    BigDecimal waterPerLeaf = of(2).multiply(GALLON).multiply(WATER_DENSITY).divide(POUND, DIGITS);
    BigDecimal inThePot = leaves.divide(number("0.056"), DIGITS);
    BigDecimal raw = inThePot.divide(waterPerLeaf.add(of(1)), DIGITS);
    weighTrimmed(blanched, "blanch", "basil", raw, "64");
    weigh(blanched, "blanch", "water", raw.multiply(waterPerLeaf, DIGITS));

    String garlic = "acidified-garlic/" + LUNCH + "/1";
    BigDecimal cloves = of(5 * LUNCH_PLATES);
    makes.put(garlic, cloves);
    steps(garlic, "soak", "drain");
    weigh(garlic, "soak", "garlic", cloves);
    weigh(garlic, "soak", "citric-solution", percent(cloves, "300"));

    String basil = "acidified-basil/" + SATURDAY + "/1";
    makes.put(basil, of(50 + 50));
    steps(basil, "soak", "drain");
    BigDecimal soaked = of(100).divide(number("0.09"), DIGITS).divide(of(11), DIGITS);
    weighTrimmed(basil, "soak", "basil", soaked, "64");
    weigh(basil, "soak", "citric-solution", percent(soaked, "1000"));

    String acid = "citric-solution/" + SATURDAY + "/1";
    BigDecimal solution = percent(cloves, "300").add(percent(soaked, "1000"));
    makes.put(acid, solution);
    steps(acid, "stir");
    weigh(acid, "stir", "water", percent(solution, "97"));
    weigh(acid, "stir", "citric-acid", percent(solution, "3"));
  }

  /** Banquet meat 6 oz at 75 %; mince 74 %; turkey 47 %; brines of 0.75 and 10 %. */
  private void meats() {
    String beef = "banquet-beef/" + BANQUET + "/1";
    BigDecimal cooked = of(6 * BANQUET_COVERS).multiply(OUNCE);
    makes.put(beef, cooked);
    steps(beef, "roast");
    tasks.put(beef + "/roast", 2); // 25 kg in an oven of 15 kg
    weigh(beef, "roast", "beef", cooked.divide(number("0.75"), DIGITS));

    String mince = "cooked-mince/" + FRIDAY + "/1";
    makes.put(mince, of(3700));
    steps(mince, "brown");
    weigh(mince, "brown", "minced-beef", of(5000));

    String turkey = "turkey-meat/" + SUNDAY + "/1";
    makes.put(turkey, of(4700));
    steps(turkey, "roast");
    weigh(turkey, "roast", "turkey", of(10_000));

    String chicken = "brined-chicken/" + LUNCH + "/1";
    BigDecimal drained = of(150 * LUNCH_CHICKEN);
    makes.put(chicken, drained);
    steps(chicken, "brine", "drain");
    BigDecimal meatAndWater =
        drained.divide(number("0.496"), DIGITS).divide(number("1.0075"), DIGITS);
    weigh(chicken, "brine", "chicken", percent(meatAndWater, "50"));
    weigh(chicken, "brine", "water", percent(meatAndWater, "50"));
    weigh(chicken, "brine", "salt", percent(meatAndWater, "0.75"));

    String pork = "brined-pork/" + SATURDAY + "/1";
    makes.put(pork, of(2000 + 2000));
    steps(pork, "brine", "drain");
    weigh(pork, "brine", "pork", of(4000));
    weigh(pork, "brine", "ten-percent-brine", of(4000));

    String brine = "ten-percent-brine/" + SATURDAY + "/1";
    makes.put(brine, of(4000));
    steps(brine, "stir");
    weigh(brine, "stir", "water", of(3600));
    weigh(brine, "stir", "salt", of(400));
  }

  /** Cucumber 3 lb by the handout's factor, leeks 1 kg by a national database's refuse. */
  private void trims() {
    String cucumber = "pared-cucumber/" + SATURDAY + "/1";
    BigDecimal pared = of(3).multiply(POUND);
    makes.put(cucumber, pared);
    steps(cucumber, "pare");
    weighTrimmed(cucumber, "pare", "cucumber", pared, "84");

    String leeks = "cut-leeks/" + SUNDAY + "/1";
    makes.put(leeks, of(1000));
    steps(leeks, "cut");
    weighTrimmed(leeks, "cut", "leek", of(1000), "44");
  }

  private void steps(String make, String... steps) {
    Arrays.stream(steps).forEach(step -> tasks.put(make + "/" + step, 1));
  }

  private void weigh(String make, String step, String line, BigDecimal grams) {
    weighTrimmed(make, step, line, grams, "100");
  }

  private void weighTrimmed(String make, String step, String line, BigDecimal grams, String yield) {
    String task = make + "/" + step;
    lines.put(task + "/" + line, grams.divide(of(tasks.get(task)), DIGITS));
    if (!MADE_HERE.containsKey(line)) {
      pulls.merge(line, grams.multiply(of(100)).divide(number(yield), DIGITS), BigDecimal::add);
    }
  }

  /** Lines that are made here, not bought. */
  private static final Map<String, String> MADE_HERE =
      Map.of(
          "sphere-base", "",
          "pearl-bath", "",
          "beet-bath", "",
          "blanched-basil", "",
          "citric-solution", "",
          "ten-percent-brine", "");

  private static BigDecimal percent(BigDecimal base, String percent) {
    return base.multiply(number(percent), DIGITS).movePointLeft(2);
  }

  private static BigDecimal of(long number) {
    return BigDecimal.valueOf(number);
  }

  private static BigDecimal number(String number) {
    return new BigDecimal(number);
  }
}
