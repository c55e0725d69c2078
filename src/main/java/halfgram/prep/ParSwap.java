package halfgram.prep;

import halfgram.event.Replaced;
import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Swap;
import java.util.Optional;

/**
 * A swap in a service that is planned from pars: of what a par asks for, the stand-in, by as much
 * as a dish that lists it puts in its place.
 *
 * <p>Example: where three pea spheres stand in for three yoghurt spheres, a par of 60 is 60 of the
 * others; where 20 g stand in for one piece, it is 1200 g.
 *
 * @param item as the dish has it
 */
public record ParSwap(Swap swap, PlateItem item) {

  /** Of a swap in force; empty when its dish no longer has the item. */
  public static Optional<ParSwap> of(KitchenBook book, Replaced one) {
    return Optional.ofNullable(book.dishes().get(one.dish())).flatMap(dish -> of(dish, one.swap()));
  }

  /** Of a swap that a dish lists. */
  public static Optional<ParSwap> of(Dish dish, Swap swap) {
    return dish.plate().stream()
        .filter(one -> one.item().code().equals(swap.item()))
        .filter(one -> one.amount().isPositive())
        .findFirst()
        .map(one -> new ParSwap(swap, one));
  }

  /** Whether it is for what a par asks for. */
  public boolean isFor(KitchenBook book, ComponentRef par) {
    return item.item()
        .component()
        .filter(ref -> ref.formula().equals(par.formula()))
        .filter(
            ref ->
                book.formulary().get(ref).outputIndex(ref.output())
                    == book.formulary().get(par).outputIndex(par.output()))
        .isPresent();
  }

  /** How much of the stand-in takes the place of so much. */
  public Amount instead(Amount par) {
    return swap.with().amount().times(par.over(item.amount()));
  }
}
