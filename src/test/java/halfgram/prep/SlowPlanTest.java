package halfgram.prep;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.measure.Amount;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.testkit.Seeds;
import halfgram.testkit.Trait;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** The plan's totals against a slow, obvious second computation, over random books. */
class SlowPlanTest {
  private static final int SHORT = 150;
  private static final int LONG = 1500;

  /** Books on which it makes no difference to totals how needs are grouped into makes. */
  private static final Set<Trait> ADDITIVE =
      Trait.allBut(
          Trait.FIXED_RESIDUE,
          Trait.MACHINES,
          Trait.PACKS,
          Trait.SEVERAL_OUTPUTS,
          Trait.PIECES_INSIDE,
          Trait.BREAKAGE,
          Trait.RESERVATIONS,
          Trait.SHORT_LIVED_TUBS,
          Trait.BATHS);

  @Test
  void totalsAgreeWhereGroupingMakesNoDifference() {
    Seeds.over(SHORT, SlowPlanTest::totalsAgree);
  }

  @Test
  void tubsAndNeedsAgreeForTheMakesAsTheyAre() {
    Seeds.over(SHORT, seed -> tubsAgree(Planned.of(seed)));
  }

  @Test
  @Tag("long")
  void bothAgreeForManyBooks() {
    Seeds.over(
        LONG,
        seed -> {
          totalsAgree(seed);
          tubsAgree(Planned.of(seed, 12, Trait.all()));
        });
  }

  private static void totalsAgree(long seed) {
    Planned planned = Planned.of(seed, 7, ADDITIVE);
    LocalDate last =
        planned.sheet().allServices().stream()
            .map(ServiceRun::date)
            .max(LocalDate::compareTo)
            .orElse(planned.request().from());
    SlowPlan slow = new SlowPlan(planned.book(), planned.request().from(), last);
    SortedMap<String, Amount> drawn = new TreeMap<>();
    SortedMap<String, Amount> net = new TreeMap<>();
    for (Draw draw : planned.sheet().draws()) {
      drawn.merge(draw.lot().component().formula(), draw.amount(), Amount::plus);
    }
    for (Make make : planned.sheet().makes()) {
      for (Need need : make.served()) {
        net.merge(SlowPlan.name(make.version()), need.amount(), Amount::plus);
      }
    }
    SortedMap<String, Fraction> slowDrawn = new TreeMap<>();
    slow.sums()
        .forEach(
            (component, sum) -> {
              slowDrawn.merge(component.split("~", 2)[0], sum.drawn(), Fraction::plus);
              assertNear("net of " + component, net.remove(component), sum.net());
            });
    assertThat(net).as("made and not needed").isEmpty();
    slowDrawn.forEach(
        (formula, sum) -> assertNear("drawn of " + formula, drawn.remove(formula), sum));
    assertThat(drawn).as("drawn and not needed").isEmpty();
  }

  private static void tubsAgree(Planned planned) {
    SlowTubs slow = new SlowTubs(planned.book(), planned.sheet());
    SortedMap<String, Amount> given = new TreeMap<>();
    for (Draw draw : planned.sheet().draws()) {
      given.merge(draw.lot().code() + " to " + draw.need().user(), draw.amount(), Amount::plus);
    }
    slow.given.forEach((who, amount) -> assertNear(who, given.remove(who), amount));
    given.keySet().removeIf(who -> who.contains(" to bath/"));
    assertThat(given).as("given and not wanted").isEmpty();
    SortedMap<String, Amount> net = new TreeMap<>();
    for (Make make : planned.sheet().makes()) {
      for (Need need : make.served()) {
        if (!need.user().startsWith("bath/")) {
          net.merge(SlowTubs.name(make.version(), need.output()), need.amount(), Amount::plus);
        }
      }
    }
    slow.net.forEach((component, amount) -> assertNear(component, net.remove(component), amount));
    assertThat(net).as("made and not wanted").isEmpty();
  }

  private static void assertNear(String what, Amount amount, Fraction slow) {
    BigDecimal number = amount == null ? BigDecimal.ZERO : amount.number();
    Fraction off = Fraction.of(number).minus(slow);
    Fraction least = Fraction.of(Planned.MICROGRAM);
    assertThat(off.compareTo(least) <= 0 && Fraction.ZERO.minus(off).compareTo(least) <= 0)
        .as(what + ": " + number + " and slowly " + slow)
        .isTrue();
  }
}
