package halfgram.technique.brixblend;

import halfgram.measure.Message;
import halfgram.measure.Standing;
import halfgram.technique.Addition;
import halfgram.technique.Curve;
import halfgram.technique.Figure;
import halfgram.technique.Input;
import halfgram.technique.Input.Origin;
import halfgram.technique.Output;
import halfgram.technique.Part;
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
 * Blending by the square of Pearson: each takes as many parts by mass as the other is away from the
 * target.
 *
 * <p>Example: 20 °Bx from 30 and 5 takes 15 parts of the 30 and 10 of the 5. Source: mass balance.
 */
public final class BrixBlendTechnique implements Technique {
  /** Masses that differ by no more than this share of them are taken for the same. */
  private static final double SAME = 0.001;

  private static final List<Input> INPUTS =
      List.of(
          Input.needed("firstBrix", "°Bx", 0, 100).from(Origin.READING),
          Input.needed("secondBrix", "°Bx", 0, 100).from(Origin.READING),
          Input.needed("target", "°Bx", 0, 100),
          unsaid("firstMass").ofLine("first"),
          unsaid("total"));

  private static final List<Output> OUTPUTS =
      List.of(
          new Output("firstParts", "1"),
          new Output("secondParts", "1"),
          new Output("firstShare", "%"),
          new Output("first", "g"),
          new Output("second", "g"),
          new Output("total", "g"),
          new Output("blended", "°Bx"));

  private static Input unsaid(String name) {
    return Input.number(name, "g", 0, 1_000_000, 0, Standing.UNVERIFIED, "none said");
  }

  @Override
  public String name() {
    return "brix-blend";
  }

  @Override
  public List<Part> parts() {
    return List.of(Part.line("first").orNone());
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
    double first = values.number("firstBrix");
    double second = values.number("secondBrix");
    double target = values.number("target");
    if (target < Math.min(first, second) || target > Math.max(first, second)) {
      working.stop("technique.brix-blend.stop.outside", target, first, second);
    } else if (first == second) {
      working.stop("technique.brix-blend.stop.same", first);
    } else {
      double parts =
          working.figure(
              "firstParts",
              Math.abs(second - target),
              "technique.brix-blend.why.firstParts",
              second,
              target);
      double others =
          working.figure(
              "secondParts",
              Math.abs(first - target),
              "technique.brix-blend.why.secondParts",
              first,
              target);
      double share = parts / (parts + others);
      working.figure(
          "firstShare", share * 100, "technique.brix-blend.why.firstShare", parts, others);
      masses(values, share, working);
    }
    return working.source("Mass balance; Brix is grams in 100 g, so parts are by mass").result();
  }

  private static void masses(Values values, double share, Working working) {
    double given = values.number("firstMass");
    double total = given > 0 ? given / share : values.number("total");
    if (total <= 0) {
      working.stop("technique.brix-blend.stop.no-mass");
      return;
    }
    if (given > 0 && share == 0) {
      working.stop("technique.brix-blend.stop.none-of-first");
      return;
    }
    double wanted = values.number("total");
    if (given > 0 && wanted > 0 && Math.abs(wanted - total) > wanted * SAME) {
      working.warn("technique.brix-blend.warn.other-total", given, total, wanted);
    }
    double first =
        working.figure(
            "first", total * share, "technique.brix-blend.why.first", share * 100, total);
    double second =
        working.figure("second", total - first, "technique.brix-blend.why.second", total, first);
    working.figure("total", total, "technique.brix-blend.why.total", first, second);
    working.figure(
        "blended",
        (first * values.number("firstBrix") + second * values.number("secondBrix")) / total,
        "technique.brix-blend.why.blended",
        first,
        values.number("firstBrix"),
        second,
        values.number("secondBrix"));
  }

  @Override
  public List<Addition> additions(Values values, Result result) {
    List<Addition> additions = new ArrayList<>();
    for (String figure : List.of("first", "second")) {
      double grams = result.find(figure).map(Figure::number).orElse(0.0);
      additions.add(Addition.Weighed.of(figure, grams));
    }
    additions.add(
        new Addition.Reminder(
            Message.of("technique.brix-blend.say.read", Figure.plain(values.number("target")))));
    return additions;
  }

  @Override
  public Map<String, String> example() {
    return Map.of(
        "firstBrix", "30 °Bx", "secondBrix", "5 °Bx", "target", "20 °Bx", "total", "2.5 kg");
  }

  @Override
  public Optional<Curve> curve(Values values, Tables tables) {
    double first = values.number("firstBrix");
    double second = values.number("secondBrix");
    double target = values.number("target");
    double low = Math.min(first, second);
    double high = Math.max(first, second);
    if (low == high || target < low || target > high) {
      return Optional.empty();
    }
    return Optional.of(
        Curve.of(
            input("target"),
            output("firstShare"),
            low,
            high,
            target,
            brix -> (brix - second) / (first - second) * 100));
  }
}
