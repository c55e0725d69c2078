package halfgram.desk;

import halfgram.formula.ComponentRef;
import halfgram.measure.Amount;
import halfgram.menu.Dish;
import java.util.List;
import java.util.Objects;

/** Something that is on a dish of a service in another amount than on the menu. */
public record Portion(Dish dish, ComponentRef item, Amount amount) {

  /** Those of an event's service; a regular one has no plates. */
  public static List<Portion> list(House house, Slips.Found found) {
    return found.event().stream()
        .flatMap(event -> event.services().stream())
        .filter(one -> !found.run().contains(".") || found.run().endsWith("." + one.code()))
        .flatMap(one -> one.swaps().stream())
        .filter(one -> one.swap().item().equals(one.swap().code()))
        .flatMap(
            one ->
                one.swap().with().item().component().stream()
                    .map(
                        item ->
                            new Portion(
                                Objects.requireNonNull(house.book().dishes().get(one.dish())),
                                item,
                                one.swap().with().amount())))
        .toList();
  }
}
