package halfgram.pages.events;

import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.desk.Events;
import halfgram.desk.House;
import halfgram.input.Problem;
import halfgram.measure.Message;
import halfgram.menu.Dish;
import halfgram.words.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What is wrong with an event, each at the field or the row it belongs to, in the words of the
 * form. What belongs to neither is left for the top of the page.
 */
final class Faults {
  private static final String ROW = "(/services/\\d+(/courses/\\d+|/curve/\\d+)?(/dishes/\\d+)?)";
  private static final Pattern PLACE =
      Pattern.compile(
          "/(date|draft|buffer|diets|services)|/covers/(expected|final)|/name/(en|es|fr)"
              + "|/diets/\\d+(/(count|spare))?|"
              + ROW
              + "(/(start|end|at|share|dish|perCover|name(/en)?))?");

  private final Map<String, String> said = new LinkedHashMap<>();
  private final House house;
  private final Messages words;

  Faults(House house, Events.Problems problems, ObjectNode body, Messages words) {
    this.house = house;
    this.words = words;
    for (Problem problem : problems.list()) {
      String place = place(problem.path(), problems.event(), body);
      said.merge(place, say(problem, place), (one, other) -> one + ". " + other);
    }
  }

  /** The nearest field or row around a path; the path itself when it is not of this event. */
  private static String place(String path, String event, ObjectNode body) {
    if (!path.startsWith(event)) {
      return path;
    }
    String at = path.substring(event.length()).replaceAll("[.\\[]", "/").replace("]", "");
    while (!at.isEmpty() && !(PLACE.matcher(at).matches() && isField(at, body))) {
      Optional<String> inside = inside(at);
      if (inside.isPresent()) {
        return inside.get();
      }
      at = at.substring(0, at.lastIndexOf('/'));
    }
    return at;
  }

  /** Where a thing of several fields is told. */
  private static Optional<String> inside(String at) {
    return switch (at) {
      case "/name" -> Optional.of("/name/en");
      case "/covers" -> Optional.of("/covers/expected");
      default -> Optional.empty();
    };
  }

  /** A name of several languages is told at its English. */
  private static boolean isField(String at, ObjectNode body) {
    return !at.endsWith("/name") || !body.at(at).isObject();
  }

  private String say(Problem problem, String place) {
    Message message = problem.message();
    String last = place.substring(place.lastIndexOf('/') + 1);
    boolean missing = message.key().equals("problem.missing");
    if (last.equals("en") || last.equals("name")) {
      return words.say("events.fault-name");
    }
    if (last.equals("dish")) {
      return words.say("events.fault-dish");
    }
    if (place.equals("/covers/expected") && missing) {
      return words.say("events.fault-covers");
    }
    if (missing && problem.path().endsWith(".dishes")) {
      return words.say("events.fault-dishes");
    }
    if (missing && problem.path().endsWith(".services")) {
      return words.say("events.fault-services");
    }
    if (missing || message.key().equals("problem.accepted")) {
      return words.say("events.fault-give", message.args().get(0));
    }
    return value(problem.value()) + words.say(message);
  }

  /** A dish by its name, everything else as it was typed. */
  private String value(String value) {
    Dish dish = house.book().dishes().get(value);
    return value.isEmpty() ? "" : (dish == null ? value : words.text(dish.name())) + ": ";
  }

  /** What is wrong at a place; each is told once. */
  String take(String place) {
    String fault = said.remove(place);
    return fault == null ? "" : fault;
  }

  /** What nobody has taken. */
  List<String> left() {
    return new ArrayList<>(said.values());
  }
}
