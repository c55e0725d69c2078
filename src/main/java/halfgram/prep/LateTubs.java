package halfgram.prep;

import halfgram.lot.Lot;
import halfgram.measure.Amount;
import halfgram.prep.netting.Draw;
import halfgram.prep.netting.Need;
import halfgram.prep.netting.Netting;
import halfgram.prep.netting.Stock;
import java.util.ArrayList;
import java.util.List;

/**
 * Needs that a batch in work meets too late, because making them anew would help nobody.
 *
 * <p>Rules. Most of them are met among the tubs ({@link Netting}); these are those that a batch
 * which may grow was to meet in time, and which were too much for it, and those that want more than
 * it was begun for, of what nobody else takes. What is late is told of ({@link Behind}); made twice
 * it would be late all the same.
 *
 * @param open what is left to make
 */
record LateTubs(List<Draw> draws, List<Need> open) {

  /**
   * What is in work against what is open.
   *
   * @param before what it gives in time
   */
  static LateTubs of(Worked worked, List<Begun> stand, List<Draw> before, List<Need> open) {
    List<Draw> draws = new ArrayList<>(before);
    List<Need> rest = new ArrayList<>(open);
    for (Begun of : stand) {
      for (Stock stock : of.expected()) {
        String output = stock.lot().component().output().orElse(worked.outputCodes.get(0));
        for (Need need : List.copyOf(rest)) {
          Amount left = left(stock, draws);
          boolean same = worked.outputCodes.get(need.output()).equals(output);
          if (same && stock.servesLate(need) && left.isPositive() && Netting.counts(left)) {
            Amount taken = left.atMost(need.amount());
            draws.add(new Draw(lot(stock, draws), need, taken));
            Amount more = need.amount().minus(taken);
            int at = rest.indexOf(need);
            rest.remove(at);
            if (Netting.counts(more)) {
              rest.add(at, need.with(more));
            }
          }
        }
      }
    }
    return new LateTubs(draws.subList(before.size(), draws.size()), rest);
  }

  private static Amount left(Stock stock, List<Draw> draws) {
    Amount left = stock.lot().left();
    for (Draw draw : draws) {
      left = isOf(draw, stock) ? left.minus(draw.amount()) : left;
    }
    return left;
  }

  /** One batch is one tub, whether it has grown in between or not. */
  private static Lot lot(Stock stock, List<Draw> draws) {
    return draws.stream()
        .filter(draw -> isOf(draw, stock))
        .map(Draw::lot)
        .findFirst()
        .orElse(stock.lot());
  }

  private static boolean isOf(Draw draw, Stock stock) {
    return draw.lot().code().equals(stock.lot().code())
        && draw.lot().component().equals(stock.lot().component());
  }
}
