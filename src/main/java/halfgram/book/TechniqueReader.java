package halfgram.book;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import halfgram.formula.Applied;
import halfgram.formula.ComponentRef;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Line;
import halfgram.formula.Output;
import halfgram.formula.Step;
import halfgram.formula.TechniqueUse;
import halfgram.measure.Exact;
import halfgram.measure.Message;
import halfgram.measure.Ratio;
import halfgram.station.Container;
import halfgram.technique.Addition;
import halfgram.technique.Input;
import halfgram.technique.Part;
import halfgram.technique.Result;
import halfgram.technique.Technique;
import halfgram.technique.Techniques;
import halfgram.technique.Typed;
import halfgram.technique.Values;
import halfgram.technique.bath.SphereBath;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Consumer;

/**
 * Reads what techniques a formula uses, works them out for 1 kg of its basis and puts what they add
 * into it.
 */
final class TechniqueReader {
  private static final BigDecimal KILOGRAM = new BigDecimal(1000);

  private final Reading reading;
  private final Map<String, Container> containers;
  private final Optional<BigDecimal> hardness;
  private final List<Consumer<Formulary>> later = new ArrayList<>();

  TechniqueReader(
      Reading reading, Map<String, Container> containers, Optional<BigDecimal> hardness) {
    this.reading = reading;
    this.containers = containers;
    this.hardness = hardness;
  }

  /** The version with its techniques and what they add; one alone may stand without a list. */
  FormulaVersion apply(Node node, FormulaVersion version) {
    int before = node.problems().list().size();
    List<TechniqueUse> uses = new ArrayList<>();
    Optional<Node> single = node.object("technique");
    single.flatMap(one -> use(one, one, version)).ifPresent(uses::add);
    single.ifPresent(Node::done);
    node.list("techniques", one -> attached(one, version)).forEach(use -> use.ifPresent(uses::add));
    if (node.problems().list().size() == before) {
      checkFigures(node, version, uses);
    }
    checkPieces(node, version, uses);
    return Applied.to(version, uses);
  }

  /** Checks what could not be while formulas were still being read: that the baths are baths. */
  void check(Formulary formulary) {
    later.forEach(check -> check.accept(formulary));
  }

  private static void checkPieces(Node node, FormulaVersion version, List<TechniqueUse> uses) {
    boolean pieces = version.outputs().size() == 1 && version.outputs().get(0).isPieces();
    long dropping = uses.stream().filter(TechniqueUse::drops).count();
    if (dropping > 1 || (dropping == 1 && !pieces)) {
      node.problem("technique", SphereBath.NAME, "problem.bath-pieces");
    }
  }

  /** A line that is so much as a technique works out names a figure that just one of them adds. */
  private static void checkFigures(Node node, FormulaVersion version, List<TechniqueUse> uses) {
    Set<String> known = new TreeSet<>();
    Set<String> twice = new TreeSet<>();
    for (TechniqueUse use : uses) {
      for (Addition addition : use.additions()) {
        if (addition instanceof Addition.Weighed weighed && !known.add(weighed.figure())) {
          twice.add(weighed.figure());
        }
      }
    }
    for (int i = 0; i < version.lines().size(); i++) {
      Optional<String> figure = version.lines().get(i).dose().figure();
      if (figure.isPresent() && !known.contains(figure.get())) {
        node.problem(
            "lines[" + i + "].technique",
            figure.get(),
            "problem.no-such",
            "figure",
            known.isEmpty() ? "-" : String.join(", ", known));
      }
      if (figure.filter(twice::contains).isPresent()) {
        node.problem("lines[" + i + "].technique", figure.get(), "problem.figure-twice");
      }
    }
  }

  private Optional<TechniqueUse> attached(Node node, FormulaVersion version) {
    Optional<Node> of = node.object("of");
    Optional<TechniqueUse> use = use(node, of.orElseGet(() -> none(node)), version);
    of.ifPresent(Node::done);
    return use;
  }

  /** Where parts would be told of which none is. */
  private static Node none(Node node) {
    return new Node(JsonNodeFactory.instance.objectNode(), node.path("of"), node.problems());
  }

  /**
   * A technique.
   *
   * @param of where its parts are told
   */
  private Optional<TechniqueUse> use(Node node, Node of, FormulaVersion version) {
    String name = node.word("name");
    Optional<Technique> technique = Techniques.find(name);
    Set<String> steps = new TreeSet<>(version.steps().stream().map(Step::code).toList());
    String step = Reading.chosen(node, "step", "step");
    if (!step.isEmpty() && !steps.contains(step)) {
      node.problem("step", step, "problem.no-such", "step", String.join(", ", steps));
    }
    if (technique.isEmpty()) {
      String all = String.join(", ", Techniques.list().stream().map(Technique::name).toList());
      if (!name.isEmpty()) {
        node.problem("name", name, "problem.no-such", "technique", all);
      }
      return Optional.empty();
    }
    int before = node.problems().list().size();
    Map<String, String> parts = parts(of, technique.get(), version);
    Map<String, String> typed = typed(node, technique.get());
    if (technique.get().parts().stream().anyMatch(part -> part.kind() == Part.Kind.FORMULA)) {
      checkBath(of, parts, SphereBath.isDirect(typed));
    }
    // A part that is not there is told once, not again by every number that hangs on it.
    if (!steps.contains(step) || node.problems().list().size() > before) {
      return Optional.empty();
    }
    return worked(node, technique.get(), version, step, parts, typed);
  }

  private Optional<TechniqueUse> worked(
      Node node,
      Technique technique,
      FormulaVersion version,
      String step,
      Map<String, String> parts,
      Map<String, String> typed) {
    Map<String, String> all = new TreeMap<>(typed);
    Set<String> derived = new TreeSet<>();
    for (Input input : technique.inputs()) {
      Optional<String> known = known(input, version, parts);
      if (known.isPresent() && all.putIfAbsent(input.name(), known.get()) == null) {
        derived.add(input.name());
      }
    }
    Typed read =
        new Typed(
            technique, reading.reference.tables(), node.path("inputs") + ".", node.problems());
    Optional<Values> values = read.read(all, derived);
    if (values.isEmpty()) {
      return Optional.empty();
    }
    boolean planned = technique.inputs().stream().anyMatch(i -> i.origin() == Input.Origin.PLAN);
    Optional<Result> result =
        planned
            ? Optional.empty()
            : Optional.of(technique.work(values.get(), reading.reference.tables()));
    for (Message stop : result.map(Result::stops).orElse(List.of())) {
      node.problem("name", technique.name(), stop.key(), stop.args().toArray());
    }
    return Optional.of(
        new TechniqueUse(
            technique.name(),
            step,
            new TreeMap<>(parts),
            values.get(),
            result,
            technique.additions(values.get(), result.orElse(Result.NONE))));
  }

  /** What the book knows of an input without being told at the technique. */
  private Optional<String> known(Input input, FormulaVersion version, Map<String, String> parts) {
    return switch (input.origin()) {
      case LINE ->
          Optional.ofNullable(parts.get(input.part()))
              .flatMap(
                  code -> version.lines().stream().filter(l -> l.code().equals(code)).findAny())
              .map(line -> grams(line.aside() ? line.dose().counted() : line.contribution()));
      case MIX ->
          Optional.of(
              grams(
                  version.lines().stream()
                      .map(Line::contribution)
                      .reduce(Ratio.ZERO, Ratio::plus)));
      case KITCHEN -> hardness.map(ppm -> ppm.toPlainString() + " " + input.unit());
      // What is inside of components is told later: see Insides.
      case CALCIUM, MILK, FORMULA, TUB, READING, PLAN -> Optional.empty();
    };
  }

  private static String grams(Ratio share) {
    return Exact.plain(share.number().multiply(KILOGRAM), 9) + " g";
  }

  private Map<String, String> parts(Node node, Technique technique, FormulaVersion version) {
    Map<String, String> parts = new TreeMap<>();
    Set<String> lines = new TreeSet<>(version.lines().stream().map(Line::code).toList());
    for (Part part : technique.parts()) {
      Optional<String> code =
          part.needed() ? Optional.of(told(node, part)) : node.findWord(part.name());
      if (code.isEmpty() || code.get().isEmpty()) {
        continue;
      }
      parts.put(part.name(), code.get());
      check(node, part, code.get(), lines);
    }
    if (parts.containsKey("salt") && !parts.containsKey("saltKind")) {
      node.problem("saltKind", "", "problem.missing", Message.of("accept.salt"));
    }
    return parts;
  }

  private static String told(Node node, Part part) {
    return Reading.chosen(node, part.name(), part.kind().name().toLowerCase(Locale.ROOT));
  }

  private void check(Node node, Part part, String code, Set<String> lines) {
    switch (part.kind()) {
      case LINE -> {
        if (!lines.contains(code)) {
          node.problem(part.name(), code, "problem.no-such", "line", String.join(", ", lines));
        }
      }
      case INGREDIENT -> reading.refer(Reading.Kind.INGREDIENT, node, part.name(), code);
      case FORMULA -> reading.refer(Reading.Kind.FORMULA, node, part.name(), code);
      case CONTAINER -> {
        reading.refer(Reading.Kind.CONTAINER, node, part.name(), code);
        Container container = containers.get(code);
        if (container != null && container.inside().isEmpty()) {
          node.problem(part.name(), code, "problem.pan-inside");
        }
      }
      case SALT -> {
        Set<String> salts = reading.reference.salts().keySet();
        if (!salts.contains(code)) {
          node.problem(part.name(), code, "problem.no-such", "salt", Reading.near(salts, code));
        }
      }
    }
  }

  private void checkBath(Node node, Map<String, String> parts, boolean direct) {
    if (hardness.isEmpty()) {
      node.problem("bath", "", "problem.no-hardness");
    }
    String bath = parts.getOrDefault("bath", "");
    // What sets the pieces is a line of their bath.
    String part = direct ? "salt" : "alginate";
    String sets = parts.getOrDefault(part, "");
    later.add(formulary -> check(formulary, node, bath, part, sets));
  }

  private static void check(Formulary formulary, Node node, String code, String part, String sets) {
    Optional<FormulaVersion> bath = formulary.find(ComponentRef.of(code));
    if (bath.isEmpty()) {
      return;
    }
    Output filled = bath.get().outputs().get(0);
    if (filled.fill().isEmpty() || filled.isPieces()) {
      node.problem("bath", code, "problem.bath-fill");
    }
    List<String> items = bath.get().lines().stream().map(line -> line.item().code()).toList();
    if (!sets.isEmpty() && !items.contains(sets)) {
      node.problem(part, sets, "problem.no-such", "line", String.join(", ", items));
    }
  }

  /** Inputs as the book has them: a text with its unit, or a number in the input's own. */
  private static Map<String, String> typed(Node node, Technique technique) {
    Map<String, String> typed = new TreeMap<>();
    Optional<Node> inputs = node.object("inputs");
    inputs.ifPresent(
        in -> {
          for (Input input : technique.inputs()) {
            boolean own =
                input.origin() != Input.Origin.PLAN
                    && input.origin() != Input.Origin.LINE
                    && input.origin() != Input.Origin.MIX;
            if (own) {
              TypedText.find(in, input.name(), input.unit())
                  .ifPresent(text -> typed.put(input.name(), text));
            }
          }
          in.done();
        });
    return typed;
  }
}
