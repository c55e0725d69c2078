package halfgram.prep;

import halfgram.formula.Fills;
import halfgram.formula.FormulaVersion;
import halfgram.formula.Formulary;
import halfgram.formula.Lag;
import halfgram.formula.Line;
import halfgram.formula.MachineUse;
import halfgram.formula.MassBalance;
import halfgram.formula.Output;
import halfgram.formula.SafetyDates;
import halfgram.formula.Scaled;
import halfgram.formula.Step;
import halfgram.measure.Amount;
import halfgram.measure.BusinessDay;
import halfgram.measure.Mass;
import halfgram.measure.Ratio;
import halfgram.prep.netting.Joint;
import halfgram.prep.netting.LotSizing;
import halfgram.prep.netting.Need;
import halfgram.technique.bath.SphereBath;
import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What planning has to know of a formula version, worked out once for all its makes. */
final class Worked {

  /**
   * A line that calls for a component.
   *
   * @param renewed whether it is cooked through, so that its date is done
   * @param dated whether its date binds what it goes into
   */
  record Part(
      Line line,
      int step,
      FormulaVersion version,
      int output,
      String word,
      boolean renewed,
      boolean dated) {}

  final FormulaVersion version;
  final String word;
  final MassBalance balance;
  final List<Part> parts = new ArrayList<>();
  final List<String> outputCodes;
  final List<Joint.Part> jointParts;
  final boolean mayRaise;
  final LotSizing.Economy economy;
  final Optional<SphereBath> bath;
  private final List<Timeline.Length> fixed;
  private final boolean varies;

  Worked(
      FormulaVersion version, Formulary formulary, SafetyDates dates, Optional<SphereBath> bath) {
    this.version = version;
    this.word = Components.word(formulary, version);
    this.balance = formulary.balance(version);
    this.outputCodes = version.outputs().stream().map(output -> output.code()).toList();
    this.jointParts = version.outputs().stream().map(this::jointPart).toList();
    this.mayRaise = Fills.mayRaise(version);
    this.bath = bath;
    for (Line line : version.lines()) {
      line.item()
          .component()
          .ifPresent(
              ref -> {
                FormulaVersion part = formulary.get(ref);
                int output = part.outputIndex(ref.output());
                String partWord = Components.word(formulary, part, output);
                int step = version.stepIndex(line.step());
                boolean renewed = SafetyDates.renewed(version, line);
                boolean dated = !renewed && dates.binds(part, output);
                parts.add(new Part(line, step, part, output, partWord, renewed, dated));
              });
    }
    this.economy = economy();
    this.varies = bath.isPresent() || version.steps().stream().anyMatch(step -> varies(step));
    this.fixed =
        version.steps().stream()
            .map(
                step ->
                    new Timeline.Length(
                        step.handsOn().of(Amount.NO_MASS, 0),
                        step.unattended().of(Amount.NO_MASS, 0)))
            .toList();
  }

  private static boolean varies(Step step) {
    return !step.handsOn().perKg().isZero()
        || !step.handsOn().perPiece().isZero()
        || !step.unattended().perKg().isZero()
        || !step.unattended().perPiece().isZero()
        || step.machines().stream().anyMatch(use -> use.limits().max().isPresent());
  }

  boolean isSingle() {
    return version.outputs().size() == 1;
  }

  /** Set-up minutes and machine fills, as lot sizing counts them. */
  private LotSizing.Economy economy() {
    Duration setUp = Duration.ZERO;
    Duration perFill = Duration.ZERO;
    Optional<Amount> fill = Optional.empty();
    for (int i = 0; i < version.steps().size(); i++) {
      Step step = version.steps().get(i);
      setUp = setUp.plus(step.handsOn().fixed().multipliedBy(step.hands()));
      for (MachineUse use : step.machines()) {
        Optional<Mass> max = balance.holds(i) ? use.limits().max() : Optional.empty();
        if (max.isPresent()) {
          perFill = use.perFill().compareTo(perFill) > 0 ? use.perFill() : perFill;
          Amount basis = balance.basisForInto(i, Amount.of(max.get()));
          Amount gives = gives(new Scaled(version, balance, basis));
          fill = Optional.of(fill.map(gives::atMost).orElse(gives));
        }
      }
    }
    Optional<Amount> most =
        isSingle() ? version.most() : version.most().map(jointParts.get(0)::mixFor);
    return LotSizing.Economy.of(setUp, perFill, fill, most);
  }

  private Amount gives(Scaled scaled) {
    return isSingle() ? scaled.output(0) : scaled.outputMass();
  }

  private Joint.Part jointPart(Output output) {
    return new Joint.Part(
        output.share(),
        sureHold(output),
        new Ratio(output.pieceMass().map(Mass::grams).orElse(BigDecimal.ONE)),
        output.isPieces() ? balance.piecesKept() : Ratio.ONE,
        output.isPieces());
  }

  /** The hold an output has at least from ready on, by a clock that may have started before. */
  private Duration sureHold(Output output) {
    Output.Hold hold = output.hold();
    Duration sure = hold.max();
    if (hold.from().isPresent()) {
      sure = sure.minus(before(output, hold.from().get()));
    }
    for (Output.Hold.LastDay last : hold.lastDays()) {
      Duration own = Duration.ofDays(last.days() - 1L).minus(before(output, last.from()));
      sure = own.compareTo(sure) < 0 ? own : sure;
    }
    return sure.isNegative() ? Duration.ZERO : sure;
  }

  /** What passes at least from the end of a step until an output is ready. */
  private Duration before(Output output, String step) {
    Duration before = output.rest().min();
    int from = version.stepIndex(step);
    for (int i = from + 1; i < version.steps().size(); i++) {
      Step one = version.steps().get(i);
      before =
          before
              .plus(one.handsOn().of(Amount.NO_MASS, 0))
              .plus(one.unattended().of(Amount.NO_MASS, 0));
      for (Lag lag : one.after()) {
        before = before.plus(lag.min());
      }
    }
    return before;
  }

  /**
   * When an output's hold begins: where the book says, with the first pieces out, or when ready.
   */
  Instant holdStart(Output output, Scaled scaled, Timeline timeline) {
    if (output.hold().from().isPresent()) {
      return ended(output.hold().from().get(), timeline);
    }
    if (bath.isPresent() && output.isPieces() && scaled.formed() > 0) {
      int step = version.stepIndex(version.dropping().orElseThrow().step());
      Instant start = timeline.steps().get(step).start();
      return start.plus(bath.get().testPiece()).plus(bath.get().cycle());
    }
    Timeline.Span last = timeline.steps().get(timeline.steps().size() - 1);
    return last.end().plus(output.rest().min());
  }

  /** The end of each output's hold, by its own clock. */
  List<Instant> useBys(Scaled scaled, Timeline timeline, BusinessDay clock) {
    List<Instant> ends = new ArrayList<>(version.outputs().size());
    for (Output output : version.outputs()) {
      Instant start = holdStart(output, scaled, timeline);
      ends.add(output.hold().end(start, step -> ended(step, timeline), clock));
    }
    return ends;
  }

  /** One of this size made from a moment on: ready, rested, at the very earliest. */
  Pace.Anew anew(Instant from, Scaled scaled) {
    List<Timeline.Length> lengths = lengths(scaled);
    List<Instant> ends = new ArrayList<>();
    Instant last = from;
    for (int i = 0; i < version.steps().size(); i++) {
      Instant start = from;
      for (Lag lag : version.steps().get(i).after()) {
        Instant after = ends.get(version.stepIndex(lag.step())).plus(lag.min());
        start = after.isAfter(start) ? after : start;
      }
      Instant end = start.plus(lengths.get(i).whole());
      ends.add(end);
      last = end.isAfter(last) ? end : last;
    }
    Duration rest = version.outputs().get(0).rest().min();
    for (Output output : version.outputs()) {
      rest = output.rest().min().compareTo(rest) < 0 ? output.rest().min() : rest;
    }
    Duration hands =
        lengths.stream().map(Timeline.Length::handsOn).reduce(Duration.ZERO, Duration::plus);
    return new Pace.Anew(last.plus(rest), hands);
  }

  /** When a step ends. */
  Instant ended(String step, Timeline timeline) {
    return timeline.steps().get(version.stepIndex(step)).end();
  }

  /** The size that gives all these needs; outputs of one mix come out together. */
  Scaled sized(List<Need> needs) {
    return new Scaled(version, balance, balance.basisFor(mixFor(needs)));
  }

  private Amount mixFor(List<Need> needs) {
    Amount mix = Amount.NO_MASS;
    if (isSingle()) {
      return jointParts.get(0).mixFor(sum(needs));
    }
    for (int i = 0; i < jointParts.size(); i++) {
      Amount sum = Amount.zero(version.outputs().get(i).unit());
      for (Need need : needs) {
        sum = need.output() == i ? sum.plus(need.amount()) : sum;
      }
      mix = mix.atLeast(jointParts.get(i).mixFor(sum));
    }
    return mix;
  }

  private static Amount sum(List<Need> needs) {
    if (needs.size() == 1) {
      return needs.get(0).amount();
    }
    List<Amount> amounts = new ArrayList<>(needs.size());
    for (Need need : needs) {
      amounts.add(need.amount());
    }
    return Amount.sum(amounts);
  }

  /** Whether a make may give more than is asked: raised, whole pieces, or outputs of one mix. */
  boolean mayGiveOver() {
    return mayRaise || !isSingle() || version.outputs().get(0).isPieces();
  }

  /** What the needs come to in the first output, in which the most of one make is given. */
  Amount asFirst(List<Need> needs) {
    Joint.Part first = jointParts.get(0);
    if (isSingle()) {
      return sum(needs);
    }
    Ratio formed = new Ratio(mixFor(needs).number()).times(first.share()).dividedBy(first.grams());
    return new Amount(formed.times(first.kept()).number(), version.outputs().get(0).unit());
  }

  /** How long the steps of a make of this size take. */
  List<Timeline.Length> lengths(Scaled scaled) {
    if (!varies) {
      return fixed;
    }
    long pieces = scaled.formed();
    List<Timeline.Length> lengths = new ArrayList<>();
    for (int i = 0; i < version.steps().size(); i++) {
      lengths.add(length(scaled, i, pieces));
    }
    return lengths;
  }

  private Timeline.Length length(Scaled scaled, int index, long pieces) {
    Step step = version.steps().get(index);
    Duration unattended = unattended(scaled, index, pieces);
    if (isBathStep(step)) {
      SphereBath sphere = bath.orElseThrow();
      return new Timeline.Length(sphere.testPiece().plus(sphere.run(pieces)), unattended);
    }
    Duration handsOn = step.handsOn().of(balance.straight(index), scaled.basis(), pieces);
    if (step.machines().isEmpty()) {
      return new Timeline.Length(handsOn, unattended);
    }
    Duration perFill =
        step.machines().stream()
            .map(MachineUse::perFill)
            .max(Duration::compareTo)
            .orElse(Duration.ZERO);
    if (!perFill.isZero()) {
      handsOn = handsOn.plus(perFill.multipliedBy(Fills.of(scaled, index).count() - 1L));
    }
    return new Timeline.Length(handsOn, unattended);
  }

  /**
   * Time alone: once for each round that the machines have to run, since a fill can only go in when
   * one has come out.
   */
  private Duration unattended(Scaled scaled, int index, long pieces) {
    Step step = version.steps().get(index);
    if (step.machines().isEmpty() || step.unattended().isNone() || !balance.holds(index)) {
      return step.unattended().of(balance.straight(index), scaled.basis(), pieces);
    }
    long fills = Fills.of(scaled, index).count();
    int units =
        step.machines().stream()
            .filter(use -> use.limits().max().isPresent())
            .mapToInt(MachineUse::units)
            .min()
            .orElse(1);
    long rounds = (fills + units - 1) / units;
    Amount mass = balance.into(index, scaled.basis());
    Duration each = step.unattended().of(mass.dividedBy(rounds), (pieces + rounds - 1) / rounds);
    return each.multipliedBy(rounds);
  }

  /** People that the technique puts on a step; 1 where it says nothing. */
  int peopleAt(Step step) {
    return isBathStep(step) ? bath.orElseThrow().people() : 1;
  }

  /** Whether this is the step at which the pieces go into the bath. */
  boolean isBathStep(Step step) {
    return bath.isPresent()
        && version.dropping().filter(use -> use.step().equals(step.code())).isPresent();
  }

  /** The fixed length of the last step, for telling early when a need's make would be ready. */
  Timeline.Length lastFixed() {
    return fixed.get(fixed.size() - 1);
  }
}
