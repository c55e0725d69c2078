package halfgram.technique;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * A curve that says more than a number.
 *
 * @param across and up: names of an input and an output of the technique
 * @param marks points worth a mark, the one of these inputs first
 */
public record Curve(
    String across,
    String acrossUnit,
    String up,
    String upUnit,
    List<Point> points,
    List<Point> marks) {
  private static final int POINTS = 60;

  /** A point of it. */
  public record Point(double x, double y) {}

  public Curve {
    points = List.copyOf(points);
    marks = List.copyOf(marks);
  }

  /** A function between two ends, with a mark where the inputs stand. */
  public static Curve of(
      Input across, Output up, double from, double to, double here, DoubleUnaryOperator function) {
    List<Point> points = new ArrayList<>();
    for (int i = 0; i <= POINTS; i++) {
      double x = from + (to - from) * i / POINTS;
      points.add(new Point(x, function.applyAsDouble(x)));
    }
    List<Point> marks = List.of(new Point(here, function.applyAsDouble(here)));
    return new Curve(across.name(), across.unit(), up.name(), up.unit(), points, marks);
  }
}
