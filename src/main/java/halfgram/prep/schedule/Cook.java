package halfgram.prep.schedule;

import java.util.List;

/**
 * Somebody who works.
 *
 * @param here slots of their shifts, breaks and fixed blocks taken out, in order
 * @param skills how many stations they can work: the fewer, the sooner they are asked
 */
public record Cook(String id, List<Span> here, int skills) {
  public Cook {
    here = List.copyOf(here);
  }

  /** Slots from the first up to, not including, the last. */
  public record Span(int from, int to) {
    public Span {
      if (to < from) {
        throw new IllegalArgumentException(from + " to " + to);
      }
    }

    public int length() {
      return to - from;
    }
  }
}
