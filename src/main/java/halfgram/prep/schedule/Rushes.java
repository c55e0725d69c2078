package halfgram.prep.schedule;

/** What is worked in the last stretches before services, half hour by half hour. */
final class Rushes {
  private final Layout layout;

  /** Hundredths of slots worked above the share that is planned; negative: below it. */
  private final long[] loads;

  Rushes(Layout layout) {
    this.layout = layout;
    loads = layout.bucketLoad.clone();
  }

  void load(int from, int to, int people) {
    for (int b = layout.bucketAt(from); b < loads.length && layout.bucketFrom[b] < to; b++) {
      loads[b] += 100L * people * overlap(b, from, to);
    }
  }

  /** Slots worked above the share, begun ones too. */
  long over() {
    long sum = 0;
    for (long load : loads) {
      sum += Math.max(0, Grid.ceilDiv(load));
    }
    return sum;
  }

  /** What a job at a slot would add to that. */
  long added(int j, int t) {
    long sum = 0;
    int to = t + layout.handsOn[j];
    for (int b = layout.bucketAt(t); b < loads.length && layout.bucketFrom[b] < to; b++) {
      long part = (long) layout.hands[j] * overlap(b, t, to);
      if (part > 0) {
        sum +=
            Math.max(0, Grid.ceilDiv(loads[b] + 100 * part)) - Math.max(0, Grid.ceilDiv(loads[b]));
      }
    }
    return sum;
  }

  private int overlap(int bucket, int from, int to) {
    return Math.max(
        0, Math.min(to, layout.bucketTo[bucket]) - Math.max(from, layout.bucketFrom[bucket]));
  }
}
