package halfgram.formula;

import java.util.Optional;
import java.util.function.Function;

/** What a line calls for: an ingredient, perhaps in a cut, or a component. */
public sealed interface Item {

  /** An ingredient as it is weighed. */
  record OfIngredient(String code, Optional<String> cut) implements Item {
    @Override
    public <T> T fold(Function<OfIngredient, T> ingredient, Function<OfComponent, T> component) {
      return ingredient.apply(this);
    }
  }

  /** What another formula yields. */
  record OfComponent(ComponentRef ref) implements Item {
    @Override
    public <T> T fold(Function<OfIngredient, T> ingredient, Function<OfComponent, T> component) {
      return component.apply(this);
    }
  }

  <T> T fold(Function<OfIngredient, T> ingredient, Function<OfComponent, T> component);

  /** The code of the ingredient or formula. */
  default String code() {
    return fold(OfIngredient::code, component -> component.ref().formula());
  }

  default Optional<ComponentRef> component() {
    return fold(ingredient -> Optional.empty(), component -> Optional.of(component.ref()));
  }

  default Optional<String> ingredient() {
    return fold(ingredient -> Optional.of(ingredient.code()), component -> Optional.empty());
  }
}
