package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.book.BookStore;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.testkit.Seeds;
import halfgram.testkit.Site;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Laws of the ledger over days in which anything may happen to tubs: cooked, used, closed, counted,
 * lost, moved, split, combined, frozen, thawed, kept, taken back. Each seed has a kitchen of its
 * own.
 */
class LedgerLawsTest {
  private static final int STEPS = 40;

  /** The whole ledger is gone through every so many steps. */
  private static final int CHECKED = 8;

  private static Site site;

  @BeforeAll
  static void open() {
    site = Site.empty();
  }

  @AfterAll
  static void close() {
    site.close();
  }

  @Test
  void nothingIsLostOrWonWhateverHappensAndWhatIsTakenBackNeverWas() {
    Seeds.over(2, seed -> laws(seed, STEPS));
  }

  @Test
  @Tag("long")
  void nothingIsLostOrWonOverManyDays() {
    Seeds.over(60, seed -> laws(1000 + seed, 4 * STEPS));
  }

  private static void laws(long seed, int steps) {
    site.setClock(Site.at("09:00"));
    String kitchen = "L" + seed;
    ObjectNode book =
        (ObjectNode) BookStore.parse(new String(Demo.book(Site.DAY), StandardCharsets.UTF_8));
    ((ObjectNode) book.path("kitchen")).put("code", kitchen);
    site.importBook(book.toString().getBytes(StandardCharsets.UTF_8));
    AnyDay day = new AnyDay(site, kitchen, seed);
    Map<String, Tub> before = tubs(kitchen);
    for (int i = 0; i < steps; i++) {
      String what = day.step();
      boolean back = day.takeBackAtOnce();
      Map<String, Tub> after = tubs(kitchen);
      if (day.isRefused() || back) {
        Map<String, Tub> same = new TreeMap<>(after);
        Set<String> there = before.keySet();
        same.keySet().removeIf(code -> !there.contains(code) && isEmpty(after.get(code)));
        assertThat(same).as("step %d, refused or taken back: %s", i, what).isEqualTo(before);
      }
      before = after;
      if (i % CHECKED == 0 || i == steps - 1) {
        check(kitchen, "step " + i + ", " + what);
      }
    }
    assertThat(day.done()).as("kinds of steps that were not refused").hasSizeGreaterThan(8);
  }

  private static Set<String> codes(Collection<Tub> tubs) {
    return tubs.stream().map(tub -> tub.lot().code()).collect(Collectors.toSet());
  }

  private static boolean isToCount(Tub tub, Instant now) {
    return !isEmpty(tub) || (tub.assumed() && tub.lot().useBy().isAfter(now));
  }

  private static boolean isEmpty(Tub tub) {
    return !tub.lot().left().isPositive();
  }

  private static Map<String, Tub> tubs(String kitchen) {
    Map<String, Tub> tubs = new TreeMap<>();
    House house = site.wiring().desk().find(kitchen).orElseThrow();
    site.wiring().stock().listAll(house).forEach(tub -> tubs.put(tub.lot().code(), tub));
    return tubs;
  }

  /** The laws for every tub and every component. */
  private static void check(String kitchen, String when) {
    House house = site.wiring().desk().find(kitchen).orElseThrow();
    LotStore lots = new LotStore();
    Map<String, Amount> left = new HashMap<>();
    Map<String, Amount> moved = new HashMap<>();
    Map<String, Amount> shifted = new HashMap<>();
    Map<Tub, List<Movement>> ledger = new HashMap<>();
    site.wiring()
        .desk()
        .read(
            tx -> {
              lots.listAll(tx, house.id())
                  .forEach(tub -> ledger.put(tub, lots.listOf(tx, house.id(), tub.id())));
              return null;
            });
    assertThat(codes(site.wiring().desk().read(tx -> lots.list(tx, house.id()))))
        .as("%s: tubs with something left", when)
        .isEqualTo(codes(ledger.keySet().stream().filter(tub -> !isEmpty(tub)).toList()));
    Instant now = site.wiring().desk().now();
    assertThat(codes(site.wiring().stock().listToCount(house)))
        .as("%s: tubs to count", when)
        .isEqualTo(codes(ledger.keySet().stream().filter(tub -> isToCount(tub, now)).toList()));
    for (Map.Entry<Tub, List<Movement>> entry : ledger.entrySet()) {
      Tub tub = entry.getKey();
      List<Movement> rows = entry.getValue();
      Lot lot = tub.lot();
      Replay replay = Replay.of(rows);
      assertThat(lot.left().number()).as("%s: %s below nought", when, lot.code()).isNotNegative();
      assertThat(replay.left())
          .as("%s: left of %s", when, lot.code())
          .isEqualByComparingTo(lot.left());
      assertThat(replay.kept()).as("%s: kept in %s", when, lot.code()).isEqualTo(Replay.kept(lot));
      assertThat(lot.kept()).as("%s: %s", when, lot.code()).isLessThanOrEqualTo(lot.left());
      replay.assertStands(lot, when);
      String component = component(house, lot);
      left.merge(component, lot.left(), Amount::plus);
      for (Movement row : standing(rows)) {
        boolean shift = row.kind() == Movement.Kind.SPLIT || row.kind() == Movement.Kind.COMBINED;
        if (row.kind().moves()) {
          (shift ? shifted : moved).merge(component, row.amount(), Amount::plus);
        }
      }
    }
    left.forEach(
        (component, amount) ->
            assertThat(moved.getOrDefault(component, amount.times(0)))
                .as("%s: made and counted less what was used and lost of %s", when, component)
                .isEqualByComparingTo(amount));
    shifted.forEach(
        (component, amount) ->
            assertThat(amount.isZero())
                .as("%s: split and combined %s, off by %s", when, component, amount)
                .isTrue());
  }

  /** The rows of changes that were not taken back, and took nothing back. */
  private static List<Movement> standing(List<Movement> rows) {
    Set<Long> out = new HashSet<>();
    for (Movement row : rows) {
      if (row.undoes().isPresent()) {
        out.add(row.change());
        out.add(row.undoes().getAsLong());
      }
    }
    return rows.stream().filter(row -> !out.contains(row.change())).toList();
  }

  private static String component(House house, Lot lot) {
    String first = house.book().formulary().get(lot.component()).outputs().get(0).code();
    return lot.component().formula() + ":" + lot.component().output().orElse(first);
  }
}
