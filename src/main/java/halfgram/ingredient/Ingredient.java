package halfgram.ingredient;

import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Money;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.SortedSet;

/**
 * One thing that is bought.
 *
 * @param density g/mL, empty when nobody stated it
 * @param calcium mass share in the edible part; total, partly bound
 * @param allergensStated whether anybody said which it contains, none included
 * @param allergens codes of the allergens it contains
 * @param tags free words that a diet may exclude
 * @param packs as bought, the usual one first
 * @param lookAlikes codes of ingredients it is easily taken for
 * @param units household words and "piece", each with its mass
 * @param cuts usable share by cut, of what is bought
 */
public record Ingredient(
    String code,
    Text name,
    Form form,
    Optional<Stated> density,
    Optional<Stated> calcium,
    boolean allergensStated,
    SortedSet<String> allergens,
    SortedSet<String> tags,
    List<Pack> packs,
    SortedSet<String> lookAlikes,
    Map<String, Mass> units,
    SortedMap<String, Stated> cuts) {

  /** The mass of a quantity of this, or empty when {@link #whyNoMass} has the reason. */
  public Optional<Amount> findMass(Quantity quantity) {
    Mass household = units.get(quantity.unit());
    if (household != null) {
      return Optional.of(Amount.of(household).times(new Ratio(quantity.number())));
    }
    return quantity
        .canonical()
        .flatMap(
            amount ->
                switch (amount.dimension()) {
                  case MASS -> Optional.of(amount);
                  case VOLUME -> density.map(d -> Amount.grams(amount.number()).times(d.value()));
                  case COUNT -> Optional.empty();
                });
  }

  /** What is missing to make this quantity a mass, and what would be accepted. */
  public Message whyNoMass(Quantity quantity) {
    boolean volume =
        quantity.canonical().filter(a -> a.dimension() == Dimension.VOLUME).isPresent();
    return volume
        ? Message.of("problem.no-density", quantity, code)
        : Message.of("problem.no-unit-mass", quantity.unit(), code);
  }

  /** The usable share of what is bought for a cut; empty when the cut is not known. */
  public Optional<Stated> findCut(String cut) {
    return Optional.ofNullable(cuts.get(cut));
  }

  /** What one gram as bought costs, by the usual pack; unknown without a price. */
  public Money perGram() {
    return packs.isEmpty() ? Money.UNKNOWN : packs.get(0).perGram();
  }
}
