package halfgram.desk;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What the log can be narrowed to. */
public enum LogKind {
  TICK,
  PLAN,
  STOCK,
  SERVICE,
  DELIVERY,
  KIT,
  CREW,
  LANES,
  EVENT,
  SLIP,
  PAR,
  FORMULA,
  BOOK,
  BATH,
  GATE,
  IMPORT;

  /** What changes say they are; who may come in and what with is for the audit alone. */
  static Set<String> ofChanges() {
    return Arrays.stream(values())
        .filter(kind -> kind != TICK)
        .map(LogKind::word)
        .collect(Collectors.toUnmodifiableSet());
  }

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
