package halfgram.prep;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Item;
import halfgram.kitchen.Text;

/** How components are written in why ids: {@code dill-oil}, {@code eggs:yolk}, {@code base~v1}. */
public final class Components {
  private Components() {}

  /** The path word of a version: its formula, and the number when it is not the current one. */
  public static String word(Formulary formulary, FormulaVersion version) {
    boolean current =
        formulary.find(version.formula()).filter(f -> f.current().isSame(version)).isPresent();
    return current ? version.formula() : version.formula() + "~v" + version.number();
  }

  /** The path word of one of its outputs; the first goes without saying. */
  public static String word(Formulary formulary, FormulaVersion version, int output) {
    String word = word(formulary, version);
    return output == 0 ? word : word + ":" + version.outputs().get(output).code();
  }

  /** What it is called; the output too when the formula has several. */
  public static Text name(Formulary formulary, ComponentRef ref) {
    FormulaVersion version = formulary.get(ref);
    return name(version, version.outputIndex(ref.output()));
  }

  /** What one of a version's outputs is called. */
  public static Text name(FormulaVersion version, int output) {
    return version.outputs().size() == 1 ? version.name() : version.outputs().get(output).name();
  }

  /** What an item is called, be it an ingredient or a component. */
  public static Text name(KitchenBook book, Item item) {
    return item.fold(
        ingredient -> book.ingredient(ingredient.code()).name(),
        component -> name(book.formulary(), component.ref()));
  }

  public static String word(Formulary formulary, ComponentRef ref) {
    FormulaVersion version = formulary.get(ref);
    return word(formulary, version, version.outputIndex(ref.output()));
  }
}
