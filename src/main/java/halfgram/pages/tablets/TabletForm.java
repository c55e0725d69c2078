package halfgram.pages.tablets;

import halfgram.desk.People.Reason;
import halfgram.words.Messages;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Name and stations of a tablet, as typed.
 *
 * @param id of the tablet; empty for one that is to be paired
 */
record TabletForm(String id, String name, List<String> stations, Map<String, String> wrong) {
  static TabletForm blank() {
    return new TabletForm("", "", List.of(), Map.of());
  }

  /** With what is wrong with it. */
  TabletForm with(List<Reason> reasons, Messages words) {
    Map<String, String> faults = new HashMap<>();
    reasons.forEach(reason -> faults.put(reason.field(), words.say(reason.message())));
    return new TabletForm(id, name, stations, faults);
  }

  public boolean has(String station) {
    return stations.contains(station);
  }

  public String wrong(String field) {
    return wrong.getOrDefault(field, "");
  }
}
