package halfgram.testkit;

import java.util.function.LongConsumer;

/**
 * Runs a law over many seeds and names the first that breaks it. To look at one alone run with
 * {@code -Dhalfgram.seed=N}.
 */
public final class Seeds {
  private static final String ONE = "halfgram.seed";

  /** How many times as many seeds the long proofs take. */
  private static final int TIMES = Integer.getInteger("halfgram.seeds", 1);

  private Seeds() {}

  /** The law for the seeds 1 to count, for more of them in the long proofs. */
  public static void over(int count, LongConsumer law) {
    String one = System.getProperty(ONE);
    if (one != null) {
      run(Long.parseLong(one), law);
      return;
    }
    for (long seed = 1; seed <= (long) count * TIMES; seed++) {
      run(seed, law);
    }
  }

  private static void run(long seed, LongConsumer law) {
    try {
      law.accept(seed);
    } catch (AssertionError | RuntimeException e) {
      throw new AssertionError(
          "broken for seed " + seed + " (-D" + ONE + "=" + seed + "): " + e.getMessage(), e);
    }
  }
}
