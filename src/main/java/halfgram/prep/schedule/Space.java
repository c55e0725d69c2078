package halfgram.prep.schedule;

import java.util.List;

/**
 * Room for what stands: shelves of a cold room, tubs, trays.
 *
 * @param room units of it there are
 * @param taken units of it already taken, by slot; shorter than the day: none from there on
 */
public record Space(String id, int room, List<Integer> taken) {
  public Space {
    taken = List.copyOf(taken);
  }
}
