package halfgram.pages.door;

import halfgram.desk.People.Reason;
import halfgram.pages.TimeZones;
import halfgram.words.Messages;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A form of the door as it comes back: what was typed, and what is wrong with it.
 *
 * @param heading whom or what it is about
 * @param said what is wrong with no field in particular
 */
public record FormView(
    String heading, Map<String, String> typed, Map<String, String> wrong, String said) {

  static FormView of(String heading, Map<String, String> typed) {
    return new FormView(heading, typed, Map.of(), "");
  }

  static FormView of(
      String heading, Map<String, String> typed, List<Reason> reasons, Messages words) {
    Map<String, String> wrong = new HashMap<>();
    StringBuilder said = new StringBuilder();
    for (Reason reason : reasons) {
      if (reason.field().isEmpty()) {
        said.append(words.say(reason.message()));
      } else {
        wrong.put(reason.field(), words.say(reason.message()));
      }
    }
    return new FormView(heading, typed, wrong, said.toString());
  }

  /** Time zones by a place, to choose from. */
  public List<String> zones() {
    return TimeZones.list();
  }

  /** What was typed into a field. */
  public String typed(String field) {
    return typed.getOrDefault(field, "");
  }

  /** What is wrong with a field; empty when nothing is. */
  public String wrong(String field) {
    return wrong.getOrDefault(field, "");
  }
}
