package halfgram.pages.log;

import halfgram.desk.House;
import halfgram.desk.Slips;
import halfgram.words.Messages;

/** What a service is called that the log knows by its id. */
final class RunName {
  private RunName() {}

  /** "Harvest dinner", "Bar evening, Sat 5 Dec"; its id when the book no longer has it. */
  static String of(House house, String run, Messages words) {
    return Slips.find(house, run).map(found -> of(found, run, words)).orElse(run);
  }

  private static String of(Slips.Found found, String run, Messages words) {
    return found
        .regular()
        .map(
            service ->
                words.say("log.slip-of", words.text(service.name()), words.shortDate(found.date())))
        .or(
            () ->
                found
                    .event()
                    .map(
                        event ->
                            event.services().stream()
                                .filter(one -> run.equals(event.code() + "." + one.code()))
                                .map(
                                    one -> words.text(event.name()) + ", " + words.text(one.name()))
                                .findFirst()
                                .orElse(words.text(event.name()))))
        .orElse(run);
  }
}
