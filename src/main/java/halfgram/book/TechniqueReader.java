package halfgram.book;

import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Output;
import halfgram.formula.TechniqueUse;
import halfgram.measure.Message;
import halfgram.station.Container;
import halfgram.technique.Input;
import halfgram.technique.bath.SphereBath;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;

/** Reads what technique a formula uses and with which inputs. */
final class TechniqueReader {
  private final Reading reading;
  private final Map<String, Container> containers;
  private final boolean hardnessKnown;
  private final List<Consumer<Formulary>> baths = new ArrayList<>();

  TechniqueReader(Reading reading, Map<String, Container> containers, boolean hardnessKnown) {
    this.reading = reading;
    this.hardnessKnown = hardnessKnown;
    this.containers = containers;
  }

  Optional<TechniqueUse> technique(Node version, Set<String> steps, List<Output> outputs) {
    Optional<Node> node = version.object("technique");
    Optional<TechniqueUse> use = node.map(n -> use(n, steps));
    node.ifPresent(Node::done);
    if (use.isPresent() && (outputs.size() != 1 || !outputs.get(0).isPieces())) {
      version.problem("technique", SphereBath.NAME, "problem.bath-pieces");
      return Optional.empty();
    }
    return use;
  }

  /** Checks what could not be while formulas were still being read: that the baths are baths. */
  void check(Formulary formulary) {
    baths.forEach(bath -> bath.accept(formulary));
  }

  private TechniqueUse use(Node node, Set<String> steps) {
    String name = node.word("name");
    if (!name.isEmpty() && !name.equals(SphereBath.NAME)) {
      node.problem("name", name, "problem.no-such", "technique", SphereBath.NAME);
    }
    if (!hardnessKnown) {
      node.problem("bath", "", "problem.no-hardness");
    }
    String step = node.code("step");
    if (!step.isEmpty() && !steps.contains(step)) {
      node.problem(
          "step", step, "problem.no-such", "step", String.join(", ", new TreeSet<>(steps)));
    }
    String bath = node.code("bath");
    reading.refer(Reading.Kind.FORMULA, node, "bath", bath);
    String pan = node.code("pan");
    reading.refer(Reading.Kind.CONTAINER, node, "pan", pan);
    Container container = containers.get(pan);
    if (container != null && container.inside().isEmpty()) {
      node.problem("pan", pan, "problem.pan-inside");
    }
    String alginate = node.code("alginate");
    reading.refer(Reading.Kind.INGREDIENT, node, "alginate", alginate);
    Optional<String> salt = node.findCode("salt");
    salt.ifPresent(code -> reading.refer(Reading.Kind.INGREDIENT, node, "salt", code));
    baths.add(formulary -> check(formulary, node, bath, alginate));
    return new TechniqueUse(
        name, step, bath, pan, alginate, salt, saltKind(node, salt), inputs(node));
  }

  private static void check(Formulary formulary, Node node, String code, String alginate) {
    Optional<FormulaVersion> bath = formulary.find(ComponentRef.of(code));
    if (bath.isEmpty()) {
      return;
    }
    Output filled = bath.get().outputs().get(0);
    if (filled.fill().isEmpty() || filled.isPieces()) {
      node.problem("bath", code, "problem.bath-fill");
    }
    List<String> items = bath.get().lines().stream().map(line -> line.item().code()).toList();
    if (!alginate.isEmpty() && !items.contains(alginate)) {
      node.problem("alginate", alginate, "problem.no-such", "line", String.join(", ", items));
    }
  }

  private Optional<String> saltKind(Node node, Optional<String> salt) {
    Optional<String> kind = node.findCode("saltKind");
    if (kind.isPresent() && !reading.reference.salts().containsKey(kind.get())) {
      node.problem(
          "saltKind",
          kind.get(),
          "problem.no-such",
          "salt",
          Reading.near(reading.reference.salts().keySet(), kind.get()));
    }
    if (salt.isPresent() && kind.isEmpty()) {
      node.problem("saltKind", "", "problem.missing", Message.of("accept.salt"));
    }
    return kind;
  }

  private static SortedMap<String, BigDecimal> inputs(Node node) {
    SortedMap<String, BigDecimal> read = new TreeMap<>();
    Optional<Node> inputs = node.object("inputs");
    inputs.ifPresent(
        in -> {
          for (Input input : SphereBath.INPUTS) {
            String least = BigDecimal.valueOf(input.least()).toPlainString();
            String most = BigDecimal.valueOf(input.most()).toPlainString();
            in.findNumber(input.name(), least, most)
                .ifPresent(value -> read.put(input.name(), value));
          }
          in.done();
        });
    return read;
  }
}
