package halfgram.prep.crew;

import halfgram.prep.crew.Stretches.Load;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;

/**
 * A stretch with more work than time, in minutes.
 *
 * @param loads what lies wholly inside it
 */
record Worst(int from, int to, int needed, int there, List<Load> loads) {
  Worst {
    loads = List.copyOf(loads);
  }

  interface Capacity {
    int minutes(int from, int to);
  }

  static Optional<Worst> of(List<Load> loads, Capacity capacity) {
    TreeSet<Integer> heads = new TreeSet<>();
    TreeSet<Integer> tails = new TreeSet<>();
    loads.forEach(load -> heads.add(load.head()));
    loads.forEach(load -> tails.add(load.tail()));
    Worst worst = new Worst(0, 0, 0, 0, List.of());
    for (int from : heads) {
      for (int to : tails.tailSet(from, false)) {
        int needed = 0;
        for (Load load : loads) {
          needed += load.head() >= from && load.tail() <= to ? load.work() : 0;
        }
        if (needed <= worst.needed() - worst.there()) {
          continue;
        }
        int there = capacity.minutes(from, to);
        if (needed - there > worst.needed() - worst.there()) {
          worst = new Worst(from, to, needed, there, List.of());
        }
      }
    }
    if (worst.needed() <= worst.there()) {
      return Optional.empty();
    }
    int from = worst.from();
    int to = worst.to();
    List<Load> in =
        loads.stream().filter(load -> load.head() >= from && load.tail() <= to).toList();
    return Optional.of(new Worst(from, to, worst.needed(), worst.there(), in));
  }
}
