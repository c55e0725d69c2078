package halfgram.event;

import java.util.SortedSet;

/** Guests of an event with the same diets, counted among its covers; and spare plates for them. */
public record DietCount(SortedSet<String> diets, int count, int spare) {

  /** Plates made. */
  public int plates() {
    return count + spare;
  }
}
