package halfgram.prep.netting;

import halfgram.lot.Lot;
import halfgram.lot.Reservation;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * Needs against tubs: in the order of the needs, each takes first what is reserved for its event,
 * then what is free, first expired first. A tub serves a need when it is made in time and holds to
 * the last use; one in work serves late those it was begun for, after all that is in time, with as
 * much as it was begun for: with more, what others weigh into it besides would be theirs too.
 *
 * <p>Law: drawn + still needed = needed, for every need, within a microgram; no tub gives more than
 * is left of it. Less than a microgram over or short is nothing: tubs are booked to the microgram.
 */
public final class Netting {

  /** What tubs cover and what they do not. */
  public record Netted(List<Draw> draws, List<Need> open) {}

  private static final BigDecimal LEAST = new BigDecimal("0.000001");

  private static final Comparator<Stock> FIRST_EXPIRED =
      Comparator.comparing(
          Stock::lot,
          Comparator.comparing(Lot::useBy).thenComparing(Lot::made).thenComparing(Lot::code));

  private Netting() {}

  /** Whether an amount is more than what rounding leaves; pieces always are. */
  public static boolean counts(Amount amount) {
    return amount.dimension() == Dimension.COUNT
        ? amount.isPositive()
        : amount.number().compareTo(LEAST) >= 0;
  }

  /**
   * Sets tubs against needs.
   *
   * @param needs in {@link Need#ORDER}
   * @param stock tubs of the same formula
   * @param outputs codes of the formula's outputs, by position
   */
  public static Netted net(List<Need> needs, List<Stock> stock, List<String> outputs) {
    return net(needs, stock, outputs, need -> true);
  }

  /**
   * As above.
   *
   * @param late which needs may be met late
   */
  public static Netted net(
      List<Need> needs, List<Stock> stock, List<String> outputs, Predicate<Need> late) {
    if (stock.isEmpty()) {
      return new Netted(List.of(), needs);
    }
    List<Shelf> shelves = stock.stream().sorted(FIRST_EXPIRED).map(Shelf::new).toList();
    List<Draw> draws = new ArrayList<>();
    List<Need> open = new ArrayList<>();
    for (Need need : needs) {
      Amount left = need.amount();
      for (Shelf shelf : shelves) {
        left = left.minus(shelf.take(need, outputs, left, Shelf.Part.RESERVED, draws));
      }
      for (Shelf shelf : shelves) {
        left = left.minus(shelf.take(need, outputs, left, Shelf.Part.FREE, draws));
      }
      boolean lacking = counts(left) && late.test(need);
      for (Shelf shelf : lacking ? shelves : List.<Shelf>of()) {
        left = left.minus(shelf.takeLate(need, outputs, left, draws));
      }
      boolean drawn = left.compareTo(need.amount()) < 0;
      if (drawn ? counts(left) : left.isPositive()) {
        open.add(need.with(left));
      }
    }
    return new Netted(draws, open);
  }

  /** A tub while needs draw on it. */
  private static final class Shelf {
    enum Part {
      RESERVED,
      FREE
    }

    private final Stock stock;
    private final Lot lot;
    private final Map<String, Amount> reserved = new HashMap<>();
    private final Map<String, Amount> meant;
    private Amount free;

    private Shelf(Stock stock) {
      this.stock = stock;
      this.lot = stock.lot();
      this.free = lot.left();
      this.meant = new HashMap<>();
      stock.meant().forEach((user, of) -> meant.put(user, of.amount()));
      for (Reservation reservation : lot.reserved()) {
        Amount kept = reservation.amount().atMost(free);
        reserved.merge(reservation.event(), kept, Amount::plus);
        free = free.minus(kept);
      }
    }

    private Amount take(
        Need need, List<String> outputs, Amount wanted, Part part, List<Draw> draws) {
      return isOf(need, outputs) && stock.serves(need)
          ? take(need, wanted, part, draws)
          : Amount.zero(wanted.dimension());
    }

    private Amount takeLate(Need need, List<String> outputs, Amount wanted, List<Draw> draws) {
      if (!isOf(need, outputs) || !stock.servesLate(need)) {
        return Amount.zero(wanted.dimension());
      }
      Amount most = meant.getOrDefault(need.user(), wanted.times(0)).atMost(wanted);
      Amount kept = take(need, most, Part.RESERVED, draws);
      Amount all = kept.plus(take(need, most.minus(kept), Part.FREE, draws));
      meant.computeIfPresent(need.user(), (user, amount) -> amount.minus(all));
      return all;
    }

    private Amount take(Need need, Amount wanted, Part part, List<Draw> draws) {
      Amount none = Amount.zero(wanted.dimension());
      if (!wanted.isPositive()) {
        return none;
      }
      Amount there =
          part == Part.FREE
              ? free
              : need.event().map(event -> reserved.getOrDefault(event, none)).orElse(none);
      Amount taken = there.atMost(wanted);
      if (!taken.isPositive() || !counts(there)) {
        return none;
      }
      if (part == Part.FREE) {
        free = free.minus(taken);
      } else {
        reserved.put(need.event().orElseThrow(), there.minus(taken));
      }
      draws.add(new Draw(lot, need, taken));
      return taken;
    }

    private boolean isOf(Need need, List<String> outputs) {
      String output = lot.component().output().orElse(outputs.get(0));
      return outputs.get(need.output()).equals(output);
    }
  }
}
