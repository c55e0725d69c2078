package halfgram.prep.schedule.project;

/**
 * An anytime search from one seed: each step tries one more activity list and improves what it
 * leads to. The same project and seed take the same steps.
 */
interface Search {
  /** Tries one more. */
  void step();

  /** The shortest makespan so far; {@link Integer#MAX_VALUE} while there is no schedule. */
  int makespan();

  /** The starts of that schedule, by activity; of no length while there is none. */
  int[] starts();
}
