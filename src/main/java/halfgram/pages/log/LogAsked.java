package halfgram.pages.log;

import halfgram.desk.LogKind;
import halfgram.desk.Logbook;
import halfgram.web.Visit;
import java.util.Optional;

/**
 * Which part of the log somebody wants to see.
 *
 * @param before a number of a change
 * @param who code of a person
 */
record LogAsked(long before, Optional<LogKind> kind, Optional<String> who) {

  static LogAsked of(Visit visit) {
    String before = visit.query("before");
    return new LogAsked(
        before.matches("\\d{1,18}") ? Long.parseLong(before) : Long.MAX_VALUE,
        LogKind.find(visit.query("kind")),
        Optional.of(visit.query("who")).filter(who -> !who.isEmpty()));
  }

  boolean wants(Logbook.Entry entry) {
    return kind.map(of -> of.includes(entry)).orElse(true)
        && who.map(code -> entry.who().equals(code)).orElse(true);
  }

  boolean isNarrow() {
    return kind.isPresent() || who.isPresent();
  }

  boolean isNewest() {
    return before == Long.MAX_VALUE;
  }

  /** Address of what is older, narrowed in the same way. */
  String older(long number) {
    return "log?before="
        + number
        + kind.map(of -> "&kind=" + of.word()).orElse("")
        + who.map(code -> "&who=" + Visit.encoded(code)).orElse("");
  }
}
