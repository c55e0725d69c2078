package halfgram.prep;

import halfgram.event.Curve;
import halfgram.formula.FormulaVersion;
import halfgram.kitchen.Text;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Ratio;
import halfgram.measure.Rounding;
import halfgram.measure.Window;
import halfgram.menu.Dish;
import halfgram.menu.PlateItem;
import halfgram.menu.Variant;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.SortedSet;

/**
 * One service on one day and all it will use.
 *
 * @param id of the service: an event's code (and service code when it has several), or a regular
 *     service's code and date
 * @param from when demand begins: its start, or the plan's moment when it has begun
 * @param event code of the event it belongs to
 * @param covers counted guests; usual covers for a regular service, when known
 * @param prepared covers made; empty for a regular service
 */
public record ServiceRun(
    String id,
    Text name,
    LocalDate date,
    Window window,
    Instant from,
    Optional<String> event,
    OptionalInt covers,
    OptionalInt prepared,
    List<Plates> plates,
    List<Use> uses) {

  /** Whether it is over by a moment. */
  public boolean isOver(Instant moment) {
    return !window.end().isAfter(moment);
  }

  /** Whether it has begun at the plan's moment. */
  public boolean isBegun() {
    return from.isAfter(window.start());
  }

  /** Its plates for guests with just these diets. */
  public List<Plates> platesFor(SortedSet<String> diets) {
    return plates.stream().filter(of -> of.diets().equals(diets)).toList();
  }

  /**
   * Plates of one dish in one course.
   *
   * @param course empty for a service without courses
   * @param diets of these plates; empty for the dish as it is
   * @param variant of the dish that these diets get; empty for the dish as it is
   * @param share of the guests the menu split gives it
   * @param guests whose plates these are, buffer or spares included
   */
  public record Plates(
      String course,
      Dish dish,
      SortedSet<String> diets,
      Optional<Variant> variant,
      Ratio share,
      int guests,
      int perCover,
      int count) {

    /** How many several of them are. */
    public static int count(List<Plates> all) {
      return all.stream().mapToInt(Plates::count).sum();
    }

    /** What lies on each. */
    public List<PlateItem> items() {
      return variant.map(Variant::plate).orElse(dish.plate());
    }
  }

  /**
   * What the service uses of one component.
   *
   * @param window from first to last use; of no length for a course
   * @param pickUps shares along the window
   */
  public record Use(
      FormulaVersion version, int output, Amount amount, Window window, List<Curve.Dated> pickUps) {

    /** How much of it is used by a moment; of pieces the whole ones. */
    public Amount takenBefore(Instant moment) {
      Amount taken = amount.times(Curve.takenBefore(pickUps, window, moment));
      boolean part = moment.isBefore(window.end()) && taken.dimension() == Dimension.COUNT;
      return part ? taken.rounded(Rounding.DOWN_TO_WHOLE) : taken;
    }
  }
}
