package halfgram.book;

import halfgram.formula.Gate;
import halfgram.formula.Lag;
import halfgram.formula.MachineUse;
import halfgram.formula.Output;
import halfgram.formula.Reason;
import halfgram.formula.Residue;
import halfgram.formula.Step;
import halfgram.formula.Work;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Mass;
import halfgram.measure.Message;
import halfgram.measure.Quantity;
import halfgram.measure.Ratio;
import halfgram.measure.Temperature;
import halfgram.station.Container;
import halfgram.station.Equipment;
import halfgram.station.FillLimits;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;

/** Reads the steps and outputs of a formula version. */
final class StepReader {

  /** Codes of the usual cautions. */
  static final Set<String> CAUTIONS =
      new TreeSet<>(
          Set.of(
              "allergen-contact",
              "blade",
              "boiling-pot",
              "cryogen",
              "herb-in-oil",
              "hot-oil",
              "raw-dairy",
              "raw-egg",
              "raw-fish",
              "regulated-cure",
              "strong-salt"));

  private final Reading reading;
  private final Map<String, Equipment> equipment;
  private final Map<String, Container> containers;

  StepReader(Reading reading, Map<String, Equipment> equipment, Map<String, Container> containers) {
    this.reading = reading;
    this.equipment = equipment;
    this.containers = containers;
  }

  Step step(Node node) {
    String station = reading.code(Reading.Kind.STATION, node, "station");
    List<String> cautions = node.words("cautions");
    for (int i = 0; i < cautions.size(); i++) {
      if (!cautions.get(i).isEmpty() && !CAUTIONS.contains(cautions.get(i))) {
        node.problem(
            "cautions[" + i + "]",
            cautions.get(i),
            "problem.no-such",
            "caution",
            String.join(", ", CAUTIONS));
      }
    }
    Optional<Step.Check> check =
        node.has("check")
            ? Optional.of(node.choice("check", Step.Check.class, Step.Check.TASTING))
            : Optional.empty();
    Optional<Gate> gate = gate(node);
    Work handsOn = work(node, "handsOn");
    Work unattended = work(node, "unattended");
    List<MachineUse> machines = node.list("equipment", this::machine);
    during(node, machines, handsOn, unattended);
    String code = node.code("code");
    return new Step(
        code,
        node.findText("name").orElse(Text.of(code.isEmpty() ? "?" : code)),
        MethodReader.method(node),
        station,
        node.findInteger("hands", 1, 20).orElse(1),
        handsOn,
        unattended,
        unload(node, unattended),
        machines,
        node.flag("dry"),
        node.percent("yield", Ratio.ONE, "0", "1000"),
        residue(node),
        node.percent("breakage", Ratio.ZERO, "0", "95"),
        node.has("after") ? node.list("after", StepReader::lag) : List.of(UNTOLD),
        gate.map(Gate::kind).or(() -> check),
        gate,
        node.flag("renewsDate"),
        cautions);
  }

  /** Stands for "right after the step before", until the step before is known. */
  private static final Lag UNTOLD = Lag.rightAfter("");

  /** The steps with each untold lag made the step before; a lag names a step listed before. */
  List<Step> inOrder(Node version, List<Step> steps) {
    List<Step> ordered = new ArrayList<>();
    Set<String> before = new TreeSet<>();
    for (int i = 0; i < steps.size(); i++) {
      Step step = steps.get(i);
      List<Lag> after = new ArrayList<>();
      for (int j = 0; j < step.after().size(); j++) {
        Lag lag = step.after().get(j);
        if (lag.step().isEmpty()) {
          if (i > 0) {
            after.add(Lag.rightAfter(steps.get(i - 1).code()));
          }
        } else if (before.contains(lag.step())) {
          after.add(lag);
        } else {
          version.problem(
              "steps[" + i + "].after[" + j + "].step",
              lag.step(),
              "problem.step-before",
              before.isEmpty() ? "-" : String.join(", ", before));
        }
      }
      before.add(step.code());
      ordered.add(step.withAfter(after));
    }
    return ordered;
  }

  private static Optional<Gate> gate(Node node) {
    Optional<Node> found = node.object("gate");
    if (found.isEmpty()) {
      return Optional.empty();
    }
    Node gate = found.get();
    if (!gate.has("kind")) {
      gate.refuse("kind", "problem.missing", Message.of("accept.one-of", "tasting, test-piece"));
    }
    Step.Check kind = gate.choice("kind", Step.Check.class, Step.Check.TASTING);
    List<Gate.Check> checks = new ArrayList<>();
    List<String> words = gate.words("checks");
    for (int i = 0; i < words.size(); i++) {
      Optional<Gate.Check> check = Gate.Check.find(words.get(i));
      check.filter(one -> !checks.contains(one)).ifPresent(checks::add);
      if (check.isEmpty() && !words.get(i).isEmpty()) {
        gate.problem(
            "checks[" + i + "]",
            words.get(i),
            "problem.accepted",
            Message.of("accept.one-of", "skin, centre, taste, texture"));
      }
    }
    Gate read =
        new Gate(
            kind,
            gate.choice("by", Gate.By.class, Gate.By.COOK),
            checks.isEmpty() ? Gate.usual(kind) : checks);
    gate.done();
    return Optional.of(read);
  }

  private static Work work(Node node, String key) {
    Optional<Node> work = node.object(key);
    Work read =
        work.map(
                w ->
                    new Work(
                        w.duration("fixed", Duration.ZERO),
                        w.duration("perKg", Duration.ZERO),
                        w.duration("perPiece", Duration.ZERO)))
            .orElse(Work.NONE);
    work.ifPresent(Node::done);
    return read;
  }

  private static Residue residue(Node node) {
    Optional<Node> residue = node.object("residue");
    Residue read =
        residue
            .map(
                r ->
                    new Residue(
                        r.findMass("fixed").orElse(Mass.ZERO),
                        r.percent("percent", Ratio.ZERO, "0", "90")))
            .orElse(Residue.NONE);
    residue.ifPresent(Node::done);
    return read;
  }

  private MachineUse machine(Node node) {
    String code = reading.code(Reading.Kind.EQUIPMENT, node, "use");
    FillLimits own = KitchenReader.limits(node);
    Equipment machine = equipment.get(code);
    return new MachineUse(
        code,
        machine == null ? 1 : machine.units(),
        machine == null ? own : own.orElse(machine.limits()),
        node.duration("perFill", Duration.ZERO),
        node.choice("during", MachineUse.During.class, MachineUse.During.STEP));
  }

  /** A machine is not occupied for a time that the step does not have. */
  private static void during(Node node, List<MachineUse> machines, Work handsOn, Work unattended) {
    for (int i = 0; i < machines.size(); i++) {
      String path = "equipment[" + i + "].during";
      MachineUse.During during = machines.get(i).during();
      if (during == MachineUse.During.HANDS && handsOn.isNone()) {
        node.problem(path, "hands", "problem.during-hands");
      } else if (during == MachineUse.During.ALONE && unattended.isNone()) {
        node.problem(path, "alone", "problem.during-alone");
      }
    }
  }

  /** The hands-on end of the time alone: never longer than that is at least. */
  private static Duration unload(Node node, Work unattended) {
    Duration unload = node.duration("unload", Duration.ZERO);
    if (unload.compareTo(unattended.fixed()) > 0) {
      node.refuse("unload", "problem.unload", unattended.fixed());
    }
    return unload;
  }

  private static Lag lag(Node node) {
    Duration min = node.duration("min", Duration.ZERO);
    Optional<Duration> max = node.findDuration("max");
    if (max.isPresent() && max.get().compareTo(min) < 0) {
      node.refuse("max", "problem.lag-max", min);
    }
    return new Lag(Reading.chosen(node, "step", "step"), min, max, reason(node));
  }

  private static Reason reason(Node node) {
    return new Reason(
        node.choice("why", Reason.Kind.class, Reason.Kind.QUALITY),
        node.findWord("source").orElse("-"));
  }

  Output output(Node node) {
    String code = node.code("code");
    Dimension unit =
        node.find("unit", StepReader::unit, "accept.output-unit").orElse(Dimension.MASS);
    Optional<Mass> pieceMass = node.findMass("pieceMass");
    boolean pieces = unit == Dimension.COUNT;
    if (pieces != node.has("pieceMass") || pieceMass.filter(Mass::isZero).isPresent()) {
      node.refuse("pieceMass", "problem.piece-mass");
      pieceMass = Optional.empty();
    }
    pieceMass = pieces ? pieceMass.or(() -> Optional.of(Mass.grams("1"))) : Optional.empty();
    Optional<String> container = reading.findCode(Reading.Kind.CONTAINER, node, "container");
    return new Output(
        code,
        node.findText("name").orElse(halfgram.kitchen.Text.of(code)),
        unit,
        node.percent("share", Ratio.ONE, "0.001", "100"),
        pieceMass,
        rest(node),
        hold(node),
        container,
        fill(node, unit, container),
        node.choice("split", Output.Split.class, Output.Split.FULL),
        thaw(node));
  }

  private static Optional<Duration> thaw(Node node) {
    Optional<Duration> thaw = node.findDuration("thaw");
    if (thaw.filter(Duration::isZero).isPresent()) {
      node.refuse("thaw", "problem.thaw");
    }
    return thaw.filter(time -> !time.isZero());
  }

  private static Optional<Dimension> unit(String word) {
    return switch (word) {
      case "mass" -> Optional.of(Dimension.MASS);
      case "piece" -> Optional.of(Dimension.COUNT);
      default -> Optional.empty();
    };
  }

  private static Output.Rest rest(Node node) {
    Optional<Node> rest = node.object("rest");
    Output.Rest read =
        rest.map(r -> new Output.Rest(r.duration("min", Duration.ZERO), reason(r)))
            .orElse(Output.Rest.NONE);
    rest.ifPresent(Node::done);
    return read;
  }

  private static Output.Hold hold(Node node) {
    Optional<Node> hold = node.need("hold", "accept.hold");
    if (hold.isEmpty()) {
      return Output.Hold.of(Duration.ofDays(1), Reason.NONE, "");
    }
    Optional<Integer> days = hold.get().findInteger("days", 1, 400);
    boolean spanned = hold.get().has("max");
    Duration max = hold.get().duration("max", Duration.ofDays(1));
    if (spanned == days.isPresent() || (spanned && max.isZero())) {
      String what = spanned ? "problem.accepted" : "problem.missing";
      hold.get().refuse("max", what, Message.of("accept.hold-span"));
    }
    Output.Hold read =
        new Output.Hold(
            days.map(d -> Duration.ofDays(d - 1L)).orElse(max),
            days.map(OptionalInt::of).orElse(OptionalInt.empty()),
            hold.get().findCode("from"),
            reason(hold.get()),
            hold.get().findWord("place").orElse(""),
            hold.get().find("at", Temperature::parse, "accept.temperature"),
            List.of());
    hold.get().done();
    return read;
  }

  /** What one full container holds: as given, or the container's volume by the output's density. */
  private Optional<Amount> fill(Node node, Dimension unit, Optional<String> container) {
    Optional<Ratio> density = node.findNumber("density", "0.01", "25").map(Ratio::new);
    Optional<Quantity> typed = node.findQuantity("fill");
    if (typed.isPresent()) {
      Optional<Amount> fill =
          typed.get().canonical().filter(a -> a.dimension() == unit && a.isPositive());
      if (fill.isEmpty()) {
        node.problem("fill", typed.get(), "problem.accepted", Message.of("accept.output-amount"));
      }
      return fill;
    }
    if (container.isEmpty() || node.has("fill")) {
      return Optional.empty();
    }
    if (unit == Dimension.COUNT || density.isEmpty()) {
      node.problem("fill", "", "problem.no-fill");
      return Optional.empty();
    }
    return Optional.ofNullable(containers.get(container.get()))
        .map(vessel -> Amount.grams(vessel.volume().number()).times(density.get()));
  }
}
