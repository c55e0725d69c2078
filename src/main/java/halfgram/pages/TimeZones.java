package halfgram.pages;

import java.time.ZoneId;
import java.util.List;

/** Time zones by a place, to choose from. */
public final class TimeZones {
  private TimeZones() {}

  public static List<String> list() {
    return ZoneId.getAvailableZoneIds().stream()
        .filter(zone -> zone.matches("(Africa|America|Asia|Atlantic|Australia|Europe|Pacific)/.+"))
        .sorted()
        .toList();
  }
}
