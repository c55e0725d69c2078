package halfgram.pages.log;

import halfgram.desk.Logbook;
import java.util.Locale;
import java.util.Optional;

/** What the log can be narrowed to. */
enum Kind {
  TICK,
  PLAN,
  STOCK,
  EVENT,
  PAR,
  FORMULA,
  IMPORT;

  static Optional<Kind> find(String word) {
    for (Kind kind : values()) {
      if (kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  boolean includes(Logbook.Entry entry) {
    return entry instanceof Logbook.Changed changed
        ? changed.change().kind().equals(word())
        : this == TICK;
  }
}
