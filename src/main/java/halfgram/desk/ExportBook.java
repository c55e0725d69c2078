package halfgram.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.db.Tx;
import halfgram.formula.AllergenTrace;
import halfgram.formula.Contains;
import halfgram.formula.FormulaVersion;
import halfgram.lot.Frozen;
import halfgram.lot.Lot;
import halfgram.lot.LotStore;
import halfgram.lot.Reservation;
import halfgram.lot.Tub;
import halfgram.measure.Amount;
import halfgram.measure.Dimension;
import halfgram.measure.Exact;
import halfgram.prep.KitchenBook;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.SortedSet;

/** Writes a kitchen's book as a file would hold it, with its tubs as they are now. */
public final class ExportBook {
  private final LotStore lots = new LotStore();

  /** The book of a kitchen. */
  public ObjectNode export(Tx tx, House house) {
    return withTubs(house, lots.list(tx, house.id()));
  }

  /** The same as the text of a file. */
  public String text(Tx tx, House house) {
    return export(tx, house).toPrettyString() + "\n";
  }

  /** A book with these tubs. */
  static ObjectNode withTubs(House house, List<Tub> tubs) {
    ObjectNode book = house.tree().deepCopy();
    ArrayNode list = book.putArray("tubs");
    ZoneId zone = house.book().kitchen().clock().zone();
    KitchenBook now = house.book();
    AllergenTrace trace = new AllergenTrace(now.formulary(), now::ingredient);
    for (Tub tub : tubs) {
      ObjectNode node = list.addObject();
      tub(node, tub.lot().toTheMinute(), zone);
      FormulaVersion version = now.formulary().get(tub.lot().component());
      Contains more = tub.lot().known().beyond(trace.of(version).contains());
      words(node, "contains", more.allergens());
      words(node, "tags", more.tags());
    }
    return book;
  }

  private static void words(ObjectNode node, String key, SortedSet<String> words) {
    if (!words.isEmpty()) {
      words.forEach(node.putArray(key)::add);
    }
  }

  private static void tub(ObjectNode node, Lot lot, ZoneId zone) {
    node.put("code", lot.code());
    node.put("component", lot.component().formula());
    lot.component().output().ifPresent(output -> node.put("output", output));
    lot.component().version().ifPresent(version -> node.put("version", version));
    node.put("left", amount(lot.left()));
    node.put("made", moment(lot.made(), zone));
    node.put("useBy", moment(lot.ownUseBy(), zone));
    lot.frozen().ifPresent(ice -> frozen(node.putObject("frozen"), lot, ice, zone));
    lot.thawed().ifPresent(at -> node.put("thawed", moment(at, zone)));
    if (!lot.place().isEmpty()) {
      node.put("place", lot.place());
    }
    lot.container().ifPresent(container -> node.put("container", container));
    if (!lot.reserved().isEmpty()) {
      ArrayNode reserved = node.putArray("reserved");
      for (Reservation reservation : lot.reserved()) {
        ObjectNode item = reserved.addObject();
        item.put("event", reservation.event());
        item.put("amount", amount(reservation.amount()));
      }
    }
  }

  private static void frozen(ObjectNode node, Lot lot, Frozen ice, ZoneId zone) {
    node.put("since", moment(ice.since(), zone));
    node.put("keepUntil", moment(lot.useBy(), zone));
    ice.days().ifPresent(days -> node.put("days", days));
  }

  private static String amount(Amount amount) {
    String unit = amount.dimension() == Dimension.COUNT ? " piece" : " g";
    return Exact.plain(amount.number(), 6) + unit;
  }

  private static String moment(Instant at, ZoneId zone) {
    return at.atZone(zone).toLocalDateTime().toString();
  }
}
