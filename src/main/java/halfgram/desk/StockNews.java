package halfgram.desk;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import halfgram.kitchen.KitchenStore.News;
import halfgram.lot.Movement;
import halfgram.measure.Exact;
import java.util.List;

/** What happened to a tub, as the log keeps it. */
final class StockNews {
  private StockNews() {}

  /** A change of a tub, which a plan is computed from. */
  static News of(String code, List<Movement> rows) {
    Movement first = rows.get(0);
    return News.fact("stock", code, detail(rows).toString(), first.who());
  }

  /**
   * The log's own words for the first row, and what it brought with it.
   *
   * @param rows one movement of a tub and what it brought with it
   */
  static ObjectNode detail(List<Movement> rows) {
    Movement first = rows.get(0);
    ObjectNode detail = JsonNodeFactory.instance.objectNode();
    detail.put("kind", first.kind().name());
    detail.put("amount", Exact.plain(first.amount().number(), 6));
    detail.put("unit", first.amount().dimension().name());
    first.reason().ifPresent(reason -> detail.put("reason", reason));
    first.turn().place().ifPresent(place -> detail.put("place", place));
    first.turn().useBy().ifPresent(useBy -> detail.put("useBy", useBy.toString()));
    first
        .loss()
        .ifPresent(
            loss -> {
              if (loss.isKnown()) {
                detail.put("cost", Exact.plain(loss.cost().number(), 6));
              } else {
                loss.unpriced().forEach(detail.withArray("unpriced")::add);
              }
            });
    for (Movement row : rows) {
      if (row.kind() == Movement.Kind.DIPPED && !row.amount().isPositive()) {
        ArrayNode dipped = detail.withArray("dipped");
        ObjectNode one = dipped.addObject();
        one.put("event", row.event().orElse(""));
        one.put("amount", Exact.plain(row.amount().times(-1).number(), 6));
      }
    }
    return detail;
  }
}
