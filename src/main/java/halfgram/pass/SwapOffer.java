package halfgram.pass;

import halfgram.event.Replaced;
import halfgram.event.Service;
import halfgram.formula.AllergenTrace;
import halfgram.formula.ComponentRef;
import halfgram.formula.Cost;
import halfgram.formula.FormulaVersion;
import halfgram.kitchen.Text;
import halfgram.measure.Message;
import halfgram.measure.Money;
import halfgram.measure.Rounding;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Swap;
import halfgram.prep.Components;
import halfgram.prep.Fire;
import halfgram.prep.KitchenBook;
import halfgram.prep.Plated;
import halfgram.prep.Swapped;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * Something that a dish lists as a stand-in, and what would differ: allergens and cost of the plate
 * that most guests get, how long there is enough of it, whose plates keep what they have, and what
 * it means for a bath.
 *
 * @param plated whether it is on plates of a dish; else in portions that pars ask for, and the cost
 *     is of what is swapped alone
 * @param plates to go that it would be on, or portions
 * @param lastsFor plates that there is enough of it for; empty for what is kept in no tub
 * @param gains allergens that come onto the plate
 * @param loses allergens that leave it
 * @param refused plates that keep what they have, and why
 * @param baths what it means for a bath
 * @param inForce whether it is in force
 * @param wanted whether what it stands in for is short or out
 */
public record SwapOffer(
    Dish dish,
    Swap swap,
    boolean plated,
    int plates,
    OptionalLong lastsFor,
    SortedSet<String> gains,
    SortedSet<String> loses,
    Money costBefore,
    Money costAfter,
    List<RefusedFor> refused,
    List<Message> baths,
    boolean inForce,
    boolean wanted) {

  /** Plates for diets that cannot have it. */
  public record RefusedFor(SortedSet<String> diets, String way, int plates) {}

  private static final String MILK = "milk";

  /** What the dishes of a service list, each once. */
  public static List<SwapOffer> list(KitchenBook book, AtPass at, Trays trays) {
    if (at.run().event().isEmpty()) {
      return new ParOffers(book, at, trays).list();
    }
    List<Replaced> inForce = Fire.findService(book, at.run()).map(Service::swaps).orElse(List.of());
    Builder builder = new Builder(book, at, trays, inForce);
    List<SwapOffer> offers = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (AtPass.Line line : at.lines()) {
      Dish dish = book.dishes().get(line.key().dish());
      if (dish != null && seen.add(dish.code())) {
        dish.swaps().forEach(swap -> offers.add(builder.offer(dish, swap)));
      }
    }
    return offers;
  }

  /** A stand-in that sets in a bath is another base: for its calcium, and for its milk. */
  static List<Message> baths(KitchenBook book, AllergenTrace trace, Swap swap) {
    List<Message> baths = new ArrayList<>();
    Optional<FormulaVersion> version =
        swap.with().item().component().flatMap(book.formulary()::find);
    if (version.isPresent() && version.get().dropping().isPresent()) {
      Text name = version.get().name();
      Text bath =
          Components.name(book.formulary(), ComponentRef.of(version.get().dropping().get().bath()));
      baths.add(Message.of("pass.swap-base", name));
      if (trace.of(version.get()).allergenCodes().contains(MILK)) {
        baths.add(Message.of("pass.swap-milk", name, bath));
      }
    }
    return baths;
  }

  static OptionalLong lastsFor(KitchenBook book, AtPass at, Trays trays, Swap swap) {
    Optional<ComponentRef> ref = swap.with().item().component();
    if (ref.isEmpty() || !swap.with().amount().isPositive()) {
      return OptionalLong.empty();
    }
    Component component = Component.of(book.formulary(), ref.get());
    return OptionalLong.of(
        Rounding.DOWN_TO_WHOLE
            .round(trays.inStock(component, at.run().event()).over(swap.with().amount()).number())
            .longValueExact());
  }

  static boolean isSame(Swap one, Swap other) {
    return one.item().equals(other.item()) && one.code().equals(other.code());
  }

  static SortedSet<String> without(SortedSet<String> all, SortedSet<String> those) {
    SortedSet<String> rest = new TreeSet<>(all);
    rest.removeAll(those);
    return rest;
  }

  /** Puts the differences together. */
  private static final class Builder {
    private final KitchenBook book;
    private final AtPass at;
    private final Trays trays;
    private final List<Replaced> swaps;
    private final AllergenTrace trace;
    private final Swapped swapped;

    private Builder(KitchenBook book, AtPass at, Trays trays, List<Replaced> swaps) {
      this.book = book;
      this.at = at;
      this.trays = trays;
      this.swaps = swaps;
      this.trace = new AllergenTrace(book.formulary(), book::ingredient);
      this.swapped = new Swapped(book, trace);
    }

    private SwapOffer offer(Dish dish, Swap swap) {
      boolean there =
          swaps.stream()
              .anyMatch(one -> one.dish().equals(dish.code()) && isSame(one.swap(), swap));
      List<PlateItem> before = dish.plate();
      List<PlateItem> after = swap.on(before);
      int plates = 0;
      List<RefusedFor> refused = new ArrayList<>();
      for (AtPass.Line line : at.lines()) {
        if (line.key().dish().equals(dish.code())) {
          List<PlateItem> plate = unswapped(dish, line);
          Optional<Plated.Breach> breach = swapped.findBreach(plate, swap, line.key().diets());
          if (breach.isPresent()) {
            refused.add(new RefusedFor(line.key().diets(), breach.get().way(), line.toGo()));
          } else if (swap.applies(plate)) {
            plates += line.toGo();
          }
        }
      }
      Cost cost = book.cost();
      SortedSet<String> had = Plated.allergens(book, before);
      SortedSet<String> has = Plated.allergens(book, after);
      return new SwapOffer(
          dish,
          swap,
          true,
          plates,
          lastsFor(book, at, trays, swap),
          without(has, had),
          without(had, has),
          Plated.cost(cost, before),
          Plated.cost(cost, after),
          refused,
          baths(book, trace, swap),
          there,
          isWanted(dish, swap));
    }

    /** What a line's guests get by the menu, whatever is swapped by now. */
    private static List<PlateItem> unswapped(Dish dish, AtPass.Line line) {
      return dish.variants().stream()
          .filter(one -> line.plates().variant().isPresent())
          .filter(one -> one.name().equals(line.plates().variant().get().name()))
          .filter(one -> one.diets().containsAll(line.key().diets()))
          .findFirst()
          .map(one -> one.plate())
          .orElse(dish.plate());
    }

    /** The item is out, or decides that a plate of the dish is short. */
    private boolean isWanted(Dish dish, Swap swap) {
      return at.lines().stream()
          .filter(line -> line.key().dish().equals(dish.code()))
          .anyMatch(
              line ->
                  line.out().filter(out -> out.what().item().equals(swap.item())).isPresent()
                      || (line.shortBy() > 0
                          && line.scarcest()
                              .filter(one -> one.formula().equals(swap.item()))
                              .isPresent()));
    }
  }
}
