package halfgram.lot;

import halfgram.db.schema.tables.records.LotRecord;
import halfgram.formula.ComponentRef;
import halfgram.formula.Contains;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/** Rows of tubs read. */
final class LotRowStore {
  private static final String BETWEEN = "\n";

  private LotRowStore() {}

  /** A tub as it was filled, with what is left of it now. */
  static Lot lot(LotRecord row, Amount left, List<Reservation> reserved) {
    Integer version = row.getVersion();
    return new Lot(
            row.getCode(),
            new ComponentRef(
                row.getFormula(),
                Optional.of(row.getOutput()).filter(output -> !output.isEmpty()),
                version == null ? OptionalInt.empty() : OptionalInt.of(version)),
            left,
            row.getMadeAt(),
            row.getUseBy(),
            row.getPlace(),
            Optional.ofNullable(row.getContainer()),
            reserved)
        .knowing(new Contains(words(row.getAllergens()), words(row.getTags())));
  }

  static Amount amount(BigDecimal number, String dimension) {
    return new Amount(number, Dimension.valueOf(dimension));
  }

  static String joined(SortedSet<String> words) {
    return String.join(BETWEEN, words);
  }

  /** What was joined; nothing for a row of before it was kept. */
  private static SortedSet<String> words(@Nullable String joined) {
    return joined == null || joined.isEmpty()
        ? new TreeSet<>()
        : new TreeSet<>(List.of(joined.split(BETWEEN, -1)));
  }
}
