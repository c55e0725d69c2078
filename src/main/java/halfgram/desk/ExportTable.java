package halfgram.desk;

import halfgram.book.table.BookTable;
import halfgram.book.table.CsvText;
import halfgram.db.Tx;
import halfgram.kitchen.KitchenStore;
import halfgram.kitchen.KitchenStore.Change;
import halfgram.measure.Amount;
import halfgram.measure.Exact;
import halfgram.prep.Tick;
import halfgram.prep.TickStore;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** Writes a table of a kitchen as a CSV file; the log and the ticks can only be written. */
public final class ExportTable {
  private static final String LOG = "log";
  private static final String TICKS = "ticks";

  private final Desk desk;
  private final ExportBook export = new ExportBook();
  private final KitchenStore kitchens = new KitchenStore();
  private final TickStore ticks = new TickStore();

  public ExportTable(Desk desk) {
    this.desk = desk;
  }

  /** The names of all tables. */
  public static List<String> names() {
    List<String> names = new ArrayList<>(BookTable.all().stream().map(BookTable::name).toList());
    names.add(LOG);
    names.add(TICKS);
    return names;
  }

  /** The file of a table; empty when there is none of this name. */
  public Optional<byte[]> find(House house, String name) {
    return switch (name) {
      case LOG -> Optional.of(log(house));
      case TICKS -> Optional.of(ticks(house));
      default ->
          BookTable.find(name)
              .map(
                  table ->
                      CsvText.write(
                          table.header(), table.rows(desk.read(tx -> export.export(tx, house)))));
    };
  }

  private byte[] log(House house) {
    ZoneId zone = zone(house);
    List<Change> changes =
        desk.read(tx -> kitchens.listSince(tx, house.id(), 0, LogKind.ofChanges()));
    return CsvText.write(
        List.of("number", "at", "what", "subject", "detail", "who"),
        changes.stream()
            .map(
                change ->
                    List.of(
                        "" + change.number(),
                        at(change.at(), zone),
                        change.kind(),
                        change.subject(),
                        Logbook.detail(change).toString(),
                        change.who()))
            .toList());
  }

  private byte[] ticks(House house) {
    ZoneId zone = zone(house);
    List<TickStore.Entered> all = new ArrayList<>(desk.read(tx -> listTicks(tx, house)));
    Collections.reverse(all);
    return CsvText.write(
        List.of(
            "number",
            "at",
            "device-time",
            "what",
            "task",
            "line",
            "amount",
            "unit",
            "note",
            "cook",
            "id",
            "undoes",
            "device",
            "entered-at",
            "entered-by"),
        all.stream().map(entered -> row(entered, zone)).toList());
  }

  private List<TickStore.Entered> listTicks(Tx tx, House house) {
    return ticks.listBefore(tx, house.id(), Long.MAX_VALUE, Integer.MAX_VALUE);
  }

  private static List<String> row(TickStore.Entered entered, ZoneId zone) {
    Tick tick = entered.tick();
    return List.of(
        "" + entered.change(),
        at(tick.at(), zone),
        at(entered.origin().time(), zone),
        tick.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
        tick.task(),
        tick.line().orElse(""),
        tick.amount().map(amount -> Exact.plain(amount.number(), 6)).orElse(""),
        tick.amount().map(ExportTable::unit).orElse(""),
        tick.note().orElse(""),
        tick.cook(),
        tick.id().toString(),
        tick.undoes().map(UUID::toString).orElse(""),
        entered.origin().device().toString(),
        entered.later().map(later -> at(later.came(), zone)).orElse(""),
        entered.later().map(TickStore.Later::by).orElse(""));
  }

  private static String unit(Amount amount) {
    return amount.dimension() == halfgram.measure.Dimension.COUNT ? "piece" : "g";
  }

  private static ZoneId zone(House house) {
    return house.book().kitchen().clock().zone();
  }

  /** With its offset, so that the hour that comes twice in autumn can be told apart. */
  private static String at(Instant at, ZoneId zone) {
    return at.atZone(zone).toOffsetDateTime().toString();
  }
}
