package halfgram.formula;

import halfgram.measure.Amount;
import halfgram.measure.Mass;
import halfgram.station.FillLimits;
import halfgram.technique.Addition;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What techniques add, put into the formula they are attached to, so that everything which reads a
 * formula finds it there: lines that name a figure get their amount, steps their longest loads,
 * shortest stands and cautions, outputs their dates.
 *
 * <p>Rules. A stand is never shortened and a limit never lengthened: of what the formula says and
 * what the technique says, the stricter counts. A limit of safety stays one even where the formula
 * is stricter for quality's sake, because what is made from it inherits it.
 */
public final class Applied {
  private Applied() {}

  public static FormulaVersion to(FormulaVersion bare, List<TechniqueUse> uses) {
    List<Line> lines = new ArrayList<>(bare.lines());
    List<Step> steps = new ArrayList<>(bare.steps());
    List<Output> outputs = new ArrayList<>(bare.outputs());
    Optional<Amount> most = bare.most();
    for (TechniqueUse use : uses) {
      int at = bare.stepIndex(use.step());
      for (Addition addition : use.additions()) {
        if (addition instanceof Addition.Weighed weighed) {
          lines.replaceAll(line -> weighed(line, weighed));
        } else if (addition instanceof Addition.Stands stands) {
          stand(bare, at, stands, steps, outputs);
        } else if (addition instanceof Addition.Keeps keeps) {
          outputs.replaceAll(output -> dated(bare, output, at, keeps));
        } else if (addition instanceof Addition.Good good) {
          outputs.replaceAll(output -> good(output, good));
        } else if (addition instanceof Addition.Load load) {
          most = load(bare, at, load, steps, most);
        } else if (addition instanceof Addition.Caution caution) {
          steps.set(at, cautioned(steps.get(at), caution.code()));
          for (Line line : bare.lines()) {
            if (carries(use, line, caution)) {
              int there = bare.stepIndex(line.step());
              steps.set(there, cautioned(steps.get(there), caution.code()));
            }
          }
        }
      }
    }
    return new FormulaVersion(
        bare.formula(),
        bare.name(),
        bare.number(),
        bare.since(),
        bare.note(),
        bare.written(),
        lines,
        steps,
        outputs,
        bare.evening(),
        most,
        uses);
  }

  private static Line weighed(Line line, Addition.Weighed weighed) {
    if (line.dose().figure().filter(weighed.figure()::equals).isEmpty()) {
      return line;
    }
    return line.withDose(Dose.technique(weighed.figure(), weighed.share()));
  }

  private static void stand(
      FormulaVersion bare, int at, Addition.Stands stands, List<Step> steps, List<Output> outputs) {
    String code = bare.steps().get(at).code();
    boolean last = true;
    for (int i = at + 1; i < steps.size(); i++) {
      Step step = steps.get(i);
      if (step.after().stream().anyMatch(lag -> lag.step().equals(code))) {
        last = false;
        steps.set(
            i, step.withAfter(step.after().stream().map(l -> raised(l, code, stands)).toList()));
      }
    }
    int end = steps.size() - 1;
    if (last && at == end) {
      outputs.replaceAll(output -> rested(output, stands));
    } else if (last) {
      // Nothing goes on with it by name, so what is ready waits for it.
      List<Lag> after = new ArrayList<>(steps.get(end).after());
      after.add(raised(Lag.rightAfter(code), code, stands));
      steps.set(end, steps.get(end).withAfter(after));
    }
  }

  private static Lag raised(Lag lag, String step, Addition.Stands stands) {
    if (!lag.step().equals(step) || lag.min().compareTo(stands.least()) >= 0) {
      return lag;
    }
    Optional<Duration> max =
        lag.max().map(most -> most.compareTo(stands.least()) < 0 ? stands.least() : most);
    boolean safety = lag.max().isPresent() && lag.reason().isSafety();
    // A longest lag of safety is never lengthened: what cannot be met stays to be seen.
    return safety
        ? new Lag(lag.step(), stands.least(), lag.max(), lag.reason())
        : new Lag(
            lag.step(), stands.least(), max, new Reason(Reason.Kind.QUALITY, stands.source()));
  }

  private static Output rested(Output output, Addition.Stands stands) {
    return output.rest().min().compareTo(stands.least()) >= 0
        ? output
        : output.with(
            new Output.Rest(stands.least(), new Reason(Reason.Kind.QUALITY, stands.source())));
  }

  /**
   * What would keep longer by any clock keeps the technique's days instead; anything else ends by
   * the earlier of the two.
   */
  private static Output dated(FormulaVersion bare, Output output, int at, Addition.Keeps keeps) {
    Output.Hold hold = output.hold();
    String step = bare.steps().get(at).code();
    String place = keeps.place().isEmpty() ? hold.place() : keeps.place();
    boolean startsBefore = hold.from().filter(from -> bare.stepIndex(from) < at).isPresent();
    boolean longer =
        hold.days().isPresent()
            ? hold.days().getAsInt() > keeps.days()
            : hold.max().compareTo(Duration.ofDays(keeps.days() + 1L)) >= 0;
    if (longer && !startsBefore) {
      return output.with(
          new Output.Hold(
              Duration.ofDays(keeps.days() - 1L),
              OptionalInt.of(keeps.days()),
              Optional.of(step),
              new Reason(Reason.Kind.SAFETY, keeps.source()),
              place,
              hold.at(),
              hold.lastDays()));
    }
    String source = hold.reason().source() + "; " + keeps.source();
    Reason reason =
        hold.reason().isSafety() ? hold.reason() : new Reason(Reason.Kind.SAFETY, source);
    return output.with(hold.endedBy(new Output.Hold.LastDay(keeps.days(), step), reason, place));
  }

  private static Output good(Output output, Addition.Good good) {
    Output.Hold hold = output.hold();
    return hold.max().compareTo(good.most()) <= 0
        ? output
        : output.with(
            new Output.Hold(
                good.most(),
                OptionalInt.empty(),
                hold.from(),
                new Reason(
                    hold.reason().isSafety() ? Reason.Kind.SAFETY : Reason.Kind.QUALITY,
                    good.source()),
                hold.place(),
                hold.at(),
                hold.lastDays()));
  }

  /** A step with a machine gets smaller fills, one without smaller batches. */
  private static Optional<Amount> load(
      FormulaVersion bare, int at, Addition.Load load, List<Step> steps, Optional<Amount> most) {
    Mass limit = load.most();
    Step step = steps.get(at);
    if (!step.machines().isEmpty()) {
      List<MachineUse> machines = new ArrayList<>();
      for (MachineUse use : step.machines()) {
        Mass max = use.limits().max().filter(own -> own.compareTo(limit) < 0).orElse(limit);
        FillLimits limits =
            new FillLimits(
                use.limits().min().filter(min -> min.compareTo(max) <= 0),
                Optional.of(max),
                use.limits().step());
        machines.add(use.withLimits(limits));
      }
      steps.set(at, step.withMachines(machines));
      return most;
    }
    MassBalance balance = MassBalance.of(bare);
    if (!balance.holds(at) || bare.outputs().isEmpty()) {
      return most;
    }
    Amount gives = balance.outputOf(balance.basisForInto(at, Amount.of(limit)));
    Amount first = bare.outputs().get(0).inUnit(gives.times(bare.outputs().get(0).share()));
    return Optional.of(most.map(own -> own.atMost(first)).orElse(first));
  }

  private static boolean carries(TechniqueUse use, Line line, Addition.Caution caution) {
    return line.dose().figure().filter(caution.carriers()::contains).isPresent()
        || caution.carriers().stream().anyMatch(part -> line.code().equals(use.parts().get(part)));
  }

  private static Step cautioned(Step step, String code) {
    if (step.cautions().contains(code)) {
      return step;
    }
    List<String> cautions = new ArrayList<>(step.cautions());
    cautions.add(code);
    return step.withCautions(cautions);
  }
}
