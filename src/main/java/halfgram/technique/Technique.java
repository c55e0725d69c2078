package halfgram.technique;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One technique: what it asks for, what it works out, what it adds to a batch. Pure: the same
 * inputs and tables give the same result. Its sentences lie in {@code halfgram/technique/NAME_en}
 * of the resources under {@code technique.NAME.…}, its formula as MathML in {@code
 * halfgram/pages/technique/NAME.html}.
 */
public interface Technique {

  /** As the book and the command spell it. */
  String name();

  /** What of a formula it is told about. */
  default List<Part> parts() {
    return List.of();
  }

  List<Input> inputs();

  /** Every number it can give. */
  List<Output> outputs();

  /** Works everything out; inputs are within their ranges. */
  Result work(Values values, Tables tables);

  /** What it adds to a batch of 1 kg of basis; the result is none where only a plan has one. */
  default List<Addition> additions(Values values, Result result) {
    return List.of();
  }

  /**
   * The figure that says how much of what is in the vessel at its step comes out of it, in %; empty
   * where none does.
   */
  default Optional<String> comesOut() {
    return Optional.empty();
  }

  /** Inputs of a worked example as somebody would type them. */
  Map<String, String> example();

  /** A plot, where a curve says more than a number. */
  default Optional<Curve> curve(Values values, Tables tables) {
    return Optional.empty();
  }

  default Input input(String name) {
    return inputs().stream()
        .filter(input -> input.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(name() + " asks for no " + name));
  }

  default Output output(String name) {
    return outputs().stream()
        .filter(output -> output.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException(name() + " gives no " + name));
  }
}
