package halfgram.pages.stock;

import halfgram.lot.Tub;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The tubs in the house.
 *
 * @param orders how they can be sorted; the one they are in has no address
 * @param add where a tub is put in by hand
 * @param counts the counts of stations that have something to count
 * @param held parts held back to taste
 * @param dips what was taken of what is kept for events
 * @param coming what is on the way
 */
record StockView(
    String count,
    String past,
    List<Link> orders,
    String by,
    List<Group> groups,
    String add,
    List<Link> counts,
    List<DipView> dips,
    List<ComingRow> coming,
    List<HeldRow> held) {

  /** What stands beside the tubs. */
  record Beside(List<DipView> dips, List<HeldRow> held) {}

  /** A way somewhere; without an address it is where one is. */
  record Link(String text, String href) {}

  /** Tubs in one place, or of one component; first expired first. */
  record Group(String key, String title, List<TubRow> tubs) {}

  /** How the tubs are sorted. */
  enum By {
    PLACE,
    COMPONENT;

    static By of(String word) {
      return word.equals("component") ? COMPONENT : PLACE;
    }

    String word() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  static StockView of(Shelf shelf, List<Tub> tubs, By by, List<Link> counts, Beside beside) {
    Map<String, List<TubRow>> rows = new LinkedHashMap<>();
    for (Tub tub : tubs) {
      rows.computeIfAbsent(title(shelf, tub, by), title -> new ArrayList<>())
          .add(TubRow.of(shelf, tub, Optional.empty()));
    }
    List<Group> groups = new ArrayList<>();
    rows.forEach((title, list) -> groups.add(new Group("group-" + groups.size(), title, list)));
    long past = tubs.stream().filter(tub -> !tub.lot().useBy().isAfter(shelf.now())).count();
    return new StockView(
        tubs.size() == 1
            ? shelf.words().say("stock.one")
            : shelf.words().say("stock.many", tubs.size()),
        past == 0 ? "" : shelf.words().say("stock.many-past", past),
        List.of(
            order(shelf, By.PLACE, "stock.by-place", by),
            order(shelf, By.COMPONENT, "stock.by-component", by)),
        by.word(),
        groups,
        shelf.address("stock/new"),
        counts,
        beside.dips(),
        ComingRow.of(shelf),
        beside.held());
  }

  private static String title(Shelf shelf, Tub tub, By by) {
    if (by == By.COMPONENT) {
      return shelf.names().componentName(tub.lot().component());
    }
    return tub.lot().place().isEmpty() ? shelf.words().say("stock.no-place") : tub.lot().place();
  }

  private static Link order(Shelf shelf, By by, String key, By now) {
    String href = by == now ? "" : shelf.address("stock?by=" + by.word());
    return new Link(shelf.words().say(key), href);
  }
}
