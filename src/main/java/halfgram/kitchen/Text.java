package halfgram.kitchen;

import java.util.SortedMap;
import java.util.TreeMap;

/** A text of the kitchen's own in one or more languages (ISO 639-1 codes; "en" when untold). */
public record Text(SortedMap<String, String> byLanguage) {
  public Text {
    if (byLanguage.isEmpty()) {
      throw new IllegalArgumentException("a text in no language");
    }
    byLanguage = new TreeMap<>(byLanguage);
  }

  public static Text of(String english) {
    return new Text(new TreeMap<>(java.util.Map.of("en", english)));
  }

  /** The text in that language, else in English, else in the first there is. */
  public String in(String language) {
    String wanted = byLanguage.get(language);
    if (wanted != null) {
      return wanted;
    }
    String english = byLanguage.get("en");
    return english != null ? english : byLanguage.values().iterator().next();
  }

  @Override
  public String toString() {
    return in("en");
  }
}
