package halfgram.book;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Output;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import java.util.Optional;
import java.util.OptionalInt;

/** Reads references to components that are already read, and amounts in their own unit. */
final class ComponentReader {
  private final Reading reading;
  private final Formulary formulary;

  ComponentReader(Reading reading, Formulary formulary) {
    this.reading = reading;
    this.formulary = formulary;
  }

  ComponentRef component(Node node) {
    ComponentRef ref = ref(reading, node);
    check(formulary, node, ref);
    return ref;
  }

  /** A reference as written; that the formula is there is checked at the end. */
  static ComponentRef ref(Reading reading, Node node) {
    String code = reading.code(Reading.Kind.FORMULA, node, "component");
    return new ComponentRef(
        code,
        node.findCode("output"),
        node.findInteger("version", 1, 100_000).map(OptionalInt::of).orElse(OptionalInt.empty()));
  }

  /** That the version and the output of a reference are there. */
  static void check(Formulary formulary, Node node, ComponentRef ref) {
    if (formulary.find(ref.formula()).isEmpty()) {
      return;
    }
    Optional<FormulaVersion> version = formulary.find(ref);
    if (version.isEmpty()) {
      node.problem(
          "version",
          ref.version().orElse(0),
          "problem.no-such",
          "version",
          String.join(
              ", ",
              formulary.find(ref.formula()).orElseThrow().versions().stream()
                  .map(v -> String.valueOf(v.number()))
                  .toList()));
    } else if (output(version.get(), ref).isEmpty()) {
      node.problem(
          "output",
          ref.output().orElse(""),
          "problem.no-such",
          "output",
          String.join(", ", version.get().outputs().stream().map(Output::code).toList()));
    }
  }

  /** The output that a reference means; empty when there is none. */
  String output(ComponentRef ref) {
    return formulary
        .find(ref)
        .flatMap(version -> output(version, ref))
        .map(Output::code)
        .orElse("");
  }

  private static Optional<Output> output(FormulaVersion version, ComponentRef ref) {
    return ref.output().isEmpty()
        ? version.outputs().stream().findFirst()
        : version.outputs().stream()
            .filter(output -> output.code().equals(ref.output().get()))
            .findFirst();
  }

  /** Nothing, in the unit of the component's output. */
  Amount zero(ComponentRef ref) {
    return Amount.zero(unit(ref));
  }

  private Dimension unit(ComponentRef ref) {
    return formulary
        .find(ref)
        .flatMap(version -> output(version, ref))
        .map(Output::unit)
        .orElse(Dimension.MASS);
  }

  /** An amount in the unit of the component's output: pieces for pieces, else a mass. */
  Amount amount(Node node, String key, ComponentRef ref, Quantity typed) {
    Dimension unit = unit(ref);
    Optional<Amount> amount = typed.canonical().filter(a -> a.dimension() == unit);
    if (amount.isEmpty() && formulary.find(ref).isPresent()) {
      node.problem(
          key,
          typed,
          "problem.accepted",
          Message.of(unit == Dimension.COUNT ? "accept.pieces" : "accept.mass"));
    }
    return amount.orElse(Amount.zero(unit));
  }
}
