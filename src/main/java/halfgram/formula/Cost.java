package halfgram.formula;

import halfgram.ingredient.Ingredient;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.measure.Money;
import halfgram.measure.Ratio;
import java.math.BigDecimal;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;

/**
 * Food cost: what the lines cost as bought, trim included, over what comes out, yields and breakage
 * included. Several outputs share the cost by mass. The fixed residue of a bowl counts in a make's
 * cost ({@link #of(Scaled)}), not in the cost per gram, which would then depend on the make.
 *
 * <p>Source: standard food-cost arithmetic (as-purchased price over usable yield).
 */
public final class Cost {
  private final Formulary formulary;
  private final Function<String, Ingredient> ingredients;
  private final IdentityHashMap<FormulaVersion, Money> perBasis = new IdentityHashMap<>();

  public Cost(Formulary formulary, Function<String, Ingredient> ingredients) {
    this.formulary = formulary;
    this.ingredients = ingredients;
  }

  /** What one make costs. */
  public Money of(Scaled scaled) {
    return perBasisGram(scaled.version()).times(new Ratio(scaled.basis().number()));
  }

  /** What one gram, or one sound piece, of an output costs. */
  public Money perUnit(FormulaVersion version, int output) {
    Output made = version.outputs().get(output);
    MassBalance balance = formulary.balance(version);
    BigDecimal basis = BigDecimal.valueOf(1_000_000);
    Amount mass = balance.outputOf(Amount.grams(basis));
    Money perGram =
        perBasisGram(version).times(new Ratio(basis.divide(mass.number(), Exact.DIGITS)));
    return made.pieceMass()
        .map(piece -> perGram.times(new Ratio(piece.grams()).dividedBy(balance.piecesKept())))
        .orElse(perGram);
  }

  /** What an amount of an item costs, in grams or in the component's own unit. */
  public Money of(Item item, Amount amount, Ratio trim) {
    return item.fold(
        ingredient ->
            ingredients
                .apply(ingredient.code())
                .perGram()
                .times(new Ratio(amount.number()).dividedBy(trim)),
        component -> {
          FormulaVersion version = formulary.get(component.ref());
          int index = version.outputIndex(component.ref().output());
          Output output = version.outputs().get(index);
          Amount much = amount.dimension() == output.unit() ? amount : output.inUnit(amount);
          return perUnit(version, index).times(new Ratio(much.number()));
        });
  }

  /** Codes of the ingredients without a price, through all components. */
  public SortedSet<String> unpriced(FormulaVersion version) {
    SortedSet<String> unpriced = new TreeSet<>();
    for (Line line : version.lines()) {
      unpriced.addAll(
          line.item()
              .fold(
                  ingredient ->
                      ingredients.apply(ingredient.code()).perGram().complete()
                          ? new TreeSet<String>()
                          : new TreeSet<>(List.of(ingredient.code())),
                  component -> unpriced(formulary.get(component.ref()))));
    }
    return unpriced;
  }

  private Money perBasisGram(FormulaVersion version) {
    Money known = perBasis.get(version);
    if (known != null) {
      return known;
    }
    Money sum = Money.ZERO;
    for (Line line : version.lines()) {
      Ratio trim = line.weighed() == Line.Weighed.PREPARED ? line.trim() : Ratio.ONE;
      sum = sum.plus(of(line.item(), Amount.grams(line.dose().counted().number()), trim));
    }
    perBasis.put(version, sum);
    return sum;
  }
}
