package halfgram.prep.schedule;

/** What is worked in the last stretches before services, half hour by half hour. */
final class Rushes {
  private final Layout layout;

  /** Hundredths of slots worked above the share that is planned; negative: below it. */
  private final long[] loads;

  /** Slots above it, begun ones too. */
  private final long[] over;

  Rushes(Layout layout) {
    this.layout = layout;
    loads = layout.bucketLoad.clone();
    over = new long[loads.length];
    for (int b = 0; b < loads.length; b++) {
      over[b] = above(loads[b]);
    }
  }

  private static long above(long hundredths) {
    return hundredths <= 0 ? 0 : (hundredths + 99) / 100;
  }

  void load(int from, int to, int people) {
    for (int b = layout.bucketAt(from); b < loads.length && layout.bucketFrom[b] < to; b++) {
      loads[b] += 100L * people * overlap(b, from, to);
      over[b] = above(loads[b]);
    }
  }

  /** Slots worked above the share, begun ones too. */
  long over() {
    long sum = 0;
    for (long one : over) {
      sum += one;
    }
    return sum;
  }

  /** What a job at a slot would add to that. */
  long added(int j, int t) {
    long sum = 0;
    int to = t + layout.handsOn[j];
    for (int b = layout.bucketAt(t); b < loads.length && layout.bucketFrom[b] < to; b++) {
      long load = loads[b] + 100L * layout.hands[j] * overlap(b, t, to);
      if (load > 0) {
        sum += above(load) - over[b];
      }
    }
    return sum;
  }

  private int overlap(int bucket, int from, int to) {
    return Math.max(
        0, Math.min(to, layout.bucketTo[bucket]) - Math.max(from, layout.bucketFrom[bucket]));
  }
}
