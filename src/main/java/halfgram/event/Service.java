package halfgram.event;

import halfgram.kitchen.Text;
import java.time.LocalTime;
import java.util.List;

/**
 * A time span of an event in which food must be ready: courses fired, or dishes picked up along a
 * curve.
 */
public record Service(
    String code,
    Text name,
    LocalTime start,
    LocalTime end,
    List<Course> courses,
    Curve curve,
    List<Share> dishes) {
  public Service {
    courses = List.copyOf(courses);
    dishes = List.copyOf(dishes);
  }
}
