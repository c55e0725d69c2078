package halfgram.pages.audit;

import halfgram.book.Moments;
import halfgram.desk.Audit;
import halfgram.web.Visit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What somebody looks for in the audit, as they typed it.
 *
 * @param before number of a change to go on before; empty for the newest
 */
record AuditTyped(String kind, String who, String subject, String from, String to, String before) {

  static AuditTyped of(Visit visit) {
    String before = visit.query("before");
    return new AuditTyped(
        visit.query("kind"),
        visit.query("who").strip(),
        visit.query("subject").strip(),
        visit.query("from"),
        visit.query("to"),
        before.matches("\\d{1,18}") ? before : "");
  }

  boolean isKind() {
    return kind.isEmpty() || Audit.KINDS.contains(kind);
  }

  long number() {
    return before.isEmpty() ? Long.MAX_VALUE : Long.parseLong(before);
  }

  Audit.Asked asked() {
    return new Audit.Asked(
        Optional.of(kind).filter(one -> !one.isEmpty()),
        who,
        subject,
        Moments.date(from),
        Moments.date(to));
  }

  /** The same narrowing as parameters of an address: "kind=par&who=ada". */
  String query() {
    List<String> parts = new ArrayList<>();
    put(parts, "kind", kind);
    put(parts, "who", who);
    put(parts, "subject", subject);
    put(parts, "from", from);
    put(parts, "to", to);
    return String.join("&", parts);
  }

  private static void put(List<String> parts, String name, String value) {
    if (!value.isEmpty()) {
      parts.add(name + "=" + Visit.encoded(value));
    }
  }
}
