package halfgram.event;

import java.util.OptionalInt;

/** How many guests: expected, and the final number once it is given. */
public record Covers(int expected, OptionalInt finalNumber) {

  /** The number to plan for: final, else expected. */
  public int counted() {
    return finalNumber.orElse(expected);
  }
}
