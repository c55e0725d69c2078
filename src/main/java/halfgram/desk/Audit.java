package halfgram.desk;

import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Change;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * Who changed what, when, from where, and what it was before: read from the log of changes, which
 * nothing ever alters.
 */
public final class Audit {
  /** Every kind of change there is. */
  public static final List<String> KINDS =
      List.of(
          "book",
          "formula",
          "reference",
          "par",
          "event",
          "slip",
          "plan",
          "import",
          "settings",
          "people",
          "tablet",
          "delivery",
          "stock",
          "gate",
          "bath",
          "service",
          "kit",
          "crew",
          "lanes");

  /** A file of it has no more changes than this. */
  public static final int MOST_IN_FILE = 10_000;

  /**
   * Which changes somebody asks for.
   *
   * @param kind one of {@link #KINDS}
   * @param who part of the name of who did it or of the account that called; empty for everybody
   * @param subject part of what was changed; empty for everything
   * @param from the first business day
   * @param to the last business day
   */
  public record Asked(
      Optional<String> kind,
      String who,
      String subject,
      Optional<LocalDate> from,
      Optional<LocalDate> to) {
    public boolean isNarrow() {
      return kind.isPresent()
          || !who.isEmpty()
          || !subject.isEmpty()
          || from.isPresent()
          || to.isPresent();
    }
  }

  /**
   * A change.
   *
   * @param fields what it changed, field by field
   * @param whole whether all of it stands there; what the log does not keep is not made up
   */
  public record Row(Change change, List<FieldChange> fields, boolean whole) {}

  /**
   * Part of the changes, newest first.
   *
   * @param next number to go on before; empty when there are no more
   */
  public record Part(List<Row> rows, Optional<Long> next) {}

  private final Desk desk;
  private final KitchenStore kitchens = new KitchenStore();

  public Audit(Desk desk) {
    this.desk = desk;
  }

  /** The changes before a number, so many at most. */
  public Part list(House house, Asked asked, long before, int most) {
    return desk.read(tx -> list(tx, house, asked, before, most));
  }

  private Part list(Tx tx, House house, Asked asked, long before, int most) {
    KitchenStore.Which which =
        new KitchenStore.Which(
            asked.kind(),
            asked.who(),
            asked.subject(),
            asked.from().map(day -> start(house, day)),
            asked.to().map(day -> start(house, day.plusDays(1))));
    List<Change> changes = kitchens.listWhich(tx, house.id(), which, before, most + 1);
    boolean more = changes.size() > most;
    List<Change> shown = more ? changes.subList(0, most) : changes;
    AuditFields fields = new AuditFields(tx, house.id());
    List<Row> rows = shown.stream().map(fields::row).toList();
    return new Part(rows, more ? Optional.of(shown.get(most - 1).number()) : Optional.empty());
  }

  private static Instant start(House house, LocalDate day) {
    return house.book().kitchen().clock().start(day);
  }
}
