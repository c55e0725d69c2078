package halfgram.desk;

import halfgram.ingredient.Scale;
import halfgram.ingredient.Weighing;
import halfgram.measure.Message;
import halfgram.prep.Task;
import halfgram.station.Person;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** What goes on today with a thing of the book that nothing else in the book names. */
final class InUse {
  private InUse() {}

  /**
   * In sentences; none when nothing goes on with it.
   *
   * @param inForce the plan of the day
   */
  static List<Message> list(
      House house, LocalDate today, Optional<InForce> inForce, String kind, String code) {
    return switch (kind) {
      case "people" ->
          house.book().people().stream()
              .filter(person -> person.code().equals(code))
              .flatMap(person -> shifts(person, today).stream())
              .toList();
      case "scales" -> inForce.map(plan -> weighed(plan, code)).orElse(List.of());
      default -> List.of();
    };
  }

  private static List<Message> shifts(Person person, LocalDate today) {
    return person.on(today.getDayOfWeek()).stream()
        .map(on -> Message.of("book.used-shift", person.name(), on.start(), on.end()))
        .toList();
  }

  private static List<Message> weighed(InForce inForce, String scale) {
    List<Object> names =
        inForce.sheet().tasks().stream()
            .filter(task -> uses(task, scale))
            .<Object>map(task -> task.version().name())
            .distinct()
            .toList();
    return names.isEmpty() ? List.of() : List.of(Message.of("book.used-scale", names));
  }

  private static boolean uses(Task task, String scale) {
    return task.weigh().stream()
        .flatMap(group -> group.lines().stream())
        .anyMatch(line -> isOn(line.weighing(), scale));
  }

  private static boolean isOn(Weighing weighing, String scale) {
    Stream<Scale> mix =
        weighing.dilution().stream()
            .flatMap(one -> Stream.of(one.substanceScale(), one.carrierScale(), one.takeScale()));
    return Stream.concat(weighing.scale().stream(), mix).anyMatch(of -> of.code().equals(scale));
  }
}
