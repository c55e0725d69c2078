package halfgram.technique.bath;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import halfgram.measure.Amount;
import halfgram.measure.Message;
import halfgram.technique.Values;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The sphere bath against geometry and what practitioners do. */
class SphereBathTest {
  private static final Instant NOON = Instant.parse("2027-06-11T12:00:00Z");
  private static final Duration HOUR = Duration.ofHours(1);

  /** Computed: 100 of 5 mL take 74.1 mL of bath into their skins, and nothing else here. */
  @Test
  void aHundredPiecesTakeAHundredSkins() {
    SphereBath bath = new Scene().with("film", 0).bath();
    Wear wear = new Wear(NOON);
    for (int drop = 0; drop < 10; drop++) {
      wear.take(bath, new TreeSet<>(), 10, NOON);
    }
    assertThat(wear.lostMl()).isCloseTo(74.1, within(0.05));
    assertThat(bath.lostAt(bath.fullLevel()) + bath.lostAt(bath.levelAfter(wear.lostMl())))
        .isCloseTo(wear.lostMl(), within(1e-9));
  }

  /** Common practice: 0.4 to 1 % of the bath's water needs no remark. */
  @ParameterizedTest
  @CsvSource({"0.39,true", "0.4,false", "0.5,false", "1,false", "1.01,true"})
  void strengthFromFourTenthsToOnePercentPasses(double percent, boolean warned) {
    assertThat(new Scene().alginate(percent / 100).warns("warn.bath.strength")).isEqualTo(warned);
  }

  /** Common practice: usual spoon 2 to 3 min, caviar 30 to 60 s, 25 mL 4 to 5 min. */
  @ParameterizedTest
  @CsvSource({
    "5,119,true", "5,120,false", "5,150,false", "5,180,false", "5,181,true", "10,120,false",
    "15,180,false", "0.1,29,true", "0.1,30,false", "0.1,60,false", "0.1,61,true", "25,239,true",
    "25,240,false", "25,300,false", "25,301,true", "25,150,true"
  })
  void usualSetTimeOfTheDropSizePasses(double millilitres, double seconds, boolean warned) {
    Scene scene = new Scene().piece(millilitres).with("set", seconds);
    assertThat(scene.warns("warn.bath.set")).isEqualTo(warned);
  }

  /** Common practice: in dairy warn from 1.5 % of the salt; without milk nobody tastes chalk. */
  @ParameterizedTest
  @CsvSource({"1,true,false", "1.49,true,false", "1.5,true,true", "2,true,true", "2,false,false"})
  void bitterSaltIsWarnedOfInDairyOnly(double percent, boolean milk, boolean warned) {
    Scene scene = new Scene().salt(percent / 100).milk(milk);
    assertThat(scene.warns("warn.bath.bitter")).isEqualTo(warned);
  }

  /** Common practice: 1 to 2.5 % of the base, in dairy 0.5 to 1 %; 1 to 100 is 1 of the 101. */
  @ParameterizedTest
  @CsvSource({
    "0.98,false,little-salt",
    "0.990099,false,",
    "1,false,",
    "0.49,true,little-salt-dairy",
    "0.497513,true,",
    "0.5,true,",
    "0,true,little-salt-dairy"
  })
  void littleSaltIsWarnedOf(double percent, boolean milk, String said) {
    Scene scene = new Scene().salt(percent / 100).milk(milk);
    assertThat(scene.warns("warn.bath." + said)).isEqualTo(said != null);
    assertThat(scene.bath().warnings()).hasSize(said == null ? 0 : 1);
  }

  /** Common practice, no published limit was found: to 60 ppm nothing, above 120 other water. */
  @ParameterizedTest
  @CsvSource({
    "60,false,false,false",
    "61,false,true,false",
    "120,false,true,false",
    "120,true,false,false",
    "121,false,false,true",
    "121,true,false,true"
  })
  void hardWaterIsWarnedOf(double ppm, boolean citrate, boolean hard, boolean veryHard) {
    Scene scene = new Scene().water(ppm, citrate);
    assertThat(scene.warns("warn.bath.hard")).isEqualTo(hard);
    assertThat(scene.warns("warn.bath.very-hard")).isEqualTo(veryHard);
  }

  /** Source: a web guide's 12 h of rest at least, else common practice. */
  @Test
  void restOfTwelveHoursPasses() {
    assertThat(new Scene().rest(12).warns("warn.bath.rest")).isFalse();
    assertThat(new Scene().rest(11.9).warns("warn.bath.rest")).isTrue();
  }

  /** Common practice: skin, and 1 to 1.5 mL of film; about 2 min a drop beside the set time. */
  @Test
  void defaultsAreThePractitioners() {
    SphereBath bath = new Scene().bath();
    assertThat(bath.lossPerPiece()).isCloseTo(0.741 + 1.25, within(0.0006));
    assertThat(bath.values().number("film")).isBetween(1.0, 1.5);
    assertThat(bath.cycle()).isEqualTo(Duration.ofSeconds(150 + 120));
    assertThat(bath.milkHours()).isEqualTo(Duration.ofHours(4));
    assertThat(bath.values().number("set")).isBetween(120.0, 180.0);
  }

  /** Geometry by hand: 22.22 mm and a gap of 8 make 16 by 10; a hand places 15 a minute. */
  @Test
  void dropIsTheSmallerOfGridAndHand() {
    SphereBath bath = new Scene().bath();
    assertThat(bath.grid()).isEqualTo(16 * 10);
    assertThat(bath.byHand()).isEqualTo(15);
    assertThat(bath.perDrop()).isEqualTo(15);
    assertThat(bath.drops(98)).isEqualTo(7);
    assertThat(new Scene().with("dropSeconds", 0.3).bath().perDrop()).isEqualTo(160);
  }

  // ---- renewal: each rule first in a scenario of its own ----

  @Test
  void freeFromPiecesNeverEnterABathThatCarriesTheAllergen() {
    SphereBath bath = new Scene().bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("a", bath, 30, NOON, "milk"), run("b", bath, 30, later(1))));
    assertThat(rules(answer)).containsExactly(Renewal.CONTACT);
    assertThat(answer.changes().get(0).run()).isEqualTo("b");
    assertThat(answer.changes().get(0).afterDrop()).isZero();
    assertThat(answer.uses()).extracting(BathDay.Use::pieces).containsExactly(30L, 30L);
  }

  @Test
  void freeFromPiecesFirstMakeNoChange() {
    SphereBath bath = new Scene().bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("a", bath, 30, NOON), run("b", bath, 30, later(1), "milk")));
    assertThat(answer.changes()).isEmpty();
    assertThat(answer.uses()).hasSize(1);
  }

  /** Two kinds of allergens: each free from the other's. */
  @Test
  void differentAllergensDoNotShareABath() {
    SphereBath bath = new Scene().bath();
    BathDay.Answer answer =
        BathDay.of(
            List.of(
                run("a", bath, 15, NOON, "milk"),
                run("b", bath, 15, later(1), "nuts"),
                run("c", bath, 15, later(2), "milk", "nuts")));
    assertThat(rules(answer)).containsExactly(Renewal.CONTACT);
    assertThat(answer.uses()).extracting(BathDay.Use::pieces).containsExactly(30L, 15L);
  }

  /** Common practice: a bath with milk in it is food, out after 4 h without refrigeration. */
  @Test
  void bathWithMilkGoesOutAfterFourHours() {
    SphereBath bath = new Scene().milk(true).bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("a", bath, 15, NOON, "milk"), run("b", bath, 15, later(5), "milk")));
    assertThat(rules(answer)).containsExactly(Renewal.FOOD_SAFETY);
    assertThat(
            BathDay.of(
                    List.of(run("a", bath, 15, NOON, "milk"), run("b", bath, 15, later(3), "milk")))
                .changes())
        .isEmpty();
  }

  /** Common practice: a bath is renewed at the end of a shift, 8 h. */
  @Test
  void bathGoesOutAfterItsHours() {
    SphereBath bath = new Scene().bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("a", bath, 15, NOON), run("b", bath, 15, later(8))));
    assertThat(rules(answer)).containsExactly(Renewal.HOURS);
    assertThat(
            BathDay.of(List.of(run("a", bath, 15, NOON), run("b", bath, 15, later(7)))).changes())
        .isEmpty();
  }

  /** By hand: 5.1 kg stand 33.66 mm high, 32.22 must stay, so 218 mL: 109 pieces of 1.991 mL. */
  @Test
  void bathIsRenewedBeforePiecesStandDry() {
    SphereBath bath = new Scene().bathGrams(5100).bath();
    BathDay.Answer answer = BathDay.of(List.of(run("a", bath, 150, NOON)));
    assertThat(rules(answer)).containsExactly(Renewal.LEVEL);
    assertThat(answer.changes().get(0).afterDrop()).isEqualTo(7);
    assertThat(answer.changes().get(0).pieces()).isEqualTo(105);
    assertThat(answer.uses().get(0).lostMl()).isCloseTo(105 * 1.991, within(0.1));
  }

  /** By hand: 32.22 mm are 4882 mL, and a drop of 15 takes 29.9 mL: 4912 g, so 5 kg. */
  @ParameterizedTest
  @CsvSource({"4000,true", "4900,true", "5000,false"})
  void aBathTooLowForADropSaysHowMuchWouldDo(long grams, boolean warned) {
    SphereBath bath = new Scene().bathGrams((double) grams).bath();
    List<Message> said =
        bath.warnings().stream().filter(one -> one.key().equals("warn.bath.too-shallow")).toList();
    assertThat(said).hasSize(warned ? 1 : 0);
    assertThat(said).allMatch(one -> one.args().get(2).equals(Amount.grams(5000)));
  }

  @Test
  void bathIsRenewedAtItsCount() {
    SphereBath bath = new Scene().with("mostPieces", 150).bath();
    BathDay.Answer answer = BathDay.of(List.of(run("a", bath, 210, NOON)));
    assertThat(rules(answer)).containsExactly(Renewal.COUNT);
    assertThat(answer.changes().get(0).afterDrop()).isEqualTo(10);
    assertThat(answer.uses()).extracting(BathDay.Use::pieces).containsExactly(150L, 60L);
  }

  /**
   * Common practice, arithmetic by hand: 10 % of what 30 g of alginate bind is 303.5 mg; a fifth of
   * the pieces burst with 5 g x 2 % x 0.13 = 13 mg, so 2.6 mg a piece and 116 pieces, which are 7
   * whole drops of 15.
   */
  @Test
  void bathIsRenewedForTheCalciumOfBurstPieces() {
    SphereBath bath = new Scene().breakage(0.2).bath();
    BathDay.Answer answer = BathDay.of(List.of(run("a", bath, 150, NOON)));
    assertThat(bath.calciumPerPiece()).isCloseTo(2.6, within(0.001));
    assertThat(bath.calciumLimit()).isCloseTo(303.5, within(0.05));
    assertThat(bath.lasts()).isEqualTo(105);
    assertThat(rules(answer)).containsExactly(Renewal.CALCIUM);
    assertThat(answer.changes().get(0).afterDrop()).isEqualTo(7);
    assertThat(answer.uses().get(0).calciumMg()).isCloseTo(105 * 2.6, within(0.1));
  }

  /** Whole pieces that never burst leave nothing: the count rests on the burst ones. */
  @Test
  void withoutBreakageNoCalciumTrips() {
    SphereBath bath = new Scene().breakage(0).salt(0.025).bath();
    assertThat(BathDay.of(List.of(run("a", bath, 300, NOON))).changes()).isEmpty();
  }

  @Test
  void twoRunsAfterEachOtherShareABathAndItsWear() {
    SphereBath bath = new Scene().with("mostPieces", 150).bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("b", bath, 90, later(2)), run("a", bath, 90, NOON)));
    assertThat(answer.uses()).extracting(BathDay.Use::pieces).containsExactly(150L, 30L);
    assertThat(answer.changes()).hasSize(1);
    assertThat(answer.changes().get(0).run()).isEqualTo("b");
    assertThat(answer.changes().get(0).afterDrop()).isEqualTo(4);
  }

  @Test
  void runsAtTheSameTimeTakeBathsOfTheirOwn() {
    SphereBath bath = new Scene().bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("a", bath, 90, NOON), run("b", bath, 90, NOON.plusSeconds(60))));
    assertThat(answer.changes()).isEmpty();
    assertThat(answer.uses()).extracting(BathDay.Use::label).containsExactly("A", "B");
  }

  @Test
  void dropsOfARunGoToItsBathsInTurn() {
    SphereBath bath = new Scene().with("baths", 2).bath();
    BathDay.Answer answer = BathDay.of(List.of(run("a", bath, 75, NOON)));
    assertThat(answer.uses()).extracting(BathDay.Use::pieces).containsExactly(45L, 30L);
  }

  /** Common practice: spares are mixed with the day's baths. */
  @Test
  void sparesOfADayAreTheMostOfItsRuns() {
    SphereBath one = new Scene().bath();
    SphereBath three = new Scene().with("spares", 3).bath();
    BathDay.Answer answer =
        BathDay.of(List.of(run("a", one, 15, NOON), run("b", three, 15, later(1))));
    assertThat(answer.spares()).isEqualTo(3);
    assertThat(answer.uses()).hasSize(1);
    assertThat(BathDay.of(List.of(run("a", one, 15, NOON))).spares()).isOne();
  }

  private static List<Renewal> rules(BathDay.Answer answer) {
    return answer.changes().stream().map(BathDay.Change::rule).toList();
  }

  private static Instant later(int hours) {
    return NOON.plus(HOUR.multipliedBy(hours));
  }

  private static BathDay.Run run(
      String id, SphereBath bath, long pieces, Instant start, String... allergens) {
    return new BathDay.Run(
        id,
        bath,
        pieces,
        start,
        start.plus(HOUR.dividedBy(4)),
        new TreeSet<>(Arrays.asList(allergens)));
  }

  /** A usual spoon in a GN 1/1 pan of 6 kg at 0.5 %, 2 % lactate in the base, no breakage. */
  private static final class Scene {
    private final Map<String, BigDecimal> inputs = new HashMap<>();
    private double pieceGrams = 5;
    private double breakage = 0;
    private double bathGrams = 6000;
    private double alginate = 0.005;
    private double salt = 0.02;
    private boolean milk = false;
    private double ppm = 30;
    private boolean citrate = false;
    private double rest = 12;

    private Scene with(String input, double value) {
      inputs.put(input, BigDecimal.valueOf(value));
      return this;
    }

    private Scene piece(double grams) {
      pieceGrams = grams;
      return this;
    }

    private Scene breakage(double share) {
      breakage = share;
      return this;
    }

    private Scene bathGrams(double grams) {
      bathGrams = grams;
      return this;
    }

    private Scene alginate(double share) {
      alginate = share;
      return this;
    }

    private Scene salt(double share) {
      salt = share;
      return this;
    }

    private Scene milk(boolean carried) {
      milk = carried;
      return this;
    }

    private Scene water(double hardness, boolean sequestered) {
      ppm = hardness;
      citrate = sequestered;
      return this;
    }

    private Scene rest(double hours) {
      rest = hours;
      return this;
    }

    private SphereBath bath() {
      return new SphereBath(
          new Values(BathInputs.OWN, inputs),
          new SphereBath.Facts(
              pieceGrams,
              breakage,
              bathGrams,
              505,
              300,
              alginate,
              salt,
              0.13,
              0,
              milk,
              ppm,
              citrate,
              rest));
    }

    private boolean warns(String key) {
      return bath().warnings().stream().map(Message::key).anyMatch(key::equals);
    }
  }
}
