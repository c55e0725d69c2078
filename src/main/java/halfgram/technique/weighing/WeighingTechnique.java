package halfgram.technique.weighing;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Limits;
import halfgram.technique.Output;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * A load on a scale.
 *
 * <p>Rules. The class, by its verification step, recommends a least load in displayed steps.
 * Rounding alone puts a reading off by half a step, with the scale's own error counted as a whole
 * step: least load = k × step ÷ wanted error, k ½ or 1. The pharmacopoeia wants 2000 times a
 * repeatability that somebody measured, and never counts it below 0.41 step: without a reading
 * there is only that floor, 820 steps.
 *
 * <p>Example: 2 g on a class III scale of 1 g: recommended from 20 g, off by 25 % from rounding
 * alone. Source: NIST Handbook 44 section 2.20, OIML R 76, pharmacopoeia chapter 41; the kitchen
 * rules computed.
 */
public final class WeighingTechnique implements Technique {
  private static final double AS_DISPLAYED = 0;
  private static final double NOT_READ = 0;
  private static final double AUTOMATIC = 0;
  private static final double LEAST_MIX = 2;
  private static final double[] FACTORS = {10, 100, 1000};

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("load", "g", 0.000001, 1_000_000),
          Input.needed("step", "g", 0.000001, 50_000),
          Input.choice("scaleClass", ScaleClass.words()),
          Input.common("verification", "g", 0, 50_000, AS_DISPLAYED),
          Input.common("wanted", "%", 0.01, 50, 1),
          Input.number(
                  "repeatability",
                  "g",
                  0,
                  1000,
                  NOT_READ,
                  Standing.UNVERIFIED,
                  "not measured; 0 means not measured")
              .from(Origin.READING),
          Input.guess("oneIn", "1", 0, 1000, AUTOMATIC),
          Input.choice("carrier", "liquid", "dry"));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("steps", "1"),
          new Output("roundingError", "%"),
          new Output("stepError", "%"),
          new Output("leastByClass", "g"),
          new Output("mostByClass", "g"),
          new Output("tolerance", "g"),
          new Output("toleranceShare", "%"),
          new Output("acceptance", "g"),
          new Output("firstVerification", "g"),
          new Output("leastHalfStep", "g"),
          new Output("leastWholeStep", "g"),
          new Output("pharmacopoeia", "g"),
          new Output("pharmacopoeiaFloor", "g"),
          new Output("oneIn", "1"),
          new Output("substance", "g"),
          new Output("carrier", "g"),
          new Output("take", "g"),
          new Output("mixError", "%"),
          new Output("doublings", "1"));

  @Override
  public String name() {
    return "weighing";
  }

  @Override
  public List<Input> inputs() {
    return INPUTS;
  }

  @Override
  public List<Output> outputs() {
    return OUTPUTS;
  }

  @Override
  public Result work(Values values, Tables tables) {
    Working working = new Working(this);
    double load = values.number("load");
    double step = values.number("step");
    ScaleClass scale = ScaleClass.of(values.word("scaleClass"));
    double typed = values.number("verification");
    double verification = typed == AS_DISPLAYED ? step : typed;
    if (verification < step) {
      return working.stop("technique.weighing.stop.verification", verification, step).result();
    }
    double oneIn = values.number("oneIn");
    if (oneIn != AUTOMATIC && oneIn < LEAST_MIX) {
      return working.stop("technique.weighing.stop.one-in", oneIn, LEAST_MIX).result();
    }
    reading(working, load, step);
    byClass(working, scale, load, step, verification);
    tolerances(working, scale, load, step, verification);
    byError(working, values, load, step);
    pharmacopoeia(working, values, load, step);
    mix(working, values, scale.leastSteps(verification) * step);
    working.warn("technique.weighing.warn.computed");
    return working
        .source("NIST Handbook 44 section 2.20, Tables 3, 6 and 8")
        .source("OIML R 76, Tables 3 and 6")
        .source("United States Pharmacopeia, chapter 41 (2019)")
        .result();
  }

  private static void reading(Working working, double load, double step) {
    working.figure("steps", load / step, "technique.weighing.why.steps", load, step);
    working.figure(
        "roundingError", 50 * step / load, "technique.weighing.why.roundingError", step, load);
    working.figure("stepError", 100 * step / load, "technique.weighing.why.stepError", step, load);
  }

  private static void byClass(
      Working working, ScaleClass scale, double load, double step, double verification) {
    double steps = scale.leastSteps(verification);
    double least =
        working.figure(
            "leastByClass", steps * step, "technique.weighing.why.leastByClass", steps, step);
    if (Limits.below(load, least)) {
      working.warn("technique.weighing.warn.below-class", load, least);
    }
    if (verification > step && scale.isOfOiml()) {
      working.warn("technique.weighing.warn.least-in-e", steps * verification, least);
    }
    if (!scale.has(verification)) {
      working.warn("technique.weighing.warn.no-such-scale", verification);
    }
    if (!Double.isInfinite(scale.mostSteps())) {
      double most = scale.mostSteps() * verification;
      double lower = scale.mostStepsOfOiml();
      if (lower < scale.mostSteps()) {
        working.figure(
            "mostByClass",
            most,
            "technique.weighing.why.mostByEither",
            scale.mostSteps(),
            verification,
            lower);
      } else {
        working.figure(
            "mostByClass",
            most,
            "technique.weighing.why.mostByClass",
            scale.mostSteps(),
            verification);
      }
      if (Limits.above(load, most)) {
        working.warn("technique.weighing.warn.above-class", load, most);
      } else if (Limits.above(load, lower * verification)) {
        working.warn("technique.weighing.warn.above-oiml", load, lower * verification, most);
      }
    }
  }

  private static void tolerances(
      Working working, ScaleClass scale, double load, double step, double verification) {
    double counted = scale == ScaleClass.III ? step : verification;
    Optional<Integer> steps = scale.toleranceSteps(load / counted);
    if (steps.isPresent()) {
      double whole = steps.get();
      double grams =
          working.figure(
              "tolerance", whole * counted, "technique.weighing.why.tolerance", whole, counted);
      working.figure(
          "toleranceShare",
          100 * grams / load,
          "technique.weighing.why.toleranceShare",
          grams,
          load);
      working.figure("acceptance", grams / 2, "technique.weighing.why.acceptance", grams);
    } else {
      working.warn("technique.weighing.warn.no-tolerance");
    }
    double first = scale.firstError(load / verification);
    if (!Double.isNaN(first)) {
      working.figure(
          "firstVerification",
          first * verification,
          "technique.weighing.why.firstVerification",
          first,
          verification);
    }
    if (scale == ScaleClass.III && verification > step) {
      working.warn("technique.weighing.warn.tolerance-in-d", step);
    } else if (steps.isPresent() && scale != ScaleClass.III) {
      working.warn("technique.weighing.warn.unverified");
    }
  }

  private static void byError(Working working, Values values, double load, double step) {
    double wanted = values.number("wanted") / 100;
    String why = "technique.weighing.why.leastStep";
    working.figure("leastHalfStep", 0.5 * step / wanted, why, 0.5, step, 100 * wanted);
    double whole = working.figure("leastWholeStep", step / wanted, why, 1.0, step, 100 * wanted);
    if (Limits.below(load, whole)) {
      working.warn("technique.weighing.warn.too-light", load, whole, 100 * wanted);
    }
  }

  /** 2 s ÷ m at most 0.10 %: only with a repeatability s that somebody measured. */
  private static void pharmacopoeia(Working working, Values values, double load, double step) {
    double measured = values.number("repeatability");
    double floor = 0.41 * step;
    if (measured == NOT_READ) {
      working.figure(
          "pharmacopoeiaFloor", 2000 * floor, "technique.weighing.why.pharmacopoeiaFloor", step);
      working.warn("technique.weighing.warn.not-measured");
      return;
    }
    double counted = Math.max(measured, floor);
    double least =
        working.figure(
            "pharmacopoeia",
            2000 * counted,
            "technique.weighing.why.pharmacopoeia",
            measured,
            floor);
    if (Limits.below(load, least)) {
      working.warn("technique.weighing.warn.pharmacopoeia", load, least);
    }
  }

  private static void mix(Working working, Values values, double least) {
    double load = values.number("load");
    double step = values.number("step");
    double wanted = values.number("wanted") / 100;
    double typed = values.number("oneIn");
    boolean good = !Limits.below(load, Math.max(least, step / wanted));
    if (good && typed == AUTOMATIC) {
      return;
    }
    DoubleStream factors = typed == AUTOMATIC ? DoubleStream.of(FACTORS) : DoubleStream.of(typed);
    WorkedMix mix =
        factors
            .mapToObj(oneIn -> WorkedMix.of(oneIn, load, step, least, wanted))
            .filter(WorkedMix::works)
            .findFirst()
            .orElseGet(() -> WorkedMix.none(typed));
    if (!mix.works() && typed != AUTOMATIC) {
      working.warn("technique.weighing.warn.no-such-mix", typed, 100 * wanted);
      return;
    }
    if (!mix.works()) {
      working.warn("technique.weighing.warn.no-mix", 100 * wanted);
      return;
    }
    mix(working, values, mix, load);
  }

  private static void mix(Working working, Values values, WorkedMix mix, double load) {
    double oneIn = mix.oneIn();
    working.figure("oneIn", oneIn, "technique.weighing.why.oneIn", oneIn);
    working.figure("substance", mix.substance(), "technique.weighing.why.substance");
    working.figure(
        "carrier", mix.carrier(), "technique.weighing.why.carrier", oneIn - 1, mix.substance());
    working.figure("take", mix.take(), "technique.weighing.why.take", oneIn, load);
    working.figure("mixError", 100 * mix.error(), "technique.weighing.why.mixError");
    if (values.is("carrier", "dry")) {
      working.figure("doublings", mix.doublings(), "technique.weighing.why.doublings", oneIn);
      working.warn("technique.weighing.warn.dry");
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    if (result.find("leastByClass").isEmpty()) {
      return List.of();
    }
    double least = Math.max(result.number("leastByClass"), result.number("leastWholeStep"));
    String shown = Figure.plain(least);
    String step = Figure.plain(values.number("step"));
    String key =
        values.is("carrier", "dry")
            ? "technique.weighing.say.dry-mix"
            : "technique.weighing.say.dilute";
    return List.of(new Addition.Reminder(Message.of(key, shown, step)));
  }

  @Override
  public Map<String, String> example() {
    return Map.of("load", "2 g", "step", "1 g", "scaleClass", "iii");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    double step = values.number("step");
    double load = values.number("load");
    double whole = 100 * step / values.number("wanted");
    return Optional.of(
        Curve.of(
            input("load"),
            output("stepError"),
            Math.min(load, step),
            2 * Math.max(load, whole),
            load,
            grams -> 100 * step / grams));
  }
}
