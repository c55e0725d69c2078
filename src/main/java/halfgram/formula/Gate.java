package halfgram.formula;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What stops a batch at a step until somebody has tried it and said go.
 *
 * @param kind what is tried
 * @param by who says so
 * @param checks what a word is wanted for
 */
public record Gate(Step.Check kind, By by, List<Check> checks) {
  public Gate {
    checks = List.copyOf(checks);
  }

  /** Who passes it. */
  public enum By {
    COOK,
    CHEF
  }

  /** What is looked at or tasted, and the words there are for it; common practice. */
  public enum Check {
    SKIN,
    CENTRE,
    TASTE,
    TEXTURE;

    public List<String> words() {
      return switch (this) {
        case SKIN -> List.of("too-thin", "right", "too-thick");
        case CENTRE -> List.of("liquid", "part-set", "set");
        case TASTE -> List.of("right", "too-little-salt", "too-salty", "too-sour");
        case TEXTURE -> List.of("too-loose", "right", "too-stiff");
      };
    }

    /** As the book spells it. */
    public String word() {
      return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<Check> find(String word) {
      for (Check check : values()) {
        if (check.word().equals(word)) {
          return Optional.of(check);
        }
      }
      return Optional.empty();
    }
  }

  /** What is usually looked at. */
  public static List<Check> usual(Step.Check kind) {
    return switch (kind) {
      case TEST_PIECE -> List.of(Check.SKIN, Check.CENTRE, Check.TASTE);
      case TASTING -> List.of(Check.TASTE, Check.TEXTURE);
    };
  }
}
