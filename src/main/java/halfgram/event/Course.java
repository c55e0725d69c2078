package halfgram.event;

import halfgram.kitchen.Text;
import java.time.LocalTime;
import java.util.List;

/** A course: fired at one time for everybody. */
public record Course(String code, Text name, LocalTime at, List<Share> dishes) {
  public Course {
    dishes = List.copyOf(dishes);
  }
}
