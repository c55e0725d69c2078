package halfgram.pages;

import java.util.ArrayList;
import java.util.List;

/** Rows of a drawing, each filled from the left: what would cover something goes a row lower. */
public final class Rack {
  private final List<Double> ends = new ArrayList<>();

  /** The first row in which a span is free. */
  public int place(double from, double to) {
    for (int row = 0; row < ends.size(); row++) {
      if (ends.get(row) <= from) {
        ends.set(row, to);
        return row;
      }
    }
    ends.add(to);
    return ends.size() - 1;
  }

  public int rows() {
    return ends.size();
  }
}
