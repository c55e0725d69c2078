package halfgram.pages.log;

import halfgram.desk.House;
import halfgram.desk.Slips;
import halfgram.event.Event;
import halfgram.words.Messages;
import java.util.Optional;

/** What a service is called that the log knows by its id. */
final class RunName {
  private RunName() {}

  /** "Harvest dinner", "Bar evening, Sat 5 Dec"; its id when the book no longer has it. */
  static String of(House house, String run, Messages words) {
    return house.book().allEvents().stream()
        .flatMap(event -> find(event, run, words).stream())
        .findFirst()
        .or(() -> regular(house, run, words))
        .orElse(run);
  }

  /** Of an event, be it only a draft by now. */
  private static Optional<String> find(Event event, String run, Messages words) {
    String name = words.text(event.name());
    return run.equals(event.code())
        ? Optional.of(name)
        : event.services().stream()
            .filter(one -> run.equals(event.code() + "." + one.code()))
            .map(one -> name + ", " + words.text(one.name()))
            .findFirst();
  }

  private static Optional<String> regular(House house, String run, Messages words) {
    return Slips.find(house, run)
        .flatMap(
            found ->
                found
                    .regular()
                    .map(
                        service ->
                            words.say(
                                "log.slip-of",
                                words.text(service.name()),
                                words.shortDate(found.date()))));
  }
}
