package halfgram.pass;

import halfgram.prep.ServiceRun;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.UUID;

/**
 * What somebody entered while a service ran. Entries are only ever added; what they come to is
 * folded from them ({@link Called}).
 *
 * @param service id of the service run
 * @param course code of the course, or the time of the pick-up; empty for the whole service
 * @param dish code of the dish; empty when it is about no dish
 * @param diets of the plates sent
 * @param item code of the component that is out or stood in for; empty for a whole dish
 * @param standIn code of what stands in for the item
 * @param confirmedBy who said yes to a swap
 * @param station who is ready
 * @param number plates sent or plated; else 1
 * @param plate what lay on each plate sent
 * @param note the reason
 * @param undoes id of the entry that an undo takes back
 */
public record Entry(
    UUID id,
    LocalDate day,
    String service,
    Kind kind,
    String course,
    String dish,
    SortedSet<String> diets,
    String item,
    String standIn,
    Optional<String> confirmedBy,
    String station,
    int number,
    List<Portion> plate,
    Optional<String> note,
    String who,
    Instant at,
    Optional<UUID> undoes) {
  public Entry {
    plate = List.copyOf(plate);
  }

  /** What an entry says. */
  public enum Kind {
    /** A course or a pick-up is called. */
    FIRE,
    /** Plates went out. */
    SENT,
    /** A dish, or a component, is 86: there is none. */
    OUT,
    /** What was out is back. */
    BACK,
    /** Something stands in for an item of a dish, with the chef's yes. */
    SWAP,
    /** A station has its part of a course ready. */
    READY,
    /** The pass says go. */
    GO,
    /** Somebody begins to plate a dish of a course. */
    PLATING,
    /** Plates of a dish stand plated. */
    PLATED,
    /** All plates of a dish of a course stand plated. */
    DONE,
    /** Another entry is taken back. */
    UNDO;

    /** Whether it says how many plates. */
    public boolean isCounted() {
      return this == SENT || this == PLATED;
    }
  }

  /** Which plates of a service it is about. */
  public PlateKey key() {
    return new PlateKey(course, dish, diets);
  }

  /** What is out or back: a dish, or a component. */
  public Outage.What what() {
    return new Outage.What(dish, item);
  }

  /** Plates of one dish in one course for the same diets. */
  public record PlateKey(String course, String dish, SortedSet<String> diets) {
    public static PlateKey of(ServiceRun.Plates plates) {
      return new PlateKey(plates.course(), plates.dish().code(), plates.diets());
    }

    /** The same guests in the same course, whichever dish they get. */
    PlateKey anyDish() {
      return new PlateKey(course, "", diets);
    }

    /** As an address writes it: {@code first/trout-plate+dairy-free}. */
    public String word() {
      String more = diets.isEmpty() ? "" : "+" + String.join("+", diets);
      return (course.isEmpty() ? "" : course + "/") + dish + more;
    }
  }
}
