package halfgram.desk;

import static org.assertj.core.api.Assertions.assertThat;

import halfgram.lot.Lot;
import halfgram.lot.Movement;
import halfgram.measure.Amount;
import java.math.BigDecimal;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A tub replayed from its rows one by one, without any SQL: amounts are added up; how it stands is
 * set by each row and set back to what it was before a change that is taken back.
 */
record Replay(Amount left, Map<String, BigDecimal> kept, Standing standing) {

  /** Where it stands and whether it is frozen, as far as rows say. */
  record Standing(Optional<String> place, Optional<Instant> date, boolean frozen, boolean thawed) {}

  static Replay of(List<Movement> rows) {
    Amount left = rows.get(0).amount().times(0);
    Map<String, BigDecimal> kept = new TreeMap<>();
    Standing now = new Standing(Optional.empty(), Optional.empty(), false, false);
    Map<Long, Standing> before = new HashMap<>();
    for (Movement row : rows) {
      before.putIfAbsent(row.change(), now);
      if (row.kind().keeps()) {
        kept.merge(row.event().orElseThrow(), row.amount().number(), BigDecimal::add);
      } else {
        left = left.plus(row.amount());
      }
      now = turned(now, row);
      if (row.undoes().isPresent() && turns(rows, row.undoes().getAsLong())) {
        now = before.get(row.undoes().getAsLong());
      }
    }
    kept.replaceAll((event, amount) -> amount.stripTrailingZeros());
    kept.values().removeIf(amount -> amount.signum() == 0);
    return new Replay(left, kept, now);
  }

  private static boolean turns(List<Movement> rows, long change) {
    return rows.stream().anyMatch(row -> row.change() == change && row.kind().turns());
  }

  private static Standing turned(Standing now, Movement row) {
    Optional<String> place = row.turn().place().or(now::place);
    return switch (row.kind()) {
      case MOVED -> new Standing(place, now.date(), now.frozen(), now.thawed());
      case FROZEN -> new Standing(place, row.turn().useBy(), true, now.thawed());
      case THAWED -> new Standing(place, row.turn().useBy(), false, true);
      default -> now;
    };
  }

  /** What a tub keeps, by event. */
  static Map<String, BigDecimal> kept(Lot lot) {
    Map<String, BigDecimal> kept = new TreeMap<>();
    lot.reserved()
        .forEach(one -> kept.put(one.event(), one.amount().number().stripTrailingZeros()));
    return kept;
  }

  void assertStands(Lot lot, String when) {
    assertThat(lot.isFrozen()).as("%s: %s frozen", when, lot.code()).isEqualTo(standing.frozen());
    assertThat(lot.thawed().isPresent())
        .as("%s: %s thawed", when, lot.code())
        .isEqualTo(standing.thawed());
    standing
        .place()
        .ifPresent(
            place -> assertThat(lot.place()).as("%s: %s", when, lot.code()).isEqualTo(place));
    standing
        .date()
        .ifPresent(date -> assertThat(lot.useBy()).as("%s: %s", when, lot.code()).isEqualTo(date));
  }
}
