package halfgram.prep;

import halfgram.lot.Frozen;
import halfgram.lot.Lot;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Netting;
import halfgram.prep.netting.Stock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Frozen tubs set against needs that no other tub covers.
 *
 * <p>Rules. A tub is pulled as late as it may be for the first need it serves, while somebody is
 * there, and not before the plan's moment: where there is no time to thaw, it does not help. From
 * then on its clock goes on ({@link Frozen}), and what is left must last to the last use of every
 * need it serves. Tubs kept for an event come first, then those that the kitchen said keep
 * shortest. Where nobody said how long it thaws, nothing counts on it.
 *
 * @param draws what they give
 * @param open what they do not cover
 * @param unsaid tubs that would help if somebody said how long they thaw
 */
record Thawing(List<Draw> draws, List<Need> open, List<Thaw> thaws, List<Lot> unsaid) {

  private static final Comparator<Lot> ORDER =
      Comparator.comparing((Lot tub) -> tub.reserved().isEmpty())
          .thenComparing(Lot::useBy)
          .thenComparing(Lot::made)
          .thenComparing(Lot::code);

  /** A tub as needs see it: thawed, from when it has. */
  static Stock stock(KitchenBook book, Lot tub) {
    return Stock.of(tub, Thaw.ready(book.formulary(), tub));
  }

  /**
   * Sets frozen tubs against needs.
   *
   * @param needs in {@link Need#ORDER}
   * @param tubs of the same formula
   * @param asOf moment of the plan
   */
  static Thawing of(
      KitchenBook book,
      Worked worked,
      List<Need> needs,
      List<Lot> tubs,
      OpenHours hours,
      Instant asOf) {
    Thawing all = new Thawing(new ArrayList<>(), needs, new ArrayList<>(), new ArrayList<>());
    for (Lot tub : tubs.stream().sorted(ORDER).toList()) {
      Optional<Duration> time = Thaw.findTime(book.formulary(), tub);
      if (time.isPresent()) {
        all = all.with(new Pull(book, tub, time.get(), hours, asOf), worked);
      } else if (!Netting.net(all.open, List.of(out(tub)), worked.outputCodes).draws().isEmpty()) {
        all.unsaid.add(tub);
      }
    }
    return all;
  }

  /** What it would be if it thawed at once and kept as long as anybody likes. */
  private static Stock out(Lot tub) {
    return new Stock(tub, Instant.MIN, Instant.MAX, Instant.MAX);
  }

  private Thawing with(Pull pull, Worked worked) {
    for (Need need : open) {
      Optional<Stock> stock = pull.find(need);
      if (stock.filter(one -> one.serves(need)).isEmpty()) {
        continue;
      }
      Netting.Netted netted = Netting.net(open, List.of(stock.get()), worked.outputCodes);
      if (netted.draws().stream().anyMatch(draw -> draw.need().equals(need))) {
        draws.addAll(netted.draws());
        Lot out = stock.get().lot();
        thaws.add(Thaw.of(pull.book, pull.tub, out, worked.word, netted.draws(), pull.hours));
        return new Thawing(draws, netted.open(), thaws, unsaid);
      }
    }
    return this;
  }

  /** The pulling of one tub. */
  private record Pull(KitchenBook book, Lot tub, Duration time, OpenHours hours, Instant asOf) {

    /** The tub as it is when it is pulled for a need; empty when it is too late for that. */
    private Optional<Stock> find(Need need) {
      Instant at = hours.latestStart(need.readyBy().minus(time).minus(Thaw.PULL), Thaw.PULL);
      if (at.isBefore(asOf) || !at.isBefore(tub.useBy())) {
        return Optional.empty();
      }
      Frozen ice = tub.frozen().orElseThrow();
      Instant useBy = ice.useBy(at, book.kitchen().clock());
      Lot out = tub.frosted(useBy, Optional.empty(), Optional.of(at));
      return Optional.of(Stock.of(out, at.plus(Thaw.PULL).plus(time)));
    }
  }
}
