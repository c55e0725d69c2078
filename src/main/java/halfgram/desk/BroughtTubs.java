package halfgram.desk;

import halfgram.db.Tx;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Movement;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dated;
import halfgram.measure.Message;
import halfgram.prep.KitchenBook;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The tubs of a book or table that is brought in: a new one is put in, one that is there is counted
 * to what the file says is left, as of now.
 *
 * <p>Rule. Nobody is asked who brings in a file, but told of a count that is more than was ever in
 * the tub, and of one that is what was in it before something else moved: the file may be older.
 */
final class BroughtTubs {
  private final Tx tx;
  private final UUID kitchen;
  private final KitchenBook book;
  private final long change;
  private final String who;
  private final Instant at;
  private final LotStore lots = new LotStore();
  private final Posting posting = new Posting();

  BroughtTubs(Tx tx, UUID kitchen, KitchenBook book, long change, String who, Instant at) {
    this.tx = tx;
    this.kitchen = kitchen;
    this.book = book;
    this.change = change;
    this.who = who;
    this.at = at;
  }

  /** What speaks against a count, before it is kept. */
  List<Message> doubts(Tub tub, Amount counted) {
    List<Message> doubts = new ArrayList<>();
    if (isCounted(tub, counted)) {
      Contents of = new Contents(lots.listOf(tx, kitchen, tub.id()));
      of.moreThanEver(counted)
          .map(most -> Message.of("stock.brought-more-than-ever", counted, most))
          .ifPresent(doubts::add);
      of.lastHeld(counted).map(moved -> before(moved, tub, counted)).ifPresent(doubts::add);
    }
    return doubts;
  }

  private Message before(Instant moved, Tub tub, Amount counted) {
    Dated until = Dated.of(moved, at, book.kitchen().clock().zone());
    Amount back = counted.minus(tub.lot().left());
    return back.isPositive()
        ? Message.of("stock.brought-before-out", counted, until, back)
        : Message.of("stock.brought-before-in", counted, until, back.times(-1));
  }

  private static boolean isCounted(Tub tub, Amount counted) {
    Amount left = tub.lot().left();
    return left.dimension() == counted.dimension() && left.compareTo(counted) != 0;
  }

  /**
   * Puts a tub in, or counts it.
   *
   * @return how many rows were written
   */
  int bring(Lot lot, Optional<Tub> there) {
    if (there.isPresent()) {
      return there.filter(tub -> isCounted(tub, lot.left())).isPresent()
          ? count(there.get(), lot.left())
          : 0;
    }
    Tub tub = new Tub(UUID.randomUUID(), lot, Optional.empty(), change, false);
    Movement brought = Movement.of(tub.id(), Movement.Kind.BROUGHT, lot.left(), who, at);
    posting.open(tx, kitchen, book, tub, brought, change);
    return 1;
  }

  private int count(Tub tub, Amount counted) {
    Amount less = tub.lot().left().minus(counted);
    Movement counting =
        new Movement(
            tub.id(),
            Movement.Kind.COUNTED,
            less.times(-1),
            Optional.of(counted),
            Optional.empty(),
            Optional.of("import"),
            who,
            at,
            Optional.empty());
    posting.keep(tx, kitchen, List.of(counting), change);
    List<Movement> freed = Posting.released(tub.lot(), less, counting, Optional.empty());
    posting.keep(tx, kitchen, freed, change);
    return 1;
  }
}
