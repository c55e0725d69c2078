package halfgram.pages;

import halfgram.desk.Changes;
import halfgram.desk.House;
import halfgram.station.Station;
import halfgram.web.Halt;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Stations as an address names them: one, several as "cold.pastry", or all. */
public final class StationNames {
  /** Every station at once. */
  public static final String ALL = Changes.EVERYWHERE;

  private static final String AND = ".";

  private StationNames() {}

  /** Several stations as one. */
  public static String of(List<String> codes) {
    return String.join(AND, codes);
  }

  /** Codes of the stations that are named; {@link #ALL} as it is. */
  public static List<String> list(String name) {
    return List.of(name.split(Pattern.quote(AND), -1));
  }

  /** Whether it is more than one station. */
  public static boolean isMany(String name) {
    return name.equals(ALL) || name.contains(AND);
  }

  /**
   * The stations that are named, all of them in the order of the book.
   *
   * @throws Halt when one of them is not there
   */
  public static List<Station> stations(House house, String name) {
    return find(house, name).orElseThrow(() -> Halt.notFound(name));
  }

  /** The stations that are named; empty when one of them is not there. */
  public static Optional<List<Station>> find(House house, String name) {
    var stations = house.book().stations();
    if (name.equals(ALL)) {
      return Optional.of(List.copyOf(stations.values()));
    }
    List<Station> named =
        list(name).stream()
            .distinct()
            .flatMap(code -> Optional.ofNullable(stations.get(code)).stream())
            .toList();
    return named.size() == list(name).stream().distinct().count()
        ? Optional.of(named)
        : Optional.empty();
  }
}
