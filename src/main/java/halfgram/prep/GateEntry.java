package halfgram.prep;

import halfgram.formula.Gate;
import halfgram.measure.Amount;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What somebody said at a test piece or a tasting, or what became of a part held back to taste.
 * Entries are only ever added; where a gate stands is folded from them ({@link GateProgress}).
 *
 * @param id made by the device, so that a repeat is known as one
 * @param of the batch and the step
 * @param said a word for each check
 * @param added what went in to put it right
 * @param line why path of the weigh line's mass, for a part held back
 * @param note why it failed, or anything else
 * @param undoes id of the entry that an undo takes back
 */
public record GateEntry(
    UUID id,
    Kind kind,
    Of of,
    Map<Gate.Check, String> said,
    List<Added> added,
    Optional<String> line,
    Optional<String> note,
    String cook,
    Instant at,
    Optional<UUID> undoes) {
  public GateEntry {
    said = Map.copyOf(said);
    added = List.copyOf(added);
  }

  /** What an entry says. */
  public enum Kind {
    /** It is right: the batch goes on. */
    GO,
    /** Something went in; it is tried again. */
    ADJUST,
    /** It cannot be put right: the batch is lost. */
    FAIL,
    /** A part held back went in. */
    USED,
    /** A part held back was put away. */
    AWAY,
    /** Another entry is taken back. */
    UNDO;

    /** Whether it is said at a gate. */
    public boolean isVerdict() {
      return this == GO || this == ADJUST || this == FAIL;
    }

    /** The key of its name in the message files. */
    public String key() {
      return "gate.kind." + name().toLowerCase(java.util.Locale.ROOT);
    }
  }

  /**
   * The batch it is about.
   *
   * @param task id of the task at which it was said
   * @param basis of the batch, grams
   */
  public record Of(
      String task, String make, String formula, int version, String step, Amount basis) {}

  /** Something that went in: code of an ingredient or a formula. */
  public record Added(String item, Amount amount) {}
}
