package halfgram.pages.lanes;

import halfgram.prep.crew.Load;
import halfgram.words.Messages;
import java.time.Duration;
import java.util.List;
import java.util.Locale;

/**
 * How full people and stations are, drawn small with numbers.
 *
 * @param hours of the clock, the same for all stations
 */
record LoadView(List<String> hours, List<Station> stations, List<Person> people) {

  /**
   * A share of the time people are there.
   *
   * @param said "74 %"; empty when there is neither work nor anybody
   * @param width of what is filled, in percent of the whole
   * @param word why it is marked; empty when it is not
   * @param kind class: idle, none, tight, full, nobody
   * @param minutes of what of what, in words
   */
  record Share(String said, String width, String word, String kind, String minutes) {}

  /** One station over the day. */
  record Station(String name, Share day, List<Share> hours) {}

  /** Somebody over their shift, and in the hours before services. */
  record Person(String name, Share shift, Share rush) {}

  static LoadView of(Crewed day) {
    Load load = day.outlook().load();
    Messages words = day.words();
    List<String> hours =
        load.stations().stream()
            .findFirst()
            .map(one -> one.hours().stream().map(hour -> hour(day, hour)).toList())
            .orElse(List.of());
    return new LoadView(
        hours,
        load.stations().stream()
            .map(
                one ->
                    new Station(
                        day.station(one.station()),
                        share(words, one.day(), one.mark()),
                        one.hours().stream().map(h -> share(words, h.share(), h.mark())).toList()))
            .toList(),
        load.people().stream().map(one -> person(day, one)).toList());
  }

  private static String hour(Crewed day, Load.Hour hour) {
    return String.valueOf(hour.from().atZone(day.clock().zone()).getHour());
  }

  private static Person person(Crewed day, Load.OfPerson one) {
    Messages words = day.words();
    Load.Mark rush = one.mark() == Load.Mark.FULL ? Load.Mark.NONE : one.mark();
    Load.Mark shift = one.mark() == Load.Mark.FULL ? Load.Mark.FULL : Load.Mark.NONE;
    return new Person(
        day.person(one.person()), share(words, one.shift(), shift), share(words, one.rush(), rush));
  }

  static Share share(Messages words, Load.Share share, Load.Mark mark) {
    boolean idle = share.work() == 0;
    String kind = idle ? "idle" : mark.name().toLowerCase(Locale.ROOT);
    boolean nothing = share.work() == 0 && share.there() == 0;
    return new Share(
        nothing ? "" : words.say("lanes.percent", share.percent()),
        Math.min(100, share.percent()) + "%",
        mark == Load.Mark.NONE || idle ? "" : words.say("lanes.mark." + kind),
        kind,
        words.say(
            "lanes.of-minutes",
            Duration.ofMinutes(share.work()),
            Duration.ofMinutes(share.there())));
  }
}
