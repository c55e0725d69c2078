package halfgram.prep.schedule.project;

/** What no makespan can be less than. */
final class Bounds {
  private Bounds() {}

  /**
   * The longer of the longest path through durations and lags, and of the work on each resource
   * over its capacity.
   *
   * @param floors the earliest start of each activity by lags alone
   */
  static int least(Project project, int[] floors) {
    long least = project.makespan(floors);
    for (int r = 0; r < project.resources(); r++) {
      long work = 0;
      for (int i = 0; i < project.size(); i++) {
        work += (long) project.duration(i) * project.demand(i, r);
      }
      int capacity = Math.max(1, project.capacity(r));
      least = Math.max(least, (work + capacity - 1) / capacity);
    }
    return (int) least;
  }

  /**
   * Whether it follows that there is no schedule of such a makespan (a destructive bound: R. Klein,
   * A. Scholl, Computing lower bounds by destructive improvement, European Journal of Operational
   * Research 112, 1999).
   */
  static boolean excludes(Project project, int makespan) {
    return ForcedOrders.of(project, makespan).refusal().isPresent();
  }
}
