package halfgram.pages;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What hands can do to a tub, by the last word of its address. */
public enum TubDeed {
  WASTE,
  BROKE,
  MOVE,
  FREEZE,
  THAW,
  SPLIT,
  COMBINE;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public static Optional<TubDeed> find(String word) {
    return Arrays.stream(values()).filter(deed -> deed.word().equals(word)).findFirst();
  }
}
