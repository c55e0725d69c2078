package halfgram.prep.schedule;

import java.util.function.BooleanSupplier;

/**
 * How long to look. The same iterations and seed give the same plan; {@code stop} only guards, and
 * a plan that it cut short says so.
 *
 * @param iterations rounds of taking out and putting back; 0: the first plan as it is
 * @param seed of chance
 * @param searches how many are made side by side, each with a seed of its own; the best is taken
 * @param stop whether to stop now; asked between slices
 */
public record Budget(int iterations, long seed, int searches, BooleanSupplier stop) {
  public static Budget of(int iterations, long seed) {
    return new Budget(iterations, seed, 1, () -> false);
  }

  /** This budget with two searches side by side. */
  public Budget twice() {
    return new Budget(iterations, seed, 2, stop);
  }

  /** This budget, cut short when somebody says so. */
  public Budget until(BooleanSupplier other) {
    return new Budget(iterations, seed, searches, other);
  }
}
