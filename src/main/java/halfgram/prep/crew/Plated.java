package halfgram.prep.crew;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A dish is plated before its fire: as many people as it takes, or as many as there are.
 *
 * @param run id of the service
 * @param fire code of the course or pick-up
 * @param dish its code
 * @param station where; empty where the book does not say, then anybody plates
 * @param needed people at once
 * @param people codes of those who do
 */
public record Plated(
    String run,
    String fire,
    String dish,
    Optional<String> station,
    Instant from,
    Instant to,
    int needed,
    List<String> people) {
  public Plated {
    people = List.copyOf(people);
  }

  /** Unique in its day. */
  public String id() {
    return id(run, fire, dish);
  }

  /** The id of the plating of a dish for a course or pick-up of a service. */
  public static String id(String run, String fire, String dish) {
    return "plating/" + run + "/" + fire + "/" + dish;
  }

  /** How many people it lacks. */
  public int missing() {
    return Math.max(0, needed - people.size());
  }

  public Placed.Hands hands() {
    return new Placed.Hands(from, to, people);
  }
}
