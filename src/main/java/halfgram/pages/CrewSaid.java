package halfgram.pages;

import halfgram.kitchen.Text;
import halfgram.prep.KitchenBook;
import halfgram.station.CrewEntry;
import halfgram.station.Person;
import halfgram.words.Messages;
import java.time.Instant;
import java.util.Optional;

/** What is said of the crew and the machines, in words. */
public final class CrewSaid {
  private final KitchenBook book;
  private final Messages words;

  public CrewSaid(KitchenBook book, Messages words) {
    this.book = book;
    this.words = words;
  }

  /** Name of a cook or a machine; the code of one that is in the book no more. */
  public String name(String code) {
    return book.findPerson(code).map(Person::name).orElseGet(() -> machine(code));
  }

  /** What somebody of the book still needs before work can be given to them; empty for nothing. */
  public String lacks(Person person) {
    String stations = words.say("book.field.stations");
    String shifts = words.say("book.field.shifts");
    if (!person.stations().isEmpty()) {
      return person.shifts().isEmpty() ? words.say("book.lacks-shift", person.name(), shifts) : "";
    }
    return person.shifts().isEmpty()
        ? words.say("book.lacks-both", person.name(), stations, shifts)
        : words.say("book.lacks-station", person.name(), stations);
  }

  private String machine(String code) {
    return Optional.ofNullable(book.equipment().get(code))
        .map(one -> words.text(one.name()))
        .orElse(code);
  }

  /** "in from 15:00 until 22:00", "1 broken from Sat 14:00 until mended". */
  public String what(
      CrewEntry.Kind kind, int units, Optional<Instant> from, Optional<Instant> until) {
    return switch (kind) {
      case OUT -> words.say("crew.said.out");
      case BACK -> words.say("crew.said.back");
      case UNDO -> words.say("crew.said.undo");
      case MENDED -> words.say("crew.said.mended", said(from));
      case BROKEN ->
          until.isEmpty()
              ? words.say("crew.said.broken", units, said(from))
              : words.say("crew.said.broken-until", units, said(from), said(until));
      case IN ->
          from.isEmpty()
              ? words.say("crew.said.in-until", time(until))
              : until.isEmpty()
                  ? words.say("crew.said.in-from", time(from))
                  : words.say("crew.said.in", time(from), time(until));
    };
  }

  private String said(Optional<Instant> moment) {
    return moment.map(words::dayTime).orElse("");
  }

  private String time(Optional<Instant> moment) {
    return moment.map(words::time).orElse("");
  }

  /** A text of the book. */
  public String text(Text text) {
    return words.text(text);
  }
}
