package halfgram.station;

import java.time.Instant;
import java.util.List;

/** A machine of the book with what is broken of it, the first to break first. */
public record Works(Equipment machine, List<Breakdown> broken) {
  public Works {
    broken = List.copyOf(broken);
  }

  /** How many units work at a moment. */
  public int units(Instant moment) {
    int missing = broken.stream().filter(one -> one.isOn(moment)).mapToInt(Breakdown::units).sum();
    return Math.max(0, machine.units() - missing);
  }
}
