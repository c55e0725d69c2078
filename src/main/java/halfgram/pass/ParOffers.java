package halfgram.pass;

import halfgram.event.RegularService;
import halfgram.event.Replaced;
import halfgram.event.ServiceDate;
import halfgram.formula.AllergenTrace;
import halfgram.measure.Amount;
import halfgram.measure.Rounding;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Swap;
import halfgram.par.Par;
import halfgram.prep.Demand;
import halfgram.prep.KitchenBook;
import halfgram.prep.ParSwap;
import halfgram.prep.Plated;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;

/**
 * What may stand in for what in a regular service: what any dish of the house lists for something
 * that its pars ask for. Allergens and cost are those of one portion on that dish.
 *
 * <p>Rules. A swap that several dishes list is offered once, as the first of them by code has it.
 * Nobody is counted by diet in such a service: no plate is left out, and the words say which diets
 * a new allergen touches.
 */
final class ParOffers {
  private final KitchenBook book;
  private final AtPass at;
  private final Trays trays;
  private final Optional<RegularService> service;
  private final AllergenTrace trace;

  ParOffers(KitchenBook book, AtPass at, Trays trays) {
    this.book = book;
    this.at = at;
    this.trays = trays;
    this.service =
        book.services().values().stream()
            .filter(one -> at.run().id().equals(one.code() + "." + at.run().date()))
            .findFirst();
    this.trace = new AllergenTrace(book.formulary(), book::ingredient);
  }

  List<SwapOffer> list() {
    List<SwapOffer> offers = new ArrayList<>();
    Set<List<String>> seen = new HashSet<>();
    for (Dish dish : book.dishes().values()) {
      for (Swap swap : dish.swaps()) {
        ParSwap.of(dish, swap).stream()
            .flatMap(one -> findPar(one).stream().map(par -> offer(dish, one, par)))
            .filter(one -> seen.add(List.of(swap.item(), swap.code())))
            .forEach(offers::add);
      }
    }
    return offers;
  }

  private Optional<Amount> findPar(ParSwap swap) {
    for (Par par : book.pars()) {
      Amount amount = par.amounts().get(at.run().date().getDayOfWeek());
      boolean its = service.filter(one -> one.code().equals(par.service())).isPresent();
      if (its && amount != null && amount.isPositive() && swap.isFor(book, par.component())) {
        RegularService of = service.orElseThrow();
        return Optional.of(Demand.atCovers(of, of.on(at.run().date()), amount));
      }
    }
    return Optional.empty();
  }

  private SwapOffer offer(Dish dish, ParSwap of, Amount par) {
    List<PlateItem> before = List.of(of.item());
    List<PlateItem> after = List.of(of.swap().with());
    SortedSet<String> had = Plated.allergens(book, before);
    SortedSet<String> has = Plated.allergens(book, after);
    return new SwapOffer(
        dish,
        of.swap(),
        false,
        portions(par, of.item().amount()),
        SwapOffer.lastsFor(book, at, trays, of.swap()),
        SwapOffer.without(has, had),
        SwapOffer.without(had, has),
        Plated.cost(book.cost(), before),
        Plated.cost(book.cost(), after),
        List.of(),
        SwapOffer.baths(book, trace, of.swap()),
        isInForce(of.swap()),
        isWanted(of));
  }

  private static int portions(Amount par, Amount each) {
    return Rounding.UP_TO_WHOLE.round(par.over(each).number()).intValueExact();
  }

  private boolean isInForce(Swap swap) {
    return service.map(one -> one.on(at.run().date())).map(ServiceDate::swaps).stream()
        .flatMap(List::stream)
        .map(Replaced::swap)
        .anyMatch(one -> SwapOffer.isSame(one, swap));
  }

  /** What it stands in for is out, or short. */
  private boolean isWanted(ParSwap swap) {
    return at.shelves().stream()
        .filter(shelf -> shelf.component().formula().equals(swap.swap().item()))
        .anyMatch(shelf -> shelf.out().isPresent() || shelf.isShort());
  }
}
