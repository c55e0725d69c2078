package halfgram.lot;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Why tubs keep nothing for an event any longer: a reason in the ledger by a word of its own. */
public enum Freed {
  /** It was taken out. */
  CANCELLED,
  /** It is only a draft again. */
  DRAFT;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The one that a movement was made for, if it was for any. */
  public static Optional<Freed> find(Movement movement) {
    return movement.kind() == Movement.Kind.RESERVED
        ? Arrays.stream(values())
            .filter(one -> movement.reason().equals(Optional.of(one.word())))
            .findFirst()
        : Optional.empty();
  }
}
