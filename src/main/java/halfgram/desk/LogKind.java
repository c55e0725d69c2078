package halfgram.desk;

import java.util.Locale;
import java.util.Optional;

/** What the log can be narrowed to. */
public enum LogKind {
  TICK,
  PLAN,
  STOCK,
  SERVICE,
  DELIVERY,
  KIT,
  EVENT,
  SLIP,
  PAR,
  FORMULA,
  BATH,
  GATE,
  IMPORT;

  public static Optional<LogKind> find(String word) {
    for (LogKind kind : values()) {
      if (kind.word().equals(word)) {
        return Optional.of(kind);
      }
    }
    return Optional.empty();
  }

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public boolean includes(Logbook.Entry entry) {
    return entry instanceof Logbook.Changed changed
        ? changed.change().kind().equals(word())
        : this == TICK;
  }
}
