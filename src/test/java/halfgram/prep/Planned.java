package halfgram.prep;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.measure.Because;
import halfgram.testkit.BookText;
import halfgram.testkit.RandomBook;
import halfgram.testkit.Trait;
import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/** A random book and its sheet, kept for all laws that look at the same seed. */
record Planned(ObjectNode json, KitchenBook book, PlanRequest request, PrepSheet sheet) {

  /** Laws hold within this many grams or pieces. */
  static final BigDecimal MICROGRAM = new BigDecimal("0.000001");

  private static final int MOST_KEPT = 400;
  private static final Map<Long, Planned> KEPT = new HashMap<>();

  /** The book of a seed with every trait. */
  static Planned of(long seed) {
    Planned kept = KEPT.get(seed);
    if (kept == null) {
      kept = of(seed, 8, Trait.all());
      if (KEPT.size() < MOST_KEPT) {
        KEPT.put(seed, kept);
      }
    }
    return kept;
  }

  static Planned of(long seed, int size, Set<Trait> traits) {
    RandomBook random = new RandomBook(seed, size, traits);
    KitchenBook book = random.book();
    PlanRequest request = random.request(book);
    PrepSheet sheet = Planning.plan(book, request, Because.NOT_ASKED);
    return new Planned(random.json(), book, request, sheet);
  }

  /** The sheet of another book for the same days. */
  Planned replanned(ObjectNode other) {
    KitchenBook read = BookText.read(other);
    return new Planned(other, read, request, Planning.plan(read, request, Because.NOT_ASKED));
  }
}
