package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.measure.Amount;
import halfgram.measure.Because;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.testkit.BookText;
import halfgram.testkit.Chance;
import halfgram.testkit.Seeds;
import halfgram.testkit.SheetLines;
import halfgram.testkit.Trait;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Laws of amounts that hold for every book, tried on random ones: nothing is lost, no tub gives
 * what it has not, more guests need no less, and the order of things in the book means nothing.
 */
class LawsTest {
  private static final int SHORT = 100;
  private static final int LONG = 1000;

  @Test
  void netNeverExceedsGross() {
    Seeds.over(SHORT, seed -> netWithinGross(Planned.of(seed)));
  }

  @Test
  void drawnAndMadeLessOverIsWhatIsNeeded() {
    Seeds.over(SHORT, seed -> nothingLost(Planned.of(seed)));
  }

  @Test
  void everyMakeGivesAtLeastWhatIsAskedOfIt() {
    Seeds.over(SHORT, seed -> makesGiveEnough(Planned.of(seed)));
  }

  @Test
  void noMakeYieldsMoreThanTheMostUnlessItsMachineOrPackRaisesIt() {
    Seeds.over(SHORT, seed -> mostIsKept(Planned.of(seed)));
  }

  @Test
  void noTubGivesMoreThanItHasNorWhatIsReservedForOthersNorPastItsDate() {
    Seeds.over(SHORT, seed -> tubsGiveWhatTheyHave(Planned.of(seed)));
  }

  @Test
  void moreCoversNeverNeedLess() {
    Seeds.over(SHORT / 2, LawsTest::moreCoversNeedNoLess);
  }

  @Test
  void theOrderOfThingsInTheBookIsIrrelevant() {
    Seeds.over(SHORT, LawsTest::orderIsIrrelevant);
  }

  @Test
  void planningTwiceGivesTheIdenticalSheet() {
    Seeds.over(SHORT, seed -> twiceIsTheSame(Planned.of(seed)));
  }

  @Test
  void aRecorderChangesNoNumber() {
    Seeds.over(SHORT / 5, seed -> recordedIsTheSame(Planned.of(seed)));
  }

  @Test
  @Tag("long")
  void allOfThemForManyBooks() {
    Seeds.over(
        LONG,
        seed -> {
          Planned planned = Planned.of(seed, 12, Trait.all());
          netWithinGross(planned);
          nothingLost(planned);
          makesGiveEnough(planned);
          mostIsKept(planned);
          tubsGiveWhatTheyHave(planned);
          moreCoversNeedNoLess(seed);
          orderIsIrrelevant(seed);
          twiceIsTheSame(planned);
          recordedIsTheSame(planned);
        });
  }

  private static void netWithinGross(Planned planned) {
    Ledger ledger = Ledger.of(planned.book(), planned.sheet());
    ledger
        .net()
        .forEach(
            (component, net) -> {
              Amount used = Ledger.in(ledger.used(), component, net);
              assertThat(net.number())
                  .as("net of " + component)
                  .isLessThanOrEqualTo(used.number().add(Planned.MICROGRAM));
            });
  }

  private static void nothingLost(Planned planned) {
    Ledger ledger = Ledger.of(planned.book(), planned.sheet());
    ledger
        .used()
        .forEach(
            (component, used) -> {
              Amount drawn = Ledger.in(ledger.drawn(), component, used);
              Amount net = Ledger.in(ledger.net(), component, used);
              assertThat(drawn.plus(net).minus(used).number().abs())
                  .as("used of " + component + " less drawn and made")
                  .isLessThanOrEqualTo(Planned.MICROGRAM);
            });
    assertThat(ledger.used().keySet()).containsAll(ledger.net().keySet());
    assertThat(ledger.used().keySet()).containsAll(ledger.drawn().keySet());
  }

  private static void makesGiveEnough(Planned planned) {
    for (Make make : planned.sheet().makes()) {
      for (int i = 0; i < make.version().outputs().size(); i++) {
        assertThat(over(make, i).number())
            .as(make.id() + " over, output " + i)
            .isGreaterThanOrEqualTo(Planned.MICROGRAM.negate());
      }
    }
  }

  private static Amount over(Make make, int output) {
    Amount over = make.scaled().output(output);
    for (Need need : make.served()) {
      over = need.output() == output ? over.minus(need.amount()) : over;
    }
    return over;
  }

  private static void mostIsKept(Planned planned) {
    for (Make make : planned.sheet().makes()) {
      if (make.version().most().isPresent() && make.raisedBy().isEmpty()) {
        Amount most = make.version().most().get();
        assertThat(make.needed(0).minus(most).number())
            .as("needed over the most of " + make.id())
            .isLessThanOrEqualTo(Planned.MICROGRAM);
        if (!make.version().outputs().get(0).isPieces()) {
          assertThat(make.scaled().output(0).minus(most).number())
              .as("made over the most of " + make.id())
              .isLessThanOrEqualTo(Planned.MICROGRAM);
        }
      }
    }
  }

  private static void tubsGiveWhatTheyHave(Planned planned) {
    Map<String, Amount> given = new HashMap<>();
    Map<String, Amount> toOthers = new HashMap<>();
    for (Draw draw : planned.sheet().draws()) {
      Lot lot = draw.lot();
      Need need = draw.need();
      given.merge(lot.code(), draw.amount(), Amount::plus);
      assertThat(lot.useBy()).as(lot.code() + " use by").isAfterOrEqualTo(need.lastUse());
      assertThat(lot.made()).as(lot.code() + " made").isBeforeOrEqualTo(need.readyBy());
      for (Reservation reservation : lot.reserved()) {
        if (!need.event().equals(java.util.Optional.of(reservation.event()))) {
          String kept = lot.code() + " less what is for " + reservation.event();
          toOthers.merge(kept, draw.amount(), Amount::plus);
          assertThat(toOthers.get(kept).minus(free(lot, reservation.event())).number())
              .as(kept)
              .isLessThanOrEqualTo(Planned.MICROGRAM);
        }
      }
      assertThat(given.get(lot.code()).minus(lot.left()).number())
          .as(lot.code())
          .isLessThanOrEqualTo(Planned.MICROGRAM);
    }
  }

  private static Amount free(Lot lot, String event) {
    Amount free = lot.left();
    for (Reservation reservation : lot.reserved()) {
      free = reservation.event().equals(event) ? free.minus(reservation.amount()) : free;
    }
    return free;
  }

  /** Whatever the book, services use no less; without fixed losses and stock nothing does. */
  private static void moreCoversNeedNoLess(long seed) {
    compareCovers(Planned.of(seed), seed, false);
    Set<Trait> plain =
        Trait.allBut(
            Trait.FIXED_RESIDUE,
            Trait.MACHINES,
            Trait.PACKS,
            Trait.TUBS,
            Trait.SEVERAL_OUTPUTS,
            Trait.PIECES_INSIDE,
            Trait.BREAKAGE,
            Trait.BATHS);
    compareCovers(Planned.of(seed, 6, plain), seed, true);
  }

  private static void compareCovers(Planned planned, long seed, boolean everything) {
    ObjectNode more = planned.json().deepCopy();
    Chance chance = new Chance(seed);
    for (JsonNode event : more.withArray("events")) {
      ObjectNode covers = (ObjectNode) event.get("covers");
      covers.put("expected", covers.get("expected").asInt() + chance.from(0, 30));
    }
    Planned grown = planned.replanned(more);
    for (int i = 0; i < planned.sheet().allServices().size(); i++) {
      ServiceRun few = planned.sheet().allServices().get(i);
      ServiceRun many = grown.sheet().allServices().get(i);
      assertThat(many.id()).isEqualTo(few.id());
      for (int p = 0; p < few.plates().size(); p++) {
        assertThat(many.plates().get(p).count())
            .isGreaterThanOrEqualTo(few.plates().get(p).count());
      }
      for (int u = 0; u < few.uses().size(); u++) {
        assertThat(many.uses().get(u).amount()).isGreaterThanOrEqualTo(few.uses().get(u).amount());
      }
    }
    if (everything) {
      SortedMap<String, Amount> before = Ledger.of(planned.book(), planned.sheet()).used();
      SortedMap<String, Amount> after = Ledger.of(grown.book(), grown.sheet()).used();
      before.forEach(
          (component, used) ->
              assertThat(Ledger.in(after, component, used).minus(used).number())
                  .as("more of " + component)
                  .isGreaterThanOrEqualTo(Planned.MICROGRAM.negate()));
    }
  }

  private static void orderIsIrrelevant(long seed) {
    Planned planned = Planned.of(seed);
    ObjectNode other = BookText.shuffled(planned.json(), new Chance(seed).random());
    same(planned.replanned(other).sheet(), planned.sheet());
  }

  private static void twiceIsTheSame(Planned planned) {
    PrepSheet again = Planning.plan(planned.book(), planned.request(), Because.NOT_ASKED);
    same(again, planned.sheet());
  }

  private static void recordedIsTheSame(Planned planned) {
    PrepSheet recorded = Planning.plan(planned.book(), planned.request(), Because.recording());
    same(recorded, planned.sheet());
  }

  /** Names the first line that differs; whole sheets are too long to read. */
  private static void same(PrepSheet one, PrepSheet other) {
    List<String> lines = SheetLines.of(one);
    List<String> expected = SheetLines.of(other);
    for (int i = 0; i < Math.min(lines.size(), expected.size()); i++) {
      assertThat(lines.get(i)).as("line " + i).isEqualTo(expected.get(i));
    }
    assertThat(lines).hasSameSizeAs(expected);
  }
}
