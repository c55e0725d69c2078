package halfgram.technique.bath;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.UUID;

/**
 * What a cook enters at a bath. Entries are only ever added; what has become of a bath is folded
 * from them ({@link LiveBaths}).
 *
 * @param id made by the device, so that a repeat is known as one
 * @param run id of the make whose pieces go in, for a drop and what belongs to it
 * @param drop the drop that is lifted or of which pieces broke
 * @param pieces dropped or broken
 * @param millimetres of bath in the pan, by the ruler
 * @param fresh label of the bath that takes the place of this one
 * @param rule that had tripped when it was changed; empty when none had
 * @param tub code of the tub that the fresh bath came from, when somebody said
 * @param note anything else
 * @param at when, by the server's clock
 * @param sent by which device, and when by its clock
 * @param undoes id of the entry that an undo takes back
 */
public record BathEntry(
    UUID id,
    Kind kind,
    Bath bath,
    Optional<String> run,
    Optional<UUID> drop,
    OptionalLong pieces,
    Optional<BigDecimal> millimetres,
    Optional<String> fresh,
    Optional<Renewal> rule,
    Optional<String> tub,
    Optional<String> note,
    String cook,
    Instant at,
    Sent sent,
    Optional<UUID> undoes) {

  /** What an entry says. */
  public enum Kind {
    /** The pieces of one round are in. */
    DROP,
    /** They are out, in the rinse. */
    LIFT,
    /** Some of them burst. */
    BROKE,
    /** How deep the bath stands, measured. */
    LEVEL,
    /** It was emptied, and another took its place. */
    CHANGED,
    /** Another entry is taken back. */
    UNDO;

    /** The key of its name in the message files. */
    public String key() {
      return "bath.kind." + name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /** One bath: letters begin anew on every day and for every bath formula. */
  public record Bath(String formula, LocalDate day, String label) {}

  /** The device and its own clock. */
  public record Sent(UUID device, Instant time) {}

  /** The time between two entries: by one clock when one device has sent both. */
  public Duration until(BathEntry later) {
    Duration ours = Duration.between(at, later.at());
    Duration theirs = Duration.between(sent.time(), later.sent().time());
    boolean same = sent.device().equals(later.sent().device());
    return same && !theirs.isNegative() ? theirs : ours;
  }
}
