package halfgram.web;

import halfgram.words.Messages;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** The message files, read once. */
public final class Words {
  /** Languages there are, each with its own name for itself. */
  public static final Map<String, String> LANGUAGES =
      new TreeMap<>(Map.of("en", "English", "es", "Español", "fr", "Français"));

  private final Map<String, Messages> byLanguage = new TreeMap<>();

  public Words() {
    LANGUAGES
        .keySet()
        .forEach(code -> byLanguage.put(code, new Messages(code, ZoneOffset.UTC).unbroken()));
  }

  /** The sentences of a language; English for one there is none of. */
  public Messages in(String language) {
    Messages english = java.util.Objects.requireNonNull(byLanguage.get("en"));
    return byLanguage.getOrDefault(language, english);
  }

  /** The language that was chosen on a device, if there is one like it. */
  static Optional<String> chosen(Optional<String> cookie) {
    return cookie.filter(LANGUAGES::containsKey);
  }

  /** The language chosen on a device, else the first of an Accept-Language header that there is. */
  static String chosen(Optional<String> cookie, Optional<String> header) {
    if (chosen(cookie).isPresent()) {
      return cookie.get();
    }
    for (String part : header.orElse("").split(",", -1)) {
      String code = part.strip().split("[-;]", -1)[0];
      if (LANGUAGES.containsKey(code)) {
        return code;
      }
    }
    return "en";
  }
}
