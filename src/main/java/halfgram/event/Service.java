package halfgram.event;

import halfgram.kitchen.Text;
import java.time.LocalTime;
import java.util.List;

/**
 * A time span of an event in which food must be ready: courses fired, or dishes picked up along a
 * curve.
 *
 * @param swaps what stands in for what, since somebody said yes to it
 */
public record Service(
    String code,
    Text name,
    LocalTime start,
    LocalTime end,
    List<Course> courses,
    Curve curve,
    List<Share> dishes,
    List<Replaced> swaps) {
  public Service {
    courses = List.copyOf(courses);
    dishes = List.copyOf(dishes);
    swaps = List.copyOf(swaps);
  }
}
