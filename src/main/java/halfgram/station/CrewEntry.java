package halfgram.station;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;

/**
 * Something said of who is in on a day, or of a machine that does not work; never changed, only
 * taken back. What the entries come to is folded from them ({@link Crew}).
 *
 * @param day the business day that it is about; of a machine, on which it broke
 * @param person code of the cook; empty when it is about a machine
 * @param machine code of the equipment; empty when it is about a cook
 * @param units how many of the machine; 0 when it is about a cook
 * @param from since when: they are in, it is broken, it is mended
 * @param until when they leave, or it is to work again; empty for the end of the shift, and until
 *     somebody says it is mended
 * @param ends id of the breakdown that is over
 * @param undoes id of the entry that an undo takes back
 */
public record CrewEntry(
    UUID id,
    LocalDate day,
    Kind kind,
    String person,
    String machine,
    int units,
    Optional<Instant> from,
    Optional<Instant> until,
    Optional<String> note,
    String who,
    Instant at,
    Optional<UUID> ends,
    Optional<UUID> undoes) {

  /** What an entry says. */
  public enum Kind {
    /** A cook does not come. */
    OUT,
    /** A cook is in from, or until, another time than the shift says. */
    IN,
    /** A cook is in as the shift says. */
    BACK,
    /** Units of a machine do not work. */
    BROKEN,
    /** They work again. */
    MENDED,
    /** Another entry is taken back. */
    UNDO;

    /** As forms and calls spell it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Kind> find(String word) {
      for (Kind kind : values()) {
        if (kind.word().equals(word)) {
          return Optional.of(kind);
        }
      }
      return Optional.empty();
    }
  }

  /** Code of what it is about. */
  public String subject() {
    return person.isEmpty() ? machine : person;
  }
}
