package halfgram.desk;

import halfgram.formula.FormulaVersion;
import halfgram.prep.BathFacts;
import halfgram.technique.bath.BathEntry;
import halfgram.technique.bath.BathStore;
import halfgram.technique.bath.Learned;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** What the baths of the last days have shown of a formula whose pieces set in them. */
public final class LearnedBaths {
  private static final int DAYS = 90;

  private final Desk desk;
  private final BathStore store = new BathStore();

  public LearnedBaths(Desk desk) {
    this.desk = desk;
  }

  /** Empty for a formula that sets in no bath. */
  public Optional<Learned> find(House house, FormulaVersion version) {
    return BathFacts.bath(house.book(), version)
        .map(
            bath -> {
              LocalDate from = house.day(desk.now()).minusDays(DAYS);
              List<BathEntry> entries =
                  desk.read(tx -> store.listFrom(tx, house.id(), from)).stream()
                      .map(BathStore.Entered::entry)
                      .toList();
              return Learned.of(entries, version.formula(), bath);
            });
  }
}
