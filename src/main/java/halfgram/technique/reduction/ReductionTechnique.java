package halfgram.technique.reduction;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Output;
import halfgram.technique.Result;
import halfgram.technique.Tables;
import halfgram.technique.Technique;
import halfgram.technique.Values;
import halfgram.technique.Working;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Boiling down by Brix: what is dissolved stays, water goes.
 *
 * <p>Example: 1000 g at 12 °Bx boiled down to 30 °Bx are 400 g; 600 g go off and take 1354 kJ.
 * Sources: Brix by definition (grams of sucrose in 100 g of solution); heat of vaporisation 2257
 * kJ/kg at 100 °C, textbook; Brix from specific gravity by a published polynomial, 0 to 40 °Bx.
 */
public final class ReductionTechnique implements Technique {
  static final double VAPORISING = 2257;

  /** Up to this the polynomial is published. */
  private static final double MOST_BY_GRAVITY = 40;

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("mass", "g", 1, 1_000_000).from(Origin.MIX),
          Input.choice("readBy", "brix", "gravity"),
          unsaid("startBrix", "°Bx", 90).from(Origin.READING),
          Input.number("gravity", "1", 0.99, 1.5, 1, Standing.UNVERIFIED, "none read")
              .from(Origin.READING),
          Input.needed("target", "°Bx", 0.1, 90),
          unsaid("pan", "g", 100_000),
          unsaid("power", "kW", 100));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("brixByGravity", "°Bx"),
          new Output("brixRough", "°Bx"),
          new Output("brix", "°Bx"),
          new Output("dissolved", "g"),
          new Output("left", "g"),
          new Output("share", "%"),
          new Output("evaporated", "g"),
          new Output("onScale", "g"),
          new Output("heat", "kJ"),
          new Output("minutes", "min"));

  private static Input unsaid(String name, String unit, double most) {
    return Input.number(name, unit, 0, most, 0, Standing.UNVERIFIED, "none said");
  }

  /** °Bx from specific gravity 20/20, from 0 to 40 °Bx. */
  static double brix(double gravity) {
    return ((182.46007 * gravity - 775.68212) * gravity + 1262.7794) * gravity - 669.56218;
  }

  /** The rough straight line beside it. */
  static double roughBrix(double gravity) {
    return 231.61 * (gravity - 0.9977);
  }

  @Override
  public String name() {
    return "reduction";
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
  public Optional<String> comesOut() {
    return Optional.of("share");
  }

  @Override
  public Result work(Values values, Tables tables) {
    Working working = new Working(this);
    double start = start(values, working);
    double target = values.number("target");
    boolean weighed =
        values.is("readBy", "gravity") && values.get("gravity").standing() == Standing.ENTERED;
    if (start <= 0 && weighed) {
      working.stop("technique.reduction.stop.below-water", values.number("gravity"));
    } else if (start <= 0) {
      working.stop("technique.reduction.stop.no-reading");
    } else if (target <= start) {
      working.stop("technique.reduction.stop.not-thicker", target, start);
    } else {
      figures(values, start, working);
      working.warn("technique.reduction.warn.not-sugar");
    }
    return working
        .caution("boiling-pot")
        .source("Brix by definition; heat of vaporisation 2257 kJ/kg, textbook")
        .source("Brix from specific gravity: published polynomial, 0 to 40 °Bx, two pages")
        .result();
  }

  private static double start(Values values, Working working) {
    if (values.is("readBy", "brix")) {
      return working.figure("brix", values.number("startBrix"), "technique.reduction.why.brixRead");
    }
    double gravity = values.number("gravity");
    double brix =
        working.figure(
            "brixByGravity", brix(gravity), "technique.reduction.why.brixByGravity", gravity);
    working.figure("brixRough", roughBrix(gravity), "technique.reduction.why.brixRough", gravity);
    if (brix > MOST_BY_GRAVITY) {
      working.stop("technique.reduction.stop.gravity", gravity, MOST_BY_GRAVITY);
    }
    return working.figure("brix", brix, "technique.reduction.why.brix");
  }

  private static void figures(Values values, double start, Working working) {
    double mass = values.number("mass");
    double target = values.number("target");
    working.figure(
        "dissolved", mass * start / 100, "technique.reduction.why.dissolved", start, mass);
    double left =
        working.figure(
            "left", mass * start / target, "technique.reduction.why.left", mass, start, target);
    working.figure("share", left / mass * 100, "technique.reduction.why.share", left, mass);
    double off =
        working.figure("evaporated", mass - left, "technique.reduction.why.evaporated", mass, left);
    double pan = values.number("pan");
    if (pan > 0) {
      working.figure("onScale", left + pan, "technique.reduction.why.onScale", left, pan);
    }
    double heat =
        working.figure(
            "heat", off / 1000 * VAPORISING, "technique.reduction.why.heat", off, VAPORISING);
    double power = values.number("power");
    if (power > 0) {
      working.figure("minutes", heat / power / 60, "technique.reduction.why.minutes", heat, power);
    }
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    additions.add(new Addition.Caution("boiling-pot"));
    result
        .find("left")
        .ifPresent(
            left ->
                additions.add(
                    new Addition.Reminder(
                        Message.of(
                            "technique.reduction.say.without-pan",
                            Figure.plain(left.number() / values.number("mass") * 100),
                            Figure.plain(values.number("target"))))));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of("mass", "1 kg", "startBrix", "12 °Bx", "target", "30 °Bx");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    double start =
        values.is("readBy", "brix") ? values.number("startBrix") : brix(values.number("gravity"));
    double target = values.number("target");
    if (start <= 0 || target <= start) {
      return Optional.empty();
    }
    double mass = values.number("mass");
    return Optional.of(
        Curve.of(
            input("target"),
            output("left"),
            start,
            Math.max(target, 70),
            target,
            brix -> mass * start / brix));
  }
}
