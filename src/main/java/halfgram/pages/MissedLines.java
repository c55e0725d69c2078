package halfgram.pages;

import halfgram.web.Visit;
import java.time.LocalDate;
import java.util.List;

/**
 * What last night has left undone, by what was entered.
 *
 * @param entry where it is entered if it was done all the same, within the kitchen
 */
public record MissedLines(List<String> lines, String entry) {
  public MissedLines {
    lines = List.copyOf(lines);
  }

  /**
   * For a day.
   *
   * @param station whose lines these are; empty for all of them
   */
  public static MissedLines of(List<String> lines, LocalDate day, String station) {
    String of = station.isEmpty() ? "" : "&station=" + Visit.encoded(station);
    return new MissedLines(lines, "paper/entry?date=" + day.minusDays(1) + of);
  }

  public boolean isEmpty() {
    return lines.isEmpty();
  }
}
