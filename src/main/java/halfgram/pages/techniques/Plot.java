package halfgram.pages.techniques;

import halfgram.technique.Curve;
import halfgram.technique.Figure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A curve as the template draws it: 600 by 300, ticks at round numbers. */
public final class Plot {
  private static final double WIDTH = 600;
  private static final double HEIGHT = 300;
  private static final double LEFT = 70;
  private static final double RIGHT = 20;
  private static final double TOP = 16;
  private static final double BOTTOM = 52;
  private static final int TICKS = 5;

  private final Curve curve;
  private final String across;
  private final String up;
  private final double least;
  private final double most;
  private final double highest;

  Plot(Curve curve, String across, String up) {
    this.curve = curve;
    this.across = across;
    this.up = up;
    this.least = curve.points().get(0).x();
    this.most = curve.points().get(curve.points().size() - 1).x();
    double top = curve.points().stream().mapToDouble(Curve.Point::y).max().orElse(1);
    double step = step(top <= 0 ? 1 : top);
    this.highest = StrictMath.ceil((top <= 0 ? 1 : top) / step) * step;
  }

  /** A line across or up with its number. */
  public record Tick(String at, String label) {}

  private static double step(double range) {
    double rough = range / TICKS;
    double power = StrictMath.pow(10, StrictMath.floor(StrictMath.log10(rough)));
    double over = rough / power;
    return (over <= 1 ? 1 : over <= 2 ? 2 : over <= 5 ? 5 : 10) * power;
  }

  private double x(double value) {
    return LEFT + (value - least) / (most - least) * (WIDTH - LEFT - RIGHT);
  }

  private double y(double value) {
    return HEIGHT - BOTTOM - value / highest * (HEIGHT - TOP - BOTTOM);
  }

  private static String at(double place) {
    return String.format(Locale.ROOT, "%.1f", place);
  }

  public String getPoints() {
    StringBuilder points = new StringBuilder();
    for (Curve.Point point : curve.points()) {
      if (Double.isFinite(point.y())) {
        points.append(at(x(point.x()))).append(',').append(at(y(point.y()))).append(' ');
      }
    }
    return points.toString().strip();
  }

  public List<Tick> getAcross() {
    List<Tick> ticks = new ArrayList<>();
    double step = step(most - least);
    for (double v = StrictMath.ceil(least / step) * step; v <= most + step / 1e6; v += step) {
      ticks.add(new Tick(at(x(v)), Figure.plain(v)));
    }
    return ticks;
  }

  public List<Tick> getUp() {
    List<Tick> ticks = new ArrayList<>();
    double step = step(highest);
    for (double v = 0; v <= highest + step / 1e6; v += step) {
      ticks.add(new Tick(at(y(v)), Figure.plain(v)));
    }
    return ticks;
  }

  public List<Mark> getMarks() {
    return curve.marks().stream()
        .filter(mark -> mark.x() >= least && mark.x() <= most)
        .map(
            mark ->
                new Mark(
                    at(x(mark.x())),
                    at(y(mark.y())),
                    said(mark.x(), curve.acrossUnit()) + ", " + said(mark.y(), curve.upUnit())))
        .toList();
  }

  /** A point worth a mark. */
  public record Mark(String x, String y, String label) {}

  private static String said(double number, String unit) {
    return unit.equals("1") ? Figure.plain(number) : Figure.plain(number) + " " + unit;
  }

  public String getAcrossName() {
    return named(across, curve.acrossUnit());
  }

  public String getUpName() {
    return named(up, curve.upUnit());
  }

  private static String named(String name, String unit) {
    return unit.equals("1") ? name : name + ", " + unit;
  }
}
