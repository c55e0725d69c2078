package halfgram.pages.audit;

import halfgram.desk.Audit;
import halfgram.desk.FieldChange;
import halfgram.desk.House;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.kitchen.KitchenStore.Origin;
import halfgram.lot.Movement;
import halfgram.measure.Dimension;
import halfgram.words.Messages;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Who changed what, newest first.
 *
 * @param typed what it is narrowed to
 * @param older address of what is older; empty when this is all
 * @param file address of the same as a file
 */
record AuditView(
    List<Line> lines,
    List<Choice> kinds,
    AuditTyped typed,
    boolean narrow,
    boolean newest,
    String older,
    String file) {
  /** More than this of one change stand in the file only. */
  private static final int MOST_FIELDS = 200;

  /** Words of tubs and what is done to them. */
  private static final Set<String> KEPT =
      Stream.concat(Arrays.stream(Movement.Kind.values()), Arrays.stream(Dimension.values()))
          .map(Enum::name)
          .collect(Collectors.toUnmodifiableSet());

  /** As many stand open; more are folded away. */
  private static final int FEW = 8;

  /**
   * A change.
   *
   * @param where from which kind of place it came, in words
   * @param more how many fields are not shown
   */
  record Line(
      String at,
      String who,
      String account,
      String where,
      String kind,
      String subject,
      List<Field> fields,
      boolean folded,
      int more,
      boolean whole) {}

  /** A field in words, with what it was and what it is. */
  record Field(String name, String before, String after) {}

  /** A kind it can be narrowed to. */
  record Choice(String value, String name, boolean chosen) {}

  static AuditView of(House house, Audit.Part part, AuditTyped typed, Messages words) {
    String query = typed.query();
    String and = query.isEmpty() ? "" : "&" + query;
    return new AuditView(
        part.rows().stream().map(row -> line(house, row, words)).toList(),
        Audit.KINDS.stream()
            .map(kind -> new Choice(kind, kind(kind, words), kind.equals(typed.kind())))
            .toList(),
        typed,
        !query.isEmpty(),
        typed.before().isEmpty(),
        part.next().map(number -> "audit?before=" + number + and).orElse(""),
        "api/v1/audit.csv" + (query.isEmpty() ? "" : "?" + query));
  }

  private static Line line(House house, Audit.Row row, Messages words) {
    Change change = row.change();
    List<Field> fields = row.fields().stream().limit(MOST_FIELDS).map(AuditView::field).toList();
    return new Line(
        words.moment(change.at()),
        house.book().personName(change.who()),
        change.origin().map(Origin::account).orElse(""),
        where(change.origin(), words),
        kind(change.kind(), words),
        change.subject(),
        fields,
        fields.size() > FEW,
        row.fields().size() - fields.size(),
        row.whole());
  }

  private static String where(Optional<Origin> origin, Messages words) {
    return origin
        .map(
            from ->
                from.address().isEmpty()
                    ? words.say("audit.via." + from.via())
                    : words.say("audit.at", words.say("audit.via." + from.via()), from.address()))
        .orElseGet(() -> words.say("audit.via.unknown"));
  }

  private static String kind(String kind, Messages words) {
    String key = "audit.kind." + kind;
    return words.has(key) ? words.say(key) : kind;
  }

  private static Field field(FieldChange change) {
    return new Field(name(change.path()), word(change.before()), word(change.after()));
  }

  /** A word the log keeps in capitals, as people write it: "COMBINED" as "combined". */
  private static String word(String value) {
    return KEPT.contains(value)
        ? value.toLowerCase(java.util.Locale.ROOT).replace('_', ' ')
        : value;
  }

  /** "lines[dill].useBy" as "lines dill, use by". */
  private static String name(String path) {
    return path.replace("[", " ")
        .replace("]", "")
        .replace(".", ", ")
        .replaceAll("([a-z])([A-Z])", "$1 $2")
        .toLowerCase(java.util.Locale.ROOT);
  }
}
